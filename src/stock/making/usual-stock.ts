/** The stock that a grower's usual recipe gives, set right by what was measured on the bottle. */
import type { BatchInHand, PourStyle, StockSettings, Usual } from "../../garden/index.js";
import {
  atStrength,
  type Brew,
  brewAtPh,
  brewBatch,
  type Chemistry,
  failed,
  type Jar,
  type MixResult,
  openAir,
  type StockLiquid,
  strained,
  trouble,
  whitePassed,
} from "../chemistry/index.js";
import { rememberingFor } from "../../values.js";
import type { MakingRules, StockTables } from "../making-rules.js";
import type { Recipe, RecipeMeans } from "./recipe-types.js";
import { recipe } from "./recipe.js";

/** What the grower says of a bottle. */
export type BottleFacts = Pick<BatchInHand, "strengthGPerL" | "ph" | "strained">;

/** What the garden file says of the kitchen, at room temperature. */
export function recipeMeans(
  chemistry: Chemistry,
  settings: Pick<
    StockSettings,
    "acid" | "citricForm" | "vinegarPercent" | "shellPurity" | "bottleMl" | "eggs"
  >,
): RecipeMeans {
  const { acid, citricForm, vinegarPercent, shellPurity, bottleMl, eggs } = settings;
  const temperatureC = chemistry.kitchen.roomC.value;
  return { acid, citricForm, vinegarPercent, shellPurity, bottleMl, eggs, temperatureC };
}

/** Of what was looked at before: throws where there is trouble, which is a bug. */
function certain<T>(made: MixResult<T>): T {
  if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join("; "));
  return made.value;
}

/** A recipe whose means were looked at before. */
export const soundRecipe: (tables: StockTables, makeMl: number, means: RecipeMeans) => Recipe =
  rememberingFor(500, recipeKey, newRecipe);

function recipeKey(makeMl: number, means: RecipeMeans): string {
  return JSON.stringify([makeMl, means]);
}

function newRecipe({ chemistry, making }: StockTables, makeMl: number, means: RecipeMeans): Recipe {
  return certain(recipe(chemistry, making, { by: "volume", makeMl }, means));
}

/**
 * Calcium in the stock for which rates are written, g/L: the trade's recipe with citric acid, at rest
 * in air and shaken, with all its white. At this strength the trade's 10 mL in 4 L is what a can gets.
 */
export function referenceStockGPerL(
  tables: StockTables,
  usual: Pick<Usual, "vinegar_percent" | "shell_purity_percent" | "bottle_ml">,
): number {
  const means = recipeMeans(tables.chemistry, {
    acid: "citric",
    citricForm: "anhydrous",
    vinegarPercent: usual.vinegar_percent,
    shellPurity: usual.shell_purity_percent / 100,
    bottleMl: usual.bottle_ml,
    // Only the brew is asked for, not how many eggs it takes.
    eggs: { name: "any", dryShellG: 1 },
  });
  const brew = certain(finishedBrew(tables.chemistry, soundRecipe(tables, 1000, means).jar));
  return strained(tables.chemistry, brew).shakenGPerL;
}

/**
 * What is in a bottle of the garden: a litre made by the usual recipe with the bottle's own acid,
 * strained as it was and as measured. Trouble as in {@link recipe} and {@link stockAsMeasured}.
 */
export function bottleStock(
  chemistry: Chemistry,
  making: MakingRules,
  settings: StockSettings,
  batch: Pick<BatchInHand, "acid"> & BottleFacts,
): MixResult<StockLiquid> {
  const means = recipeMeans(chemistry, { ...settings, acid: batch.acid });
  const made = recipe(chemistry, making, { by: "volume", makeMl: 1000 }, means);
  return made.ok ? stockAsMeasured(chemistry, made.value, batch, settings.pour) : made;
}

/** A bottle of which the file does not say what it was strained through. */
export const assumedStrainer = "mesh";

/**
 * A measured pH sets how far the reaction and the gas have gone; a measured strength sets the
 * calcium. Either overrides what was computed. Trouble: a pH outside 0 to 14, a strength that is not
 * above nought.
 */
export function stockAsMeasured(
  chemistry: Chemistry,
  { jar }: Pick<Recipe, "jar">,
  facts: BottleFacts,
  pour: PourStyle,
): MixResult<StockLiquid> {
  const { ph, strengthGPerL } = facts;
  if (strengthGPerL !== undefined && !(strengthGPerL > 0 && Number.isFinite(strengthGPerL)))
    return failed(
      trouble("not-a-quantity", `strength is ${strengthGPerL} g/L`, "give g of calcium per litre"),
    );
  const brew = ph === undefined ? finishedBrew(chemistry, jar) : brewOfPh(chemistry, jar, ph);
  if (!brew.ok) return brew;
  const passed = whitePassed(chemistry, facts.strained ?? assumedStrainer);
  const stock = strained(chemistry, brew.value, passed);
  return {
    ok: true,
    value: strengthGPerL === undefined ? stock : atStrength(stock, strengthGPerL, pour),
  };
}

function finishedBrew(chemistry: Chemistry, jar: Jar): MixResult<Brew> {
  return brewBatch(chemistry, { ...jar, gas: openAir(chemistry) });
}

function brewOfPh(chemistry: Chemistry, jar: Jar, ph: number): MixResult<Brew> {
  const found = brewAtPh(chemistry, jar, ph);
  return found.ok ? { ok: true, value: found.value.brew } : found;
}
