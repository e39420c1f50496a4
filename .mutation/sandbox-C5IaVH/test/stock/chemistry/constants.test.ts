// @ts-nocheck
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { componentKeys, prepareChemistry } from "../../../src/stock/chemistry/constants.js";
import { compileCheck } from "../../support/compile-check.js";
import { chemistry } from "./chemistry-fixture.js";

const read = (path: string): string =>
  readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const check = compileCheck(JSON.parse(read("schemas/chemistry.schema.json")) as object);
const data = (): Record<string, Record<string, unknown>> =>
  parse(read("src/stock/chemistry/constants.yaml")) as Record<string, Record<string, unknown>>;

describe("the constants file", () => {
  test("keeps to its schema", () => {
    expect(check(data())).toEqual([]);
  });

  test("is refused where a source or a row is missing, or a row is unknown", () => {
    const noSource = data();
    noSource["kitchen"] = { ...noSource["kitchen"], shellPurity: { value: 0.94 } };
    expect(check(noSource)).not.toEqual([]);
    const noRow = data();
    delete noRow["physical"]?.["avogadroPerMol"];
    expect(check(noRow)).not.toEqual([]);
    const strange = data();
    strange["kitchen"] = { ...strange["kitchen"], spoons: { value: 1, source: "none" } };
    expect(check(strange)).not.toEqual([]);
  });

  test("names the species' charges rightly in their names", () => {
    for (const { name, charge } of chemistry.solutes) {
      const sign = /([+-])(\d?)$/.exec(name);
      const named = sign ? Number(`${sign[1] ?? ""}${sign[2] || "1"}`) : 0;
      expect([name, charge]).toEqual([name, named]);
    }
  });

  test("lists the components first and in the order of their keys", () => {
    expect(Object.keys(chemistry.components)).toEqual([...componentKeys]);
    expect(chemistry.solutes.slice(0, 5).map((s) => s.charge)).toEqual([1, 2, -3, -1, -2]);
  });

  test("is refused where a phase holds no building block that none before it does", () => {
    const { phases } = chemistry;
    const calciumCitrate = { ...phases.calciumCitrate, of: { Ca: 1, H: -2, H2O: 2 } };
    const twoAlike = { ...chemistry, phases: { ...phases, calciumCitrate } };
    expect(() => prepareChemistry(twoAlike)).toThrow("calciumCitrate");
  });

  test("dissolves phases without making charge", () => {
    const charges: Record<string, number> = { H: 1, Ca: 2, Cit: -3, Ac: -1, CO3: -2, H2O: 0 };
    for (const { of } of Object.values(chemistry.phases)) {
      const sum = Object.entries(of).reduce((s, [key, n]) => s + n * (charges[key] ?? NaN), 0);
      expect(sum).toBe(0);
    }
  });
});
