/** Nothing left to pour: the next batch is begun at once, and the round waits for it within its window. */
// @ts-nocheck

import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { aheadDays, fedOf, planOn } from "./a-live-garden.js";

const today = "2027-06-25";
const due = "2027-06-28";
const full = { id: "B1", made: "2027-05-20", volume: "1 L" };
const withStock = (batch: object, more: object = {}): object => ({
  stock: { keep: "fridge", batches: [batch], shells_in_hand: 20, ...more },
  log: [{ on: "2027-06-14", planting: "toms", stock: "30 mL", batch: "B1" }],
});
const broken = { ...full, thrown_away: today };
const shortOf = (plan: ReturnType<typeof planOn>): number[] =>
  plan.rounds.flatMap(({ shortMl }) => shortMl ?? []);

test("while there is stock, the round is on its usual day", () => {
  const plan = planOn(today, withStock(full));
  expect(aheadDays(plan)[0]).toBe(due);
  expect(shortOf(plan)).toEqual([]);
  expect(plan.warnings.map(({ code }) => code)).not.toContain("stock-waits");
});

test("an empty shelf long before the first round is nothing to tell", () => {
  const plan = planOn("2027-03-01", {
    stock: { batches: [{ ...full, made: "2027-02-01", thrown_away: "2027-02-20" }] },
  });
  expect(plan.warnings.map(({ code }) => code)).not.toContain("stock-waits");
});

test("a batch is begun today, and no round lacks stock", () => {
  const plan = planOn(today, withStock(broken));
  const [batch] = plan.stock?.making.batches ?? [];
  expect(batch?.startOn).toBe(today);
  expect(shortOf(plan)).toEqual([]);
  const [first] = fedOf(plan).filter(({ day: on }) => on >= today);
  expect(day(first?.day ?? "") >= (batch?.readyOn ?? "")).toBe(true);
  expect(first?.feeding.inWindow).toBe(true);
  const codes = plan.warnings.map(({ code }) => code);
  expect(codes).toContain("stock-waits");
  expect(codes).not.toContain("stock-short-too-soon");
});

test("where no window lasts so long, the round comes late, as soon as there is stock, and it is told", () => {
  const away = [{ from: "2027-06-27", to: "2027-07-09" }];
  const plan = planOn(today, { ...withStock(broken), feeding: { days: ["wed", "sat"], away } });
  const [batch] = plan.stock?.making.batches ?? [];
  const [first] = aheadDays(plan);
  expect(batch?.readyOn !== undefined && first !== undefined && first >= batch.readyOn).toBe(true);
  expect(shortOf(plan)).toEqual([]);
  expect(plan.warnings.filter(({ planting }) => planting === "toms")).not.toEqual([]);
});

test("where no stock can be made, the rounds stay and say what they lack", () => {
  const plan = planOn(today, withStock(broken, { shells_in_hand: 0, shells_per_week: 0 }));
  expect(aheadDays(plan)[0]).toBe(due);
  expect(shortOf(plan).length).toBeGreaterThan(0);
});
