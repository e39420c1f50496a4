/** A round for which there will be too little stock: told once, and marked wherever it is read. */
// @ts-nocheck

import { expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { ledgerSum } from "../../src/stock/ledger/ledger.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

const toms = { crop: "tomato", plants: 6, transplanted: "2027-04-10", days_to_harvest: 140 };
const bed = (id: string): object => ({
  id,
  plantings: [{ ...toms, id: `toms-${id}`, water: "12 L" }],
});
/** Two of three beds can be fed from the bottle, and no more is made. */
const file = scratchFile(
  "garden.yaml",
  gardenText({
    beds: ["south", "north", "east"].map(bed),
    stock: {
      keep: "fridge",
      batches: [{ id: "B1", made: "2027-05-20", volume: "87 mL" }],
      shells_per_week: 0,
      shells_in_hand: 0,
    },
  }),
);
const today = "2027-05-25";

async function told(command: string, ...more: string[]): Promise<string> {
  const { stdout, stderr, code } = await cli([command, file, ...more], { today });
  expect({ code, stderr }).toMatchObject({ code: 0 });
  return stdout;
}

async function planned(): Promise<Plan> {
  return JSON.parse(await told("plan", "--json")) as Plan;
}

test("is one warning, with beds and amount, however many feedings it is", async () => {
  const { warnings, rounds } = await planned();
  const short = warnings.filter(({ code }) => code.startsWith("stock-short-"));
  const marked = rounds.filter(({ shortMl }) => shortMl !== undefined);
  expect(short.map(({ day }) => day)).toEqual(marked.map(({ day }) => day));
  expect(short.length).toBeGreaterThan(0);
  expect(short[0]?.message).toMatch(
    /^too little stock on \w{3} \d+ Jun, 1 bed lacks 15 mL: too few eggshells/,
  );
  expect(short[1]?.message).toMatch(/^too little stock on \w{3} \d+ Jun, 3 beds lack 102 mL: /);
});

test("has a typed mark on round and cans, which is what the bottles do not give", async () => {
  const { rounds } = await planned();
  const [round] = rounds.filter(({ shortMl }) => shortMl !== undefined);
  const mixes = round?.beds.flatMap((b) => b.mixes) ?? [];
  for (const { stockMl, shortMl = 0, pours = [] } of mixes)
    expect(ledgerSum([shortMl, ...pours.map(({ ml }) => ml)])).toBe(stockMl);
  expect(round?.shortMl).toBe(ledgerSum(mixes.map(({ shortMl = 0 }) => shortMl)));
  expect(mixes.filter(({ shortMl }) => shortMl === undefined)).toHaveLength(2);
});

test.each(["plan", "calendar", "sheet", "check", "batch"])("is told by %s", async (command) => {
  const text = (await told(command)).replaceAll(/\r?\n[ \t]/g, "").replaceAll("\u00a0", " ");
  expect(text).toContain("too little stock");
  if (command !== "check" && command !== "batch")
    expect(text).toMatch(/too little stock[^]*[\d.]+ mL missing/);
});
