/** The stock in the can: what is dissolved, what still settles, how sour or limy it gets. */
import type { PourStyle } from "../../garden/index.js";
import { closedVessel, openAir } from "./brew.js";
import type { Chemistry } from "./constants.js";
import { type Contents, mixed, scaled } from "./contents.js";
import type { Equilibrium } from "./equilibrium-types.js";
import { equilibrate } from "./equilibrium.js";
import { sourceWater, tapCalciumMgPerL, type WaterReport } from "./source-water.js";
import { type Dose, poured, type StockLiquid, together } from "./stock-liquid.js";
import { badQuantities, failed, type MixResult } from "./trouble.js";

/** A can before it is mixed. */
export interface CanInput {
  /** mL of stock, as poured, in each litre of the finished can. */
  readonly stockMlPerL: number;
  readonly pour: PourStyle;
  readonly water: WaterReport;
  readonly temperatureC: number;
  /** Closed: used at once, no gas exchanged since mixing. Open: stood until in balance with air. */
  readonly air: "closed" | "open";
}

/** Stock of one bottle in a litre of the can. */
export interface CanPart extends Pick<CanInput, "stockMlPerL"> {
  readonly stock: StockLiquid;
}

/** A can once it is mixed, per litre. */
export interface CanLiquid {
  readonly ph: number;
  /** Dissolved, from stock and tap. */
  readonly calciumMgPerL: number;
  readonly calciumFromTapMgPerL: number;
  /** Brought by the stock, dissolved or not. */
  readonly calciumFromStockMgPerL: number;
  /** Crystals of calcium citrate that do not dissolve: stir the can. */
  readonly settlesMgPerL: number;
  readonly calciumInCrystalsMgPerL: number;
  /** Of the water before stock went in, stood in air. */
  readonly waterPh: number;
  /** Beyond what crops like; when `waterPh` is too, it is the water and not the stock. */
  readonly phOutside: "low" | "high" | undefined;
  readonly equilibrium: Equilibrium;
}

/** Mixes a dose into water at rest; calcite never forms within the hours a can is in use, and calcium acetate dissolves. */
export function mixIntoWater(
  chemistry: Chemistry,
  dose: Dose,
  water: Contents,
  temperatureC: number,
  air: CanInput["air"],
): MixResult<Equilibrium> {
  return equilibrate(chemistry, mixed(water, dose.contents), {
    temperatureC,
    gas: air === "open" ? openAir(chemistry) : closedVessel,
    mayForm: dose.crystalsMayForm ? ["calciumCitrate"] : [],
  });
}

/** One litre of the can. Trouble as in {@link diluteTogether}. */
export function dilute(
  chemistry: Chemistry,
  stock: StockLiquid,
  { stockMlPerL, ...input }: CanInput,
): MixResult<CanLiquid> {
  return diluteTogether(chemistry, [{ stock, stockMlPerL }], input);
}

/**
 * One litre of a can into which several bottles are poured. Trouble as in {@link sourceWater}, and
 * rates outside 0 to 1000 mL per L, each or together.
 */
export function diluteTogether(
  chemistry: Chemistry,
  stocks: readonly CanPart[],
  input: Omit<CanInput, "stockMlPerL">,
): MixResult<CanLiquid> {
  const { pour, water: report, temperatureC } = input;
  const stockMlPerL = stocks.reduce((total, part) => total + part.stockMlPerL, 0);
  const problems = badQuantities({
    "stock (mL per L)": Math.min(...stocks.map((part) => part.stockMlPerL)),
    "water (mL per L)": 1000 - stockMlPerL,
  });
  if (problems.length > 0) return failed(...problems);
  const water = sourceWater(chemistry, report, 1, temperatureC);
  if (!water.ok) return water;
  const waterAlone = equilibrate(chemistry, water.value, {
    temperatureC,
    gas: closedVessel,
    mayForm: [],
  });
  if (!waterAlone.ok) return waterAlone;
  const waterPart = scaled(water.value, 1 - stockMlPerL / 1000);
  const dose = together(
    stocks.map((part) => poured(chemistry, part.stock, part.stockMlPerL, pour)),
  );
  const found = mixIntoWater(chemistry, dose, waterPart, temperatureC, input.air);
  if (!found.ok) return found;
  const equilibrium = found.value;
  const { gPerMol, practice } = chemistry;
  const { ph } = equilibrium;
  const crystalsMol = equilibrium.solidMol.calciumCitrate;
  return {
    ok: true,
    value: {
      ph,
      waterPh: waterAlone.value.ph,
      calciumMgPerL: 1000 * equilibrium.dissolved.mol.Ca * gPerMol.calcium,
      calciumFromTapMgPerL: (1 - stockMlPerL / 1000) * tapCalciumMgPerL(chemistry, report),
      calciumFromStockMgPerL: dose.calciumMg,
      settlesMgPerL: 1000 * crystalsMol * gPerMol.calciumCitrateTetrahydrate,
      calciumInCrystalsMgPerL: 3000 * crystalsMol * gPerMol.calcium,
      phOutside:
        ph < practice.canPhLow.value ? "low" : ph > practice.canPhHigh.value ? "high" : undefined,
      equilibrium,
    },
  };
}
