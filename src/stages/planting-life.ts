/**
 * Dated stages of one planting: from sowing, planting or bloom, by published stage lengths, moved
 * by what the grower has seen.
 */
import type { CourseStage, Crop, StageLengths, StageName } from "../crops/index.js";
import {
  addDays,
  type Day,
  dayNumber,
  daysBetween,
  type DaySpan,
  earlier,
  later,
  monthOf,
  parseDay,
  within,
} from "../dates.js";
import type { Garden, Planting } from "../garden/index.js";
import { given } from "../values.js";

/** One stage of one planting, with its dates and where they come from. Both ends count. */
export interface StageSpan extends DaySpan {
  readonly stage: StageName;
  /** BBCH codes, as in `69-71`. */
  readonly bbch: string;
  /** In words, e.g. `FAO-56 Table 11, Tomato, Mediterranean, planted April/May; scaled ...`. */
  readonly origin: string;
  /** Of its first day. */
  readonly warmth?: StageWarmth;
}

/** What warmth says of the first day of a stage, where the crop has sums and the place a climate. */
export interface StageWarmth {
  /** Absent where warmth doesn't reach it before the season's end. */
  readonly day?: Day;
  /** As early and as late as the sums and the means leave it, before it is held near the calendar's. */
  readonly earliest?: Day;
  readonly latest?: Day;
  /** The first day by stage lengths alone. */
  readonly calendar: Day;
  /** The stage begins by it. */
  readonly isFollowed: boolean;
  /** It was held back: warmth moves a date only so far. */
  readonly isHeldBack?: true;
}

export type LastPickBy = "picked-until" | "frost" | "removed" | "season";

export interface PlantingLife {
  /** In order, without holes; the last day of the last one is the end of its life in the bed. */
  readonly spans: readonly StageSpan[];
  /** First day of harvest, or the day on which it is removed if that comes first. */
  readonly harvestFrom: Day;
  /** The last day on which it is picked; the end of its harvest where absent. */
  readonly lastPick?: Day;
  /** What ends the picking; the stage lengths where absent. */
  readonly lastPickBy?: LastPickBy;
  /** Defaults used, in words for the grower. */
  readonly assumptions: readonly string[];
}

type Place = Pick<Garden, "hemisphere" | "season">;

/**
 * @param planting valid: dates in order, stages seen belong to the crop; see `validateGarden`
 * @source lengths and courses carry their own, told in each span's `origin`
 */
export function plantingLife(planting: Planting, crop: Crop, place: Place): PlantingLife {
  const begin = beginOfCount(planting, crop, place);
  const lengths = nearestLengths(crop, begin.day, place.hemisphere);
  const scale = harvestScale(planting, crop, lengths, begin.day);
  const offsets = crop.course.stages.map((stage) => Math.round(offsetDays(stage, lengths) * scale));
  const origin = originText(crop, lengths, scale, planting.daysToHarvest) + (begin.how ?? "");

  // Bloom fixes the day of flowering, also where other stages come before it.
  const flowering = crop.course.stages.findIndex((stage) => stage.stage === "flowering");
  const zero =
    begin.isBloom === true && flowering > 0
      ? addDays(begin.day, -(offsets[flowering] ?? 0))
      : begin.day;
  const computed = offsets.map((offset) => addDays(zero, offset));
  const starts = movedBySightings(planting, crop, computed);
  const lifeDays = Math.round(offsetDays({ period: "late", share: 1 }, lengths) * scale);
  const lastStart = starts.at(-1);
  const lifeEnd = addDays(zero, lifeDays - 1 + (lastStart?.shiftDays ?? 0));
  const end = lastStart === undefined ? lifeEnd : later(lifeEnd, lastStart.day);
  const spans = starts.map(({ day, moved }, i): StageSpan => {
    const stage = crop.course.stages[i] as CourseStage;
    const next = starts[i + 1]?.day;
    return {
      stage: stage.stage,
      bbch: stage.bbch,
      from: day,
      to: next === undefined ? end : addDays(next, -1),
      origin: moved ?? origin,
    };
  });
  const nursery = begin.sownInNursery;
  const [first] = spans;
  if (nursery !== undefined && first !== undefined && nursery < first.from)
    if (first.stage === "seedling") spans[0] = { ...first, from: nursery };
    else
      spans.unshift({
        stage: "seedling",
        bbch: "00-13",
        from: nursery,
        to: addDays(first.from, -1),
        origin: "between the days given for sowing and transplanting",
      });
  const harvest = spans.find((span) => span.stage === "harvest");
  return {
    spans: cutToStay(
      spans.filter((span) => span.from <= span.to),
      // A perennial is planted in the middle of its year; an annual begins with its first stage.
      crop.perennial ? (planting.sown ?? planting.transplanted) : undefined,
      planting.removed,
    ),
    harvestFrom: earlier(harvest?.from ?? end, planting.removed ?? end),
    assumptions: begin.assumption === undefined ? [] : [begin.assumption],
  };
}

