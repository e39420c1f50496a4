// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { GrowersClimate } from "../../src/garden/garden.js";
import { aGarden, type GardenDiffers, gardenText, problemsOf } from "../support/a-garden.js";

const max = [8, 8, 10, 12, 15, 18, 20, 19, 17, 14, 10, 8];
const min = [2, 2, 3, 4, 7, 10, 12, 11, 10, 7, 4, 3];
const rain = [63, 49, 53, 54, 60, 67, 56, 73, 60, 79, 73, 73];
const own = { source: "Met service 1991-2020", temperature: "C", max, min };

function withClimate(climate: unknown): GardenDiffers {
  return { location: { latitude: 53.3 }, climate };
}

function meansOf(climate: unknown): GrowersClimate {
  const made = aGarden(withClimate(climate)).climate;
  if (made === undefined || made === "off") throw new Error("no climate of its own");
  return made;
}

describe("a grower's own climate", () => {
  test("is taken as it stands", () => {
    expect(meansOf({ ...own, rain, rain_unit: "mm" })).toEqual({
      source: "Met service 1991-2020",
      means: { maxC: max, minC: min, rainMm: rain },
    });
    expect(meansOf(own).means).toEqual({ maxC: max, minC: min });
  });

  test("may be in Fahrenheit and inches", () => {
    const { means } = meansOf({
      ...own,
      temperature: "F",
      max: max.map((c) => c * 1.8 + 32),
      min: min.map((c) => c * 1.8 + 32),
      rain: rain.map((mm) => mm / 25.4),
      rain_unit: "in",
    });
    for (const [i, c] of max.entries()) expect(means.maxC[i]).toBeCloseTo(c, 10);
    for (const [i, c] of min.entries()) expect(means.minC[i]).toBeCloseTo(c, 10);
    for (const [i, mm] of rain.entries()) expect(means.rainMm?.[i]).toBeCloseTo(mm, 10);
  });

  test("may be off", () => {
    expect(aGarden({ climate: "off" }).climate).toBe("off");
    expect(aGarden().climate).toBeUndefined();
  });
});

/** The list with another value in a place. */
function but(list: readonly unknown[], at: number, value: unknown): unknown[] {
  return list.map((one, i) => (i === at ? value : one));
}

describe("is refused", () => {
  test.each<[what: string, climate: unknown, at: string, message: string]>([
    ["another word", "of", "climate: of", "`climate` cannot be of: write off"],
    ["without minima", { ...own, min: undefined }, "source", "`min` is missing"],
    ["eleven months", { ...own, max: max.slice(1) }, "- 8\n", "`max` is too short: it has 12"],
    ["thirteen months", { ...own, max: [...max, 8] }, "- 8\n", "`max` is too long: at most 12"],
    ["a word among the months", { ...own, max: but(max, 1, "x") }, "- x", "this is x, a number"],
    ["another unit", { ...own, temperature: "K" }, "K", "`temperature` cannot be K"],
    ["a key misspelt", { ...own, sorce: "me" }, "sorce", "did you mean `source`?"],
    ["rain without a unit", { ...own, rain }, "rain:", "the rain has no unit: add `rain_unit: mm`"],
    [
      "a maximum below its minimum",
      { ...own, max: but(max, 6, 11) },
      "- 11\n",
      "the maximum of July, `11`, is below its minimum, `12`",
    ],
    [
      "Fahrenheit taken for Celsius",
      { ...own, max: but(max, 6, 68) },
      "- 68",
      "`68` C is no mean of July: check it, and whether all of them are in F",
    ],
    [
      "Celsius taken for Fahrenheit",
      { ...own, temperature: "F" },
      "F\n",
      "in Fahrenheit these means leave no month for growing: write `temperature: C`",
    ],
    [
      "millimetres taken for inches",
      { ...own, rain: but(rain, 2, 130), rain_unit: "in" },
      "- 130",
      "`130` in is no rain of March: write millimetres with `rain_unit: mm`",
    ],
  ])("with %s", (_, climate, at, message) => {
    const text = gardenText(withClimate(climate));
    const before = text.slice(0, text.indexOf(at, text.indexOf("climate:"))).split("\n");
    const column = (before.at(-1)?.length ?? 0) + (at.startsWith("- ") ? 3 : 1);
    const [problem, ...more] = problemsOf(text);
    expect(more).toEqual([]);
    expect(`${problem?.message ?? ""}: ${problem?.mend ?? ""}`).toContain(message);
    expect(problem?.at.line).toBe(before.length);
    if (!at.startsWith("climate") && !message.includes("too "))
      expect(problem?.at.column).toBe(column);
  });

  test("without a latitude, which tells the length of the days", () => {
    const [problem, ...more] = problemsOf(gardenText({ climate: own }));
    expect(more).toEqual([]);
    expect(problem?.mend).toBe("add it, like `location: { latitude: 53.3 }`");
  });
});
