/** Any text at all gives a plan or problems. `npm run fuzz` tries many thousands more. */
// @ts-nocheck

import fc from "fast-check";
import { expect, test } from "vitest";
import { readYaml } from "../../src/garden/read.js";
import { gardenText } from "../support/a-garden.js";
import { checkFile } from "../support/any-text-check.js";
import {
  anyBytes,
  goodGardens,
  goodRules,
  spoiledGarden,
  spoiledRules,
} from "../support/any-text.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

test("the gardens and rules that are spoilt are good to begin with", () => {
  for (const text of goodGardens) expect(checkFile(utf8(text)), text).toBe("plan");
  expect(checkFile(utf8(gardenText()), goodRules)).toBe("plan");
});

test("any bytes give a plan with a calendar, or problems at places in the file", () => {
  const seen = { plan: 0, problems: 0 };
  fc.assert(
    fc.property(anyBytes, (bytes) => {
      seen[checkFile(bytes)]++;
    }),
    { numRuns: 300 },
  );
  expect(seen.plan).toBeGreaterThan(20);
  expect(seen.problems).toBeGreaterThan(80);
});

test("any rule file beside a good garden does, too", () => {
  const garden = utf8(gardenText());
  const seen = { plan: 0, problems: 0 };
  fc.assert(
    fc.property(spoiledRules, (rules) => {
      seen[checkFile(garden, rules)]++;
    }),
    { numRuns: 150 },
  );
  expect(seen.plan).toBeGreaterThan(10);
  expect(seen.problems).toBeGreaterThan(50);
});

test("what is read from any text is plain values with places", () => {
  fc.assert(
    fc.property(spoiledGarden, (text) => {
      const read = readYaml(text, "garden.yaml");
      if (read.ok) expect(() => JSON.stringify(read.value.value)).not.toThrow();
    }),
    { numRuns: 150 },
  );
});
