/** The stock side of a season: bottles in hand, batches to make, and the bottle for each can. */
import { addDays, type Day } from "../dates.js";
import { decimal, type BatchInHand, type Garden, type SourceWater } from "../garden/index.js";
import type { Finding, Result } from "../problem.js";
import { canFills, rateFor, type CanDemand, type DemandStock } from "../rounds/index.js";
import type { MixedCan, PlanWarning, SeasonStock } from "../season-plan.js";
import { batchRecipes } from "./batch-recipes.js";
import { planStock } from "./batches.js";
import { dilute } from "./can.js";
import type { Chemistry } from "./constants.js";
import { checkBatches } from "./ledger-check.js";
import { bottlesInHand } from "./ledger-log.js";
import { wholeMl } from "./ledger.js";
import type { StockBottle, StockNeed, StockPlan } from "./making-problem.js";
import { wayOfMaking, type MakingRules } from "./making-rules.js";
import { readiness } from "./readiness.js";
import { recipe, type Recipe } from "./recipe.js";
import { shellsSinceLastBatch } from "./shells.js";
import { tapCalciumMgPerL, sourceWater, type WaterReport } from "./source-water.js";
import type { StockLiquid } from "./stock-liquid.js";
import type { MixTrouble } from "./trouble.js";
import { recipeMeans, stockAsMeasured } from "./usual-stock.js";

export interface StockTables {
  readonly chemistry: Chemistry;
  readonly making: MakingRules;
}

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
  const water = waterReport(garden.sourceWater);
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

  const notReady = unreadyBatches(garden, tables, liquids, today);
  const bottles = inHand.bottles.map((bottle) => notReady.bottles.get(bottle.id) ?? bottle);
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
        recipes: batchRecipes(making.batches, garden.stock, tables),
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
        ...notReady.warnings,
        ...shortageWarnings(making, demands),
        ...cans.warnings(making, byNeed),
      ],
      assumptions: making.shells.shortage === undefined ? [] : shells.assumptions,
    },
  };
}

interface Liquids {
  readonly usual: Recipe;
  readonly of: (batch: BatchInHand) => StockLiquid;
  /** Calcium as the garden pours it, g/L. */
  readonly poured: (liquid: StockLiquid) => number;
  /** The liquid nearest to a strength that a bottle of the plan has. */
  readonly ofStrength: (strengthGPerL: number) => StockLiquid;
  readonly temperatureC: number;
  readonly findings: readonly Finding[];
}

