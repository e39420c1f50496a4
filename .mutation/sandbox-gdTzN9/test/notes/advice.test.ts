// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { Advice } from "../../src/notes/advice-type.js";
import { gardenAdvice } from "../../src/notes/advice.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, type GardenDiffers, gardenText, planFile, planted } from "../support/a-garden.js";

function adviceFor(differs: GardenDiffers = {}): Advice[] {
  const plan = planFile(gardenText(differs));
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return gardenAdvice(aGarden(differs), plan.value, loadTables());
}

const codes = (differs: GardenDiffers): string[] => adviceFor(differs).map(({ code }) => code);

test("a garden that is fed is told to water evenly first", () => {
  expect(adviceFor()).toEqual([
    expect.objectContaining({ code: "ask-watering", plantings: ["toms"] }),
    expect.objectContaining({ code: "verdict", plantings: ["toms"] }),
    expect.objectContaining({ code: "even-water", plantings: ["toms"] }),
    // A batch on the shelf is larger than two feedings take.
    expect.objectContaining({ code: "stock-thrown-away", plantings: [] }),
    expect.objectContaining({ code: "no-id", plantings: [] }),
  ]);
});

test("an id is advised in the garden's own words, until it has one", () => {
  expect(adviceFor().find(({ code }) => code === "no-id")?.message).toContain("`id: weir-cottage`");
  expect(codes({ id: "weir" })).not.toContain("no-id");
});

test("one entry a bed is advised against where a round has more than five", () => {
  const beds = (count: number) =>
    Array.from({ length: count }, (_, i) => ({
      id: `bed-${i}`,
      plantings: [{ id: `toms-${i}`, crop: "tomato", plants: 6, transplanted: "2027-05-20" }],
    }));
  const calendar = { group: "bed" };
  const told = adviceFor({ beds: beds(6), calendar }).find(({ code }) => code === "many-entries");
  expect(told?.message).toMatch(/^up to 6 calendar entries on one day.*`group: round`/);
  expect(codes({ beds: beds(5), calendar })).not.toContain("many-entries");
  expect(codes({ beds: beds(6) })).not.toContain("many-entries");
});

test("a crop that needs no feed is told with its reason", () => {
  const advice = adviceFor(planted({}, { id: "basil", crop: "basil" }));
  const told = advice.find(({ code }) => code === "needs-no-feed");
  expect(told?.plantings).toEqual(["basil"]);
  expect(told?.message).toMatch(/^basil \(basil\): ./);
});

describe("a season's water beside a season's feed", () => {
  const watered = (watering: string | undefined, source_water: unknown): GardenDiffers => {
    const { beds } = planted({});
    return { beds: (beds as object[]).map((bed) => ({ ...bed, watering })), source_water };
  };
  const ofWater = (garden: GardenDiffers) =>
    adviceFor(garden).filter(({ code }) => /water-brings-calcium|ask-watering/.test(code));

  test("is told where the water brings as much, even where a can of it does not", () => {
    // 30 mg/L of hardness is 7 to 11 mg/L of calcium, a can has 44 beside it.
    const soft = watered("30 L", { hardness: "30 mg/L" });
    expect(ofWater(soft)).toMatchObject([
      {
        code: "water-brings-calcium",
        plantings: ["toms"],
        message: expect.stringMatching(
          /^In the season your water brings \d.* to \d.* g of calcium to what is fed, \d.* times the \d.* g of the feed: even watering does more than the feed$/,
        ) as string,
      },
    ]);
  });

  test("is not told where a season's feed brings more", () => {
    expect(ofWater(watered("1 L", { hardness: "5 mg/L" }))).toEqual([]);
  });

  test("is asked for where nobody knows how much is poured", () => {
    expect(ofWater(watered(undefined, { hardness: "400 mg/L" }))).toMatchObject([
      { code: "ask-watering", plantings: ["toms"] },
    ]);
  });

  test("is not judged by alkalinity alone", () => {
    expect(ofWater(watered("30 L", { alkalinity: "400 mg/L" }))).toEqual([]);
  });
});

describe("two plantings of one crop", () => {
  const twice = (water: string) => planted({}, { id: "more", water });
  test("one of them with half the water or less is asked about", () => {
    const told = adviceFor(twice("1 L per plant")).find(({ code }) => code === "uneven-water");
    expect(told?.plantings).toEqual(["more", "toms"]);
  });
  test("with nearly the same water are not", () => {
    expect(codes(twice("1.5 L per plant"))).not.toContain("uneven-water");
  });
});

describe("time away while fruit forms", () => {
  const feeding = (from: string, to: string): GardenDiffers => {
    return { feeding: { days: ["sat"], away: [{ from, to }] } };
  };
  test.each([
    ["a week", "2027-07-01", "2027-07-07", true],
    ["a day less", "2027-07-01", "2027-07-06", false],
    ["before anything grows", "2027-03-01", "2027-03-14", false],
  ])("%s", (_, from, to, told) => {
    expect(codes(feeding(from, to)).includes("dry-while-away")).toBe(told);
  });
});
