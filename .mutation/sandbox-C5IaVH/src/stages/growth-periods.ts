/** The four growth periods of a planting, as they lie in its dated stages. */
// @ts-nocheck

import type { Crop, StageLengths } from "../crops/index.js";
import { addDays, type Day, dayFromNumber, dayNumber, later } from "../dates.js";
import { offsetDays, periods } from "./lengths.js";

/** First days of the periods of FAO-56 chapter 6, and the last day of the late one. */
export interface GrowthPeriods extends Readonly<Record<(typeof periods)[number], Day>> {
  readonly end: Day;
}

/**
 * Stages stand at shares of the periods, so a period begins on its share of the way between the stages
 * around it, wherever the weather or what was seen has put them. After the last stage the published
 * lengths go on. The late one of what is picked again and again lasts for as long as it is picked.
 *
 * @param starts first days of the stages of the crop's course
 * @param scale how much longer or shorter this variety's life is than the published lengths
 * @param end the last day by lengths, or a later one on which it still stands
 */
export function growthPeriods(
  { course: { stages } }: Crop,
  lengths: StageLengths,
  scale: number,
  starts: readonly { readonly day: Day }[],
  end: Day,
): GrowthPeriods {
  const marks = stages.map((stage, i) => ({
    offset: offsetDays(stage, lengths) * scale,
    day: (starts[i] as { readonly day: Day }).day,
  }));
  const begins = (period: (typeof periods)[number]): Day =>
    dayAt(offsetDays({ period, share: 0 }, lengths) * scale, marks);
  const [initial, development, mid, late] = periods.map(begins) as [Day, Day, Day, Day];
  return { initial, development, mid, late, end: later(end, late) };
}

function dayAt(
  offset: number,
  marks: readonly { readonly offset: number; readonly day: Day }[],
): Day {
  const before = marks.findLast((mark) => mark.offset <= offset);
  const after = marks.find((mark) => mark.offset > offset);
  if (before === undefined)
    return addDays(after?.day as Day, Math.round(offset - (after?.offset ?? 0)));
  if (after === undefined) return addDays(before.day, Math.round(offset - before.offset));
  const share = (offset - before.offset) / (after.offset - before.offset);
  const [from, to] = [dayNumber(before.day), dayNumber(after.day)];
  return dayFromNumber(Math.round(from + share * (to - from)));
}
