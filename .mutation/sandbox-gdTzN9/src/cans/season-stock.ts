/** The stock side of a season: bottles in hand, batches to make, and the bottle for each can. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { decimal, type Garden } from "../garden/index.js";
import type { Finding, Result } from "../problem.js";
import type { Published } from "../published/index.js";
import type { PlanWarning, SeasonStock } from "../season/index.js";
import {
  bottlesInHand,
  bottlesInOrder,
  checkBatches,
  type Dose,
  type Emptied,
  ledgerSum,
  planStock,
  soonestStock,
  type Standing,
  type StockBottle,
  type StockNeed,
  type StockPlan,
  type StockTables,
  type Taken,
  tapCalciumMgPerL,
  visitMinutes,
  waterFindings,
  waterReport,
  type WaterReport,
  wayOfMaking,
  batchName,
} from "../stock/index.js";
import { given } from "../values.js";
import type { TapCalcium } from "./assemble.js";
import { batchRecipes } from "./batch-recipes.js";
import { type CanDemand, fillsAfter } from "./demands.js";
import { fillsMl } from "./fills.js";
import { gardenLiquids, type Liquids, waitingBottles } from "./garden-liquids.js";
import { shortageWarnings, strainDayWarnings, strongAcidWarnings } from "./making-warnings.js";
import { mixedCans } from "./mixed-cans.js";
import { type Poured, pouring } from "./poured.js";
import { shellSupply } from "./shell-supply.js";
import { sprayWarnings } from "./spray-warnings.js";
import { targetWarnings } from "./reached-targets.js";

export interface StockSide {
  readonly stock: SeasonStock;
  readonly pouredFor: (demand: CanDemand) => Poured;
  readonly tapCalcium: TapCalcium;
  readonly warnings: readonly PlanWarning[];
  /**
   * The first day on which new stock can be bottled; absent where none can in this season, or where
   * the file lists no batch: who keeps no books of bottles may have one.
   */
  readonly soonest?: Day;
  /** What gave more than its bottle held. */
  readonly emptied: readonly Emptied[];
  readonly assumptions: readonly string[];
}

/**
 * @param demands what is still to be given
 * @param taken what left the bottles before
 * @returns findings where what the file says of batches, log or water cannot be
 */
export function seasonStock(
  file: Garden,
  demands: readonly CanDemand[],
  taken: readonly Taken[],
  published: Published | undefined,
  standing: Standing,
  tables: StockTables,
  today: Day,
): Result<StockSide, Finding> {
  const batches = [...file.stock.batches, ...standing.taken];
  const garden = { ...file, stock: { ...file.stock, batches } };
  const water = waterReport(tables.chemistry, garden.sourceWater);
  const liquids = gardenLiquids(garden, tables);
  const inHand = bottlesInHand(batches, taken, today, tables.making, (batch) =>
    liquids.poured(liquids.of(batch.id)),
  );
  const findings = [
    ...checkBatches(file.stock, today),
    ...inHand.findings,
    ...liquids.findings,
    ...waterFindings(water, tables.chemistry, liquids.temperatureC),
  ];
  if (findings.length > 0) return { ok: false, problems: findings };

  const waiting = waitingBottles(inHand.bottles, garden, tables, liquids, today);
  const newGPerL = liquids.poured(liquids.usual.stock);
  const way = wayOfMaking(garden.stock, tables.making, newGPerL);
  const shells = shellSupply(
    garden,
    liquids.usual,
    garden.stock.eggs.dryShellG,
    way.dryDays + way.reactionDays,
    published,
    standing,
    today,
  );
  const ahead = demands.filter((demand) => demand.day >= today && demand.waterL > 0);
  const problem = {
    today,
    season: garden.season,
    amounts: garden.amounts,
    away: garden.feeding.away,
    ...needsOf(ahead, newGPerL, garden),
    bottles: waiting.bottles,
    ...given({ lastPoured: lastPoured(taken, inHand.bottles) }),
    underWay: standing.underWay,
    toBegin: standing.toBegin,
    told: published?.batches ?? [],
    making: way,
    shells: shells.supply,
  };
  const making = planStock(problem);
  const cans = mixedCans(tables.chemistry, liquids, garden, water);
  const pouringOf = pouring(garden, liquids, making, cans.of);
  const poured = new Map(ahead.map((demand) => [demand.id, pouringOf(demand)]));
  const pouredFor = (demand: CanDemand): Poured => poured.get(demand.id) ?? pouringOf(demand);
  return {
    ok: true,
    value: {
      stock: stockSideOf(garden, making, inHand.bottles, liquids, tables),
      pouredFor,
      tapCalcium: water === undefined ? {} : tapCalciumOf(tables, water),
      warnings: [
        ...waiting.warnings,
        ...shortageWarnings(making.shortages, ahead, garden.amounts),
        ...targetWarnings(
          ahead,
          pouredFor,
          making.batches,
          liquids,
          garden.amounts,
          tables.chemistry,
        ),
        ...sprayWarnings(ahead, pouredFor, garden.amounts),
        ...strainDayWarnings(making.batches, way.readyBeforeDays, garden.amounts),
        ...cans.warnings(),
        ...(making.batches.length > 0 ? strongAcidWarnings(garden, tables.chemistry) : []),
      ],
      ...(file.stock.batches.length > 0 ? given({ soonest: soonestStock(problem) }) : {}),
      emptied: inHand.emptied,
      assumptions: [
        ...(making.shells.shortage === undefined ? [] : shells.assumptions),
        ...assumedMesh(inHand.bottles, liquids, today),
      ],
    },
  };
}

