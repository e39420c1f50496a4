/** What a recipe is sized from and what it holds. */
import type { Acid, Amounts, EggSize } from "../../garden/index.js";
import type { Jar, StockLiquid } from "../chemistry/index.js";

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
  readonly eggs: EggSize;
  /** Measures in which the steps speak; metric when not given. */
  readonly amounts?: Amounts;
}

/** All of a recipe but its telling. */
export interface RecipeAmounts {
  readonly means: RecipeMeans;
  readonly jar: Jar;
  readonly shellG: number;
  readonly eggs: number;
  /** Level US tablespoons (14.8 mL) of shell ground to a fine powder. */
  readonly shellTablespoons: number;
  /** The same of shell that was only crushed: it lies more loosely. */
  readonly crushedTablespoons: number;
  /** Citric acid as weighed from the bag; for vinegar, the acetic acid in it. */
  readonly acidG: number;
  /** Level US tablespoons of citric acid. */
  readonly acidTablespoons?: number;
  readonly vinegarMl?: number;
  /** Water to add; none with vinegar. */
  readonly waterMl: number;
  /** Of that, kept back to wash the white through the sieve; none with vinegar. */
  readonly washMl: number;
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
  /** White that comes out: calcium citrate, within days; of strong vinegar calcium acetate. */
  readonly crystalsG: number;
  /** Share of it, 0 to 1, that is taken to come through the mesh. */
  readonly whitePasses: number;
  readonly shellLeftG: number;
  readonly dryDays: number;
  readonly reactionDays: number;
  readonly shelfDays: number;
  readonly fridgeDays: number;
  /** The whole batch at rest in air, for dilution, with the white that a mesh lets through; before liquid is lost. */
  readonly stock: StockLiquid;
}

export interface RecipeStep {
  readonly key: "dry-shells" | "grind" | "mix" | "wait" | "check" | "strain" | "store" | "use";
  /** Days after the shells are set out. */
  readonly dayFromStart: number;
  readonly text: string;
  readonly cautions: readonly string[];
}

/** Amounts of one batch, what comes of them, and the steps in the order of days. */
export interface Recipe extends RecipeAmounts {
  readonly steps: readonly RecipeStep[];
}
