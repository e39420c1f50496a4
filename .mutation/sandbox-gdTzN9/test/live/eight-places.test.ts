/** One garden in eight places of the world, as `plan` has it: what holds for its dates everywhere. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { day, type Day, daysBetween, within } from "../../src/dates.js";
import type { Plan, PlannedPlanting } from "../../src/season/season-plan.js";
import { lifeSpan, type StageSpan } from "../../src/stages/stage-span.js";
import { daysFed } from "../support/a-garden.js";
import { eightPlaces, gardenIn, planOf } from "../support/eight-places.js";

const planned = await Promise.all(
  eightPlaces.map(async (place) => ({
    name: place.name,
    out: day(place.out),
    garden: gardenIn(place),
    plan: await planOf(gardenIn(place), place.season.from),
    today: place.season.from,
  })),
);

function plantingOf(plan: Plan, id: string): PlannedPlanting {
  const found = plan.plantings.find((planting) => planting.id === id);
  if (found === undefined) throw new Error(`no planting ${id}`);
  return found;
}

function flowers(plan: Plan, id: string): Day {
  const span = plantingOf(plan, id).stages.find(({ stage }) => stage === "flowering");
  if (span === undefined) throw new Error(`${id} does not flower`);
  return span.from;
}

const followed = (stages: readonly StageSpan[]): StageSpan[] =>
  stages.filter(({ warmth }) => warmth?.isFollowed === true);

describe.each(planned)("in $name", ({ plan, out, garden, today }) => {
  test("no pepper or eggplant flowers before a tomato that was planted out on the same day", () => {
    for (const tomato of ["cordon", "bush"])
      for (const id of ["pepper", "chili", "eggplant"])
        expect(flowers(plan, id) >= flowers(plan, tomato), id).toBe(true);
  });

  test("stages follow each other without a hole", () => {
    for (const { id, stages } of plan.plantings) {
      expect(stages.length, id).toBeGreaterThan(2);
      for (const [i, { from, to }] of stages.entries()) {
        expect(from <= to, id).toBe(true);
        const next = stages[i + 1];
        if (next !== undefined) expect(daysBetween(to, next.from), id).toBe(1);
      }
    }
  });

  test("warmth moves a date by four weeks at most, and tells its band and the calendar's date", () => {
    const dates = plan.plantings.flatMap(({ stages }) => followed(stages));
    expect(dates.length).toBeGreaterThan(15);
    for (const { from, warmth } of dates) {
      expect(warmth).toMatchObject({
        earliest: expect.any(String) as string,
        calendar: expect.any(String) as string,
      });
      expect(Math.abs(daysBetween(warmth?.calendar ?? from, from))).toBeLessThanOrEqual(28);
      const by = warmth?.day ?? "";
      expect((warmth?.earliest ?? "-") <= by).toBe(true);
      expect(by <= (warmth?.latest ?? by)).toBe(true);
    }
  });

  test("what warmth does not bring keeps the calendar's date, or follows what moved before it", () => {
    for (const { id, stages } of plan.plantings)
      for (const [i, { from, warmth }] of stages.entries()) {
        if (warmth === undefined || warmth.day !== undefined) continue;
        const isMoved = stages.slice(0, i).some(({ from: f, warmth: w }) => w && f !== w.calendar);
        if (isMoved) expect(from >= warmth.calendar, id).toBe(true);
        else expect(from, id).toBe(warmth.calendar);
      }
  });

  test("nothing is fed before it is planted out, or outside its life", () => {
    const ids = plan.plantings.filter(({ fed }) => fed).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["cordon", "bush", "pepper", "glass", "apple"]));
    for (const id of ids) {
      const { bed, stages, feeding } = plantingOf(plan, id);
      const life = lifeSpan(stages);
      const days = daysFed(plan, id);
      expect([days[0], days.at(-1)]).toEqual([feeding?.first, feeding?.last]);
      for (const on of days) {
        expect(life !== undefined && within(on as Day, life), id).toBe(true);
        if (bed === "warm") expect(on >= out, id).toBe(true);
      }
    }
  });

  test("glass never makes flowering later", async () => {
    const beds = garden.beds.map((bed) => ({ ...bed, cover: "glass" as const }));
    const covered = await planOf({ ...garden, beds }, today);
    const [open, under] = [plan, covered].map(({ plantings }) =>
      plantings.flatMap(({ id, stages }) => {
        const span = stages.find(({ stage }) => stage === "flowering");
        return span === undefined || id === "apple" ? [] : [[id, span.from] as const];
      }),
    );
    expect(under).toHaveLength(open?.length ?? 0);
    const opened = new Map(open);
    for (const [id, from] of under ?? []) expect(from <= (opened.get(id) ?? ""), id).toBe(true);
    expect(flowers(covered, "cordon") < flowers(plan, "cordon")).toBe(true);
  });
});

test("each way is met: by warmth, held back, not reached, with the tomato, by the calendar", () => {
  const spans = planned.flatMap(({ plan }) => plan.plantings.flatMap(({ stages }) => stages));
  const isMet = (which: (span: StageSpan) => boolean | undefined): boolean => spans.some(which);
  expect(isMet(({ warmth }) => warmth?.isFollowed && warmth.isHeldBack !== true)).toBe(true);
  expect(isMet(({ warmth }) => warmth?.isHeldBack)).toBe(true);
  expect(isMet(({ warmth }) => warmth && warmth.day === undefined)).toBe(true);
  expect(isMet(({ origin }) => origin.startsWith("no sooner than a tomato"))).toBe(true);
  expect(isMet(({ warmth, origin }) => !warmth && origin.startsWith("FAO"))).toBe(true);
});
