// @ts-nocheck
import { addDays, day, type Day } from "../../src/dates.js";
import type { BatchRecipe, SeasonStock } from "../../src/season/stock-side.js";
import type { Discard, PlannedBatch, StockPlan } from "../../src/stock/making-problem.js";

/** The stock side of a plan; a test states only what differs. */
export function aSeasonStock(
  making: Partial<StockPlan> = {},
  differs: Partial<Omit<SeasonStock, "making">> = {},
): SeasonStock {
  const batches = making.batches ?? [];
  return {
    making: {
      draws: [],
      batches,
      shortages: [],
      changes: [],
      discards: [],
      account: [],
      shells: { eggs: batches.reduce((sum, { eggs }) => sum + eggs, 0), shellG: 0 },
      ...making,
    },
    recipes: batches.map(({ id }) => aRecipe({ batch: id })),
    visitMinutes: { "dry-shells": 20, "add-acid": 20, strain: 15 },
    acid: "citric",
    keep: "fridge",
    pour: "shaken",
    bottleMl: 500,
    newStrengthGPerL: 17.75,
    newClearStrengthGPerL: 0.19,
    newPh: 8,
    ...differs,
  };
}

/** Begun four days before it is ready, acid two days before; kept for 90 days. */
export function aBatch(ready: string, differs: Partial<PlannedBatch> = {}): PlannedBatch {
  const readyOn = day(ready);
  const startOn = addDays(readyOn, -4);
  return {
    id: `batch-${readyOn}`,
    number: 1,
    startOn,
    readyOn,
    useBy: addDays(readyOn, 90),
    steps: [
      { step: "dry-shells", day: startOn },
      { step: "add-acid", day: addDays(readyOn, -2) },
      { step: "strain", day: readyOn },
    ],
    volumeMl: 1000,
    bottles: 2,
    eggs: 12,
    shellG: 62,
    strengthGPerL: 17.75,
    serves: [
      { need: "n1", day: readyOn, ml: 20 },
      { need: "n2", day: addDays(readyOn, 14), ml: 20 },
    ],
    ...differs,
  };
}

export function aRecipe(differs: Partial<BatchRecipe> = {}): BatchRecipe {
  const step = (key: BatchRecipe["steps"][number]["key"], dayFromStart: number) => ({
    key,
    dayFromStart,
    text: `do ${key}`,
    cautions: [`mind ${key}`],
  });
  return {
    batch: "batch-2027-06-12",
    acidG: 58.4,
    waterMl: 1012,
    vesselL: 5,
    steps: [
      step("dry-shells", 0),
      step("grind", 2),
      step("mix", 2),
      step("wait", 2),
      step("check", 4),
      step("strain", 4),
      step("store", 4),
      step("use", 4),
    ],
    ...differs,
  };
}

export function aDiscard(useUpBy: string, differs: Partial<Discard> = {}): Discard {
  const last: Day = day(useUpBy);
  return { batch: "B1", useUpBy: last, doOn: last, ml: 145, ...differs };
}
