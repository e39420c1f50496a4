/** When batches are bottled, what is said of them, and that they stay as they are from day to day. */
// @ts-nocheck

import { expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { growing, planOn } from "./a-live-garden.js";

const fridge = { keep: "fridge" };
const firstOf = (today: string, stock: object) => planOn(today, { stock }).stock?.making.batches[0];
const codes = (today: string, stock: object): string[] =>
  planOn(today, { stock }).warnings.map(({ code }) => code);

test.each([
  ["the usual three days", {}, 3],
  ["as many as the grower wishes", { ready_before: "1 week" }, 7],
  ["none where none are wished", { ready_before: "0 days" }, 0],
])("a batch is bottled before it is first poured: %s", (_, differs, days) => {
  const batch = firstOf("2027-03-01", { ...fridge, ...differs });
  const firstDay = batch?.serves[0]?.day ?? day("2027-01-01");
  expect(daysBetween(batch?.readyOn ?? firstDay, firstDay)).toBe(days);
});

test("bottled on the day of its feeding only where there is no other way, and then it is said", () => {
  const firstDay = firstOf("2027-03-01", fridge)?.serves[0]?.day ?? day("2027-01-01");
  expect(codes("2027-03-01", fridge)).not.toContain("strained-on-feeding-day");
  expect(codes(addDays(firstDay, -4), fridge)).toContain("strained-on-feeding-day");
  expect(codes(addDays(firstDay, -4), { ...fridge, ready_before: "0 days" })).not.toContain(
    "strained-on-feeding-day",
  );
});

test("a bottle past its day is to be thrown away, and nothing is poured from it", async () => {
  const batches = [{ id: "B1", made: "2027-06-01", volume: "300 mL" }];
  const text = gardenText({ ...growing({}), stock: { keep: "shelf", batches } });
  const today = "2027-06-25";
  const path = scratchFile("garden.yaml", text);
  for (const command of ["plan", "batch"])
    expect((await cli([command, path], { today })).stdout).toContain(
      "B1: 300 mL: throw away, past its day since 15 Jun",
    );
  const draws = planOn(today, { stock: { keep: "shelf", batches } }).stock?.making.draws ?? [];
  expect(draws.length).toBeGreaterThan(0);
  expect(draws.filter(({ batch }) => batch === "B1")).toEqual([]);
});

test("stock made and mostly thrown away is one advice, in plan and check only", async () => {
  const path = scratchFile("garden.yaml", gardenText({ ...growing({}), stock: { keep: "shelf" } }));
  const outputs = await Promise.all(
    ["plan", "check", "calendar", "sheet"].map(async (command) => {
      const { stdout } = await cli([command, path], { today: "2027-03-01" });
      return stdout.replaceAll(/\s+/g, " ").split("is thrown away: in the fridge").length - 1;
    }),
  );
  expect(outputs).toEqual([1, 1, 0, 0]);
});

test("a batch keeps its volume while less and less of the season is to come", () => {
  const beds = growing({ water: "400 L" });
  const stock = { ...fridge, largest_batch: "20 L" };
  const volumes = (today: string): (number | undefined)[] =>
    planOn(today, { ...beds, stock }).stock?.making.batches.map(({ volumeMl }) => volumeMl) ?? [];
  const [volumeMl = 0] = volumes("2027-03-01");
  // A hundredth of the largest batch, not of the 3 to 4 L that the season needs.
  expect(volumeMl % 200).toBe(0);
});
