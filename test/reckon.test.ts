import { expect, test } from "vitest";
import { reckon } from "../src/reckon.js";
import { loadTables } from "../src/tables.js";

test("what is reckoned beforehand is what the code and the data files give", () => {
  const { builtInRules, referenceStockGPerL } = loadTables();
  expect(builtInRules.length).toBeGreaterThan(20);
  expect({ builtInRules, referenceStockGPerL }).toEqual(reckon());
});