/** Every bottle's liquid, computed or as the grower measured it. */
function gardenLiquids(garden: Garden, { chemistry, making }: StockTables): Liquids {
  const findings: Finding[] = [];
  const means = recipeMeans(chemistry, garden.stock);
  const usualOf = (acid: BatchInHand["acid"]): Recipe => {
    const made = recipe(chemistry, making, { by: "volume", makeMl: 1000 }, { ...means, acid });
    if (!made.ok) throw new Error(made.problems[0]?.message ?? "no recipe");
    return made.value;
  };
  const usual = usualOf(garden.stock.acid);
  const { pour } = garden.stock;
  const liquids = new Map(
    garden.stock.batches.map((batch) => {
      const recipeUsed = batch.acid === garden.stock.acid ? usual : usualOf(batch.acid);
      const liquid = stockAsMeasured(chemistry, recipeUsed, batch, pour);
      if (!liquid.ok) findings.push(...liquid.problems.map((t) => troubleAt(t, batch.path)));
      return [batch.id, liquid.ok ? liquid.value : recipeUsed.stock] as const;
    }),
  );
  const poured = (liquid: StockLiquid): number =>
    pour === "shaken" ? liquid.shakenGPerL : liquid.clearGPerL;
  const all = [usual.stock, ...liquids.values()];
  return {
    usual,
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

function troubleAt({ code, message, mend }: MixTrouble, path: Finding["path"]): Finding {
  return { code, path, message, mend };
}

/** Hardness, alkalinity and calcium stand in for each other where only one is given. */
function waterReport(water: SourceWater | undefined): WaterReport | undefined {
  if (water === undefined) return undefined;
  const { hardnessMgPerL, alkalinityMgPerL, calciumMgPerL } = water;
  const hardness =
    hardnessMgPerL ??
    (calciumMgPerL === undefined ? alkalinityMgPerL : calciumMgPerL / calciumShareOfHardness);
  if (hardness === undefined) return undefined;
  return {
    hardnessMgPerL: hardness,
    ...(alkalinityMgPerL === undefined ? {} : { alkalinityMgPerL }),
    ...(calciumMgPerL === undefined ? {} : { calciumMgPerL }),
  };
}

// 40.078 / 100.086, from the CIAAW atomic weights.
const calciumShareOfHardness = 40.078 / 100.086;

function waterFindings(
  water: WaterReport | undefined,
  chemistry: Chemistry,
  temperatureC: number,
): Finding[] {
  if (water === undefined) return [];
  const found = sourceWater(chemistry, water, 1, temperatureC);
  return found.ok ? [] : found.problems.map((t) => troubleAt(t, ["source_water"]));
}

/** Bottles whose measured pH tells that the reaction or the gas is not done: a warning, and later use. */
function unreadyBatches(
  garden: Garden,
  { chemistry, making }: StockTables,
  liquids: Liquids,
  today: Day,
): { bottles: ReadonlyMap<string, StockBottle>; warnings: PlanWarning[] } {
  const bottles = new Map<string, StockBottle>();
  const warnings: PlanWarning[] = [];
  for (const batch of garden.stock.batches) {
    if (batch.ph === undefined) continue;
    const days = making.reaction[batch.acid].days;
    const state = readiness(chemistry, liquids.usual.jar, { ph: batch.ph }, days);
    if (!state.ok || state.value.ready) continue;
    const { bottles: found } = bottlesInHand([batch], garden.log, today, making, () =>
      liquids.poured(liquids.of(batch)),
    );
    for (const bottle of found) bottles.set(batch.id, { ...bottle, readyOn: addDays(today, days) });
    warnings.push({
      code: "stock-not-ready",
      day: today,
      message: `batch ${batch.id}: ${state.value.message}; it is not used before ${addDays(today, days)}`,
      mend: state.value.mend,
    });
  }
  return { bottles, warnings };
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
  const fills = canFills({
    waterL: demand.waterL,
    rateMlPerL: rateFor(demand, strengthGPerL),
    canL: demand.route === "drench" ? garden.canL : garden.sprayerL,
    amounts: garden.amounts,
  });
  return Math.max(1, wholeMl(fills.reduce((sum, fill) => sum + fill.count * fill.stockMl, 0)));
}

interface MixedCans {
  readonly can: (rateMlPerL: number, strengthGPerL: number) => MixedCan | undefined;
  readonly warnings: (
    making: StockPlan,
    demands: ReadonlyMap<string, CanDemand>,
  ) => readonly PlanWarning[];
}

/** The chemistry of the can, once for each rate and strength. */
function mixedCans(
  chemistry: Chemistry,
  liquids: Liquids,
  garden: Garden,
  water: WaterReport | undefined,
): MixedCans {
  const known = new Map<string, MixedCan | undefined>();
  const outside = new Map<string, PlanWarning>();
  const can: MixedCans["can"] = (rateMlPerL, strengthGPerL) => {
    const key = `${rateMlPerL.toFixed(4)} ${strengthGPerL.toFixed(4)}`;
    if (water === undefined || known.has(key)) return known.get(key);
    const liquid = liquids.ofStrength(strengthGPerL);
    const mixed = dilute(chemistry, liquid, {
      stockMlPerL: rateMlPerL,
      pour: garden.stock.pour,
      water,
      temperatureC: liquids.temperatureC,
      air: "closed",
    });
    const found = mixed.ok
      ? {
          ph: mixed.value.ph,
          dissolvedCalciumMgPerL: mixed.value.calciumMgPerL,
          settlesMgPerL: mixed.value.settlesMgPerL,
        }
      : undefined;
    known.set(key, found);
    if (mixed.ok && mixed.value.phOutside !== undefined)
      outside.set(mixed.value.phOutside, phWarning(mixed.value, chemistry, garden));
    return found;
  };
  return {
    can,
    warnings: (making, demands) => {
      for (const draw of making.draws) {
        const demand = demands.get(draw.need);
        if (demand) can(rateFor(demand, draw.strengthGPerL), draw.strengthGPerL);
      }
      return [...outside.values()];
    },
  };
}

function phWarning(
  mixed: { ph: number; waterPh: number; phOutside: "low" | "high" | undefined },
  chemistry: Chemistry,
  garden: Garden,
): PlanWarning {
  const { canPhLow, canPhHigh } = chemistry.practice;
  const waterToo = mixed.waterPh < canPhLow.value || mixed.waterPh > canPhHigh.value;
  return {
    code: "can-ph",
    day: garden.season.from,
    message: `the mixed can is at pH ${decimal(mixed.ph, 1)}, outside ${canPhLow.value} to ${canPhHigh.value}${waterToo ? `; the water alone is at ${decimal(mixed.waterPh, 1)}` : ""}`,
    mend:
      mixed.phOutside === "low"
        ? "let the stock finish on more shell before it is used, or give less of it"
        : "check the figures of the source water; rain water helps",
  };
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
