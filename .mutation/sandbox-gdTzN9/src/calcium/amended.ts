/** The calcium of what was dug in or strewn: how much of it acts in this season, and in the next. */
// @ts-nocheck

import { addDays, type Day, type DaySpan } from "../dates.js";
import type { Amendment, Bed } from "../garden/index.js";
import type { LifeToFeed } from "../rules/index.js";
import { given } from "../values.js";
import { type CalciumAmount, type Extent, onGround, spread } from "./extent.js";
import { product, type Range, scaled, widest } from "./range.js";
import type { AmendmentTable, CalciumTables, YearShares } from "./tables.js";

export interface AmendedCalcium {
  readonly on: Day;
  readonly what: Amendment["what"];
  /** As it is printed. */
  readonly name: string;
  /** Of the material, on the whole bed. */
  readonly amountG: number;
  /** Of calcium that acts in this season; no amounts where the bed's is no single planting's. */
  readonly thisSeason: CalciumAmount;
  /** Absent where no source tells of a third year. */
  readonly nextSeason?: CalciumAmount;
}

type Tables = Pick<CalciumTables, "amendments" | "limits">;

/** What is spread after the planting's last day does nothing for it. */
export function amendedCalcium(
  bed: Bed,
  extent: Extent,
  season: DaySpan,
  { last }: LifeToFeed,
  { amendments, limits }: Tables,
): AmendedCalcium[] {
  const firstNew = addDays(season.from, -limits.new_this_season_days.value);
  return bed.amendments.flatMap((amendment): AmendedCalcium[] => {
    const { on, what, amountG } = amendment;
    if (on > (last?.day ?? season.to) || on < addDays(firstNew, -365)) return [];
    const { name, calcium_g_per_kg, shares } = materialOf(amendment, amendments);
    const calciumG = scaled(calcium_g_per_kg, amountG / 1000);
    const amountIn = (percent: Range): CalciumAmount =>
      onPlanting(product(calciumG, scaled(percent, 1 / 100)), bed, extent);
    const [now, next] =
      on >= firstNew ? [shares.year_one, shares.year_two] : [shares.year_two, undefined];
    const nextSeason = next && amountIn(next);
    return [{ on, what, name, amountG, thisSeason: amountIn(now), ...given({ nextSeason }) }];
  });
}

/** What is spread on a bed is spread evenly over its area. */
function onPlanting(bedG: Range, { plantings, areaM2 }: Bed, extent: Extent): CalciumAmount {
  if (plantings.length === 1) return spread(bedG, extent);
  return areaM2 === undefined ? {} : onGround(scaled(bedG, 1 / areaM2), extent);
}

function materialOf(
  { what, fineness }: Amendment,
  { amendments, finenesses }: AmendmentTable,
): { name: string; calcium_g_per_kg: Range; shares: Pick<YearShares, "year_one" | "year_two"> } {
  const row = amendments.find((one) => one.what === what);
  if (row === undefined) throw new Error(`amendments.yaml: ${what} is missing`);
  if (row.acts !== "by-fineness") return { ...row, shares: row.acts };
  // Where nobody tells how fine it is, it may be any.
  const fitting = finenesses.filter((one) => fineness === undefined || one.fineness === fineness);
  const over = (year: "year_one" | "year_two"): Range =>
    widest(fitting.map((one) => one[year])) ?? { low: 0, high: 100 };
  return { ...row, shares: { year_one: over("year_one"), year_two: over("year_two") } };
}

/** The last day after the soil test on which the bed got what raises the pH. */
export function limedSince(
  { amendments: given, soil }: Bed,
  { amendments }: AmendmentTable,
): Day | undefined {
  const limes = new Set(amendments.filter((row) => row.limes === true).map(({ what }) => what));
  const tested = soil?.test?.on;
  if (tested === undefined) return undefined;
  const days = given.filter(({ on, what }) => on > tested && limes.has(what)).map(({ on }) => on);
  return days.sort().at(-1);
}
