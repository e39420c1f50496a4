/** What the grower saw on the plants, and what it does to the rate. */
import type { Crop, StageName } from "../crops/index.js";
import { addDays, type Day, type DaySpan, earlier, later, within } from "../dates.js";
import type { Planting, SignSeen } from "../garden/index.js";
import { stageOn, type StageSpan } from "../stages/index.js";
import { byText } from "../values.js";
import type { FedSpan } from "./match.js";
import type { FeedRule } from "./rule.js";

/** A row of `signs.yaml`. */
export interface Sign {
  readonly key: string;
  readonly name: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly first_advice: readonly string[];
  /** What trials of watering and mulch found; of all its crops where none are named. */
  readonly water_evidence?: readonly WaterEvidence[];
  /** By crop group: what comes before the other advice. */
  readonly first_in_group?: Readonly<Record<string, readonly string[]>>;
  /** -1, 0 or 1. */
  readonly level_steps: number;
  readonly level_factor: number;
  readonly stages: readonly StageName[];
  readonly holds_days: number;
  /** What it opens where it is seen after the feeding of the planting has ended. */
  readonly reopens?: { readonly feedings: number; readonly within_days: number };
  readonly reason: string;
  /** Said only where the rate changes. */
  readonly change_reason?: string;
  readonly source: string;
}

interface WaterEvidence {
  readonly crops?: readonly string[];
  readonly says: string;
  readonly source: string;
}

export interface Sighting {
  readonly seen: SignSeen;
  readonly sign: Sign;
  /** Whether it is known on this crop; where it is not, it changes nothing. */
  readonly isKnown: boolean;
}

/** The signs seen on one planting, in order of their days. */
export function sightingsOn(
  planting: Planting,
  crop: Crop | undefined,
  seen: readonly SignSeen[],
  signs: readonly Sign[],
): Sighting[] {
  return seen
    .filter((s) => s.planting === planting.id)
    .flatMap((s) => {
      const sign = signs.find((row) => row.key === s.sign);
      return sign === undefined
        ? []
        : [{ seen: s, sign, isKnown: crop === undefined || isKnownOn(sign, crop) }];
    })
    .sort((a, b) => byText(a.seen.on, b.seen.on));
}

export function isKnownOn(sign: Sign, crop: Crop): boolean {
  if (sign.crops === undefined && sign.groups === undefined) return true;
  return (sign.crops ?? []).includes(crop.key) || (sign.groups ?? []).includes(crop.group);
}

/**
 * What the signs multiply the rate by on a day: one step for each different sign that still holds,
 * and never so much that the rule's highest rate is passed.
 */
export function signLevel(
  sightings: readonly Sighting[],
  planting: Planting,
  spans: readonly StageSpan[],
  day: Day,
  rule: FeedRule,
): number {
  const stage = stageOn(spans, day)?.stage;
  const holding = new Map(
    signsHolding(sightings, day)
      .filter(({ sign }) => stage !== undefined && sign.stages.includes(stage))
      .map(({ sign }) => [sign.key, stepOf(sign)]),
  );
  const wished = [...holding.values()].reduce((product, factor) => product * factor, 1);
  return Math.min(wished, Math.max(1, rule.highestRateMlPerL / baseRate(planting, rule)));
}

/** Those that hold on a day, in order of their days. */
export function signsHolding(sightings: readonly Sighting[], day: Day): Sighting[] {
  return sightings.filter(
    ({ seen, sign, isKnown }) => isKnown && seen.on <= day && day <= heldTo(seen, sign),
  );
}

/** Seen outside the season, and no longer held to when that begins. */
export function isOver({ seen, sign }: Sighting, season: DaySpan): boolean {
  return heldTo(seen, sign) < season.from || seen.on > season.to;
}

function stepOf(sign: Sign): number {
  return sign.level_factor ** Math.abs(sign.level_steps);
}

function baseRate(planting: Planting, rule: FeedRule): number {
  return (planting.rateMlPerL ?? rule.rateMlPerL) * planting.level;
}

function heldTo(seen: SignSeen, sign: Sign): Day {
  return addDays(seen.on, sign.holds_days);
}

/** What a sighting does to the feed of its planting. */
export type SignEffect =
  | { readonly kind: "unknown-on-crop" | "not-fed" | "same-rate" }
  | { readonly kind: "at-highest"; readonly rateMlPerL: number }
  /** Until then the planting is in no stage that the sign speaks of, or is not fed in any. */
  | { readonly kind: "no-stage" | "no-feeding"; readonly until: Day }
  | {
      readonly kind: "rate";
      readonly fromMlPerL: number;
      readonly toMlPerL: number;
      readonly isHighest: boolean;
      readonly from: Day;
      readonly until: Day;
    };

/**
 * What one sighting changes, beside those before it.
 *
 * @param fed the spans in which the planting is fed, with their rules
 * @param fedDays the days on which it is fed
 */
export function signEffect(
  { seen, sign, isKnown }: Sighting,
  sightings: readonly Sighting[],
  planting: Planting,
  spans: readonly StageSpan[],
  fed: readonly FedSpan[],
  fedDays: readonly Day[],
): SignEffect {
  if (!isKnown) return { kind: "unknown-on-crop" };
  if (fed.length === 0) return { kind: "not-fed" };
  if (stepOf(sign) === 1) return { kind: "same-rate" };
  const until = heldTo(seen, sign);
  const inStage = spans.filter(({ stage }) => sign.stages.includes(stage));
  if (!inStage.some((span) => span.from <= until && seen.on <= span.to))
    return { kind: "no-stage", until };
  const first = firstChange(seen.on, until, inStage, fed);
  const isFed = fedDays.some(
    (day) => within(day, { from: seen.on, to: until }) && stageOn(inStage, day) !== undefined,
  );
  if (first === undefined || !isFed) return { kind: "no-feeding", until };
  const { day: from, rule } = first;
  const before = sightings.filter((s) => s.seen.on < seen.on && s.sign.key !== sign.key);
  const withIt = [...before, ...sightings.filter((s) => s.seen === seen)];
  const rateOn = (holding: readonly Sighting[]): number =>
    baseRate(planting, rule) * signLevel(holding, planting, spans, from, rule);
  const [fromMlPerL, toMlPerL] = [rateOn(before), rateOn(withIt)];
  if (Math.abs(toMlPerL - fromMlPerL) < 1e-9) return { kind: "at-highest", rateMlPerL: fromMlPerL };
  const isHighest = toMlPerL >= rule.highestRateMlPerL - 1e-9 && stepOf(sign) > 1;
  return { kind: "rate", fromMlPerL, toMlPerL, isHighest, from, until };
}

/**
 * The first day of the sign's time on which the planting is fed in a stage that the sign speaks of.
 *
 * @param spans those stages
 */
function firstChange(
  from: Day,
  to: Day,
  spans: readonly StageSpan[],
  fed: readonly FedSpan[],
): { readonly day: Day; readonly rule: FeedRule } | undefined {
  const found = spans
    .flatMap((span) =>
      fed.map((f) => ({
        day: later(from, later(span.from, f.from)),
        to: earlier(to, earlier(span.to, f.to)),
        rule: f.rule,
      })),
    )
    .filter((f) => f.day <= f.to)
    .sort((a, b) => byText(a.day, b.day));
  return found[0];
}
