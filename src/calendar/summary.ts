import type { BedRound, CanFill, CanMix, OtherFeedMix } from "../season/index.js";
import { cropWords } from "../words/index.js";

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
  const shown = groups.slice(0, groupsShown).map(({ mixes }) => groupText(mixes));
  const left = countCans(groups.slice(groupsShown).flatMap(({ mixes }) => mixes.flatMap(fillsOf)));
  const text = [...shown, ...(left > 0 ? [`${left} more ${cans(left)}`] : [])].join("; ");
  return capital(where === undefined ? text : `${where}: ${text}`);
}

/** The same for other feeds: `Seaweed: 2 cans × 45 mL`. */
export function feedSummary(feeds: readonly OtherFeedMix[], where?: string): string {
  const names = [...new Set(feeds.map(({ feed }) => feed))];
  const text = names
    .map((name) => {
      const fills = feeds.filter(({ feed }) => feed === name).flatMap((mix) => mix.fills);
      return `${name}: ${fillsText(fills)}`;
    })
    .join("; ");
  return where === undefined ? text : `${where}: ${text}`;
}

function groupText(mixes: readonly CanMix[]): string {
  return `${cropsText(mixes)}: ${fillsText(mixes.flatMap(fillsOf), mixes[0]?.route)}`;
}

function fillsText(fills: readonly CanFill[], route?: CanMix["route"]): string {
  const merged = mergeFills(fills);
  const shown = merged.slice(0, fillsShown).map((fill) => fillText(fill, route));
  const left = countCans(merged.slice(fillsShown));
  const rest = left > 0 ? [`${left} more ${cans(left)}`] : [];
  return [...shown, ...rest].join(", ");
}

/** `2 cans × 23 mL`, `1 part sprayer × 4 mL (2 L)`. */
export function fillText(fill: CanFill, route: CanMix["route"] = "drench"): string {
  const vessel = (route === "foliar" ? "sprayer" : "can") + (fill.count === 1 ? "" : "s");
  return fill.full
    ? `${fill.count} ${vessel} × ${fill.stockText}`
    : `${fill.count} part ${vessel} × ${fill.stockText} (${fill.waterText})`;
}

function cropsText(mixes: readonly CanMix[]): string {
  const names = mixes.flatMap(({ feedings }) => feedings.map((f) => cropWords(f.cropName)));
  const crops = [...new Set(names)];
  const left = crops.length - cropsShown;
  return crops.slice(0, cropsShown).join(", ") + (left > 0 ? ` + ${left}` : "");
}

function byRateAndRoute(mixes: readonly CanMix[]): { readonly mixes: readonly CanMix[] }[] {
  const groups = new Map<string, CanMix[]>();
  for (const mix of mixes) {
    // Rates computed from the strength of a bottle differ in their last bits.
    const key = `${mix.route} ${mix.rateMlPerL.toFixed(2)}`;
    groups.set(key, [...(groups.get(key) ?? []), mix]);
  }
  return [...groups.values()].map((group) => ({ mixes: group }));
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

function cans(count: number): string {
  return count === 1 ? "can" : "cans";
}

function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase("en") + text.slice(1);
}
