/** The stock side of a season: bottles in hand, batches to make, and the bottle for each can. */
import type { Day } from "../dates.js";
import { type Garden, totalOf } from "../garden/index.js";
import type { Finding, Result } from "../problem.js";
import type { PlanWarning, SeasonStock } from "../season/index.js";
import {
  bottlesInHand,
  checkBatches,
  type Dose,
  planStock,
  type Recipe,
  shellsSinceLastBatch,
  type StockNeed,
  type StockPlan,
  type StockTables,
  tapCalciumMgPerL,
  waterFindings,
  waterReport,
  wayOfMaking,
  wholeMl,
} from "../stock/index.js";
import { given } from "../values.js";
import { batchRecipes } from "./batch-recipes.js";
import { type CanDemand, demandFills, rateAfter } from "./demands.js";
import { fillsMl } from "./fills.js";
import { gardenLiquids, waitingBottles } from "./garden-liquids.js";
import { mixedCans } from "./mixed-cans.js";
import { type Poured, pouring } from "./poured.js";

export interface StockSide {
  readonly stock: SeasonStock;
  readonly pouredFor: (demand: CanDemand) => Poured;
  readonly tapCalciumMgPerL: number | undefined;
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
    liquids.poured(liquids.of(batch.id)),
  );
  const findings = [
    ...checkBatches(garden.stock.batches, today),
    ...inHand.findings,
    ...liquids.findings,
    ...waterFindings(water, tables.chemistry, liquids.temperatureC),
  ];
  if (findings.length > 0) return { ok: false, problems: findings };

  const waiting = waitingBottles(inHand.bottles, garden, tables, liquids, today);
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
    amounts: garden.amounts,
    away: garden.feeding.away,
    needs: ahead.map((demand): StockNeed => needOf(demand, newGPerL)),
    bottles: waiting.bottles,
    making: way,
    shells: shells.supply,
    mlFor: (need, strengthGPerL, before) => {
      const demand = byNeed.get(need.id);
      return demand === undefined ? 0 : measuredMl(demand, strengthGPerL, before, garden);
    },
  });
  const cans = mixedCans(tables.chemistry, liquids, garden, water);
  const pouringOf = pouring(garden, liquids, making, cans.of);
  const poured = new Map(ahead.map((demand) => [demand.id, pouringOf(demand)]));
  const { acid, keep, pour, bottleMl } = garden.stock;
  return {
    ok: true,
    value: {
      stock: {
        making,
        recipes: batchRecipes(making.batches, garden, tables),
        inHand: inHand.bottles.map(({ id, readyOn: madeOn, ...rest }) => ({ id, madeOn, ...rest })),
        acid,
        keep,
        pour,
        bottleMl,
        newStrengthGPerL: newGPerL,
        newClearStrengthGPerL: newLiquid.clearGPerL,
        newPh: newLiquid.ph,
      },
      pouredFor: (demand) => poured.get(demand.id) ?? pouringOf(demand),
      tapCalciumMgPerL: water && tapCalciumMgPerL(tables.chemistry, water),
      warnings: [...waiting.warnings, ...shortageWarnings(making, demands), ...cans.warnings()],
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
  const { shellsPerWeek: perWeek, shellsInHand, batches } = garden.stock;
  const gPerL = (usual.shellG * 1000) / usual.makesMl;
  const since = shellsSinceLastBatch(perWeek ?? 0, batches, leadDays, today);
  const isAssumed = perWeek !== undefined && shellsInHand === undefined;
  return {
    supply: { ...given({ perWeek }), inHand: shellsInHand ?? since, gPerShell, gPerL },
    assumptions: isAssumed
      ? [`${since} eggshells in hand on ${today} (\`stock: { shells_in_hand: ... }\`)`]
      : [],
  };
}

function needOf(demand: CanDemand, newGPerL: number): StockNeed {
  const { id, day, waterL, rate, highestRateMlPerL } = demand;
  const targetMgPerL = rate.kind === "fixed" ? rate.mlPerL * newGPerL : rate.targetMgPerL;
  return { id, day, calciumMg: targetMgPerL * waterL, mostMl: highestRateMlPerL * waterL };
}

/** What the cans of a demand still take from a bottle of that strength, whole mL. */
function measuredMl(
  demand: CanDemand,
  strengthGPerL: number,
  before: readonly Dose[],
  garden: Garden,
): number {
  const fills = demandFills(demand, rateAfter(demand, before, strengthGPerL), garden);
  const ml = wholeMl(fillsMl(fills));
  const givenMl = totalOf(before.map((dose) => dose.ml));
  return givenMl === 0 ? Math.max(1, ml) : Math.max(0, ml - givenMl);
}

function shortageWarnings(making: StockPlan, demands: readonly CanDemand[]): PlanWarning[] {
  const byId = new Map(demands.map((demand) => [demand.id, demand]));
  return making.shortages.map((shortage) => ({
    code: `stock-short-${shortage.reason}`,
    day: shortage.day,
    ...given({ bed: byId.get(shortage.need)?.bed }),
    message: shortage.message,
    mend: shortage.mend,
  }));
}
