/** Which row of stage lengths a planting follows, and where its stages begin in it. */
// @ts-nocheck

import type { CourseStage, Crop, StageLengths } from "../crops/index.js";
import { addDays, type Day, daysBetween, monthHalfYearOn, monthOf } from "../dates.js";
import type { Garden, Planting } from "../garden/index.js";

/**
 * The row that the grower chose or, failing that, the published one whose months of planting are
 * nearest; the first of equals is the default.
 */
export function nearestLengths(
  { row: chosen }: Pick<Planting, "row">,
  crop: Crop,
  begin: Day,
  hemisphere: Garden["hemisphere"],
): StageLengths {
  const own = crop.lengths.find(({ id }) => id === chosen);
  if (own !== undefined) return own;
  const month = hemisphere === "south" ? monthHalfYearOn(monthOf(begin)) : monthOf(begin);
  const monthsAway = (row: StageLengths): number =>
    row.plantedMonths.length === 0
      ? 0
      : Math.min(
          ...row.plantedMonths.map((m) => Math.min((m - month + 12) % 12, (month - m + 12) % 12)),
        );
  return crop.lengths.reduce((a, b) => (monthsAway(b) < monthsAway(a) ? b : a));
}

/** In the order of the growth. */
export const periods = ["initial", "development", "mid", "late"] as const;

/** From day 0 of the lengths to where a stage begins. */
export function offsetDays(
  { period, share }: Pick<CourseStage, "period" | "share">,
  l: StageLengths,
): number {
  const days = [l.initialDays, l.developmentDays, l.midDays, l.lateDays];
  const index = periods.indexOf(period);
  return days.slice(0, index).reduce((sum, d) => sum + d, 0) + share * (days[index] ?? 0);
}

/** How much longer or shorter this variety's life is than the published lengths. */
export function harvestScale(
  planting: Planting,
  crop: Crop,
  lengths: StageLengths,
  begin: Day,
): number {
  const harvest = crop.course.stages.find((stage) => stage.stage === "harvest");
  if (planting.daysToHarvest === undefined || harvest === undefined) return 1;
  const packetBegin =
    crop.packetDaysFrom === "transplanting" && crop.countedFrom === "sowing"
      ? daysBetween(begin, planting.transplanted ?? addDays(begin, crop.transplantAgeDays))
      : 0;
  return (packetBegin + planting.daysToHarvest) / offsetDays(harvest, lengths);
}

export function originText(
  crop: Crop,
  lengths: StageLengths,
  scale: number,
  toHarvest?: number,
): string {
  const plain = `${lengths.source} (${lengths.region}; counted from ${crop.countedFrom})`;
  if (toHarvest === undefined) return plain;
  return `${plain}; scaled by ${Number(scale.toFixed(2))} to ${toHarvest} days to harvest`;
}
