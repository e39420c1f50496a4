/** The stock side of a season: bottles in hand, batches to make, and the bottle for each can. */
import type { Day } from "../dates.js";
import type { Garden } from "../garden/index.js";
import type { Finding, Result } from "../problem.js";
import { demandFills, rateFor, type CanDemand, type DemandStock } from "../rounds/index.js";
import type { PlanWarning, SeasonStock } from "../season-plan.js";
import { batchRecipes } from "./batch-recipes.js";
import { planStock } from "./batches.js";
import type { Chemistry } from "./constants.js";
import { gardenLiquids, waitingBottles, type Liquids, type StockTables } from "./garden-liquids.js";
import { waterFindings, waterReport } from "./garden-water.js";
import { checkBatches } from "./ledger-check.js";
import { bottlesInHand } from "./ledger-log.js";
import { wholeMl } from "./ledger.js";
import type { StockNeed, StockPlan } from "./making-problem.js";
import { wayOfMaking } from "./making-rules.js";
import { mixedCans, type MixedCans } from "./mixed-cans.js";
import type { Recipe } from "./recipe-types.js";
import { shellsSinceLastBatch } from "./shells.js";
import { tapCalciumMgPerL, type WaterReport } from "./source-water.js";

export interface StockSide {
  readonly stock: SeasonStock;
  readonly stockFor: (demand: CanDemand) => DemandStock;
  readonly warnings: readonly PlanWarning[];
  readonly assumptions: readonly string[];
}

/** @returns findings where what the file says of batches, log or water cannot be */
export function seasonStock(
  garden: Garden,
  demands: readonly CanDemand[],
  tables: StockTables,
  today: Day,
): Result<StockSide, Finding> {
  const water = waterReport(tables.chemistry, garden.sourceWater);
  const liquids = gardenLiquids(garden, tables);
  const inHand = bottlesInHand(garden.stock.batches, garden.log, today, tables.making, (batch) =>
    liquids.poured(liquids.of(batch)),
  );
  const findings = [
    ...checkBatches(garden.stock.batches, today),
    ...inHand.findings,
    ...liquids.findings,
    ...waterFindings(water, tables.chemistry, liquids.temperatureC),
  ];
  if (findings.length > 0) return { ok: false, problems: findings };

  const waiting = waitingBottles(inHand.bottles, garden, tables, liquids, today);
  const { bottles } = waiting;
  const newLiquid = liquids.usual.stock;
  const newGPerL = liquids.poured(newLiquid);
  const way = wayOfMaking(garden.stock, tables.making, newGPerL);
  const shells = shellSupply(
    garden,
    liquids.usual,
    tables.chemistry.kitchen.shellPerEggG.value,
    way.dryDays + way.reactionDays,
    today,
  );
  const ahead = demands.filter((demand) => demand.day >= today && demand.waterL > 0);
  const byNeed = new Map(ahead.map((demand) => [demand.id, demand]));
  const making = planStock({
    today,
    season: garden.season,
    away: garden.feeding.away,
    needs: ahead.map((demand): StockNeed => needOf(demand, newGPerL)),
    bottles,
    making: way,
    shells: shells.supply,
    mlFor: (need, strengthGPerL) => {
      const demand = byNeed.get(need.id);
      return demand === undefined ? 0 : measuredMl(demand, strengthGPerL, garden);
    },
  });
  const cans = mixedCans(tables.chemistry, liquids, garden, water);
  const { acid, keep, pour, bottleMl } = garden.stock;
  return {
    ok: true,
    value: {
      stock: {
        making,
        recipes: batchRecipes(making.batches, garden, tables),
        inHand: inHand.bottles.map(({ id, readyOn, useBy, leftMl, strengthGPerL }) => ({
          id,
          madeOn: readyOn,
          useBy,
          leftMl,
          strengthGPerL,
        })),
        acid,
        keep,
        pour,
        bottleMl,
        newStrengthGPerL: newGPerL,
        newClearStrengthGPerL: newLiquid.clearGPerL,
        newPh: newLiquid.ph,
      },
      stockFor: demandStock(
        making,
        newGPerL,
        (batch) => bottles.find(({ id }) => id === batch)?.strengthGPerL ?? newGPerL,
        cans,
        liquids,
        water,
        tables.chemistry,
      ),
      warnings: [
        ...waiting.warnings,
        ...shortageWarnings(making, demands),
        ...cans.warnings(making, byNeed),
      ],
      assumptions: making.shells.shortage === undefined ? [] : shells.assumptions,
    },
  };
}

