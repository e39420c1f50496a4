/** What is in the bottles of a garden, and which of them are not ready yet. */
import { addDays, type Day } from "../dates.js";
import type { BatchInHand, Garden } from "../garden/index.js";
import type { Finding } from "../problem.js";
import type { PlanWarning } from "../season-plan.js";
import type { Chemistry } from "./constants.js";
import type { StockBottle } from "./making-problem.js";
import type { MakingRules } from "./making-rules.js";
import { readiness } from "./readiness.js";
import { recipe } from "./recipe.js";
import type { Recipe } from "./recipe-types.js";
import type { StockLiquid } from "./stock-liquid.js";
import { troubleAt } from "./trouble.js";
import { bottleStock, recipeMeans } from "./usual-stock.js";

export interface StockTables {
  readonly chemistry: Chemistry;
  readonly making: MakingRules;
}

export interface Liquids {
  readonly usual: Recipe;
  readonly recipeOf: (acid: BatchInHand["acid"]) => Recipe;
  readonly of: (batch: BatchInHand) => StockLiquid;
  /** Calcium as the garden pours it, g/L. */
  readonly poured: (liquid: StockLiquid) => number;
  /** The liquid nearest to a strength that a bottle of the plan has. */
  readonly ofStrength: (strengthGPerL: number) => StockLiquid;
  readonly temperatureC: number;
  readonly findings: readonly Finding[];
}

/** Every bottle's liquid, computed or as the grower measured it. */
export function gardenLiquids(garden: Garden, { chemistry, making }: StockTables): Liquids {
  const findings: Finding[] = [];
  const means = recipeMeans(chemistry, garden.stock);
  const usualOf = (acid: BatchInHand["acid"]): Recipe => {
    const made = recipe(chemistry, making, { by: "volume", makeMl: 1000 }, { ...means, acid });
    if (!made.ok) throw new Error(made.problems[0]?.message ?? "no recipe");
    return made.value;
  };
  const usual = usualOf(garden.stock.acid);
  const recipeOf = (acid: BatchInHand["acid"]): Recipe =>
    acid === garden.stock.acid ? usual : usualOf(acid);
  const { pour } = garden.stock;
  const liquids = new Map(
    garden.stock.batches.map((batch) => {
      const liquid = bottleStock(chemistry, making, garden.stock, batch);
      if (!liquid.ok) findings.push(...liquid.problems.map((t) => troubleAt(t, batch.path)));
      return [batch.id, liquid.ok ? liquid.value : recipeOf(batch.acid).stock] as const;
    }),
  );
  const poured = (liquid: StockLiquid): number =>
    pour === "shaken" ? liquid.shakenGPerL : liquid.clearGPerL;
  const all = [usual.stock, ...liquids.values()];
  return {
    usual,
    recipeOf,
    of: (batch) => liquids.get(batch.id) ?? usual.stock,
    poured,
    ofStrength: (strengthGPerL) =>
      all.reduce((a, b) =>
        Math.abs(poured(b) - strengthGPerL) < Math.abs(poured(a) - strengthGPerL) ? b : a,
      ),
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
    if (batch.ph === undefined) continue;
    const days = making.reaction[batch.acid].days;
    const state = readiness(chemistry, liquids.recipeOf(batch.acid).jar, { ph: batch.ph }, days);
    if (!state.ok || state.value.ready) continue;
    const ready = addDays(today, days);
    readyOn.set(batch.id, ready);
    warnings.push({
      code: "stock-not-ready",
      day: today,
      message: `batch ${batch.id}: ${state.value.message}; it is not used before ${ready}`,
      mend: state.value.mend,
    });
  }
  return {
    bottles: bottles.map((b) => ({ ...b, readyOn: readyOn.get(b.id) ?? b.readyOn })),
    warnings,
  };
}
