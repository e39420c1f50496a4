import { type Route, type Vessel, vesselOf } from "../garden/index.js";
import type { BedRound, CanFill, CanMix, OtherFeedMix } from "../season/index.js";
import { cropWords, fillInShort, moreCans } from "../words/index.js";

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
  const groups = byRateAndRoute(beds.flatMap(({ mixes }) => mixes));
  const shown = groups.slice(0, groupsShown).map(groupText);
  const left = countCans(groups.slice(groupsShown).flatMap(({ mixes }) => mixes.flatMap(fillsOf)));
  const text = [...shown, ...(left > 0 ? [moreCans(left)] : [])].join("; ");
  return capital(where === undefined ? text : `${where}: ${text}`);
}

/** The same for other feeds: `Seaweed: 2 cans × 45 mL`. */
export function feedSummary(feeds: readonly OtherFeedMix[], where?: string): string {
  const names = [...new Set(feeds.map(({ feed }) => feed))];
  const text = names
    .map((name) => {
      const fills = feeds.filter(({ feed }) => feed === name).flatMap((mix) => mix.fills);
      return `${name}: ${fillsText(fills, "can")}`;
    })
    .join("; ");
  return where === undefined ? text : `${where}: ${text}`;
}

function groupText({ route, mixes }: Group): string {
  return `${cropsText(mixes)}: ${fillsText(mixes.flatMap(fillsOf), vesselOf(route))}`;
}

function fillsText(fills: readonly CanFill[], vessel: Vessel): string {
  const merged = mergeFills(fills);
  const shown = merged.slice(0, fillsShown).map((fill) => fillInShort(fill, vessel));
  const left = countCans(merged.slice(fillsShown));
  const rest = left > 0 ? [moreCans(left)] : [];
  return [...shown, ...rest].join(", ");
}

function cropsText(mixes: readonly CanMix[]): string {
  const names = mixes.flatMap(({ feedings }) => feedings.map((f) => cropWords(f.cropName)));
  const crops = [...new Set(names)];
  const left = crops.length - cropsShown;
  return crops.slice(0, cropsShown).join(", ") + (left > 0 ? ` + ${left}` : "");
}

interface Group {
  readonly route: Route;
  readonly mixes: readonly CanMix[];
}

function byRateAndRoute(mixes: readonly CanMix[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const mix of mixes) {
    // Rates computed from the strength of a bottle differ in their last bits.
    const key = `${mix.route} ${mix.rateMlPerL.toFixed(2)}`;
    const before = groups.get(key)?.mixes ?? [];
    groups.set(key, { route: mix.route, mixes: [...before, mix] });
  }
  return [...groups.values()];
}

function mergeFills(fills: readonly CanFill[]): CanFill[] {
  const merged = new Map<string, CanFill>();
  for (const fill of fills) {
    const key = `${String(fill.full)} ${fill.waterText} ${fill.stockText}`;
    merged.set(key, { ...fill, count: fill.count + (merged.get(key)?.count ?? 0) });
  }
  return [...merged.values()].sort((a, b) => Number(b.full) - Number(a.full));
}

function fillsOf(mix: CanMix): readonly CanFill[] {
  return mix.fills;
}

function countCans(fills: readonly CanFill[]): number {
  return fills.reduce((sum, { count }) => sum + count, 0);
}

function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase("en") + text.slice(1);
}
