/** Where the calcium of fed plantings comes from, and what can be expected of the feed, in the terminal. */
// @ts-nocheck

import type { PlantingCalcium } from "../calcium/index.js";
import type { Plan } from "../season/index.js";
import { summedInRow, verdictsInRow, waterAgainstFeed } from "../words/index.js";
import { bullet, table, type TextStyle } from "./terminal-text.js";

/** Columns that nothing is known of are left out. */
export function calciumText({ calcium }: Plan, style: TextStyle): string {
  const sums = calcium.filter(({ verdicts }) => verdicts.some(({ feeds }) => feeds));
  if (sums.length === 0) return "";
  const columns = sums.map((sum): Record<string, string> => ({
    "": sum.planting,
    ...summedInRow(sum),
    "does a feed help?": verdictsInRow(sum.verdicts.filter(({ feeds }) => feeds)),
  }));
  const titles = Object.keys(columns[0] ?? {}).filter((title) =>
    columns.some((row) => row[title] !== ""),
  );
  const lines = [
    ...borrowed(sums),
    "What a crop takes up is a range of published figures; of the soil's calcium it takes a few per cent. `why` has the sums, with sources.",
    waterAgainstFeed(sums) ?? [],
  ].flat();
  return [
    style.heading("Where the calcium comes from, g in the season"),
    table(
      [titles, ...columns.map((row) => titles.map((title) => row[title] ?? ""))],
      "  ",
      style.width,
    ),
    ...lines.map((line) => bullet(line, style.width)),
  ].join("\n");
}

function borrowed(sums: readonly PlantingCalcium[]): string[] {
  const kin = sums.flatMap(({ cropName, need }) =>
    need?.borrowedFrom === undefined ? [] : [`${cropName} by ${need.borrowedFrom}`],
  );
  const weak = sums.flatMap(({ cropName, need }) => (need?.isWeak ? [cropName] : []));
  return [
    ...(kin.length === 0 ? [] : [`By figures of near kin: ${[...new Set(kin)].join(", ")}`]),
    ...(weak.length === 0 ? [] : [`From weak sources: ${[...new Set(weak)].join(", ")}`]),
  ];
}
