/**
 * Which batches to make: exact, by dynamic programming.
 *
 * Line the demands up by day as one length of millilitres. All batches keep equally long, so the
 * batch that expires first can serve the demands that come first, and a plan is a set of cuts along
 * that line. Three facts keep the search small without losing an optimum:
 * - of the slots that leave a batch as many days before its first demand, up to those wished for, the
 *   latest starts latest and reaches furthest: so a cut has few slots worth trying;
 * - a batch that is not emptied may as well serve on, until it is empty or out of date;
 * - of two plans that end at the same cut with as many batches, the one that made less is as good
 *   in all that follows, shells included.
 * So a cut, a number of batches and the least volume made are all there is to remember.
 */
// @ts-nocheck

import { type BatchSlot, firstIndex } from "./batches-days.js";

/** mL wanted on a day (days since 1970-01-01), in whole hundredths. */
export interface Demand {
  readonly day: number;
  readonly ml: number;
}

export interface BatchLimits {
  readonly shelfLifeDays: number;
  readonly largestMl: number;
  readonly smallestMl: number;
  readonly stepMl: number;
  /** Days that a batch is to be bottled before its first demand. */
  readonly readyBeforeDays: number;
  /** What all batches started up to and on that day may hold together; never falls. Absent when nothing limits it. */
  readonly volumeBy?: (start: number) => number;
}

export interface BatchChoice {
  readonly slot: BatchSlot;
  readonly volumeMl: number;
}

/** Places on the line are counted in hundredths of a mL, so that cuts are whole numbers. */
const placesPerMl = 100;

/** A plan up to a cut on the line. */
interface Reached {
  readonly at: number;
  readonly madeMl: number;
  readonly count: number;
  /** Days of all batches together that were wished before the first demand and are not there. */
  readonly missingDays: number;
  /** Demands cut in two so far. */
  readonly splits: number;
  readonly last?: { readonly before: Reached; readonly batch: BatchChoice };
  /** Place of its start days, and of its ready days, among those of its layer: higher is later. */
  readonly rank: { start: number; ready: number };
}

interface Line {
  readonly length: number;
  /** The demand that holds the place after a cut. */
  readonly demandAt: (at: number) => number;
  /** The slots worth trying for a batch that begins at a cut, the latest first. */
  readonly choicesAt: (at: number) => readonly SlotChoice[];
  readonly isBetweenDemands: (at: number) => boolean;
  /** End of each demand on the line. */
  readonly end: readonly number[];
}

interface SlotChoice {
  readonly slot: BatchSlot;
  /** End of the last demand that a batch of that slot can serve. */
  readonly reach: number;
  readonly missingDays: number;
}

/** The latest slot from which a batch can serve that day, if any. Slots are sorted by ready day. */
export function slotFor(
  day: number,
  slots: readonly BatchSlot[],
  shelfLifeDays: number,
): BatchSlot | undefined {
  return slotsFor(day, slots, shelfLifeDays, 0)[0];
}

/**
 * Fewest batches, then least volume, then fewest days missing of those wished before a batch's first
 * demand, then latest start days, then latest ready days, then fewest demands cut in two; in the
 * order in which they serve.
 *
 * @param demands sorted by day, each over 0 mL and with a slot (see {@link slotFor}): throws if not
 * @param slots sorted by ready day, start days never falling
 * @returns batches that cover every demand; where `volumeBy` does not let them, demands are covered
 *   in order as far as it goes
 */
export function fewestBatches(
  demands: readonly Demand[],
  slots: readonly BatchSlot[],
  limits: BatchLimits,
): BatchChoice[] {
  const line = lineOf(demands, slots, limits);
  const volumes = volumesOf(limits);
  const batches: BatchChoice[] = [];
  let at = 0;
  let madeMl = 0;
  while (at < line.length) {
    const furthest = search(
      { at, madeMl, count: 0, missingDays: 0, splits: 0, rank: { start: 0, ready: 0 } },
      line,
      volumes,
      limits,
    );
    batches.push(...batchesOf(furthest));
    madeMl = furthest.madeMl;
    at = furthest.at;
    if (at < line.length) at = line.end[line.demandAt(at)] as number;
  }
  return batches;
}

/** The best plan to the end of the line or, when none gets there, the best of those that get furthest. */
function search(
  origin: Reached,
  line: Line,
  volumes: readonly number[],
  limits: BatchLimits,
): Reached {
  const { volumeBy } = limits;
  const toGo = volumeBy === undefined ? fewestToGo(line, limits.largestMl) : undefined;
  const mayEndInTime = (at: number, count: number): boolean =>
    toGo === undefined || count + toGo(at) <= toGo(origin.at);

  const leastMade = new Map<number, number>([[origin.at, origin.madeMl]]);
  let furthest = origin;
  let layer = [origin];
  while (layer.length > 0 && furthest.at < line.length) {
    const next = new Map<number, Reached>();
    const tries = layer.flatMap((before) =>
      line.choicesAt(before.at).map((choice) => ({ before, ...choice })),
    );
    for (const { before, slot, reach, missingDays } of tries) {
      const roomMl = volumeBy === undefined ? Infinity : volumeBy(slot.start) - before.madeMl;
      for (const volumeMl of volumes) {
        if (volumeMl > roomMl) break;
        const end = before.at + volumeMl * placesPerMl;
        const at = Math.min(end, reach);
        const madeMl = before.madeMl + volumeMl;
        const count = before.count + 1;
        if (madeMl >= (leastMade.get(at) ?? Infinity) || !mayEndInTime(at, count)) continue;
        const splits = before.splits + (line.isBetweenDemands(at) ? 0 : 1);
        const last = { before, batch: { slot, volumeMl } };
        const reached = {
          at,
          madeMl,
          count,
          missingDays: before.missingDays + missingDays,
          splits,
          last,
          rank: { start: 0, ready: 0 },
        };
        const rival = next.get(at);
        if (rival === undefined || isBetter(reached, rival)) next.set(at, reached);
        if (end >= reach) break;
      }
    }
    layer = [...next.values()];
    rankBy("start", layer);
    rankBy("ready", layer);
    for (const reached of layer) {
      leastMade.set(reached.at, reached.madeMl);
      if (reached.at > furthest.at) furthest = reached;
    }
  }
  return furthest;
}

