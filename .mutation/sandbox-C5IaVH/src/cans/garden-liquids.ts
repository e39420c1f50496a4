/** What is in the bottles of a garden, and which of them are not ready yet. */
// @ts-nocheck

import { addDays, type Day, later } from "../dates.js";
import { type BatchInHand, type Garden, shortDay } from "../garden/index.js";
import type { Finding } from "../problem.js";
import type { PlanWarning, StrainedWhite } from "../season/index.js";
import {
  assumedStrainer,
  bottleStock,
  batchName,
  readiness,
  type Recipe,
  recipeMeans,
  soundRecipe,
  type StockBottle,
  type StockLiquid,
  type StockTables,
  troubleAt,
  whitePassed,
} from "../stock/index.js";
import { given } from "../values.js";

export interface Liquids {
  readonly usual: Recipe;
  readonly recipeOf: (acid: BatchInHand["acid"]) => Recipe;
  /** What is in a bottle, by the id of its batch; one that is not listed is made as usual. */
  readonly of: (batch: string) => StockLiquid;
  /** Calcium as the garden pours it, g/L. */
  readonly poured: (liquid: StockLiquid) => number;
  /** What share of the white is in a bottle, where its strength rests on that. */
  readonly whiteOf: (batch: string) => StrainedWhite | undefined;
  readonly newWhite: StrainedWhite | undefined;
  readonly temperatureC: number;
  readonly findings: readonly Finding[];
}

/** Every bottle's liquid, computed or as the grower measured it. */
export function gardenLiquids(garden: Garden, tables: StockTables): Liquids {
  const { chemistry, making } = tables;
  const findings: Finding[] = [];
  const means = recipeMeans(chemistry, garden.stock);
  const usual = soundRecipe(tables, 1000, means);
  const recipeOf: Liquids["recipeOf"] = (acid) =>
    acid === means.acid ? usual : soundRecipe(tables, 1000, { ...means, acid });
  const liquids = new Map(
    garden.stock.batches.map((batch) => {
      const liquid = bottleStock(chemistry, making, garden.stock, batch);
      if (!liquid.ok) findings.push(...liquid.problems.map((t) => troubleAt(t, batch.path)));
      return [batch.id, liquid.ok ? liquid.value : recipeOf(batch.acid).stock] as const;
    }),
  );
  const byMesh = { strainer: "mesh" as const, passes: whitePassed(chemistry, "mesh") };
  const restsOnWhite = (acid: BatchInHand["acid"]): boolean =>
    garden.stock.pour === "shaken" && recipeOf(acid).crystalsG > 0;
  const whites = new Map(
    garden.stock.batches.flatMap(({ id, acid, strengthGPerL, strained }) => {
      if (strengthGPerL !== undefined || !restsOnWhite(acid)) return [];
      const strainer = strained ?? assumedStrainer;
      const assumed = strained === undefined ? (true as const) : undefined;
      const passes = whitePassed(chemistry, strainer);
      return [[id, { strainer, passes, ...given({ assumed }) }] as const];
    }),
  );
  return {
    usual,
    recipeOf,
    of: (batch) => liquids.get(batch) ?? usual.stock,
    poured: (liquid) => (garden.stock.pour === "shaken" ? liquid.shakenGPerL : liquid.clearGPerL),
    whiteOf: (batch) => whites.get(batch),
    newWhite: restsOnWhite(means.acid) ? byMesh : undefined,
    temperatureC: means.temperatureC,
    findings,
  };
}

/** The bottles with later days for those whose measured pH tells that the reaction or the gas is not done, and a warning for each. */
export function waitingBottles(
  bottles: readonly StockBottle[],
  garden: Garden,
  { chemistry, making }: StockTables,
  liquids: Liquids,
  today: Day,
): { bottles: StockBottle[]; warnings: PlanWarning[] } {
  const readyOn = new Map<string, Day>();
  const warnings: PlanWarning[] = [];
  for (const batch of garden.stock.batches) {
    if (batch.ph === undefined || batch.thrownAway !== undefined) continue;
    const days = making.reaction[batch.acid].days;
    const state = readiness(chemistry, liquids.recipeOf(batch.acid).jar, { ph: batch.ph }, days);
    if (!state.ok || state.value.ready) continue;
    // Counted from the day on which the bottle was last looked at; when these days are over and it is
    // sour all the same, from today.
    const since = addDays(later(batch.made, batch.leftOn ?? batch.made), days);
    const ready = since > today ? since : addDays(today, days);
    readyOn.set(batch.id, ready);
    warnings.push({
      code: "stock-not-ready",
      ...(ready === since ? { day: ready } : {}),
      message: `${batchName(batch.id)}: ${state.value.message}; it is not used before ${shortDay(ready, garden.amounts)}`,
      mend: state.value.mend,
    });
  }
  return {
    bottles: bottles.map((b) => ({ ...b, readyOn: readyOn.get(b.id) ?? b.readyOn })),
    warnings,
  };
}
