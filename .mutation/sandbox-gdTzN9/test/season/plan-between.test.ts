// @ts-nocheck
import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { planBetween } from "../../src/season/rounds.js";
import { aPlan, aRound } from "../support/a-plan.js";

const days = ["2027-06-05", "2027-06-19", "2027-07-03"].map(day);
const warning = (on?: string) => ({
  code: "w",
  message: on ?? "undated",
  mend: "",
  ...(on === undefined ? {} : { day: day(on) }),
});
const plan = aPlan({
  rounds: days.map((d) => aRound({ day: d })),
  warnings: [warning(), warning("2027-06-05"), warning("2027-07-03")],
});

test("both ends count, and totals are those of the rounds left", () => {
  const part = planBetween(plan, day("2027-06-19"), day("2027-07-03"));
  expect(part.rounds.map((round) => round.day)).toEqual(days.slice(1));
  expect(part.totals.rounds).toBe(2);
  expect(part.totals.waterL).toBeCloseTo((plan.totals.waterL * 2) / 3, 9);
});

test("an end left out is open", () => {
  expect(planBetween(plan, undefined, day("2027-06-05")).rounds).toHaveLength(1);
  expect(planBetween(plan, day("2027-06-06")).rounds).toHaveLength(2);
  expect(planBetween(plan)).toEqual(plan);
});

test("warnings of other days go, those without a day stay", () => {
  const { warnings } = planBetween(plan, day("2027-06-19"));
  expect(warnings.map(({ message }) => message)).toEqual(["undated", "2027-07-03"]);
});