/** Of two plans to the same cut with as many batches. Each but the origin has a last batch. */
function isBetter(plan: Reached, rival: Reached): boolean {
  const [a, b] = [plan.last, rival.last];
  if (a === undefined || b === undefined) return false;
  const later = (visit: "start" | "ready"): number =>
    a.before.rank[visit] - b.before.rank[visit] || a.batch.slot[visit] - b.batch.slot[visit];
  const order =
    rival.madeMl - plan.madeMl ||
    rival.missingDays - plan.missingDays ||
    later("start") ||
    later("ready") ||
    rival.splits - plan.splits ||
    a.before.at - b.before.at;
  return order > 0;
}

/** Ranks plans by the days of their batches, the first batch's before the second's; equals share a rank. */
function rankBy(visit: "start" | "ready", layer: readonly Reached[]): void {
  const rankBefore = (r: Reached): number => r.last?.before.rank[visit] ?? 0;
  const lastDay = (r: Reached): number => r.last?.batch.slot[visit] ?? 0;
  const compare = (a: Reached, b: Reached): number =>
    rankBefore(a) - rankBefore(b) || lastDay(a) - lastDay(b);
  const sorted = [...layer].sort(compare);
  let rank = 0;
  for (const [i, reached] of sorted.entries()) {
    const previous = sorted[i - 1];
    if (previous !== undefined && compare(previous, reached) < 0) rank++;
    reached.rank[visit] = rank;
  }
}

function batchesOf(plan: Reached): BatchChoice[] {
  const batches: BatchChoice[] = [];
  for (let step = plan.last; step !== undefined; step = step.before.last) batches.push(step.batch);
  return batches.reverse();
}

/** Batches needed from a cut to the end, when only size and shelf life limit them. */
function fewestToGo({ length, choicesAt }: Line, largestMl: number): (at: number) => number {
  const known = new Map([[length, 0]]);
  const endOf = (at: number): number =>
    Math.min(at + largestMl * placesPerMl, choicesAt(at)[0]?.reach ?? length);
  return (from) => {
    const cuts: number[] = [];
    let at = from;
    for (; !known.has(at); at = endOf(at)) cuts.push(at);
    let count = known.get(at) as number;
    for (const cut of cuts.reverse()) known.set(cut, ++count);
    return count;
  };
}

/** Every volume a batch may have, rising. */
function volumesOf({ smallestMl, largestMl, stepMl }: BatchLimits): number[] {
  if (!(largestMl >= 1 && stepMl >= 1)) throw new RangeError("a batch must hold at least 1 mL");
  const volumes: number[] = [];
  const leastMl = stepMl * Math.max(1, Math.ceil(smallestMl / stepMl));
  for (let ml = leastMl; ml < largestMl; ml += stepMl) volumes.push(ml);
  return [...volumes, largestMl];
}

function lineOf(
  demands: readonly Demand[],
  slots: readonly BatchSlot[],
  { shelfLifeDays, readyBeforeDays }: BatchLimits,
): Line {
  const end: number[] = [];
  let length = 0;
  for (const [i, { day, ml }] of demands.entries()) {
    const places = Math.round(ml * placesPerMl);
    if (
      !(places > 0 && Math.abs(ml * placesPerMl - places) < 1e-6) ||
      day < (demands[i - 1]?.day ?? -Infinity)
    )
      throw new RangeError("demands must be whole hundredths over 0 mL and sorted by day");
    length += places;
    end.push(length);
  }
  const reachOf = ({ ready }: BatchSlot): number => {
    const beyond = firstIndex(
      demands.length,
      (i) => (demands[i] as Demand).day > ready + shelfLifeDays,
    );
    return end[beyond - 1] as number;
  };
  const choices = demands.map(({ day }) => {
    const worthTrying = slotsFor(day, slots, shelfLifeDays, readyBeforeDays);
    if (worthTrying.length === 0) throw new RangeError(`no batch can serve day ${day}`);
    return worthTrying.map((slot): SlotChoice => {
      const missingDays = Math.max(0, readyBeforeDays - (day - slot.ready));
      return { slot, reach: reachOf(slot), missingDays };
    });
  });
  const ends = new Set(end);
  const isBetweenDemands = (at: number): boolean => ends.has(at);
  const demandAt = (at: number): number => firstIndex(end.length, (i) => (end[i] as number) > at);
  const choicesAt = (at: number): readonly SlotChoice[] => choices[demandAt(at)] ?? [];
  return { length, demandAt, choicesAt, isBetweenDemands, end };
}

/** Latest first: the slots that day can be served from, until one is as many days before it as wished. */
function slotsFor(
  day: number,
  slots: readonly BatchSlot[],
  shelfLifeDays: number,
  readyBeforeDays: number,
): BatchSlot[] {
  const found: BatchSlot[] = [];
  for (
    let i = firstIndex(slots.length, (n) => (slots[n] as BatchSlot).ready > day) - 1;
    i >= 0;
    i--
  ) {
    const slot = slots[i] as BatchSlot;
    if (day - slot.ready > shelfLifeDays) break;
    found.push(slot);
    if (day - slot.ready >= readyBeforeDays) break;
  }
  return found;
}
