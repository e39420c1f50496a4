/** The log entries that a ticked round becomes. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Garden, LogEntry, NewLogEntry } from "../garden/index.js";
import { type SaidOfRounds, saidOfRounds } from "./said-of-rounds.js";
import type { Told } from "./standing.js";
import { feedAsBed, feedOf, type Ticked, type TickedEntry } from "./tick.js";

export interface EntriesOfTick {
  /** What was given in the beds that it names; empty where the round was missed. */
  readonly wanted: readonly {
    readonly bed: string;
    readonly entry: NewLogEntry;
  }[];
  /** What the log doesn't speak of yet. */
  readonly fresh: readonly NewLogEntry[];
}

type Round = Ticked & { readonly kind: "round" };

/** @param on the day it was given; what was missed stands under the day it was told for */
export function entriesOfTick(
  garden: Pick<Garden, "beds" | "log">,
  round: Round,
  on: Day,
  told: Told,
): EntriesOfTick {
  const said = saidOfRounds(garden, told);
  if (round.missed) return { wanted: [], fresh: missedEntries(garden, round, told, said) };
  const { day, beds, entries } = round;
  const bedOf = bedsOfPlantings(garden);
  const wanted = entries
    .map((entry) => ({ entry: dated(entry, on, day), bed: placeOf(entry, bedOf) }))
    .filter(({ bed }) => beds.includes(bed));
  return {
    wanted,
    fresh: wanted
      .filter(({ entry, bed }) => !said(day, bed).some((one) => isOfTheSame(one, entry)))
      .map(({ entry }) => entry),
  };
}

/** A round given on another day than it was told for says so: a calendar that is kept tells of that day. */
function dated(entry: TickedEntry, on: Day, day: Day): NewLogEntry {
  if (entry.missed) return { on: day, ...entry };
  return on === day ? { on, ...entry } : { on, round: day, ...entry };
}

/** One for the whole round where it is all of it, else one for each bed, or for who is left in it. */
function missedEntries(
  { beds: all }: Pick<Garden, "beds">,
  { day: on, beds }: Round,
  { rounds }: Told,
  said: SaidOfRounds,
): NewLogEntry[] {
  const mixes = rounds.find(({ day }) => day === on)?.mixes ?? [];
  const feeds = beds.flatMap((bed) => {
    const feed = feedOf(bed);
    return feed === undefined ? [] : [{ on, missed: true as const, feed }];
  });
  const own = beds.filter((bed) => feedOf(bed) === undefined);
  const isWhole =
    mixes.length > 0 &&
    mixes.every(({ bed }) => own.includes(bed)) &&
    all.every(({ id }) => said(on, id).length === 0);
  if (isWhole) return [{ on, missed: true }, ...feeds];
  const missed = own.flatMap((bed): NewLogEntry[] => {
    const entries = said(on, bed);
    if (entries.length === 0) return [{ on, bed, missed: true }];
    const fed = mixes.filter((mix) => mix.bed === bed).flatMap((mix) => mix.fed);
    return [...new Set(fed.map(({ planting }) => planting))]
      .map((planting): NewLogEntry => ({ on, planting, missed: true }))
      .filter((entry) => !entries.some((one) => isOfTheSame(one, entry)));
  });
  return [...missed, ...feeds];
}

function isOfTheSame(one: LogEntry, { planting, route }: NewLogEntry): boolean {
  return (
    (one.planting ?? planting) === (planting ?? one.planting) &&
    (one.route ?? route) === (route ?? one.route)
  );
}

function bedsOfPlantings({ beds }: Pick<Garden, "beds">): ReadonlyMap<string, string> {
  return new Map(
    beds.flatMap(({ id, plantings }) => plantings.map((planting) => [planting.id, id] as const)),
  );
}

function placeOf(
  { feed, bed, planting = "" }: TickedEntry,
  bedOf: ReadonlyMap<string, string>,
): string {
  return feed === undefined ? (bed ?? bedOf.get(planting) ?? "") : feedAsBed(feed);
}
