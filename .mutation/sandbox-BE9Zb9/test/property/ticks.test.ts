/** Any garden, and any ticks on its pages: what is written is valid, and is taken back to the byte. */
// @ts-nocheck

import fc from "fast-check";
import { expect, test } from "vitest";
import { stringify } from "yaml";
import { addDays, day } from "../../src/dates.js";
import type { Outcome } from "../../src/serve/garden-writer.js";
import type { Standing, Ticked } from "../../src/ticks/tick.js";
import { type Page, servedGarden } from "../cli/a-served-garden.js";
import { anyPlannedGarden } from "../support/arbitrary-garden.js";

/** All that a page offers. */
function offered({ sheet }: Page): { what: Ticked; seen: Standing }[] {
  return [
    ...sheet.rounds.flatMap((round) => {
      const beds = round.beds.map(({ bed }) => bed);
      const entries = round.beds.flatMap((bed) => bed.entries);
      const what = { kind: "round", day: round.day, beds, entries } as const;
      return [
        { what, seen: round },
        { what: { ...what, beds: beds.slice(0, 1) }, seen: round },
        { what: { ...what, missed: true as const, entries: [] }, seen: round },
        {
          what: { ...what, beds: beds.slice(-1), missed: true as const, entries: [] },
          seen: round,
        },
      ];
    }),
    ...sheet.steps.map((seen) => ({
      what: { kind: "step", batch: seen.batch, step: seen.step } as const,
      seen,
    })),
    ...sheet.plantings.flatMap(({ id, stages, signs }) => [
      ...stages.map((seen) => ({
        what: { kind: "stage", planting: id, stage: seen.stage } as const,
        seen,
      })),
      ...signs.map((seen) => ({
        what: { kind: "sign", planting: id, sign: seen.sign } as const,
        seen,
      })),
    ]),
  ];
}

const taps = fc.array(
  fc.record({ pick: fc.nat(10_000), days: fc.nat(9), isTakenBack: fc.boolean() }),
  { minLength: 1, maxLength: 8 },
);

test("ticks and what takes them back", async () => {
  let written = 0;
  await fc.assert(
    fc.asyncProperty(anyPlannedGarden, fc.nat(200), taps, async (garden, into, all) => {
      const plot = servedGarden(stringify(garden));
      const from = day(garden.season.from);
      await plot.page(addDays(from, -30));
      let today = addDays(from, into);
      for (const { pick, days, isTakenBack } of all) {
        today = addDays(today, days);
        const page = await plot.page(today);
        const things = offered(page);
        const one = things[pick % things.length];
        if (one === undefined) continue;
        const before = plot.text();
        const outcome: Outcome = await plot.tick(today, one.what, one.seen);
        if (outcome.kind !== "written") {
          expect(plot.text()).toBe(before);
          continue;
        }
        written++;
        // It is planned without problems, and says of the thing what was told.
        const after = await plot.page(today);
        expect((await plot.tick(today, one.what, one.seen)).kind).toBe("already");
        expect(after.plan.today).toBe(today);
        if (!isTakenBack) continue;
        expect(await plot.takeBack(today, outcome)).toMatchObject({ kind: "written" });
        expect(plot.text()).toBe(before);
      }
    }),
    { numRuns: 40 },
  );
  expect(written).toBeGreaterThan(40);
}, 240_000);
