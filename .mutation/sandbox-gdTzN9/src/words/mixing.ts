/** The cans of a long round, those alike together, so that they can be mixed at one go. */
// @ts-nocheck

import { type Vessel, vesselOf } from "../garden/index.js";
import type { CanFill, CanMix } from "../season/index.js";
import { grouped } from "../values.js";
import { fillInShort, fillWords, vesselsIn } from "./cans.js";
import { vesselCount } from "./routes.js";

/** More cans than that are mixed by kind, not bed by bed. Our choice: as many as a hand cart takes. */
const manyCans = 8;

export function isLong(mixes: readonly CanMix[]): boolean {
  return vesselsIn(mixes.flatMap(({ fills }) => fills)) > manyCans;
}

/** `13 full cans: 1 tbsp + 1 tsp`, `6 × 1 gal: 2 tsp`; what comes from a jug is told by its bed. */
export function mixingSummary(mixes: readonly CanMix[]): string[] {
  const fills = mixes.flatMap((mix) =>
    mix.fills.map((fill) => ({ ...fill, vessel: vesselOf(mix.route) })),
  );
  const measured = fills.filter(({ jug }) => jug === undefined);
  const alike = grouped(measured, ({ vessel, full, waterText, stockText }) =>
    [vessel, full ? "full" : waterText, stockText].join("|"),
  );
  const lines = [...alike.values()]
    .map((those) => ({ first: those[0], count: vesselsIn(those) }))
    .sort(
      (a, b) =>
        Number(b.first.full) - Number(a.first.full) ||
        (a.first.full ? b.count - a.count : b.first.waterL - a.first.waterL) ||
        b.first.stockMl - a.first.stockMl,
    )
    .map(({ first, count }) =>
      first.full
        ? `${fillWords({ ...first, count }, first.vessel)}: ${first.stockText}`
        : `${count} × ${partWords(first, first.vessel)}`,
    );
  const fromJugs = fills.filter(({ jug }) => jug !== undefined);
  const jugs =
    fromJugs.length === 0 ? [] : [`${vesselCount(vesselsIn(fromJugs), "can")}: from a jug`];
  return [...lines, ...jugs];
}

/** In the line of a bed: `2 cans: 23 mL`, `4 L: 10 mL` */
export function cansInLine(fill: CanFill, vessel: Vessel): string {
  if (fill.jug !== undefined) return fillInShort(fill, vessel);
  if (!fill.full && fill.count === 1) return partWords(fill, vessel);
  return `${vesselCount(fill.count, vessel)}: ${fill.stockText}`;
}

function partWords({ waterText, stockText }: CanFill, vessel: Vessel): string {
  const which = vessel === "can" ? "" : ` in the ${vessel}`;
  return `${waterText}${which}: ${stockText}`;
}