interface Begin {
  /** Day 0 of the stage lengths. */
  readonly day: Day;
  readonly isBloom?: boolean;
  /** What was derived, as a tail of the origin. */
  readonly how?: string;
  readonly sownInNursery?: Day;
  readonly assumption?: string;
}

function beginOfCount(planting: Planting, crop: Crop, place: Place): Begin {
  const { sown, transplanted, seen } = planting;
  const age = crop.transplantAgeDays;
  if (crop.countedFrom === "bloom") return bloomBegin(planting, crop, place);
  if (crop.countedFrom !== "transplanting" && sown !== undefined) {
    // A young plant that waits in its tray grows no further than one planted out in time.
    const inTime = transplanted === undefined ? sown : addDays(transplanted, -age);
    if (inTime <= sown) return { day: sown };
    return {
      day: inTime,
      ...given({ sownInNursery: seen.some((s) => s.stage === "seedling") ? undefined : sown }),
      how: `; counted from ${inTime}, ${age} days before transplanting, the usual age of young ${crop.name} plants`,
    };
  }
  if (crop.countedFrom === "transplanting" && transplanted !== undefined)
    return { day: transplanted, ...given({ sownInNursery: sown }) };
  if (transplanted !== undefined)
    return {
      day: addDays(transplanted, -age),
      how: `; sown about ${age} days before transplanting, usual for ${crop.name}`,
    };
  if (sown !== undefined)
    return {
      day: addDays(sown, age),
      sownInNursery: sown,
      how: `; transplanted about ${age} days after sowing, usual for ${crop.name}`,
    };
  const [sighting] = seen;
  if (sighting === undefined) throw new Error(`${planting.id} has no beginning: was it validated?`);
  return { day: beginFromSighting(sighting, crop) };
}

function bloomBegin(planting: Planting, crop: Crop, place: Place): Begin {
  const { sown, transplanted, bloom } = planting;
  if (bloom !== undefined) return { day: bloom, isBloom: true };
  const [seen] = planting.seen;
  if (seen !== undefined) return { day: beginFromSighting(seen, crop) };
  const usual = usualBloom(crop, place);
  const planted = sown ?? transplanted;
  // Planted after bloom, a strawberry makes leaves first and then flowers; a tree has missed it.
  if (planted !== undefined && planted > usual && crop.course.stages[0]?.stage !== "flowering")
    return { day: planted, how: `; begun by planting on ${planted}` };
  return {
    day: usual,
    isBloom: true,
    assumption: `${planting.id}: full bloom on ${usual}, usual for ${crop.name} in temperate gardens, as no \`bloom\` of this season is given`,
  };
}

/** Roughly, by the default lengths: what was seen moves the stages to their days afterwards. */
function beginFromSighting(seen: Planting["seen"][number], crop: Crop): Day {
  const stage = crop.course.stages.find((s) => s.stage === seen.stage);
  const [lengths] = crop.lengths;
  return addDays(seen.on, stage && lengths ? -Math.round(offsetDays(stage, lengths)) : 0);
}

/** The usual bloom that falls in the season or, failing that, is nearest to its beginning. */
function usualBloom(crop: Crop, { hemisphere, season }: Place): Day {
  const [month, dayOfMonth] = (crop.usualBloomNorth ?? "05-01").split("-").map(Number);
  const shifted = hemisphere === "south" ? (((month ?? 5) + 5) % 12) + 1 : (month ?? 5);
  const year = Number(season.from.slice(0, 4));
  const pad = (n: number): string => String(n).padStart(2, "0");
  const candidates = [year - 1, year, year + 1, year + 2].flatMap(
    (y) => parseDay(`${y}-${pad(shifted)}-${pad(Math.min(dayOfMonth ?? 1, 28))}`) ?? [],
  );
  const middle = Math.round((dayNumber(season.from) + dayNumber(season.to)) / 2);
  const inSeason = candidates.find((d) => d >= addDays(season.from, -60) && d <= season.to);
  const byDistance = [...candidates].sort(
    (a, b) => Math.abs(dayNumber(a) - middle) - Math.abs(dayNumber(b) - middle),
  );
  return inSeason ?? byDistance[0] ?? season.from;
}

