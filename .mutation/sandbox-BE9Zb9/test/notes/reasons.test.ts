// @ts-nocheck
import { expect, test } from "vitest";
import { day, daysBetween } from "../../src/dates.js";
import { reasonsFor } from "../../src/notes/reasons.js";
import { gardenText, planFile, planted } from "../support/a-garden.js";

const planned = planFile(gardenText(planted({}, { id: "basil", crop: "basil" })));
if (!planned.ok) throw new Error("the garden has problems");
const plan = planned.value;

test("every feeding of a planting has its stage, rule, cans and the days since the one before", () => {
  const [toms] = reasonsFor(plan, "toms");
  const days = toms?.feedings.map((reason) => reason.day) ?? [];
  expect(days).toEqual(plan.rounds.map((round) => round.day));
  expect(toms?.feedings.map(({ gapDays }) => gapDays)).toEqual(
    days.map((d, i) => {
      const before = days[i - 1];
      return before === undefined ? undefined : daysBetween(before, d);
    }),
  );
  for (const { rule, stage, feeding, mix } of toms?.feedings ?? []) {
    expect(rule.id).toBe(feeding.rule);
    expect(stage.stage).toBe(feeding.stage);
    expect(mix.feedings).toContain(feeding);
  }
});

test("a planting that is not fed has its reason alone", () => {
  const [basil] = reasonsFor(plan, "basil");
  expect(basil?.feedings).toEqual([]);
  expect(basil?.planting.reason).not.toBe("");
});

test("of a day, only those fed on it; a planting asked for is told in any case", () => {
  const [first] = plan.rounds.map((round) => round.day);
  expect(reasonsFor(plan, undefined, first).map(({ planting }) => planting.id)).toEqual(["toms"]);
  expect(reasonsFor(plan, undefined, day("2027-03-01"))).toEqual([]);
  expect(reasonsFor(plan, "basil", first)).toHaveLength(1);
});
