/** What a plan says of its garden. */
import type { Garden } from "../garden/index.js";
import { given } from "../values.js";
import type { PlanGarden } from "./season-plan.js";

export function gardenInPlan(garden: Garden): PlanGarden {
  const { id, name, timezone, season, amounts, canL, sprayerL, feeding, calendar } = garden;
  const { timeOfDay, durationMin } = feeding;
  return {
    id,
    name,
    timezone,
    season,
    amounts,
    canL,
    sprayerL,
    ...given({ timeOfDay }),
    durationMin,
    calendar,
  };
}
