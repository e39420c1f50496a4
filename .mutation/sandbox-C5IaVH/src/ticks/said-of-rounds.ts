/** Which round, and which bed in it, each entry of the log speaks of. */
// @ts-nocheck

import { type Day, daysBetween } from "../dates.js";
import type { Garden, LogEntry } from "../garden/index.js";
import type { Published } from "../published/index.js";
import { grouped } from "../values.js";
import { feedAsBed } from "./tick.js";

/** An entry that names no round may be so much early or late for one. Our choice. */
const nearDays = 7;

/** Entries that speak of a bed in the round of a day, in the order of the log. */
export type SaidOfRounds = (day: Day, bed: string) => readonly LogEntry[];

/**
 * An entry speaks of the round it names, else of the nearest of its bed that was told; where none is
 * near, of its own day.
 */
export function saidOfRounds(
  { beds, log }: Pick<Garden, "beds" | "log">,
  { rounds, feeds }: Pick<Published, "rounds" | "feeds">,
): SaidOfRounds {
  const bedOf = new Map(
    beds.flatMap(({ id, plantings }) => plantings.map((planting) => [planting.id, id] as const)),
  );
  const told = [
    ...rounds.flatMap(({ day, mixes }) => mixes.map(({ bed }) => ({ bed, day }))),
    ...feeds.map(({ day, feed }) => ({ bed: feedAsBed(feed), day })),
  ];
  const daysOf = grouped(told, ({ bed }) => bed);
  const said = grouped(
    log.flatMap((entry) =>
      bedsOf(entry, bedOf, beds).map((bed) => {
        const days = (daysOf.get(bed) ?? []).map(({ day }) => day);
        return { entry, key: keyOf(entry.round ?? nearest(days, entry.on) ?? entry.on, bed) };
      }),
    ),
    ({ key }) => key,
  );
  return (day, bed) => (said.get(keyOf(day, bed)) ?? []).map(({ entry }) => entry);
}

function keyOf(day: Day, bed: string): string {
  return `${day} ${bed}`;
}

function bedsOf(
  { feed, planting, bed }: LogEntry,
  bedOf: ReadonlyMap<string, string>,
  beds: Garden["beds"],
): readonly string[] {
  if (feed !== undefined) return [feedAsBed(feed)];
  if (planting !== undefined) return [bedOf.get(planting) ?? planting];
  return bed === undefined ? beds.map(({ id }) => id) : [bed];
}

/** Of two as near, the earlier. */
function nearest(days: readonly Day[], on: Day): Day | undefined {
  const away = (day: Day): number => Math.abs(daysBetween(day, on));
  return days
    .filter((day) => away(day) <= nearDays)
    .sort((a, b) => away(a) - away(b) || daysBetween(b, a))[0];
}
