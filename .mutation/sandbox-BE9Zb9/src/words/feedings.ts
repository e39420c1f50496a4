/** What is fed, when it is due, and on whose word. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, shortDate } from "../garden/index.js";
import type { Evidence } from "../rules/index.js";
import type { Feeding, OtherFeedMix, Round } from "../season/index.js";
import { plantingWords, stageWords } from "./plants.js";
import type { Say } from "./say.js";

/** What becomes of a round behind its day: nothing while it is to come. */
export function doneWords({ given, asPublished }: Pick<Round, "given" | "asPublished">): string {
  return given === undefined ? "" : asPublished ? ", taken as given" : ", given";
}

/** `toms (tomato), fruit set` */
export function feedingWords<T>(say: Say<T>, feeding: Feeding, marked: T): T {
  return say`${plantingWords(say, feeding, marked)}, ${stageWords(feeding.stage)}`;
}

/** `toms (tomato, fruit set)` */
export function feedingInRow({ name, cropName, stage }: Feeding): string {
  return `${name} (${cropName}, ${stageWords(stage)})`;
}

/** Whether a rule's feed helps, for its reasons. */
export const evidenceWords: Readonly<Record<Evidence, string>> = {
  published: "Published work found that it helps.",
  "common-practice": "Growers do it; no trial is known.",
  "cause-unclear":
    "Growers do it; what looks like this disorder may be another, which no feed mends.",
  disputed: "Trials disagree on whether it helps.",
  "advised-against": "Trials found that it does not help; it is here because you asked for it.",
};

const doubts: Readonly<Partial<Record<Evidence, string>>> = {
  "cause-unclear":
    "What looks like a lack of calcium may be something else, such as mould, so look first",
  disputed: "Trials disagree on whether this helps",
  "advised-against": "Trials found that this does not help; it is here because you asked for it",
};

/** Who is fed in spite of what trials found, each doubt a line. */
export function doubtLines(feedings: readonly Feeding[]): string[] {
  return Object.entries(doubts).flatMap(([evidence, doubt]) => {
    const names = feedings.filter((f) => f.evidence === evidence).map(({ name }) => name);
    return names.length === 0 ? [] : [`${doubt}: ${names.join(", ")}`];
  });
}

/** Another feed, on the page of a round. */
export function otherFeedInFull<T>(
  say: Say<T>,
  { openedSince }: OtherFeedMix,
  { feed, bed, cans }: { readonly feed: T; readonly bed: T; readonly cans: string },
  amounts: Amounts,
): T {
  return say`${feed}, ${bed}: ${cans}${since(", from a bottle", openedSince, amounts)}`;
}

/** The same in the row of a sheet. */
export function otherFeedOnSheet<T>(
  say: Say<T>,
  { openedSince }: OtherFeedMix,
  feed: T,
  amounts: Amounts,
): T {
  return say`${feed}, in a can of its own${since(";", openedSince, amounts)}`;
}

/** The same in the row of a terminal. */
export function otherFeedInRow(
  { feed, plantings, openedSince }: OtherFeedMix,
  amounts: Amounts,
): string {
  return `${feed}, no calcium in these cans (${plantings.join(", ")})${since("; bottle", openedSince, amounts)}`;
}

function since(what: string, day: Day | undefined, amounts: Amounts): string {
  return day === undefined ? "" : `${what} opened since ${shortDate(day, amounts)}`;
}

export function openedOn(since: Day, amounts: Amounts): string {
  return `from a bottle opened on ${shortDate(since, amounts)} or later`;
}
