/** How much of everything for a batch, sized backwards from what is wanted, and what will come of it. */
import type { Acid, Amounts } from "../../garden/index.js";
import {
  type AcidDose,
  vinegarDensityGPerMl,
  waterDensityKgPerL,
  brewBatch,
  fizzing,
  openAir,
  type Chemistry,
  type Jar,
  shellWanted,
  type StockLiquid,
  strained,
  badQuantities,
  failed,
  type MixResult,
  trouble,
} from "../chemistry/index.js";
import type { MakingRules } from "../making-rules.js";
import { recipeSteps, type RecipeStep } from "./recipe-steps.js";

/** What the batch is sized from. Acid: crystals from the bag, or vinegar, as weighed. */
export type BatchSize =
  | { readonly by: "volume"; readonly makeMl: number }
  | { readonly by: "shells"; readonly eggs: number }
  | { readonly by: "acid"; readonly grams: number }
  /** Vinegar as measured out; only where the acid is vinegar. */
  | { readonly by: "vinegar"; readonly volumeMl: number };

export interface RecipeMeans {
  readonly acid: Acid;
  readonly citricForm: "anhydrous" | "monohydrate";
  /** g of acetic acid per 100 mL. */
  readonly vinegarPercent: number;
  /** Calcium carbonate in the dry shell, 0 to 1. */
  readonly shellPurity: number;
  readonly bottleMl: number;
  readonly temperatureC: number;
  /** Dry shell of one egg; a large hen's egg when not given. */
  readonly gPerShell?: number;
  /** Measures in which the steps speak; metric when not given. */
  readonly amounts?: Amounts;
}

export interface Recipe {
  readonly means: RecipeMeans;
  readonly jar: Jar;
  readonly shellG: number;
  readonly eggs: number;
  /** Level US tablespoons (14.8 mL) of crushed shell. */
  readonly shellTablespoons: number;
  /** Citric acid as weighed from the bag; for vinegar, the acetic acid in it. */
  readonly acidG: number;
  /** Level US tablespoons of citric acid. */
  readonly acidTablespoons?: number;
  readonly vinegarMl?: number;
  /** Water to add; none with vinegar. */
  readonly waterMl: number;
  /** Smallest open vessel that keeps the foam in. */
  readonly vesselL: number;
  readonly carbonDioxideG: number;
  readonly carbonDioxideL: number;
  readonly makesMl: number;
  readonly bottles: number;
  readonly phWhileFizzing: number;
  readonly phFinished: number;
  /** Calcium in g/L: shaken; poured clear once settled; and clear throughout in the first day or two. */
  readonly shakenGPerL: number;
  readonly clearGPerL: number;
  readonly beforeCrystalsGPerL: number;
  /** Fine calcium citrate that comes out within days. */
  readonly crystalsG: number;
  readonly shellLeftG: number;
  readonly dryDays: number;
  readonly reactionDays: number;
  readonly shelfDays: number;
  readonly fridgeDays: number;
  readonly steps: readonly RecipeStep[];
  /** The whole batch at rest in air, for dilution; before straining losses. */
  readonly stock: StockLiquid;
}

/** Per litre of water, or of vinegar. */
function unitJar(chemistry: Chemistry, means: RecipeMeans): Jar {
  const { citricAnhydrousGPerLWater, shellExcess } = chemistry.practice;
  const { gPerMol } = chemistry;
  const hydration =
    means.citricForm === "monohydrate" ? gPerMol.citricMonohydrate / gPerMol.citricAnhydrous : 1;
  const acid: AcidDose =
    means.acid === "citric"
      ? {
          kind: "citric",
          form: means.citricForm,
          grams: citricAnhydrousGPerLWater.value * hydration,
        }
      : { kind: "vinegar", percent: means.vinegarPercent, volumeMl: 1000 };
  return {
    shellG: shellExcess.value * shellWanted(chemistry, { acid, shellPurity: means.shellPurity }),
    shellPurity: means.shellPurity,
    acid,
    waterG: means.acid === "citric" ? 1000 * waterDensityKgPerL(means.temperatureC) : 0,
    temperatureC: means.temperatureC,
    citrateSolidMayForm: true,
  };
}

function scaledJar(jar: Jar, factor: number): Jar {
  const { acid } = jar;
  return {
    ...jar,
    shellG: jar.shellG * factor,
    waterG: jar.waterG * factor,
    acid:
      acid.kind === "citric"
        ? { ...acid, grams: acid.grams * factor }
        : { ...acid, volumeMl: acid.volumeMl * factor },
  };
}

/**
 * The recipe of a batch. Everything is in proportion, so that one unit batch is solved and scaled.
 * Trouble: sizes that are nought or less, vinegar without acid or stronger than a kitchen's, shell
 * purity of nought, temperature outside 0 to 100 degC.
 */
