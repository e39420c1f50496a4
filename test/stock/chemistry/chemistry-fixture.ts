import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { type ChemistryData, prepareChemistry } from "../../../src/stock/chemistry/constants.js";

/** The project's own constants, as the program loads them. */
export const chemistry = prepareChemistry(
  parse(
    readFileSync(new URL("../../../src/stock/chemistry/constants.yaml", import.meta.url), "utf8"),
  ) as ChemistryData,
);
