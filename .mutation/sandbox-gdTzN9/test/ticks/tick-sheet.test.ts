// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { gardenOfText, planOfGarden } from "../../src/plan-garden.js";
import { nothingPublished, type Published } from "../../src/published/index.js";
import { loadTables } from "../../src/tables.js";
import { tickSheet } from "../../src/ticks/tick-sheet.js";
import type { TickSheet } from "../../src/ticks/sheet.js";
import type { Plan } from "../../src/season/season-plan.js";
import { type GardenDiffers, gardenText } from "../support/a-garden.js";

const season: GardenDiffers = {
  beds: ["south", "north"].map((id) => ({
    id,
    plantings: [
      {
        id: `toms-${id}`,
        crop: "tomato",
        plants: 3,
        transplanted: "2027-04-10",
        days_to_harvest: 140,
        water: "2 L per plant",
      },
    ],
  })),
  feeds: [{ name: "nettle", every: "14 days", rate: "5 mL per L", from: "2027-06-01" }],
};

function planned(today: string, differs: GardenDiffers, published: Published): [TickSheet, Plan] {
  const tables = loadTables();
  const read = gardenOfText(gardenText({ ...season, ...differs }), "garden.yaml", tables);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const plan = planOfGarden(read.value, {}, tables, { today: day(today), published });
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return [tickSheet(read.value.garden, plan.value, tables), plan.value];
}

/** Published in spring, looked at on a day. */
function sheetOn(today: string, differs: GardenDiffers = {}): TickSheet {
  return planned(today, differs, published)[0];
}

const [, spring] = planned("2027-04-01", {}, nothingPublished);
const { published } = spring;
const calcium = spring.rounds.filter(({ beds }) => beds.length > 0).map((round) => round.day);
const [first = day("2027-06-01"), second = first] = calcium;
const afterFirst = (days: number): string =>
  new Date(Date.parse(first) + days * 86_400_000).toISOString().slice(0, 10);

function roundOn(sheet: TickSheet, on: string): TickSheet["rounds"][number] {
  const round = sheet.rounds.find((one) => one.day === on);
  if (round === undefined) throw new Error(`no round on ${on}`);
  return round;
}

describe("rounds to tick", () => {
  test("say what no bottle gives", () => {
    const differs = { stock: { shells_per_week: 0, shells_in_hand: 0 } };
    const [sheet, { rounds }] = planned(first, differs, nothingPublished);
    const short = rounds.find(({ shortMl }) => shortMl !== undefined);
    const lines = roundOn(sheet, short?.day ?? "").beds.flatMap((bed) => bed.lines);
    expect(lines).toContainEqual(expect.stringMatching(/^Too little stock: \d+ mL missing$/));
  });

  test("a past one of which the log is silent is open, with what the plan had for each planting", () => {
    const { state, beds, told } = roundOn(sheetOn(afterFirst(2)), first);
    expect({ state, told }).toEqual({ state: "open", told: undefined });
    expect(beds).toMatchObject([
      { bed: "south", isDone: false, entries: [{ planting: "toms-south" }] },
      { bed: "north", isDone: false, entries: [{ planting: "toms-north" }] },
    ]);
    expect(beds[0]?.entries[0]?.stock).toMatch(/^\d+(?:\.\d)? mL$/);
    expect(beds[0]?.lines).toEqual([
      expect.stringMatching(/^1 part can of 6 L: \d+ mL, for toms-south$/),
    ]);
  });

  test("is in part given, then given", () => {
    const one = { on: first, planting: "toms-south", stock: "10 mL" };
    const inPart = roundOn(sheetOn(afterFirst(2), { log: [one] }), first);
    expect(inPart.state).toBe("in part");
    expect(inPart.beds.map(({ isDone }) => isDone)).toEqual([true, false]);
    expect(inPart.beds[0]?.entries).toEqual([]);
    const log = [one, { on: first, planting: "toms-north", missed: true }];
    const both = roundOn(sheetOn(afterFirst(2), { log }), first);
    expect(both.state).toBe("given");
    expect(both.told).toContain("south: given on");
    expect(both.told).toContain("north: missed");
  });

  test("is missed", () => {
    const log = [{ on: first, missed: true }];
    const { state, told } = roundOn(sheetOn(afterFirst(2), { log }), first);
    expect({ state, told }).toEqual({ state: "missed", told: "missed" });
  });

  test("stands under the day it was told for, when it was given on another", () => {
    const log = [{ on: afterFirst(1), round: first, stock: "20 mL" }];
    const sheet = sheetOn(afterFirst(2), { log });
    expect(roundOn(sheet, first)).toMatchObject({ state: "given" });
    expect(sheet.rounds.some((round) => round.day === afterFirst(1))).toBe(false);
  });

  test("shows the next one, however far away", () => {
    expect(sheetOn("2027-03-01").rounds.map((round) => round.day)).toEqual([spring.rounds[0]?.day]);
  });

  test("of four weeks ago are gone", () => {
    const far = sheetOn(afterFirst(29)).rounds.map((round) => round.day);
    expect(far).not.toContain(first);
    expect(far).toContain(second);
  });

  test("of a garden whose silence is not taken as given can be ticked later", () => {
    const sheet = sheetOn(afterFirst(2), { unlogged: "not-given" });
    const { state, beds } = roundOn(sheet, first);
    expect(state).toBe("open");
    const asPlanned = roundOn(sheetOn(afterFirst(2)), first).beds;
    expect(beds.map(({ entries }) => entries)).toEqual(asPlanned.map(({ entries }) => entries));
  });

  test("another feed is ticked for all its beds at once", () => {
    const on = published.feeds[0]?.day ?? first;
    const bed = roundOn(sheetOn(on), on).beds.at(-1);
    expect(bed).toMatchObject({
      bed: "feed:nettle",
      name: "nettle",
      entries: [{ feed: "nettle" }],
    });
    expect(bed?.lines[0]).toContain("south: 1 part can of");
    const given = roundOn(sheetOn(on, { log: [{ on, feed: "nettle" }] }), on).beds.at(-1);
    expect(given).toMatchObject({ isDone: true, entries: [] });
  });
});