export function recipe(
  chemistry: Chemistry,
  making: Pick<MakingRules, "dry_shells" | "reaction" | "shelf_life">,
  size: BatchSize,
  means: RecipeMeans,
): MixResult<Recipe> {
  const gPerShell = means.gPerShell ?? chemistry.kitchen.shellPerEggG.value;
  const problems = badQuantities({
    ...sizeQuantity(size),
    "bottle (mL)": means.bottleMl > 0 ? means.bottleMl : -1,
    "dry shell of an egg (g)": gPerShell > 0 ? gPerShell : -1,
    "shell purity": means.shellPurity > 0 ? means.shellPurity : -1,
    ...(means.acid === "vinegar" && means.vinegarPercent === 0
      ? { "acid in vinegar (%)": -1 }
      : {}),
  });
  if (size.by === "vinegar" && means.acid !== "vinegar")
    problems.push(
      trouble(
        "not-a-quantity",
        "the batch is measured by a volume of acid, and citric acid is weighed",
        "give the weight of the citric acid, or make the batch with vinegar",
      ),
    );
  if (problems.length > 0) return failed(...problems);

  const unit = unitJar(chemistry, means);
  const unitFinished = brewBatch(chemistry, { ...unit, gas: openAir(chemistry) });
  if (!unitFinished.ok) return unitFinished;
  const kept = 1 - chemistry.practice.strainingLossShare.value;
  const unitMl = kept * strained(chemistry, unitFinished.value).shakenMl;
  const factor = sizeFactor(chemistry, size, unit, unitMl, gPerShell);
  const jar = scaledJar(unit, factor);
  const finished = brewBatch(chemistry, { ...jar, gas: openAir(chemistry) });
  if (!finished.ok) return finished;
  const bubbling = brewBatch(chemistry, { ...jar, gas: fizzing });
  if (!bubbling.ok) return bubbling;
  const clear = brewBatch(chemistry, {
    ...jar,
    gas: openAir(chemistry),
    citrateSolidMayForm: false,
  });
  if (!clear.ok) return clear;

  const stock = strained(chemistry, finished.value);
  const { acid } = jar;
  const waterMl = jar.waterG / waterDensityKgPerL(means.temperatureC);
  const liquidMl = waterMl + (acid.kind === "vinegar" ? acid.volumeMl : 0);
  const makesMl = factor * unitMl;
  const amounts = {
    means,
    jar,
    shellG: jar.shellG,
    // A sum that comes back a hair over whole eggs must not ask for one more.
    eggs: Math.ceil(jar.shellG / gPerShell - 1e-9),
    shellTablespoons: jar.shellG / chemistry.kitchen.shellPowderPerTablespoonG.value,
    acidG: acid.kind === "citric" ? acid.grams : (acid.volumeMl * acid.percent) / 100,
    ...(acid.kind === "citric"
      ? { acidTablespoons: acid.grams / chemistry.kitchen.citricPerTablespoonG.value }
      : { vinegarMl: acid.volumeMl }),
    waterMl,
    vesselL: vesselL(chemistry, liquidMl),
    carbonDioxideG: finished.value.carbonDioxideG,
    carbonDioxideL: finished.value.carbonDioxideL,
    makesMl,
    bottles: Math.ceil(makesMl / means.bottleMl - 1e-9),
    phWhileFizzing: bubbling.value.ph,
    phFinished: finished.value.ph,
    shakenGPerL: stock.shakenGPerL,
    clearGPerL: stock.clearGPerL,
    beforeCrystalsGPerL: clear.value.calciumDissolvedGPerL,
    crystalsG: finished.value.crystalsG,
    shellLeftG: finished.value.shellLeftG,
    dryDays: making.dry_shells.days,
    reactionDays: making.reaction[means.acid].days,
    shelfDays: making.shelf_life.shelf.days,
    fridgeDays: making.shelf_life.fridge.days,
    stock,
  };
  return { ok: true, value: { ...amounts, steps: recipeSteps(amounts) } };
}

function sizeQuantity(size: BatchSize): Record<string, number> {
  const positive = (n: number): number => (n > 0 ? n : -1);
  switch (size.by) {
    case "volume":
      return { "batch (mL)": positive(size.makeMl) };
    case "shells":
      return { "shells (eggs)": positive(size.eggs) };
    case "acid":
      return { "acid (g)": positive(size.grams) };
    case "vinegar":
      return { "vinegar (mL)": positive(size.volumeMl) };
  }
}

/** How many unit jars it takes. */
function sizeFactor(
  chemistry: Chemistry,
  size: BatchSize,
  unit: Jar,
  unitMl: number,
  gPerShell: number,
): number {
  switch (size.by) {
    case "volume":
      return size.makeMl / unitMl;
    case "shells":
      return (size.eggs * gPerShell) / unit.shellG;
    case "acid":
      return size.grams / weighedAcidG(chemistry, unit.acid);
    case "vinegar":
      return unit.acid.kind === "vinegar" ? size.volumeMl / unit.acid.volumeMl : NaN;
  }
}

function weighedAcidG(chemistry: Chemistry, acid: AcidDose): number {
  return acid.kind === "citric"
    ? acid.grams
    : acid.volumeMl * vinegarDensityGPerMl(chemistry, acid.percent);
}

const vesselsL = [0.5, 1, 1.5, 2, 3, 4, 5, 7.5, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

/** The next size up of jar, bowl or bucket that holds the liquid and its foam. */
function vesselL(chemistry: Chemistry, liquidMl: number): number {
  const needL = (liquidMl * chemistry.practice.foamRise.value) / 1000;
  return vesselsL.find((l) => l >= needL) ?? 50 * Math.ceil(needL / 50);
}
