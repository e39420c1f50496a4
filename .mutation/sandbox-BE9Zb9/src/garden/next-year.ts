/** What the file of the next year says, as a value: last year's with its dates moved on. */
// @ts-nocheck

import type {
  Batch,
  Bed,
  BedCover,
  GardenFile,
  OtherFeed,
  Planting,
} from "../compiled/garden-file.js";
import { type Day, day, parseDay, yearOf } from "../dates.js";

/** What goes over into the next year. */
export interface CarriedOver {
  /** Ids of perennials that stay. */
  readonly perennials: ReadonlySet<string>;
  /** Ids of other plantings that still grow when the next season begins: they stay as written. */
  readonly growing: ReadonlySet<string>;
  /** What batches hold on `today`, whole mL: those with 0 are dropped, those not named stay as written. */
  readonly leftMl: ReadonlyMap<string, number>;
  readonly today: Day;
}

/** The same day a year later; 28 February for the 29th. */
export function yearLater(on: Day): Day {
  const moved = `${yearOf(on) + 1}${on.slice(4)}`;
  return parseDay(moved) ?? day(`${moved.slice(0, 8)}28`);
}

export function isKept({ id }: Pick<Planting, "id">, carried: CarriedOver): boolean {
  return carried.perennials.has(id) || carried.growing.has(id);
}

export function isEmptied({ id }: Pick<Batch, "id">, { leftMl }: CarriedOver): boolean {
  return leftMl.get(id) === 0;
}

/** Whether a feed names a planting that is not kept, and so could not stand in the file. */
export function namesGone(feed: OtherFeed, beds: readonly Bed[], carried: CarriedOver): boolean {
  const ids = new Set(beds.map(({ id }) => id));
  const gone = beds
    .flatMap(({ plantings }) => plantings)
    .filter((planting) => !isKept(planting, carried) && !ids.has(planting.id));
  return gone.some(({ id }) => feed.for?.includes(id));
}

/** Time away is the only thing that `feeding` says. */
export function saysAwayAlone(feeding: NonNullable<GardenFile["feeding"]>): boolean {
  return Object.keys(feeding).join() === "away";
}

/** Keys stand in the order of last year's file; those of a batch that it lacks come last. */
export function nextYearOf(file: GardenFile, carried: CarriedOver): unknown {
  return changed(file, {
    season: (season) => changed(season, { from: later, to: later }),
    feeding: (feeding) =>
      saysAwayAlone(feeding) ? undefined : changed(feeding, { away: () => undefined }),
    stock: (stock) =>
      changed(stock, {
        batches: (batches) =>
          batches
            .filter((batch) => !isEmptied(batch, carried))
            .map((batch) => ({ ...batch, ...bottleKeys(batch, carried) })),
      }),
    beds: (beds) =>
      beds.map((bed) =>
        changed(bed, {
          cover: (cover) =>
            typeof cover === "string" || staysOn(cover, file.season)
              ? cover
              : changed(cover, { from: later, to: later }),
          plantings: (plantings) =>
            plantings.filter((p) => isKept(p, carried)).map((p) => nextPlanting(p, carried)),
        }),
      ),
    feeds: (feeds) =>
      feeds
        .filter((feed) => !namesGone(feed, file.beds, carried))
        .map((feed) => changed(feed, { from: later, to: later })),
    log: () => [],
    signs: () => [],
  });
}

/** A cover without a last day, or still on when the next season begins, is as it was put there. */
export function staysOn({ to }: BedCover, season: GardenFile["season"]): boolean {
  return to === undefined || to >= later(season.from);
}

/** What a batch is to say of its contents. */
export function bottleKeys(
  { id }: Pick<Batch, "id">,
  { leftMl, today }: CarriedOver,
): { left?: string; left_on?: Day } {
  const ml = leftMl.get(id);
  return ml === undefined ? {} : { left: `${ml} mL`, left_on: today };
}

function nextPlanting(planting: Planting, { perennials }: CarriedOver): unknown {
  if (!perennials.has(planting.id)) return planting;
  return changed(planting, { bloom: later, picked_until: later, seen: () => undefined });
}

/** A date of the file, a year later. */
export function later(date: string): Day {
  return yearLater(day(date));
}

type Changes<T> = { readonly [Key in keyof T]?: (value: NonNullable<T[Key]>) => unknown };

/** The same keys with some of their values changed, or taken away where that gives undefined. */
function changed<T extends object>(value: T, changes: Changes<T>): unknown {
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, old]) => {
      const change = changes[key as keyof T];
      const now: unknown = change === undefined ? old : change(old as NonNullable<T[keyof T]>);
      return now === undefined ? [] : [[key, now]];
    }),
  );
}
