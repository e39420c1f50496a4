/** What the grower saw on the plants, and what it does to the rate. */
import { stageOn, type Crop, type StageName, type StageSpan } from "../crops/index.js";
import { addDays, type Day } from "../dates.js";
import { decimal, type Planting, type SignSeen } from "../garden/index.js";
import type { PlanNote } from "../season-plan.js";
import type { FeedRule } from "./rule.js";

/** A row of `signs.yaml`. */
export interface Sign {
  readonly key: string;
  readonly name: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly first_advice: readonly string[];
  /** -1, 0 or 1. */
  readonly level_steps: number;
  readonly level_factor: number;
  readonly stages: readonly StageName[];
  readonly holds_days: number;
  readonly reason: string;
  readonly source: string;
}

interface Sighting {
  readonly seen: SignSeen;
  readonly sign: Sign;
}

/** The signs seen on one planting, in order of their days. */
export function sightingsOn(
  planting: Planting,
  seen: readonly SignSeen[],
  signs: readonly Sign[],
): Sighting[] {
  return seen
    .filter((s) => s.planting === planting.id)
    .flatMap((s) => {
      const sign = signs.find((row) => row.key === s.sign);
      return sign === undefined ? [] : [{ seen: s, sign }];
    })
    .sort((a, b) => (a.seen.on < b.seen.on ? -1 : 1));
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
    sightings
      .filter(({ seen, sign }) => seen.on <= day && day <= heldTo(seen, sign))
      .filter(({ sign }) => stage !== undefined && sign.stages.includes(stage))
      .map(({ sign }) => [sign.key, sign.level_factor ** Math.abs(sign.level_steps)]),
  );
  const wished = [...holding.values()].reduce((product, factor) => product * factor, 1);
  const base = (planting.rateMlPerL ?? rule.rateMlPerL) * planting.level;
  return Math.min(wished, Math.max(1, rule.highestRateMlPerL / base));
}

function heldTo(seen: SignSeen, sign: Sign): Day {
  return addDays(seen.on, sign.holds_days);
}

/** For each sighting: what it changed, for how long, why, and what to do first. */
export function signNotes(
  sightings: readonly Sighting[],
  planting: Planting,
  crop: Crop,
  spans: readonly StageSpan[],
  rules: readonly FeedRule[],
): PlanNote[] {
  return sightings.map(({ seen, sign }): PlanNote => {
    const what = `${planting.id} (${planting.cropWord}): ${sign.name} seen on ${seen.on}`;
    return {
      code: "sign",
      planting: planting.id,
      day: seen.on,
      message: isKnownOn(sign, crop)
        ? `${what}; ${changeText(seen, sign, sightings, planting, spans, rules)} ${sign.reason}`
        : `${what}, though it is not known on ${crop.name}: look again; the feed stays as it is`,
      advice: sign.first_advice,
    };
  });
}

function isKnownOn(sign: Sign, crop: Crop): boolean {
  if (sign.crops === undefined && sign.groups === undefined) return true;
  return (sign.crops ?? []).includes(crop.key) || (sign.groups ?? []).includes(crop.group);
}

function changeText(
  seen: SignSeen,
  sign: Sign,
  sightings: readonly Sighting[],
  planting: Planting,
  spans: readonly StageSpan[],
  rules: readonly FeedRule[],
): string {
  const rule = rules[0];
  if (rule === undefined) return "it is not fed, so no rate changes.";
  const level = signLevel(sightings, planting, spans, seen.on, rule);
  const base = (planting.rateMlPerL ?? rule.rateMlPerL) * planting.level;
  const stages = sign.stages.map((stage) => stage.replaceAll("-", " ")).join(", ");
  if (sign.level_steps === 0) return "the rate stays as it is.";
  const wished = base * sign.level_factor;
  const capped = wished > rule.highestRateMlPerL ? ", the rule's highest" : "";
  const isNow = level !== 1;
  return `the rate ${sign.level_factor > 1 ? "rises" : "falls"} from ${decimal(base, 2)} to ${decimal(Math.min(wished, rule.highestRateMlPerL), 2)} mL per L${capped} until ${heldTo(seen, sign)}${isNow ? "" : `, in the stages ${stages}`}.`;
}
