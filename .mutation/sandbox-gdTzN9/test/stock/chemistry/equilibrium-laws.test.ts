/** Laws that any such equilibrium keeps, tried on random kitchen mixtures. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Conditions, Equilibrium } from "../../../src/stock/chemistry/equilibrium-types.js";
import { equilibrate } from "../../../src/stock/chemistry/equilibrium.js";
import {
  anyConditions,
  contentsOf,
  decades,
  dissolvedCalciumMol,
  good,
  kitchenMix,
  type Mix,
} from "./chemistry-cases.js";
import { chemistry } from "./chemistry-fixture.js";

const rest = (mix: Mix, conditions: Conditions): Equilibrium =>
  good(equilibrate(chemistry, contentsOf(mix), conditions));
const slack = 1e-9;

describe("a little more of one thing", () => {
  test("more shell never lowers dissolved calcium while no crystals may form", () => {
    fc.assert(
      fc.property(kitchenMix, decades(-5, 0), anyConditions, (mix, more, conditions) => {
        const c: Conditions = { ...conditions, mayForm: ["calcite"] };
        const before = dissolvedCalciumMol(rest(mix, c));
        const after = dissolvedCalciumMol(rest({ ...mix, shellMol: mix.shellMol + more }, c));
        expect(after).toBeGreaterThanOrEqual(before * (1 - slack) - 1e-15);
      }),
      { numRuns: 400 },
    );
  });

  test("more shell never lowers pH while the jar stands under the same gas", () => {
    fc.assert(
      fc.property(kitchenMix, decades(-5, 0), anyConditions, (mix, more, conditions) => {
        const c: Conditions = {
          ...conditions,
          mayForm: ["calcite"],
          gas: { kind: "held", logPco2: -3.4 },
        };
        const before = rest(mix, c).ph;
        expect(rest({ ...mix, shellMol: mix.shellMol + more }, c).ph).toBeGreaterThanOrEqual(
          before - 1e-8,
        );
      }),
      { numRuns: 400 },
    );
  });

  test("more citric acid never raises pH", () => {
    fc.assert(
      fc.property(kitchenMix, decades(-5, -0.5), anyConditions, (mix, more, conditions) => {
        const c: Conditions = { ...conditions, mayForm: ["calcite", ...conditions.mayForm] };
        const before = rest(mix, c).ph;
        expect(rest({ ...mix, citricMol: mix.citricMol + more }, c).ph).toBeLessThanOrEqual(
          before + 1e-8,
        );
      }),
      { numRuns: 400 },
    );
  });

  test("more acetic acid never raises pH", () => {
    fc.assert(
      fc.property(kitchenMix, decades(-4, 0), anyConditions, (mix, more, conditions) => {
        const c: Conditions = { ...conditions, mayForm: ["calcite", ...conditions.mayForm] };
        const before = rest(mix, c).ph;
        expect(rest({ ...mix, aceticMol: mix.aceticMol + more }, c).ph).toBeLessThanOrEqual(
          before + 1e-8,
        );
      }),
      { numRuns: 400 },
    );
  });

  test("more carbon dioxide above never raises pH", () => {
    fc.assert(
      fc.property(
        kitchenMix,
        anyConditions,
        fc.double({ min: -5, max: 0, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (mix, conditions, logPco2, more) => {
          const at = (p: number): number =>
            rest(mix, { ...conditions, gas: { kind: "held", logPco2: p } }).ph;
          expect(at(logPco2 + more)).toBeLessThanOrEqual(at(logPco2) + 1e-8);
        },
      ),
      { numRuns: 400 },
    );
  });

  test("letting crystals form never raises dissolved calcium of a jar out of shell", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const clear = dissolvedCalciumMol(rest(mix, { ...conditions, mayForm: [] }));
        const white = dissolvedCalciumMol(
          rest(mix, { ...conditions, mayForm: ["calciumCitrate"] }),
        );
        expect(white).toBeLessThanOrEqual(clear * (1 + slack));
      }),
      { numRuns: 200 },
    );
  });
});

describe("at rest again", () => {
  test("the liquid poured off stays as it is", () => {
    fc.assert(
      fc.property(kitchenMix, anyConditions, (mix, conditions) => {
        const first = rest(mix, conditions);
        const again = good(
          equilibrate(chemistry, first.dissolved, { ...conditions, gas: { kind: "closed" } }),
        );
        expect(again.ph).toBeCloseTo(first.ph, 6);
        expect(again.solidMol.calcite).toBeCloseTo(0, 9);
        expect(again.solidMol.calciumCitrate).toBeCloseTo(0, 9);
      }),
      { numRuns: 200 },
    );
  });
});
