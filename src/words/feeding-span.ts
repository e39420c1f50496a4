/** From when until when a planting is fed, why it ends there, and what changes it. */
import type { Day } from "../dates.js";
import { counted } from "../garden/index.js";
import type { StageName } from "../crops/index.js";
import type { FeedingSpan, PlannedPlanting } from "../season/index.js";
import { grouped } from "../values.js";
import { shortDate } from "./days.js";
import { stageWords } from "./plants.js";

/** Why the last feeding of a planting is the last. */
export type FeedingEnd =
  | { readonly kind: "feedings"; readonly feedings: number; readonly missed: number }
  | { readonly kind: "sign"; readonly feedings: number; readonly name: string; readonly on: Day }
  | { readonly kind: "stage"; readonly stage: StageName; readonly on: Day }
  | {
      readonly kind: "before-harvest" | "before-last-pick" | "before-removal";
      readonly on: Day;
      readonly days: number;
    }
  | { readonly kind: OfPlanting; readonly on: Day };

type OfPlanting = "picked-until" | "harvest" | "frost" | "removed" | "season";

/** A sentence. */
export function whyItEnds(end: FeedingEnd): string {
  switch (end.kind) {
    case "feedings": {
      const { feedings, missed } = end;
      const gone = missed === 0 ? "" : `, and ${missed} of them passed without`;
      return `The rule gives ${counted(feedings, "feeding")}${gone}.`;
    }
    case "sign":
      return `${counted(end.feedings, "more feeding")} came with ${end.name} seen on ${shortDate(end.on)}.`;
    case "stage":
      return `The rule feeds until ${stageWords(end.stage)} ends, on ${shortDate(end.on)}.`;
    case "before-harvest":
      return `Harvest begins on ${shortDate(end.on)}, and nothing is given in the ${counted(end.days, "day")} before it.`;
    case "before-last-pick":
      return `The last pick is on ${shortDate(end.on)}, and a feeding in the ${counted(end.days, "day")} before it helps no fruit that is still picked.`;
    case "before-removal":
      return `The last pick before it is removed is on ${shortDate(end.on)}, and a feeding in the ${counted(end.days, "day")} before it helps no fruit that is still picked.`;
    case "picked-until":
      return `The last pick is on ${shortDate(end.on)}.`;
    case "harvest":
      return `Its harvest ends on ${shortDate(end.on)}, by the usual lengths of its stages.`;
    case "frost":
      return `The first frost, which ends it, is expected about ${shortDate(end.on)}.`;
    case "removed":
      return `It is removed on ${shortDate(end.on)}.`;
    case "season":
      return `The season ends on ${shortDate(end.on)}.`;
  }
}

/** The key of the garden file that changes it, as it is written. */
export const keyThatChanges: Readonly<Record<FeedingEnd["kind"], string>> = {
  feedings: "through: harvest",
  stage: "through: harvest",
  sign: "signs",
  "before-harvest": "days_to_harvest",
  "before-last-pick": "picked_until",
  "before-removal": "removed",
  "picked-until": "picked_until",
  harvest: "picked_until",
  frost: "frost",
  removed: "removed",
  season: "season",
};

/** `Fed 22 Jun to 1 Aug.` */
export function fedFromTo({ first, last }: FeedingSpan): string {
  return first === last
    ? `Fed on ${shortDate(first)}.`
    : `Fed ${shortDate(first)} to ${shortDate(last)}.`;
}

/** The two sentences behind it. */
export function whyFedSo({ why, key }: FeedingSpan): string {
  return `${why} \`${key}\` changes that.`;
}

/** What is said of fed plantings, each once, with all of which it is true. */
export function fedSpans(
  plantings: readonly PlannedPlanting[],
): { readonly plantings: readonly PlannedPlanting[]; readonly text: string }[] {
  const told = plantings.flatMap((planting) =>
    planting.feeding === undefined
      ? []
      : [{ planting, text: `${fedFromTo(planting.feeding)} ${whyFedSo(planting.feeding)}` }],
  );
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
