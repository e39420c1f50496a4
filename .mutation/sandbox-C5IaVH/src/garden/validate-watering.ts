/** How much water a bed wants a week, and the days on which it is given. */
// @ts-nocheck

import type { Bed as BedFile, WateringDays as WateringFile } from "../compiled/garden-file.js";
import { type Weekday, weekdays } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import type { FeedingDays, Planting, WateringDays, WateringWish } from "./garden.js";
import { withoutWeek } from "./quantity.js";
import { clockText, remindersOf } from "./validate-settings.js";
import type { Validation } from "./validation.js";

/** Twice a week, as evenly as a week allows: common practice, no source. */
const usualDays: readonly Weekday[] = ["mon", "thu"];

export function validateWateringDays(
  entry: Entry<WateringFile>,
  feeding: FeedingDays,
  { tables: { usual } }: Validation,
): WateringDays {
  const days = entry.weekdays("days");
  const feedingDays = feeding.days.length < weekdays.length ? feeding.days : usualDays;
  const startMin = entry.clock("time");
  const timeOfDay = startMin === undefined ? undefined : clockText(startMin);
  return {
    days: days.length > 0 ? days : feedingDays,
    inCalendar: entry.raw.calendar === true,
    remindersMinBefore: remindersOf(
      entry.raw.reminders === undefined ? undefined : entry.entries("reminders"),
      timeOfDay,
      usual,
    ),
    ...given({ timeOfDay }),
  };
}

/** Of a bed: `auto`, or an amount for it, its area or its plants. */
export function validateWatering(
  entry: Entry<BedFile>,
  plantings: readonly Pick<Planting, "plants">[],
): WateringWish | undefined {
  if (/^\s*auto$/i.test(withoutWeek(entry.text("watering") ?? ""))) return "auto";
  const water = entry.weeklyWater("watering");
  if (water === undefined) return undefined;
  const { liters, per } = water;
  if (per === "depth" || per === "m2") return { weeklyMm: liters };
  if (per === "whole") return { weeklyL: liters };
  const plants = plantings.map((planting) => planting.plants);
  if (plants.includes(undefined))
    entry.report({
      code: "water",
      path: entry.at("watering"),
      message: "the watering is per plant, but not all plantings of the bed give their number",
      mend: "add `plants: 6` to them, or write the watering for the bed, like `25 L per m2`",
    });
  return { weeklyL: plants.reduce<number>((sum, some) => sum + liters * (some ?? 0), 0) };
}
