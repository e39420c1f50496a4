/** On which days a batch can be ready, and when it has to be begun for that. */
// @ts-nocheck

import { type Day, dayFromNumber, dayNumber, type DaySpan } from "../../dates.js";
import type { WayOfMaking } from "../making-rules.js";

/** One way to time a batch, in days since 1970-01-01. */
export interface BatchSlot {
  readonly start: number;
  readonly acid: number;
  readonly ready: number;
}

/** The first day from then on that the grower is there. */
export function firstDayThere(away: readonly DaySpan[]): (from: Day) => Day {
  const isThere = presence(away);
  return (from) => {
    let n = dayNumber(from);
    while (!isThere(n)) n++;
    return dayFromNumber(n);
  };
}

function presence(away: readonly DaySpan[]): (n: number) => boolean {
  const spans = away.map((span) => [dayNumber(span.from), dayNumber(span.to)] as const);
  return (n) => !spans.some(([from, to]) => from <= n && n <= to);
}

/**
 * For every day from today to `last` on which a batch can be strained, its latest timing. Sorted by
 * ready day; start days never fall.
 */
export function batchSlots(
  span: { readonly today: Day; readonly last: Day },
  away: readonly DaySpan[],
  making: Pick<WayOfMaking, "dryDays" | "reactionDays" | "longestStandDays">,
): BatchSlot[] {
  const isThere = presence(away);
  const first = dayNumber(span.today);
  const latestThere: number[] = [];
  const latestThereBy = (n: number): number => latestThere[n - first] ?? -Infinity;
  const slots: BatchSlot[] = [];
  for (let ready = first; ready <= dayNumber(span.last); ready++) {
    latestThere.push(isThere(ready) ? ready : latestThereBy(ready - 1));
    if (!isThere(ready)) continue;
    const acid = latestThereBy(ready - making.reactionDays);
    const start = latestThereBy(acid - making.dryDays);
    if (start >= first && ready - acid <= making.longestStandDays)
      slots.push({ start, acid, ready });
  }
  return slots;
}

/** The first index for which a test that stays true once it is true holds; `length` when none. */
export function firstIndex(length: number, test: (index: number) => boolean): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (test(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
