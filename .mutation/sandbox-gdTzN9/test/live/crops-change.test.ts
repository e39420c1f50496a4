// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { planted } from "../support/a-garden.js";
import { aheadDays, fedOf, givenDays, growing, planOn } from "./a-live-garden.js";

const today = "2027-07-06";
const log = [
  { on: "2027-06-18", planting: "toms", stock: "30 mL" },
  { on: "2027-07-02", planting: "toms", stock: "28 mL" },
];
const past = (differs: object): unknown =>
  fedOf(planOn(today, differs))
    .filter(({ mix }) => mix.given)
    .map(({ day: on, mix }) => [on, mix.stockMl]);
const asLogged = [
  ["2027-06-18", 30],
  ["2027-07-02", 28],
];

describe("a planting taken out", () => {
  const removed = { ...growing({ removed: "2027-07-05" }), log };

  test("soon after its first flowers, as by hail, keeps the feedings that it had", () => {
    const hailed = planted({ transplanted: "2027-05-20", removed: "2027-07-05" });
    expect(past({ ...hailed, log })).toEqual(asLogged);
  });

  test("is not fed any more, and its past stays", () => {
    const plan = planOn(today, removed);
    expect(aheadDays(plan)).toEqual([]);
    expect(past(removed)).toEqual(asLogged);
    expect(plan.warnings).toEqual([]);
    expect(plan.notes).toEqual([]);
  });

  test("and one planted after it has a life of its own", () => {
    const [gone] = growing({ removed: "2027-07-05" }).beds as { plantings: object[] }[];
    const [next] = planted({ id: "toms-2", transplanted: "2027-07-06" }).beds as {
      plantings: object[];
    }[];
    const beds = [
      { id: "south", plantings: [...(gone?.plantings ?? []), ...(next?.plantings ?? [])] },
    ];
    const plan = planOn(today, { beds, log });
    expect(givenDays(plan)).toEqual(["2027-06-18", "2027-07-02"]);
    expect(givenDays(plan, "toms-2")).toEqual([]);
    const alone = planOn(today, {
      ...planted({ id: "toms-2", transplanted: "2027-07-06" }),
    });
    expect(aheadDays(plan, "toms-2")).toEqual(aheadDays(alone, "toms-2"));
    expect(aheadDays(plan, "toms-2").length).toBeGreaterThan(0);
  });
});

test("a new bed is planned from today, and the past stays", () => {
  const [south] = growing({}).beds as object[];
  const beds = [
    south,
    {
      id: "north",
      plantings: [{ id: "celery", crop: "celery", transplanted: "2027-06-01", water: "6 L" }],
    },
  ];
  const plan = planOn(today, { beds, log });
  expect(past({ beds, log })).toEqual(asLogged);
  expect(aheadDays(plan, "celery").length).toBeGreaterThan(0);
  expect(aheadDays(plan, "celery").every((on) => on >= today)).toBe(true);
});

test("a stage seen early moves what is to come, not what was", () => {
  const early = {
    ...growing({ seen: [{ stage: "fruit-growth", on: "2027-06-25" }] }),
    log,
  };
  expect(past(early)).toEqual(asLogged);
  const ends = (differs: object): string | undefined =>
    planOn(today, differs).plantings[0]?.stages.find((s) => s.stage === "fruit-growth")?.to;
  expect(ends(early) ?? "").toBeTruthy();
  expect((ends(early) ?? "") < (ends({ log }) ?? "")).toBe(true);
  expect((aheadDays(planOn(today, early)).at(-1) ?? "") <= (ends(early) ?? "")).toBe(true);
});

test("a stage seen early that opens feeding is fed from today on", () => {
  const before = "2027-05-20";
  expect(aheadDays(planOn(before, { log: [] }))[0]).not.toBe(undefined);
  const seen = growing({ seen: [{ stage: "flowering", on: "2027-05-19" }] });
  const usual = aheadDays(planOn(before))[0] ?? "";
  const moved = aheadDays(planOn(before, seen))[0] ?? "";
  expect(moved < usual).toBe(true);
  expect(moved <= addDays(day("2027-05-19"), 10)).toBe(true);
});

test("other plantings added later move no round that was given", () => {
  const differs = { ...growing({}, { id: "more", plants: 3 }), log };
  expect(past(differs)).toEqual(asLogged);
  expect(givenDays(planOn(today, differs), "more")).toEqual([]);
});
