/** Harvests that the plan ends with the season, for want of the grower's word. */
// @ts-nocheck

import { daysBetween } from "../dates.js";
import { type Garden, shortDate } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import type { Advice } from "./advice-type.js";

/** Few plants bear longer: common practice, no source. */
const longHarvestDays = 150;

export function pickAdvice({ amounts, beds, season }: Garden, { plantings }: Plan): Advice[] {
  const named = new Set(
    beds
      .flatMap((bed) => bed.plantings)
      .filter(({ pickedUntil }) => pickedUntil !== undefined)
      .map(({ id }) => id),
  );
  const long = plantings.filter(({ id, fed, stages }) => {
    const harvest = stages.find(({ stage }) => stage === "harvest");
    return (
      fed &&
      !named.has(id) &&
      harvest?.to === season.to &&
      daysBetween(harvest.from, harvest.to) >= longHarvestDays
    );
  });
  if (long.length === 0) return [];
  const ids = long.map(({ id }) => id);
  return [
    {
      code: "long-harvest",
      plantings: ids,
      message: `${ids.join(", ")}: taken as picked for more than ${longHarvestDays} days, to the season's end on ${shortDate(season.to, amounts)}, and fed accordingly: write the day of the last pick (\`picked_until:\`) where they tire sooner`,
    },
  ];
}
