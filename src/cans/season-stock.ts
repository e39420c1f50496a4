/** The stock side of a season: bottles in hand, batches to make, and the bottle for each can. */
import type { Day } from "../dates.js";
import { decimal, type Garden, totalOf } from "../garden/index.js";
import type { Finding, Result } from "../problem.js";
import type { PlanWarning, SeasonStock } from "../season/index.js";
import {
  bottlesInHand,
  checkBatches,
  type Chemistry,
  type Dose,
  planStock,
  type Recipe,
  shellsSinceLastBatch,
  type StockBottle,
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
import { gardenLiquids, type Liquids, waitingBottles } from "./garden-liquids.js";
import { mixedCans } from "./mixed-cans.js";
import { type Poured, pouring } from "./poured.js";
import { targetWarnings } from "./reached-targets.js";

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
  const pouredFor = (demand: CanDemand): Poured => poured.get(demand.id) ?? pouringOf(demand);
  const { acid, keep, pour, bottleMl } = garden.stock;
  return {
    ok: true,
    value: {
      stock: {
        making,
        recipes: batchRecipes(making.batches, garden, tables),
        inHand: inHand.bottles.map(({ id, readyOn: madeOn, ...rest }) => {
          return { id, madeOn, ...rest, ...given({ white: liquids.whiteOf(id) }) };
        }),
        acid,
        keep,
        pour,
        bottleMl,
        newStrengthGPerL: newGPerL,
        newClearStrengthGPerL: newLiquid.clearGPerL,
        newPh: newLiquid.ph,
        ...given({ newWhite: liquids.newWhite }),
      },
      pouredFor,
      tapCalciumMgPerL: water && tapCalciumMgPerL(tables.chemistry, water),
      warnings: [
        ...waiting.warnings,
        ...shortageWarnings(making, demands),
        ...targetWarnings(ahead, pouredFor, making.batches, liquids, tables.chemistry),
        ...cans.warnings(),
        ...(making.batches.length > 0 ? strongAcid(garden, tables.chemistry) : []),
      ],
      assumptions: [
        ...(making.shells.shortage === undefined ? [] : shells.assumptions),
        ...assumedMesh(inHand.bottles, liquids, today),
      ],
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

function strongAcid(
  { stock: { acid, vinegarPercent } }: Garden,
  { kitchen }: Chemistry,
): PlanWarning[] {
  const most = kitchen.vinegarKitchenPercent.value;
  if (acid !== "vinegar" || vinegarPercent <= most) return [];
  return [
    {
      code: "strong-acid",
      message: `vinegar of ${decimal(vinegarPercent, 1)} % burns skin and eyes; above ${most} % it is not for kitchens`,
      mend: "buy it weaker, or work outdoors with gloves and goggles",
    },
  ];
}

/** Bottles of which nobody said what they were strained through: one line, with what it would change. */
function assumedMesh(bottles: readonly StockBottle[], liquids: Liquids, today: Day): string[] {
  const unsure = bottles.filter(
    ({ id, leftMl, useBy }) => leftMl > 0 && useBy >= today && liquids.whiteOf(id)?.assumed,
  );
  const [first] = unsure;
  const passes = first && liquids.whiteOf(first.id)?.passes;
  if (passes === undefined) return [];
  return [
    `${unsure.map(({ id }) => id).join(", ")}: strained through a mesh, which lets about ${decimal(100 * passes, 0)} % of the white through (\`strained:\`); after a cloth far less calcium is in the bottle`,
  ];
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
