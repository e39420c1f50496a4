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

test("a crop that needs no feed is told with its reason", () => {
  const advice = adviceFor(planted({}, { id: "basil", crop: "basil" }));
  const told = advice.find(({ code }) => code === "needs-no-feed");
  expect(told?.plantings).toEqual(["basil"]);
  expect(told?.message).toMatch(/^basil \(basil\): ./);
});

describe("water that brings as much calcium as a feeding", () => {
  test.each([
    ["30 mg/L", false],
    ["400 mg/L", true],
  ])("%s of hardness: %s", (hardness, told) => {
    const water = { source_water: { hardness } };
    expect(codes(water).includes("water-brings-calcium")).toBe(told);
  });

  test("is not judged by alkalinity alone", () => {
    expect(codes({ source_water: { alkalinity: "400 mg/L" } })).not.toContain(
      "water-brings-calcium",
    );
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
