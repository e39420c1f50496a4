/**
 * Dated stages of one planting: from sowing, planting or bloom, by published stage lengths or by
 * warmth, moved by what the grower has seen.
 */
// @ts-nocheck

import type { CourseStage, Crop, StageLengths } from "../crops/index.js";
import { addDays, type Day, daysBetween, earlier, later } from "../dates.js";
import type { Planting } from "../garden/index.js";
import { given } from "../values.js";
import { type Begin, beginOfCount } from "./begin.js";
import { movedBySightings } from "./calendar-starts.js";
import { type LastDay, lastDay } from "./last-day.js";
import { type GrowthPeriods, growthPeriods } from "./growth-periods.js";
import { harvestScale, nearestLengths, offsetDays, originText } from "./lengths.js";
import { notBeforeOther } from "./not-before.js";
import type { Place } from "./place.js";
import type { StageSpan } from "./stage-span.js";
import { type WarmStart, warmStarts } from "./warm-starts.js";

export interface PlantingLife {
  /** In order, without holes; the last day of the last one is the end of its life in the bed. */
  readonly spans: readonly StageSpan[];
  /** Absent where the crop is not known. */
  readonly periods?: GrowthPeriods;
  /** First day of harvest, or the day on which it is removed if that comes first. */
  readonly harvestFrom: Day;
  /** Its last day in the bed, which for what is picked again and again is that of the last pick. */
  readonly last: LastDay;
  /** Warmth has moved some of its days: they follow the weather. */
  readonly isByWarmth: boolean;
  /** Defaults used, in words for the grower. */
  readonly assumptions: readonly string[];
}

/**
 * @param planting valid: dates in order, stages seen belong to the crop; see `validateGarden`
 * @source lengths, courses and sums carry their own, told in each span's `origin`
 */
export function plantingLife(planting: Planting, crop: Crop, place: Place): PlantingLife {
  const begin = beginOfCount(planting, crop, place);
  const lengths = nearestLengths(planting, crop, begin.day, place.hemisphere);
  const scale = harvestScale(planting, crop, lengths, begin.day);
  const { computed, zero } = byLengths(crop, begin, lengths, scale);
  const calendar = movedBySightings(planting, crop, computed, place.amounts);
  const warm = warmStarts(planting, crop, [begin, lengths, scale], calendar, place);
  const starts = notBeforeOther(warm, planting, crop, begin, place, plantingLife);

  const lifeDays = Math.round(offsetDays({ period: "late", share: 1 }, lengths) * scale);
  const [lastComputed, lastStart] = [computed.at(-1), starts.at(-1)];
  const shiftDays = lastComputed && lastStart ? daysBetween(lastComputed, lastStart.day) : 0;
  const lifeEnd = addDays(zero, lifeDays - 1 + shiftDays);
  const last = lastDay(planting, crop, place, begin.day, later(lifeEnd, lastStart?.day ?? lifeEnd));
  const origin = originText(crop, lengths, scale, planting.daysToHarvest) + (begin.how ?? "");
  const standsUntil = crop.course.pickedRepeatedly ? later(lifeEnd, last.day) : lifeEnd;
  const spans = withNursery(spansOf(crop, starts, last.day, origin), begin);
  const harvest = spans.find((span) => span.stage === "harvest");
  return {
    // A perennial is planted in the middle of its year; an annual begins with its first stage.
    spans: cutToStay(
      spans,
      crop.perennial ? (planting.sown ?? planting.transplanted) : undefined,
      last,
    ),
    periods: growthPeriods(crop, lengths, scale, starts, standsUntil),
    harvestFrom: earlier(harvest?.from ?? last.day, planting.removed ?? last.day),
    last,
    isByWarmth: begin.isByWarmth === true || starts.some((start) => start.isByWarmth),
    assumptions: begin.assumption === undefined ? [] : [begin.assumption],
  };
}

/** First days by the lengths alone, and the day on which those begin. */
function byLengths(
  { course: { stages } }: Crop,
  begin: Begin,
  lengths: StageLengths,
  scale: number,
): { computed: readonly Day[]; zero: Day } {
  const offsets = stages.map((stage) => Math.round(offsetDays(stage, lengths) * scale));
  // Bloom fixes the day of flowering, also where other stages come before it.
  const flowering = stages.findIndex((stage) => stage.stage === "flowering");
  const zero =
    begin.isBloom === true && flowering > 0
      ? addDays(begin.day, -(offsets[flowering] ?? 0))
      : begin.day;
  return { computed: offsets.map((offset) => addDays(zero, offset)), zero };
}

function spansOf(crop: Crop, starts: readonly WarmStart[], end: Day, origin: string): StageSpan[] {
  return starts.map(({ day, moved, warmth }, i): StageSpan => {
    const stage = crop.course.stages[i] as CourseStage;
    const next = starts[i + 1]?.day;
    return {
      stage: stage.stage,
      bbch: stage.bbch,
      from: day,
      to: next === undefined ? later(end, day) : addDays(next, -1),
      origin: moved ?? origin,
      ...given({ warmth }),
    };
  });
}

function withNursery(spans: readonly StageSpan[], { sownInNursery }: Begin): readonly StageSpan[] {
  const [first, ...others] = spans;
  if (sownInNursery === undefined || first === undefined || sownInNursery >= first.from)
    return spans;
  if (first.stage === "seedling") return [{ ...first, from: sownInNursery }, ...others];
  const nursery: StageSpan = {
    stage: "seedling",
    bbch: "00-13",
    from: sownInNursery,
    to: addDays(first.from, -1),
    origin: "between the days given for sowing and transplanting",
  };
  return [nursery, ...spans];
}

/** Only while it is in the bed. */
function cutToStay(
  spans: readonly StageSpan[],
  planted: Day | undefined,
  last: LastDay,
): StageSpan[] {
  return spans
    .map((span) => ({
      ...span,
      from: planted === undefined ? span.from : later(span.from, planted),
      to: earlier(span.to, last.day),
    }))
    .filter((span) => span.from <= span.to);
}
