/**
 * Tens of thousands of spoilt gardens, rule files and noise: each gives a plan or problems, never a
 * crash; how long the slowest took is told. `npm run fuzz`; TEXTS=50000 and SEED=7 ask for more and for others.
 */
// @ts-nocheck

import fc from "fast-check";
import { test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { checkFile } from "../support/any-text-check.js";
import { anyBytes, spoiledRules } from "../support/any-text.js";

const numRuns = Number(process.env["TEXTS"] ?? 10_000);
const seed = Number(process.env["SEED"] ?? 1);

const cases: readonly [string, fc.Arbitrary<readonly [Uint8Array, string?]>, number][] = [
  ["garden files", anyBytes.map((bytes) => [bytes] as const), numRuns],
  [
    "rule files",
    spoiledRules.map((rules) => [new TextEncoder().encode(gardenText()), rules] as const),
    Math.ceil(numRuns / 5),
  ],
];

test.each(cases)("%s", (name, files, count) => {
  const seen = { plan: 0, problems: 0 };
  let slowestMs = 0;
  fc.assert(
    fc.property(files, ([bytes, rules]) => {
      const started = performance.now();
      seen[checkFile(bytes, rules)]++;
      slowestMs = Math.max(slowestMs, performance.now() - started);
    }),
    { numRuns: count, seed },
  );
  console.log(
    `${name}: ${seen.plan} plans, ${seen.problems} with problems, the slowest ${Math.round(slowestMs)} ms`,
  );
});
