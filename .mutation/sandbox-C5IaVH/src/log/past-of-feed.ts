/** Days on which another feed was given: as published unless told otherwise. */
// @ts-nocheck

import { type Day, within } from "../dates.js";
import type { Garden, LogEntry, OtherFeed } from "../garden/index.js";
import type { Published } from "../published/index.js";
import { byText } from "../values.js";
import { claimedDays } from "./claims.js";

export interface PastFeedDay {
  readonly day: Day;
  /** Absent where it was published and the log is silent. */
  readonly given?: LogEntry;
  /** Published before today. */
  readonly asPublished?: true;
}

/** Weekly ones come after as many days. */
const usualGapDays = 7;

/** By day. One published for today that nobody wrote down is among them too, as still to be given. */
export function pastOfFeed(
  garden: Garden,
  { name, everyDays = usualGapDays }: OtherFeed,
  published: Published | undefined,
  today: Day,
): PastFeedDay[] {
  const entries = garden.log.filter((entry) => entry.feed === name && entry.on <= today);
  const days = (published?.feeds ?? [])
    .filter(({ feed, day, first }) => feed === name && first <= day)
    .map(({ day }) => day);
  const claimed = new Set(claimedDays(entries, days, everyDays / 2).values());
  const isAway = (day: Day): boolean => garden.feeding.away.some((span) => within(day, span));
  const silent = days.filter((day) => day <= today && !claimed.has(day) && !isAway(day));
  const counted = silent.filter((day) => day === today || garden.unlogged === "given");
  return [
    ...entries
      .filter(({ missed }) => missed === undefined)
      .map((entry): PastFeedDay => ({ day: entry.on, given: entry })),
    ...counted.map((day) => (day < today ? { day, asPublished: true as const } : { day })),
  ].sort((a, b) => byText(a.day, b.day));
}
