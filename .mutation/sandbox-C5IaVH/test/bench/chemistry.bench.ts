/**
 * The solver's speed: 10,000 kitchen batches on one core, to be under 2 s, and the same batches by
 * the plain double bisection (a hundredth as many: it is slow).
 */
// @ts-nocheck

import { bench, describe } from "vitest";
import { solidKeys } from "../../src/stock/chemistry/constants.js";
import { type Contents, noBystanders } from "../../src/stock/chemistry/contents.js";
import type { Conditions } from "../../src/stock/chemistry/equilibrium-types.js";
import { equilibrate } from "../../src/stock/chemistry/equilibrium.js";
import { chemistry } from "../stock/chemistry/chemistry-fixture.js";
import { doubleBisection } from "./double-bisection.js";

/** A spread of recipes: shell short to ample, two acids, 5 to 40 degC, fizzing, open and closed. */
function batch(i: number): readonly [Contents, Conditions] {
  const step = (n: number, of: number): number => (i % n) / of;
  const citricMol = i % 3 === 0 ? 0 : 0.02 + step(17, 40);
  const aceticMol = i % 3 === 0 ? 0.1 + step(19, 20) : 0;
  const shellMol = (0.3 + step(23, 12)) * (1.5 * citricMol + 0.5 * aceticMol);
  const contents = {
    waterKg: 1,
    mol: {
      H: 3 * citricMol + aceticMol,
      Ca: shellMol,
      Cit: citricMol,
      Ac: aceticMol,
      CO3: shellMol,
    },
    bystanders: noBystanders,
  };
  const gas =
    i % 5 === 0
      ? ({ kind: "closed" } as const)
      : ({ kind: "held", logPco2: i % 2 === 0 ? -3.4 : 0 } as const);
  const conditions = {
    temperatureC: 5 + (i % 36),
    gas,
    mayForm: solidKeys.filter((key) => key === "calcite" || i % 4 !== 0),
  };
  return [contents, conditions];
}

const batches = Array.from({ length: 10_000 }, (_, i) => batch(i));

describe("chemistry of 10,000 batches", () => {
  bench(
    "our solver, 10,000 batches",
    () => {
      for (const [contents, conditions] of batches)
        if (!equilibrate(chemistry, contents, conditions).ok) throw new Error("unsolved");
    },
    { iterations: 5, warmupIterations: 1, time: 0 },
  );
  bench(
    "plain double bisection, 100 of them",
    () => {
      for (const [contents, conditions] of batches.slice(0, 100))
        doubleBisection(chemistry, contents, conditions);
    },
    { iterations: 2, warmupIterations: 0, time: 0 },
  );
});
