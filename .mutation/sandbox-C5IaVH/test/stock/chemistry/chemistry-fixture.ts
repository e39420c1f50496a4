// @ts-nocheck
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { brewBatch, openAir } from "../../../src/stock/chemistry/brew.js";
import { type ChemistryData, prepareChemistry } from "../../../src/stock/chemistry/constants.js";
import { type StockLiquid, strained } from "../../../src/stock/chemistry/stock-liquid.js";
import { good } from "./chemistry-cases.js";

/** The project's own constants, as the program loads them. */
export const chemistry = prepareChemistry(
  parse(
    readFileSync(new URL("../../../src/stock/chemistry/constants.yaml", import.meta.url), "utf8"),
  ) as ChemistryData,
);

/** The trade's 13 g of citric acid on so much shell, at rest in air, with its white. */
export function citricStock(shellG: number): StockLiquid {
  const brew = brewBatch(chemistry, {
    shellG,
    shellPurity: 1,
    acid: { kind: "citric", form: "anhydrous", grams: 13 },
    waterG: 236,
    temperatureC: 20,
    gas: openAir(chemistry),
    citrateSolidMayForm: true,
  });
  return strained(chemistry, good(brew));
}
