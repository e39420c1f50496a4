/** The file of the next year, from any valid garden in any layout. */
// @ts-nocheck

import fc from "fast-check";
import { expect, test } from "vitest";
import { stringify, type ToStringOptions } from "yaml";
import { anyGarden } from "../support/arbitrary-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

const layouts: readonly ToStringOptions[] = [
  { collectionStyle: "flow" },
  { collectionStyle: "flow", lineWidth: 20 },
  { indentSeq: false, defaultStringType: "QUOTE_DOUBLE", defaultKeyType: "PLAIN" },
];

test("is sound, in each layout the same, and has a next year of its own", async () => {
  const numRuns = Number(process.env["PROPERTY_RUNS"] ?? 5);
  await fc.assert(
    fc.asyncProperty(anyGarden, fc.constantFrom(...layouts), async (garden, other) => {
      const today = ["--today", garden.season.to];
      const kept = new Set<string>();
      for (const layout of [{}, other]) {
        const file = scratchFile("garden.yaml", stringify(garden, layout));
        const next = await cli(["new", "--from", file, ...today]);
        expect(next.stderr.includes("garden.yaml:"), next.stderr).toBe(false);
        expect(next.code).toBe(0);
        const plan = await cli(["plan", "-", "--json", ...today], { stdin: next.stdout });
        expect(plan).toMatchObject({ code: 0, stderr: "" });
        kept.add(plan.stdout);
        const after = await cli(["new", "--from", "-", ...today], { stdin: next.stdout });
        expect(after.code, after.stderr).toBe(0);
      }
      expect(kept.size).toBe(1);
    }),
    // Planning thousands of smaller gardens to shrink a failure takes minutes.
    { numRuns, seed: 20_270_301, endOnFailure: true },
  );
});
