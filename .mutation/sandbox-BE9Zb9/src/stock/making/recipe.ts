/** How much of everything for a batch, sized backwards from what is wanted, and what will come of it. */
// @ts-nocheck

import type { Acid } from "../../garden/index.js";
import {
  type AcidDose,
  acidMeasures,
  badQuantities,
  brewBatch,
  type Chemistry,
  failed,
  fizzing,
  type Jar,
  type MixResult,
  type MixTrouble,
  openAir,
  scaledAcid,
  shellWanted,
  strained,
  trouble,
  waterDensityKgPerL,
  whitePassed,
} from "../chemistry/index.js";
import type { MakingRules } from "../making-rules.js";
import { recipeSteps } from "./recipe-steps.js";
import type { BatchSize, Recipe, RecipeAmounts, RecipeMeans } from "./recipe-types.js";

/** Per litre of water, or of vinegar, which brings its own. */
function unitJar(chemistry: Chemistry, means: RecipeMeans): Jar {
  const { shellPurity, temperatureC } = means;
  const acid = unitDose(chemistry, means);
  return {
    shellG: chemistry.practice.shellExcess.value * shellWanted(chemistry, { acid, shellPurity }),
    shellPurity,
    acid,
    waterG:
      acidMeasures(chemistry, acid).volumeMl > 0 ? 0 : 1000 * waterDensityKgPerL(temperatureC),
    temperatureC,
    citrateSolidMayForm: true,
  };
}

function unitDose({ practice, gPerMol }: Chemistry, means: RecipeMeans): AcidDose {
  const { acid, citricForm: form, vinegarPercent: percent } = means;
  switch (acid) {
    case "citric": {
      const hydration =
        form === "monohydrate" ? gPerMol.citricMonohydrate / gPerMol.citricAnhydrous : 1;
      const grams = practice.citricAnhydrousGPerLWater.value * hydration;
      return { kind: "citric", form, grams };
    }
    case "vinegar":
      return { kind: "vinegar", percent, volumeMl: 1000 };
  }
}

function scaledJar(jar: Jar, factor: number): Jar {
  return {
    ...jar,
    shellG: jar.shellG * factor,
    waterG: jar.waterG * factor,
    acid: scaledAcid(jar.acid, factor),
  };
}

function impossible(
  size: BatchSize,
  means: RecipeMeans,
  acid: Acid,
  unitAcid: ReturnType<typeof acidMeasures>,
  gPerShell: number,
): MixTrouble[] {
  const { name, wanted } = sizeQuantity(size);
  const problems = badQuantities({
    [name]: wanted > 0 ? wanted : -1,
    "bottle (mL)": means.bottleMl > 0 ? means.bottleMl : -1,
    "dry shell of an egg (g)": gPerShell > 0 ? gPerShell : -1,
    "shell purity": means.shellPurity > 0 ? means.shellPurity : -1,
    ...(acid === "vinegar" && unitAcid.pureG === 0 ? { "acid in vinegar (%)": -1 } : {}),
  });
  if (size.by === "vinegar" && unitAcid.volumeMl === 0)
    problems.push(
      trouble(
        "not-a-quantity",
        "the batch is measured by a volume of acid, and citric acid is weighed",
        "give the weight of the citric acid, or make the batch with vinegar",
      ),
    );
  return problems;
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
  const unit = unitJar(chemistry, means);
  const unitAcid = acidMeasures(chemistry, unit.acid);
  const gPerShell = means.eggs.dryShellG;
  const { wanted } = sizeQuantity(size);
  const problems = impossible(size, means, unit.acid.kind, unitAcid, gPerShell);
  if (problems.length > 0) return failed(...problems);

  const unitFinished = brewBatch(chemistry, { ...unit, gas: openAir(chemistry) });
  if (!unitFinished.ok) return unitFinished;
  const { practice } = chemistry;
  const kept = 1 - practice.strainingLossShare.value;
  const passed = whitePassed(chemistry, "mesh");
  const unitMl = kept * strained(chemistry, unitFinished.value, passed).shakenMl;
  const unitHas: Readonly<Record<BatchSize["by"], number>> = {
    volume: unitMl,
    shells: unit.shellG,
    acid: unitAcid.weighedG,
    vinegar: unitAcid.volumeMl,
  };
  const factor = (size.by === "shells" ? wanted * gPerShell : wanted) / unitHas[size.by];
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

  const stock = strained(chemistry, finished.value, passed);
  const waterMl = jar.waterG / waterDensityKgPerL(means.temperatureC);
  const acid = acidMeasures(chemistry, jar.acid);
  const makesMl = factor * unitMl;
  const amounts: RecipeAmounts = {
    means,
    jar,
    shellG: jar.shellG,
    // A sum that comes back a hair over whole eggs must not ask for one more.
    eggs: Math.ceil(jar.shellG / gPerShell - 1e-9),
    shellTablespoons: jar.shellG / chemistry.kitchen.shellPowderPerTablespoonG.value,
    crushedTablespoons: jar.shellG / chemistry.kitchen.shellCrushedPerTablespoonG.value,
    acidG: acid.pureG,
    ...inTheKitchen(chemistry, jar.acid),
    waterMl,
    // To full 10 mL, as a jug is read.
    washMl: 10 * Math.ceil((practice.washWaterShare.value * waterMl) / 10),
    vesselL: vesselL(waterMl + acid.volumeMl, finished.value.carbonDioxideL, chemistry),
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
    whitePasses: passed,
    shellLeftG: finished.value.shellLeftG,
    dryDays: making.dry_shells.days,
    reactionDays: making.reaction[means.acid].days,
    shelfDays: making.shelf_life.shelf.days,
    fridgeDays: making.shelf_life.fridge.days,
    stock,
  };
  return { ok: true, value: { ...amounts, steps: recipeSteps(amounts, chemistry) } };
}

/** What the batch is sized from and how much of it is wanted. */
function sizeQuantity(size: BatchSize): { name: string; wanted: number } {
  switch (size.by) {
    case "volume":
      return { name: "batch (mL)", wanted: size.makeMl };
    case "shells":
      return { name: "shells (eggs)", wanted: size.eggs };
    case "acid":
      return { name: "acid (g)", wanted: size.grams };
    case "vinegar":
      return { name: "vinegar (mL)", wanted: size.volumeMl };
  }
}

/** As a kitchen measures it. */
function inTheKitchen(
  { kitchen }: Chemistry,
  acid: AcidDose,
): Pick<Recipe, "acidTablespoons" | "vinegarMl"> {
  switch (acid.kind) {
    case "citric":
      return { acidTablespoons: acid.grams / kitchen.citricPerTablespoonG.value };
    case "vinegar":
      return { vinegarMl: acid.volumeMl };
  }
}

const vesselsL = [0.5, 1, 1.5, 2, 3, 4, 5, 7.5, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

/** The next size up of jar, bowl or bucket that holds the liquid and the foam of its gas. */
function vesselL(liquidMl: number, gasL: number, { practice }: Chemistry): number {
  const needL = liquidMl / 1000 + practice.foamLPerGasL.value * gasL;
  return vesselsL.find((l) => l >= needL) ?? 50 * Math.ceil(needL / 50);
}
