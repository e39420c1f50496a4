/** What the log holds already of entries that are to be written. */
// @ts-nocheck

import type { Garden, LogEntry, NewLogEntry } from "../garden/index.js";

/**
 * What the log says already, on that day or of the same published round, of any planting that an
 * entry is about; of an entry for another feed, only what it says of that feed.
 *
 * @param fed plantings that the entry of a bed or of a whole round stands for; all where none is
 */
export function heldAlready(
  entry: NewLogEntry,
  { log, beds }: Pick<Garden, "log" | "beds">,
  fed: readonly string[],
): readonly LogEntry[] {
  const there = beds
    .flatMap((bed) => bed.plantings)
    .filter(({ id, bed }) => (entry.planting ?? id) === id && (entry.bed ?? bed) === bed);
  const due = there.filter(({ id }) => fed.includes(id));
  const meant = due.length > 0 ? due : there;
  return log.filter(
    (one) =>
      one.feed === entry.feed &&
      (one.on === entry.on || (one.round ?? one.on) === (entry.round ?? entry.on)) &&
      (one.route ?? entry.route) === (entry.route ?? one.route) &&
      meant.some(({ id, bed }) => (one.planting ?? id) === id && (one.bed ?? bed) === bed),
  );
}