function shellSupply(
  garden: Garden,
  usual: Recipe,
  gPerShell: number,
  leadDays: number,
  today: Day,
): { supply: Parameters<typeof planStock>[0]["shells"]; assumptions: string[] } {
  const { shellsPerWeek, shellsInHand, batches } = garden.stock;
  const gPerL = (usual.shellG * 1000) / usual.makesMl;
  if (shellsPerWeek === undefined)
    return { supply: { inHand: shellsInHand ?? 0, gPerShell, gPerL }, assumptions: [] };
  const since = shellsSinceLastBatch(shellsPerWeek, batches, leadDays, today);
  return {
    supply: { perWeek: shellsPerWeek, inHand: shellsInHand ?? since, gPerShell, gPerL },
    assumptions:
      shellsInHand === undefined
        ? [`${since} eggshells in hand on ${today} (\`stock: { shells_in_hand: ... }\`)`]
        : [],
  };
}

function needOf(demand: CanDemand, newGPerL: number): StockNeed {
  const { id, day, waterL, rate, highestRateMlPerL } = demand;
  const targetMgPerL = rate.kind === "fixed" ? rate.mlPerL * newGPerL : rate.targetMgPerL;
  return { id, day, calciumMg: targetMgPerL * waterL, mostMl: highestRateMlPerL * waterL };
}

/** What the cans of a demand take from a bottle of that strength, whole mL. */
function measuredMl(demand: CanDemand, strengthGPerL: number, garden: Garden): number {
  const fills = demandFills(demand, rateFor(demand, strengthGPerL), garden);
  return Math.max(1, wholeMl(fills.reduce((sum, fill) => sum + fill.count * fill.stockMl, 0)));
}

function demandStock(
  making: StockPlan,
  newGPerL: number,
  inHandGPerL: (batch: string) => number,
  cans: MixedCans,
  liquids: Liquids,
  water: WaterReport | undefined,
  chemistry: Chemistry,
): (demand: CanDemand) => DemandStock {
  const draws = new Map<string, StockPlan["draws"][number][]>();
  for (const draw of making.draws) draws.set(draw.need, [...(draws.get(draw.need) ?? []), draw]);
  const tap = water === undefined ? {} : { tapCalciumMgPerL: tapCalciumMgPerL(chemistry, water) };
  return (demand) => ({
    pours:
      demand.given === undefined
        ? (draws.get(demand.id) ?? []).map(({ batch, ml, strengthGPerL }) => ({
            batch,
            ml,
            strengthGPerL,
          }))
        : demand.given.pours.map((pour) => ({
            ...pour,
            strengthGPerL: inHandGPerL(pour.batch),
          })),
    otherwiseGPerL: newGPerL,
    ...tap,
    can: cans.can,
    clearShare: (strengthGPerL) => {
      const liquid = liquids.ofStrength(strengthGPerL);
      return Math.min(1, liquid.clearGPerL / liquids.poured(liquid));
    },
  });
}

function shortageWarnings(making: StockPlan, demands: readonly CanDemand[]): PlanWarning[] {
  const byId = new Map(demands.map((demand) => [demand.id, demand]));
  return making.shortages.map((shortage) => ({
    code: `stock-short-${shortage.reason}`,
    day: shortage.day,
    ...(byId.has(shortage.need) ? { bed: byId.get(shortage.need)?.bed ?? "" } : {}),
    message: shortage.message,
    mend: shortage.mend,
  }));
}
