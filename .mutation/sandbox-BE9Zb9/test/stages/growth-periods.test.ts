/** The four growth periods of a planting in its dated stages. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { Planting } from "../../src/garden/garden.js";
import { plantingLife, type PlantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import { aPlant, aWarmPlace } from "./a-warm-place.js";

const { catalogue } = loadTables();
const season = { from: day("2027-03-01"), to: day("2027-10-31") };

function life(key: string, times: Partial<Planting>): PlantingLife {
  const crop = catalogue.crops.find((c) => c.key === key);
  if (crop === undefined) throw new Error(`no crop ${key}`);
  return plantingLife(aPlant(crop, times), crop, { hemisphere: "north", season });
}

// FAO-56 Table 11, Tomato, Mediterranean: 30, 40, 45 and 30 days.
test("follow one another by the published lengths where nothing moves them", () => {
  expect(
    life("tomato", { sown: day("2027-04-10"), pickedUntil: day("2027-08-20") }).periods,
  ).toEqual({
    initial: "2027-04-10",
    development: "2027-05-10",
    mid: "2027-06-19",
    late: "2027-08-03",
    end: "2027-09-01",
  });
});

test("begin with the stages that stand at their beginnings, also for one not picked again and again", () => {
  const { spans, periods } = life("cabbage", { transplanted: day("2027-04-10") });
  const from = Object.fromEntries(spans.map((span) => [span.stage, span.from]));
  expect(periods).toMatchObject({
    initial: from["establishment"],
    development: from["vegetative"],
    mid: from["heading"],
    late: from["harvest"],
  });
  expect(periods?.end).toBe(spans.at(-1)?.to);
});

test("move with what was seen", () => {
  const seen = [{ stage: "flowering", on: day("2027-07-01"), path: [] }];
  const { periods } = life("tomato", { sown: day("2027-04-10"), seen });
  expect([periods?.development, periods?.mid]).toEqual(["2027-05-10", "2027-07-01"]);
});

test("move with warmth", () => {
  const crop = catalogue.crops.find((c) => c.key === "tomato");
  if (crop === undefined) throw new Error("no tomato");
  const planting = aPlant(crop, { transplanted: day("2027-05-20") });
  const [cool, warm] = [16, 24].map((c) => plantingLife(planting, crop, aWarmPlace({}, c)));
  const startOf = (one: PlantingLife | undefined): string | undefined =>
    one?.spans.find(({ stage }) => stage === "flowering")?.from;
  expect(startOf(warm)).not.toBe(startOf(cool));
  expect([cool?.periods?.mid, warm?.periods?.mid]).toEqual([startOf(cool), startOf(warm)]);
});

describe("what is picked again and again", () => {
  test("is late for as long as it is picked", () => {
    const { periods, last } = life("tomato", { sown: day("2027-04-10") });
    expect([periods?.end, last.day]).toEqual(["2027-10-31", "2027-10-31"]);
  });

  // FAO-56 Table 11, Squash, Zucchini: 25, 35, 25 and 15 days, or 20, 30, 25 and 15; harvest begins with mid.
  test("has its late period where the lengths have it, though no stage begins there", () => {
    const { spans, periods } = life("zucchini", { sown: day("2027-05-10") });
    const harvest = spans.find(({ stage }) => stage === "harvest")?.from;
    expect(periods?.mid).toBe(harvest);
    expect(periods?.late).toBe(addDays(harvest as never, 25));
  });
});

test("are not squeezed by an early end", () => {
  const times = { sown: day("2027-04-10"), pickedUntil: day("2027-08-20") };
  const removed = life("tomato", { ...times, removed: day("2027-07-20") });
  expect(removed.periods).toEqual(life("tomato", times).periods);
});
