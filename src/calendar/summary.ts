import { type Vessel, vesselOf } from "../garden/index.js";
import type { BedRound, CanFill, CanMix, OtherFeedMix } from "../season/index.js";
import { grouped } from "../values.js";
import { capital, cropWords, fillInShort, moreCans } from "../words/index.js";

/** What one line can show; the description holds the rest. */
const cropsShown = 3;
const fillsShown = 4;
const groupsShown = 3;

/**
 * What to do in one line: crops, stock in each can, number of cans. Beds fed at the same rate by the
 * same route are told together; cans that do not fit are counted.
 *
 * @param where named when the event is for one bed only
 * @example "Tomato, pepper: 2 cans × 23 mL, 1 part can × 10 mL (4 L)"
 */
export function summaryOf(beds: readonly BedRound[], where?: string): string {
  const mixes = beds.flatMap((bed) => bed.mixes);
  // Rates computed from the strength of a bottle differ in their last bits.
  const byRate = grouped(mixes, ({ route, rateMlPerL }) => `${route} ${rateMlPerL.toFixed(2)}`);
  const groups = [...byRate.values()];
  const left = groups.slice(groupsShown).flatMap(fillsOf);
  const text = [...groups.slice(0, groupsShown).map(groupText), ...countOf(left)].join("; ");
  return capital(where === undefined ? text : `${where}: ${text}`);
}

/** The same for other feeds: `Seaweed: 2 cans × 45 mL`. */
export function feedSummary(feeds: readonly OtherFeedMix[], where?: string): string {
  const text = [...grouped(feeds, ({ feed }) => feed)]
    .map(([name, mixes]) => `${name}: ${fillsText(fillsOf(mixes), "can")}`)
    .join("; ");
  return where === undefined ? text : `${where}: ${text}`;
}

function groupText(mixes: readonly [CanMix, ...CanMix[]]): string {
  return `${cropsText(mixes)}: ${fillsText(fillsOf(mixes), vesselOf(mixes[0].route))}`;
}

function fillsText(fills: readonly CanFill[], vessel: Vessel): string {
  const merged = mergeFills(fills);
  const shown = merged.slice(0, fillsShown).map((fill) => fillInShort(fill, vessel));
  return [...shown, ...countOf(merged.slice(fillsShown))].join(", ");
}

function cropsText(mixes: readonly CanMix[]): string {
  const names = mixes.flatMap(({ feedings }) => feedings.map((f) => cropWords(f.cropName)));
  const crops = [...new Set(names)];
  const left = crops.length - cropsShown;
  return crops.slice(0, cropsShown).join(", ") + (left > 0 ? ` + ${left}` : "");
}

function mergeFills(fills: readonly CanFill[]): CanFill[] {
  const merged = new Map<string, CanFill>();
  for (const [i, fill] of fills.entries()) {
    // Each bed has a jug of its own.
    const ofJug = fill.jug === undefined ? "" : ` ${i}`;
    const key = `${String(fill.full)} ${fill.waterText} ${fill.stockText}${ofJug}`;
    merged.set(key, { ...fill, count: fill.count + (merged.get(key)?.count ?? 0) });
  }
  return [...merged.values()].sort((a, b) => Number(b.full) - Number(a.full));
}

function fillsOf(mixes: readonly Pick<CanMix, "fills">[]): readonly CanFill[] {
  return mixes.flatMap(({ fills }) => fills);
}

/** How many cans are not shown, if any. */
function countOf(left: readonly CanFill[]): readonly string[] {
  const cans = left.reduce((sum, { count }) => sum + count, 0);
  return cans > 0 ? [moreCans(cans)] : [];
}
