/** From when until when a planting is fed, why it ends there, and what changes it. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, counted, shortDate } from "../garden/index.js";
import type { StageName } from "../crops/index.js";
import type { FeedingSpan, PlannedPlanting } from "../season/index.js";
import { grouped } from "../values.js";
import { stageWords } from "./plants.js";

/** Why the last feeding of a planting is the last. */
export type FeedingEnd =
  | { readonly kind: "feedings"; readonly feedings: number; readonly missed: number }
  | { readonly kind: "sign"; readonly feedings: number; readonly name: string; readonly on: Day }
  | { readonly kind: "stage"; readonly stage: StageName; readonly on: Day }
  | { readonly kind: "before-harvest"; readonly on: Day; readonly days: number }
  | { readonly kind: "before-last-pick"; readonly pick: LastPick; readonly days: number }
  | { readonly kind: "no-more"; readonly key: "feed" | "feed_when" }
  | LastPick;

interface LastPick {
  readonly kind: "picked-until" | "harvest" | "frost" | "removed" | "season";
  readonly on: Day;
}

/** Why the first feeding of a planting is not earlier. */
export type FeedingBegin =
  | { readonly kind: "stage"; readonly stage: StageName; readonly on: Day; readonly how: string }
  | { readonly kind: "planted-out"; readonly on: Day }
  | { readonly kind: "season" };

/** A sentence. */
export function whyItBegins(begin: FeedingBegin, amounts: Amounts): string {
  switch (begin.kind) {
    case "stage":
      return `It begins with ${stageWords(begin.stage)}, on ${shortDate(begin.on, amounts)}, ${begin.how}.`;
    case "planted-out":
      return `It begins with planting out, on ${shortDate(begin.on, amounts)}.`;
    case "season":
      return "It begins with the season.";
  }
}

/** A sentence. */
export function whyItEnds(end: FeedingEnd, amounts: Amounts): string {
  switch (end.kind) {
    case "feedings": {
      const { feedings, missed } = end;
      const gone = missed === 0 ? "" : `, and ${missed} of them passed without`;
      return `The rule gives ${counted(feedings, "feeding")}${gone}.`;
    }
    case "sign":
      return `${counted(end.feedings, "more feeding")} came with ${end.name} seen on ${shortDate(end.on, amounts)}.`;
    case "stage":
      return `The rule feeds until ${stageWords(end.stage)} ends, on ${shortDate(end.on, amounts)}, and no further feeding falls due by then.`;
    case "before-harvest":
      return `Harvest begins on ${shortDate(end.on, amounts)}, and nothing is given in the ${counted(end.days, "day")} before it.`;
    case "before-last-pick":
      return `${lastPick(end.pick, amounts)}, and a feeding in the ${counted(end.days, "day")} before it helps no fruit that is still picked.`;
    case "no-more":
      return "The garden file asks for no more since.";
    case "season":
      return `The season ends on ${shortDate(end.on, amounts)}.`;
    default:
      return `${lastPick(end, amounts)}.`;
  }
}

function lastPick({ kind, on }: LastPick, amounts: Amounts): string {
  switch (kind) {
    case "season":
      return `The season ends on ${shortDate(on, amounts)}, taken as the last pick`;
    case "picked-until":
      return `The last pick is on ${shortDate(on, amounts)}`;
    case "harvest":
      return `Its harvest ends on ${shortDate(on, amounts)}, by the usual lengths of its stages`;
    case "frost":
      return `The first frost, which ends it, is expected about ${shortDate(on, amounts)}`;
    case "removed":
      return `It is removed on ${shortDate(on, amounts)}`;
  }
}

/** The key of the garden file that changes it, as it is written. */
export function keyThatChanges(end: FeedingEnd): string {
  if (end.kind === "no-more") return end.key;
  if (end.kind !== "before-last-pick") return keys[end.kind];
  // Within the season the grower may stop picking sooner.
  return end.pick.kind === "season" ? "picked_until" : keys[end.pick.kind];
}

const keys: Readonly<Record<Exclude<FeedingEnd["kind"], "before-last-pick" | "no-more">, string>> =
  {
    feedings: "through: harvest",
    stage: "through: harvest",
    sign: "signs",
    "before-harvest": "days_to_harvest",
    "picked-until": "picked_until",
    harvest: "days_to_harvest",
    frost: "frost",
    removed: "removed",
    season: "season",
  };

/** `Fed 22 Jun to 1 Aug.` */
export function fedFromTo({ first, last }: FeedingSpan, amounts: Amounts): string {
  return first === last
    ? `Fed on ${shortDate(first, amounts)}.`
    : `Fed ${shortDate(first, amounts)} to ${shortDate(last, amounts)}.`;
}

/** The sentences behind it. */
export function whyFedSo({ begins, why, key }: FeedingSpan): string {
  return `${begins} ${why} \`${key}\` changes that.`;
}

function fedText({ feeding }: PlannedPlanting, amounts: Amounts): string {
  return feeding === undefined
    ? "No feeding day is left for it; the warnings say why."
    : `${fedFromTo(feeding, amounts)} ${whyFedSo(feeding)}`;
}

/** What is said of fed plantings, each once, with all of which it is true. */
export function fedSpans(
  plantings: readonly PlannedPlanting[],
  amounts: Amounts,
): { readonly plantings: readonly PlannedPlanting[]; readonly text: string }[] {
  const told = plantings
    .filter(({ fed }) => fed)
    .map((planting) => ({ planting, text: fedText(planting, amounts) }));
  return [...grouped(told, ({ text }) => text)].map(([text, those]) => ({
    plantings: those.map(({ planting }) => planting),
    text,
  }));
}

/** `2 feedings more than the calendar tells`, of those to come. */
export function moreOrFewer(was: number, now: number): string {
  const more = counted(Math.abs(now - was), "feeding");
  return `${more} ${now > was ? "more" : "fewer"} to come than the calendar tells`;
}
