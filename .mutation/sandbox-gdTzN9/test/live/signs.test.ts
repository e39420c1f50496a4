// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { shortDate } from "../../src/garden/index.js";
import { loadTables } from "../../src/tables.js";
import { gardenPage } from "../../src/outputs/page/page.js";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText, referenceBottle } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { fedOf, growing, planOn } from "./a-live-garden.js";

const seen = (sign: string, on = "2027-06-25", planting = "toms"): object => ({
  on,
  planting,
  sign,
});
const today = "2027-06-25";

/** Level of each feeding by its day. */
function levels(differs: object, planting = "toms"): [string, number][] {
  return fedOf(planOn(today, differs), planting).map((fed) => [fed.day, fed.feeding.level]);
}

const { signs } = loadTables();
const heldTo = (key: string, on = "2027-06-25"): string =>
  addDays(day(on), signs.find((sign) => sign.key === key)?.holds_days ?? NaN);

/** Rounds without what they say of signs. */
const withoutSigns = ({ rounds }: Plan): unknown =>
  JSON.parse(
    JSON.stringify(rounds, (key, value: unknown) => (key === "signs" ? undefined : value)),
  );

describe("a sign that asks for more", () => {
  test("raises the level one step from the day it was seen, for as long as it holds", () => {
    const found = levels({ signs: [seen("blossom-end-rot")] });
    for (const [on, level] of found)
      expect([on, level]).toEqual([
        on,
        on >= "2027-06-25" && on <= heldTo("blossom-end-rot") ? 1.5 : 1,
      ]);
    expect(new Set(found.map(([, level]) => level))).toEqual(new Set([1, 1.5]));
  });

  test("raises the millilitres in the can with it", () => {
    const plan = planOn(today, { ...referenceBottle, signs: [seen("blossom-end-rot")] });
    const raised = fedOf(plan).filter(({ feeding }) => feeding.level > 1);
    expect(raised.length).toBeGreaterThan(0);
    for (const { mix } of raised) {
      expect(mix.rateMlPerL).toBeCloseTo(3.75, 1);
      expect(mix.exactStockMl).toBeCloseTo(45, 0);
    }
  });

  test("never passes the rule's highest rate, and says so", () => {
    const [rule] = planOn(today).rules;
    if (rule === undefined) throw new Error("no rule");
    const level = (0.9 * rule.highestRateMlPerL) / rule.rateMlPerL;
    const differs = { ...growing({ level }), signs: [seen("blossom-end-rot")] };
    const plan = planOn(today, differs);
    for (const { mix } of fedOf(plan))
      expect(mix.rateMlPerL).toBeLessThanOrEqual(rule.highestRateMlPerL * (1 + 1e-9));
    expect(plan.notes[0]?.message).toContain(", the rule's highest, from 25 Jun");
  });

  test("changes nothing where the rate is at the rule's highest already, and says that", () => {
    const [rule] = planOn(today).rules;
    const level = (rule?.highestRateMlPerL ?? NaN) / (rule?.rateMlPerL ?? NaN);
    const plan = planOn(today, { ...growing({ level }), signs: [seen("blossom-end-rot")] });
    expect(plan.notes[0]?.message).toMatch(/the rate stays at \S+ mL per L, the rule's highest/);
    expect(withoutSigns(plan)).toEqual(planOn(today, growing({ level })).rounds);
  });

  test("leaves other plantings alone", () => {
    const beds = growing({}, { id: "more" });
    const differs = { ...beds, signs: [seen("blossom-end-rot")] };
    expect(levels(differs, "more").every(([, level]) => level === 1)).toBe(true);
    expect(levels(differs).some(([, level]) => level > 1)).toBe(true);
  });

  test("seen again holds from then on, and still is one step", () => {
    const again = [seen("blossom-end-rot", "2027-06-24"), seen("blossom-end-rot")];
    expect(levels({ signs: again })).toEqual(levels({ signs: [seen("blossom-end-rot")] }));
  });

  test("says what changed, until when and why, with what to do first", () => {
    const [note] = planOn(today, { signs: [seen("blossom-end-rot")] }).notes;
    const sign = signs.find(({ key }) => key === "blossom-end-rot");
    expect(note).toMatchObject({ code: "sign", planting: "toms", day: "2027-06-25" });
    expect(note?.message).toContain("the rate rises from 2.5 to 3.75 mL per L from 25 Jun until");
    expect(note?.message).toContain(sign?.reason);
    expect(note?.advice).toEqual([
      ...(sign?.water_evidence ?? [])
        .filter(({ crops }) => crops?.includes("tomato") ?? true)
        .map(({ says }) => says),
      ...(sign?.first_advice ?? []),
    ]);
  });

  test("looks for mould first where rots get in at the wet flower", () => {
    const beds = growing({}, { id: "more", crop: "zucchini", transplanted: "2027-05-20" });
    const signs = ["toms", "more"].map((planting) =>
      seen("blossom-end-rot", "2027-06-25", planting),
    );
    const notes = planOn(today, { ...beds, signs }).notes.filter(({ code }) => code === "sign");
    expect(notes.map(({ planting, advice }) => [planting, /mould/.test(advice[0] ?? "")])).toEqual([
      ["toms", false],
      ["more", true],
    ]);
  });
});

test("a sign of too much lowers the level", () => {
  const found = levels({ signs: [seen("white-crust")] });
  expect(found.filter(([on]) => on >= "2027-06-25" && on <= heldTo("white-crust")).length).toBe(
    found.filter(([, level]) => level === 0.5).length,
  );
  const [note] = planOn(today, { signs: [seen("white-crust")] }).notes;
  expect(note?.message).toContain("the rate falls from 2.5 to 1.25 mL per L");
});

test("a sign that more calcium does not mend leaves the rate", () => {
  const plan = planOn(today, { signs: [seen("wilting-at-noon")] });
  expect(withoutSigns(plan)).toEqual(planOn(today).rounds);
  expect(plan.notes[0]?.message).toContain("the rate stays as it is");
  expect(plan.notes[0]?.advice.length).toBeGreaterThan(0);
});

test("a sign not known on the crop changes nothing, and asks to look again", () => {
  const plan = planOn(today, { signs: [seen("bitter-pit")] });
  expect(plan.rounds).toEqual(planOn(today).rounds);
  expect(plan.notes[0]?.message).toContain("though it is not known on tomato: look again");
});

test("a sign on a planting that is not fed says so", () => {
  const beds = growing({}, { id: "basil", crop: "basil", days_to_harvest: undefined });
  const differs = { ...beds, signs: [seen("white-crust", "2027-06-25", "basil")] };
  expect(planOn(today, differs).notes[0]?.message).toContain("it is not fed, so no rate changes");
});

test("a sign seen when no feeding comes any more says that nothing changes", () => {
  const plan = planOn("2027-09-10", { signs: [seen("white-crust", "2027-09-10")] });
  expect(plan.notes[0]?.message).toMatch(/no feeding comes until 22 Oct, so no rate changes/);
  expect(plan.rounds).toEqual(planOn("2027-09-10").rounds);
});

test("a sign seen before its stages counts from the first of them", () => {
  const plan = planOn("2027-06-01", { signs: [seen("blossom-end-rot", "2027-06-01")] });
  const flowering = plan.plantings[0]?.stages.find(({ stage }) => stage === "flowering");
  expect(plan.notes[0]?.message).toContain(
    `from ${flowering && shortDate(flowering.from, "metric")} until 29 Jun`,
  );
});

test("two signs at once each have their step", () => {
  const both = levels({ signs: [seen("blossom-end-rot"), seen("white-crust")] });
  const on = both.find(([fedOn]) => fedOn > "2027-06-25");
  expect(on?.[1]).toBeCloseTo(0.75, 9);
});

test("for any sign on any day: a level other than 1 only where it is known, holds, and names the stage", () => {
  const anySign = fc.constantFrom(...signs);
  const anyDay = fc.integer({ min: 0, max: 120 }).map((n) => addDays(day("2027-05-01"), n));
  fc.assert(
    fc.property(anySign, anyDay, (sign, on) => {
      const plan = planOn(addDays(day("2027-05-01"), 120), { signs: [seen(sign.key, on)] });
      const isKnown =
        (sign.crops === undefined && sign.groups === undefined) ||
        (sign.groups ?? []).includes("solanaceous");
      for (const { day: fedOn, feeding } of fedOf(plan)) {
        const holds = on <= fedOn && fedOn <= addDays(on, sign.holds_days);
        const applies = isKnown && holds && sign.stages.includes(feeding.stage);
        expect(feeding.level).toBeCloseTo(
          applies ? sign.level_factor ** Math.abs(sign.level_steps) : 1,
          9,
        );
      }
      expect(plan.notes).toHaveLength(1);
    }),
    { numRuns: 60 },
  );
});

test("what is said of a sign is closed before what to do first", async () => {
  const differs = { ...growing({}), signs: [seen("tipburn")] };
  const { stdout } = await cli(["plan", scratchFile("garden.yaml", gardenText(differs))], {
    today,
  });
  expect(stdout.replace(/\s+/g, " ")).toMatch(/not known on [Tt]omato: [^.]*\. Water evenly/);
  expect(gardenPage(planOn(today, differs))).toMatch(/not known on [Tt]omato: [^.<]*\.</);
});
