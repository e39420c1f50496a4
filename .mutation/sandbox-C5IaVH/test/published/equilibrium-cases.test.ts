/**
 * Batches and their dilutions worked out with PHREEQC 3.8.9 (USGS), a general-purpose geochemistry
 * code, with the database minteq.v4.dat, Davies coefficients for ions and 1 for the uncharged; the file
 * beside this one states inputs, conventions and tolerances.
 */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Brew, brewBatch } from "../../src/stock/chemistry/brew.js";
import { mixIntoWater } from "../../src/stock/chemistry/can.js";
import {
  type Contents,
  noBystanders,
  noMol,
  pureWater,
  scaled,
} from "../../src/stock/chemistry/contents.js";
import { inAir } from "../../src/stock/chemistry/source-water.js";
import { share, strained } from "../../src/stock/chemistry/stock-liquid.js";
import { good } from "../stock/chemistry/chemistry-cases.js";
import { chemistry } from "../stock/chemistry/chemistry-fixture.js";

interface Dilution {
  readonly water: "pure" | "tap";
  readonly stock_mL_per_L: number;
  readonly dose: "clear" | "shaken";
  readonly gas: "closed" | "open";
  readonly pH: number;
  readonly Ca_dissolved_mg_per_kg_water: number;
  readonly Ca_citrate_tetrahydrate_solid_mg: number;
  readonly SI_calcite: number;
  readonly SI_Ca_citrate_tetrahydrate: number | null;
}

interface Case {
  readonly id: string;
  readonly title: string;
  readonly CaCO3_g: number;
  readonly citric_anhydrous_g?: number;
  readonly acetic_g?: number;
  readonly water_g: number;
  readonly temp_C: number;
  readonly log_pCO2: number;
  readonly citrate_solid_may_form: boolean;
  readonly result: Readonly<Record<string, number | null>>;
  readonly dilutions: readonly Dilution[];
}

const { cases } = JSON.parse(
  readFileSync(new URL("equilibrium-cases.json", import.meta.url), "utf8"),
) as { cases: Case[] };

function brewOf(c: Case): Brew {
  const vinegarMl = (c.acetic_g ?? 0) * 20;
  return good(
    brewBatch(chemistry, {
      shellG: c.CaCO3_g,
      shellPurity: 1,
      acid:
        c.acetic_g === undefined
          ? { kind: "citric", form: "anhydrous", grams: c.citric_anhydrous_g ?? 0 }
          : { kind: "vinegar", percent: 5, volumeMl: vinegarMl },
      // 250 mL of vinegar of 5 % bring 238.75 g of water.
      waterG: c.acetic_g === undefined ? c.water_g : c.water_g - vinegarMl * (1.005 - 0.05),
      temperatureC: c.temp_C,
      gas: { kind: "held", logPco2: c.log_pCO2 },
      citrateSolidMayForm: c.citrate_solid_may_form,
    }),
  );
}

function within(found: number | undefined, said: number | null | undefined, slack: number): void {
  if (said === null || said === undefined) return;
  expect(Math.abs((found ?? NaN) - said), `${String(found)} against ${said}`).toBeLessThanOrEqual(
    slack,
  );
}

/** 0.5 %, or 0.005 g. */
const part = (said: number | null | undefined, least = 0): number =>
  Math.max(0.005 * Math.abs(said ?? 0), least);