/** The published row whose months of planting are nearest; the first of equals is the default. */
function nearestLengths(crop: Crop, begin: Day, hemisphere: Place["hemisphere"]): StageLengths {
  const month = hemisphere === "south" ? ((monthOf(begin) + 5) % 12) + 1 : monthOf(begin);
  const monthsAway = (row: StageLengths): number =>
    row.plantedMonths.length === 0
      ? 0
      : Math.min(
          ...row.plantedMonths.map((m) => Math.min((m - month + 12) % 12, (month - m + 12) % 12)),
        );
  return crop.lengths.reduce((a, b) => (monthsAway(b) < monthsAway(a) ? b : a));
}

/** In the order of the growth. */
const periods = ["initial", "development", "mid", "late"] as const;

/** From day 0 of the lengths to where a stage begins. */
function offsetDays(
  { period, share }: Pick<CourseStage, "period" | "share">,
  l: StageLengths,
): number {
  const days = [l.initialDays, l.developmentDays, l.midDays, l.lateDays];
  const index = periods.indexOf(period);
  return days.slice(0, index).reduce((sum, d) => sum + d, 0) + share * (days[index] ?? 0);
}

/** How much longer or shorter this variety's life is than the published lengths. */
function harvestScale(planting: Planting, crop: Crop, lengths: StageLengths, begin: Day): number {
  const harvest = crop.course.stages.find((stage) => stage.stage === "harvest");
  if (planting.daysToHarvest === undefined || harvest === undefined) return 1;
  const packetBegin =
    crop.packetDaysFrom === "transplanting" && crop.countedFrom === "sowing"
      ? daysBetween(begin, planting.transplanted ?? addDays(begin, crop.transplantAgeDays))
      : 0;
  return (packetBegin + planting.daysToHarvest) / offsetDays(harvest, lengths);
}

function originText(crop: Crop, lengths: StageLengths, scale: number, toHarvest?: number): string {
  const plain = `${lengths.source} (${lengths.region}; counted from ${crop.countedFrom})`;
  if (toHarvest === undefined) return plain;
  return `${plain}; scaled by ${Number(scale.toFixed(2))} to ${toHarvest} days to harvest`;
}

interface Start {
  readonly day: Day;
  readonly shiftDays: number;
  /** Why it is not where the lengths put it. */
  readonly moved?: string;
}

/** Each stage seen begins when it was seen, and moves all that come after it as far. */
function movedBySightings(planting: Planting, crop: Crop, computed: readonly Day[]): Start[] {
  let shiftDays = 0;
  let moved: string | undefined;
  // A stage that was seen lasts a day at least, however short the variety's life is reckoned.
  let earliest: Day | undefined;
  const starts = computed.map((day, i): Start => {
    const stage = crop.course.stages[i]?.stage;
    const sighting = planting.seen.find((seen) => seen.stage === stage);
    if (sighting) {
      shiftDays = daysBetween(day, sighting.on);
      earliest = addDays(sighting.on, 1);
      moved = `counted from ${sighting.stage} seen on ${sighting.on}`;
      return { day: sighting.on, shiftDays, moved: `seen on ${sighting.on}` };
    }
    const shifted = addDays(day, shiftDays);
    return {
      day: earliest === undefined ? shifted : later(shifted, earliest),
      shiftDays,
      ...given({ moved }),
    };
  });
  // A stage seen early cuts short, or leaves out, the stages before it.
  for (let i = starts.length - 2; i >= 0; i--) {
    const [start, next] = [starts[i] as Start, starts[i + 1] as Start];
    starts[i] = { ...start, day: earlier(start.day, next.day) };
  }
  return starts;
}

/** Only while it is in the bed. */
function cutToStay(
  spans: readonly StageSpan[],
  planted: Day | undefined,
  removed: Day | undefined,
): StageSpan[] {
  return spans
    .map((span) => ({
      ...span,
      from: planted === undefined ? span.from : later(span.from, planted),
      to: removed === undefined ? span.to : earlier(span.to, addDays(removed, -1)),
    }))
    .filter((span) => span.from <= span.to);
}

/** The stage on a day, if the planting is in the bed then. */
export function stageOn(spans: readonly StageSpan[], day: Day): StageSpan | undefined {
  return spans.find((span) => within(day, span));
}

/** The stage on a day or, before and after the life that is reckoned, its first or last one. */
export function stageNearest(spans: readonly StageSpan[], day: Day): StageSpan | undefined {
  const [first] = spans;
  return stageOn(spans, day) ?? (first !== undefined && day < first.from ? first : spans.at(-1));
}

/** First to last day of all spans. */
export function lifeSpan(spans: readonly StageSpan[]): DaySpan | undefined {
  const [first, last] = [spans[0], spans.at(-1)];
  return first && last ? { from: first.from, to: last.to } : undefined;
}