describe("steps to tick", () => {
  const batch = published.batches[0];
  if (batch === undefined) throw new Error("a season without a batch");

  test("those to come soon tell what there is to do, the last one how much", () => {
    const { steps } = sheetOn(batch.shellsOut);
    expect(steps.map(({ step, day: on }) => [step, on])).toEqual([
      ["shells_out", batch.shellsOut],
      ["acid_in", batch.acidIn],
      ["made", batch.made],
    ]);
    expect(steps[0]?.line).toMatch(/^Boil \d+ eggshells/);
    expect(steps[2]?.volume).toMatch(/^\d+ mL$/);
  });

  test("past ones that nobody wrote down are still there, and the bottle can be thrown away", () => {
    const later = afterFirst(1);
    const { steps, bottles } = sheetOn(later);
    expect(steps.find(({ step }) => step === "made")).toMatchObject({
      ...{ batch: batch.id, batchName: "batch 1", day: batch.made, line: "Bottled", seen: "-" },
    });
    expect(steps.map(({ step }) => step)).toContain("thrown_away");
    expect(bottles).toEqual([{ id: batch.id, name: "batch 1" }]);
  });

  test("of a listed batch that stands for a told one there is one of each", () => {
    const batches = [{ id: "spring", planned: 1, made: batch.made, volume: "0.8 L" }];
    const { steps, bottles } = sheetOn(first, { stock: { batches } });
    const made = steps.filter(({ step }) => step === "made");
    expect(made).toMatchObject([
      { batch: "spring", told: expect.stringMatching(/, 800 mL$/) as string },
    ]);
    expect(bottles).toEqual([{ id: "spring", name: "batch spring" }]);
  });
});

describe("plantings", () => {
  test("have the stages of their crop in order, and the signs it may show", () => {
    const { plantings, signs } = sheetOn(first);
    const [toms] = plantings;
    expect(plantings.map(({ id }) => id)).toEqual(["toms-south", "toms-north"]);
    expect(toms?.stages.map(({ name }) => name)).toContain("fruit set");
    expect(toms?.signs.map(({ sign }) => sign)).toContain("blossom-end-rot");
    expect(toms?.signs.map(({ sign }) => sign)).not.toContain("bitter-pit");
    expect(signs.map(({ sign }) => sign)).not.toContain("bitter-pit");
  });

  test("are gone long after their life", () => {
    expect(sheetOn("2028-02-01").plantings).toEqual([]);
  });
});
