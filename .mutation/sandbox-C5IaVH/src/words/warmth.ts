/** How the first day of a stage came about, and what the other way says. */
// @ts-nocheck

import { type Amounts, shortDate } from "../garden/index.js";
import type { StageSpan, StageWarmth } from "../stages/index.js";
import { degreesText } from "./figures.js";

/** Undefined where warmth says nothing of the stage. */
export function warmthWords(
  { from, warmth }: Pick<StageSpan, "from" | "warmth">,
  amounts: Amounts,
): string | undefined {
  if (warmth === undefined) return undefined;
  const { day, earliest, calendar, isFollowed, isHeldBack } = warmth;
  if (day === undefined) {
    const stands =
      from === calendar
        ? "the calendar's date stands"
        : `by the calendar ${shortDate(calendar, amounts)}, moved as far as the stage before it`;
    return earliest === undefined
      ? `not reached by warmth here: ${stands}`
      : `by warmth ${shortDate(earliest, amounts)} at the earliest, and perhaps not at all: ${stands}`;
  }
  const { after, indoors } = warmth;
  const raised = indoors
    ? `, on top of ${degreeDaysText(indoors.degreeDays, amounts)} from ${indoors.days} days indoors`
    : "";
  const counted = `${heatText(warmth, amounts)} after ${after}${raised}, somewhere ${bandWords(warmth, amounts)}`;
  if (!isFollowed) return `by warmth ${shortDate(day, amounts)}, ${counted}`;
  return isHeldBack
    ? `${counted}; that is ${shortDate(day, amounts)}, but warmth moves a date by 28 days at most, and by the calendar it is ${shortDate(calendar, amounts)}`
    : `${counted}; by the calendar ${shortDate(calendar, amounts)}`;
}

/** `281 degree days above 7 degrees C` */
function heatText({ degreeDays, baseC }: StageWarmth, amounts: Amounts): string {
  return `${degreeDaysText(degreeDays, amounts)} degree days above ${degreesText(baseC, amounts)}`;
}

function degreeDaysText(degreeDaysC: number, amounts: Amounts): string {
  return String(Math.round(amounts === "us" ? degreeDaysC * 1.8 : degreeDaysC));
}

function bandWords({ earliest, latest }: StageWarmth, amounts: Amounts): string {
  const to = latest === undefined ? "the season's end or later" : shortDate(latest, amounts);
  return earliest === undefined ? `up to ${to}` : `from ${shortDate(earliest, amounts)} to ${to}`;
}

/** Who published the sums that the stages follow, each once. */
export function warmthSources(stages: readonly Pick<StageSpan, "warmth">[]): string[] {
  const followed = stages.flatMap(({ warmth }) => (warmth?.isFollowed ? warmth.sources : []));
  return [...new Set(followed)];
}
