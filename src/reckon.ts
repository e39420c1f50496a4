/**
 * What follows from the data files alone, at some length: `scripts/compile-data.js` reckons it, once
 * for all gardens, and the tables have it as a module.
 */
import rules from "./compiled/rules.js";
import { problemLine } from "./problem.js";
import { readRules } from "./rules/index.js";
import { referenceStockGPerL as referenceOf } from "./stock/index.js";
import { loadTables, type Tables } from "./tables.js";

export { dailyShares } from "./climate/index.js";

/** Throws where a rule of ours does not fit with the other data. */
export function reckon(): Pick<Tables, "referenceStockGPerL" | "builtInRules"> {
  const { catalogue, chemistry, making, rulesCheck, units, usual } = loadTables();
  const referenceStockGPerL = referenceOf({ chemistry, making }, usual);
  const source = {
    file: "rules.yaml",
    text: "",
    value: rules(),
    locate: () => ({ line: 1, column: 1 }),
  };
  const tables = { catalogue, referenceStockGPerL, rulesCheck };
  const read = readRules(source, tables, { units, amounts: "metric" }, false);
  if (!read.ok) throw new Error(read.problems.map(problemLine).join("\n"));
  return { referenceStockGPerL, builtInRules: read.value };
}