function tapCalciumOf({ chemistry }: StockTables, water: WaterReport): TapCalcium {
  const mgPerL = tapCalciumMgPerL(chemistry, water);
  const isExact = water.calciumMgPerL !== undefined || mgPerL === 0;
  return { tapCalciumMgPerL: mgPerL, ...(isExact ? {} : { tapCalciumAtMost: true }) };
}

function stockSideOf(
  garden: Garden,
  making: StockPlan,
  bottles: readonly StockBottle[],
  liquids: Liquids,
  tables: StockTables,
): SeasonStock {
  const { acid, keep, pour, bottleMl } = garden.stock;
  const { stock: newLiquid } = liquids.usual;
  return {
    making,
    recipes: batchRecipes(making.batches, garden, tables),
    inHand: bottles.map(({ id, readyOn: madeOn, ...rest }) => {
      return { id, madeOn, ...rest, ...given({ white: liquids.whiteOf(id) }) };
    }),
    visitMinutes: visitMinutes(tables.making),
    acid,
    keep,
    pour,
    bottleMl,
    newStrengthGPerL: liquids.poured(newLiquid),
    newClearStrengthGPerL: newLiquid.clearGPerL,
    newPh: newLiquid.ph,
    ...given({ newWhite: liquids.newWhite }),
  };
}

/** On a day on which several bottles were poured from, the ledger goes from one to the next in order. */
function lastPoured(
  taken: readonly Taken[],
  bottles: readonly StockBottle[],
): StockBottle | undefined {
  const named = taken.filter(({ batch }) => batch !== undefined);
  const lastDay = named
    .map(({ day }) => day)
    .sort()
    .at(-1);
  const ofDay = new Set(named.filter(({ day }) => day === lastDay).map(({ batch }) => batch));
  return bottlesInOrder(bottles).findLast(({ id }) => ofDay.has(id));
}

/** What the demands want of stock, and what their cans take of a bottle. */
function needsOf(
  demands: readonly CanDemand[],
  newGPerL: number,
  garden: Garden,
): Pick<Parameters<typeof planStock>[0], "needs" | "mlFor"> {
  const byNeed = new Map(demands.map((demand) => [demand.id, demand]));
  return {
    needs: demands.map((demand): StockNeed => needOf(demand, newGPerL)),
    mlFor: (need, strengthGPerL, before) => {
      const demand = byNeed.get(need.id);
      return demand === undefined ? 0 : measuredMl(demand, strengthGPerL, before, garden);
    },
  };
}

function needOf(demand: CanDemand, newGPerL: number): StockNeed {
  const { id, day, waterL, rate, highestRateMlPerL } = demand;
  const targetMgPerL = rate.kind === "fixed" ? rate.mlPerL * newGPerL : rate.targetMgPerL;
  return { id, day, calciumMg: targetMgPerL * waterL, mostMl: highestRateMlPerL * waterL };
}

/** What the cans of a demand still take from a bottle of that strength, in hundredths of a mL. */
function measuredMl(
  demand: CanDemand,
  strengthGPerL: number,
  before: readonly Dose[],
  garden: Garden,
): number {
  const fills = fillsAfter(demand, before, strengthGPerL, garden);
  return ledgerSum([fillsMl(fills), ...before.map(({ ml }) => -ml)]);
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
    `${unsure.map(({ id }) => batchName(id)).join(", ")}: strained through a mesh, which lets about ${decimal(100 * passes, 0)} % of the white through (\`strained:\`); after a cloth far less calcium is in the bottle`,
  ];
}
