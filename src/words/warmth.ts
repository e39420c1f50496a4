/** How the first day of a stage came about, and what the other way says. */
import type { StageSpan } from "../stages/index.js";
import { fullDate, shortDate } from "./days.js";

/** Undefined where warmth says nothing of the stage. */
export function warmthWords({ warmth }: Pick<StageSpan, "warmth">): string | undefined {
  if (warmth === undefined) return undefined;
  const { day, earliest, latest, calendar, isFollowed, isHeldBack } = warmth;
  if (day === undefined)
    return earliest === undefined
      ? "not reached by warmth here: the calendar's date stands"
      : `by warmth ${shortDate(earliest)} at the earliest, and perhaps not at all: the calendar's date stands`;
  const band = `${earliest === undefined ? "" : `${shortDate(earliest)} `}to ${latest === undefined ? "after the season" : shortDate(latest)}`;
  if (!isFollowed) return `by warmth ${shortDate(day)}, or ${band}`;
  const held = isHeldBack
    ? `; warmth says ${fullDate(day)}, and moves a date by 28 days at most`
    : "";
  return `somewhere from ${band}; by the calendar ${shortDate(calendar)}${held}`;
}
