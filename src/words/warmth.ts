/** How the first day of a stage came about, and what the other way says. */
import { type Amounts, decimal } from "../garden/index.js";
import type { StageSpan, StageWarmth } from "../stages/index.js";
import { shortDate } from "./days.js";

/** Undefined where warmth says nothing of the stage. */
export function warmthWords(
  { warmth }: Pick<StageSpan, "warmth">,
  amounts: Amounts,
): string | undefined {
  if (warmth === undefined) return undefined;
  const { day, earliest, calendar, isFollowed, isHeldBack } = warmth;
  if (day === undefined)
    return earliest === undefined
      ? "not reached by warmth here: the calendar's date stands"
      : `by warmth ${shortDate(earliest)} at the earliest, and perhaps not at all: the calendar's date stands`;
  const counted = `${heatText(warmth, amounts)} after ${warmth.after}, somewhere ${bandWords(warmth)}`;
  if (!isFollowed) return `by warmth ${shortDate(day)}, ${counted}`;
  return isHeldBack
    ? `${counted}; that is ${shortDate(day)}, but warmth moves a date by 28 days at most, and by the calendar it is ${shortDate(calendar)}`
    : `${counted}; by the calendar ${shortDate(calendar)}`;
}

/** `281 degree days above 7 degrees C` */
function heatText({ degreeDays, baseC }: StageWarmth, amounts: Amounts): string {
  return amounts === "us"
    ? `${Math.round(degreeDays * 1.8)} degree days above ${decimal(baseC * 1.8 + 32, 0)} degrees F`
    : `${degreeDays} degree days above ${decimal(baseC, 1)} degrees C`;
}

function bandWords({ earliest, latest }: StageWarmth): string {
  const to = latest === undefined ? "the season's end or later" : shortDate(latest);
  return earliest === undefined ? `up to ${to}` : `from ${shortDate(earliest)} to ${to}`;
}

/** Who published the sums that the stages follow, each once. */
export function warmthSources(stages: readonly Pick<StageSpan, "warmth">[]): string[] {
  const followed = stages.flatMap(({ warmth }) => (warmth?.isFollowed ? warmth.sources : []));
  return [...new Set(followed)];
}