describe.each(cases)("PHREEQC 3.8.9: $id, $title", (c) => {
  const brew = brewOf(c);
  const { equilibrium: e } = brew;
  const r = c.result;
  const citrate = e.dissolved.mol.Cit;
  const molPerKg = (names: readonly string[]): number =>
    chemistry.solutes.reduce(
      (sum, s, i) => (names.includes(s.name) ? sum + (e.soluteMol[i] ?? 0) : sum),
      0,
    ) / e.waterKg;

  test("pH within 0.02, ionic strength within 1 %, activity and mass of water", () => {
    within(brew.ph, r["pH"], 0.02);
    within(
      brew.ionicStrengthMolPerKg,
      r["ionic_strength_mol_kgw"],
      2 * part(r["ionic_strength_mol_kgw"]),
    );
    within(e.waterActivity, r["water_activity"], 1e-5);
    within(e.waterKg, r["water_final_kg"], 1e-6);
  });

  test("dissolved calcium, citrate, acetate and carbonate within 0.5 %", () => {
    within(
      brew.calciumDissolvedMgPerKgWater,
      r["Ca_dissolved_mg_per_kg_water"],
      part(r["Ca_dissolved_mg_per_kg_water"]),
    );
    within(
      citrate / e.waterKg,
      r["citrate_dissolved_mol_kgw"],
      part(r["citrate_dissolved_mol_kgw"]),
    );
    within(
      e.dissolved.mol.Ac / e.waterKg,
      r["acetate_dissolved_mol_kgw"],
      part(r["acetate_dissolved_mol_kgw"]),
    );
    within(
      e.dissolved.mol.CO3 / e.waterKg,
      r["carbonate_dissolved_mol_kgw"],
      part(r["carbonate_dissolved_mol_kgw"]),
    );
  });

  test("free calcium and its complexes within 0.5 %", () => {
    within(molPerKg(["Ca+2"]), r["Ca_free_ion_mol_kgw"], part(r["Ca_free_ion_mol_kgw"]));
    within(
      molPerKg(["CaCit-", "CaHCit", "CaH2Cit+"]),
      r["Ca_citrate_complexes_mol_kgw"],
      part(r["Ca_citrate_complexes_mol_kgw"], 1e-12),
    );
    within(
      molPerKg(["CaAc+"]),
      r["Ca_acetate_complex_mol_kgw"],
      part(r["Ca_acetate_complex_mol_kgw"], 1e-12),
    );
  });

  test("undissolved shell and crystals within 0.005 g, saturation within 0.02", () => {
    within(brew.shellLeftG, r["CaCO3_undissolved_g"], 0.005);
    within(brew.crystalsG, r["Ca_citrate_tetrahydrate_solid_g"], 0.005);
    within(e.saturation.calcite, r["SI_calcite"], 0.02);
    within(e.saturation.calciumCitrate, r["SI_Ca_citrate_tetrahydrate"], 0.02);
  });

  const stock = strained(chemistry, brew);
  const tapMol = 0.00099805;
  const tap: Contents = {
    waterKg: 1,
    mol: { ...noMol, H: 2 * tapMol, Ca: tapMol, CO3: 2 * tapMol },
    bystanders: noBystanders,
  };

  test.each(c.dilutions)("$stock_mL_per_L mL to a litre, $dose, $water water, $gas", (d) => {
    const v = d.stock_mL_per_L / 1000;
    const water = good(inAir(chemistry, d.water === "tap" ? tap : pureWater(1), c.temp_C));
    const dose = share(chemistry, stock, v / stock.waterKg, d.dose);
    const can = good(mixIntoWater(chemistry, dose, scaled(water, 1 - v), c.temp_C, d.gas));
    within(can.ph, d.pH, 0.02);
    within(
      (1e6 * can.dissolved.mol.Ca * 0.040078) / can.waterKg,
      d.Ca_dissolved_mg_per_kg_water,
      part(d.Ca_dissolved_mg_per_kg_water),
    );
    within(
      1e6 * can.solidMol.calciumCitrate * 0.570494,
      d.Ca_citrate_tetrahydrate_solid_mg,
      part(d.Ca_citrate_tetrahydrate_solid_mg, 0.05),
    );
    within(can.saturation.calcite, d.SI_calcite, 0.02);
    within(can.saturation.calciumCitrate, d.SI_Ca_citrate_tetrahydrate, 0.02);
  });
});

test("the cases hold what they are said to hold", () => {
  expect(cases.map((c) => c.id)).toEqual(["S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"]);
  expect(cases.flatMap((c) => c.dilutions)).toHaveLength(144);
});
