// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { Feeding, Plan } from "../../src/season/season-plan.js";
import type { FeedRule } from "../../src/rules/rule.js";
import { loadTables } from "../../src/tables.js";
import { bedLines } from "../../src/words/bed-lines.js";
import { aBedRound, aFeeding, aFill, aMix, aPlan, aRound } from "../support/a-plan.js";

const rules = loadTables().builtInRules;
const found = rules.find(({ route }) => route === "drench");
if (found === undefined) throw new Error("no rule");
const rule: FeedRule = found;

/** At 20 g of calcium to the litre of stock: the rate is raised by a quarter. */
const seen = [{ name: "blossom-end rot", on: day("2027-07-02") }];
const raised = (differs: Partial<Feeding> = {}) =>
  aFeeding({
    rule: rule.id,
    level: 1.25,
    targetMgPerL: 50,
    signs: { seen, levelWithout: 1 },
    ...differs,
  });

function linesOf(feedings: readonly Feeding[], differs: Partial<Plan> = {}): readonly string[] {
  const fills = [aFill({ stockMl: 25, stockText: "25 mL" })];
  const mix = aMix({ rateMlPerL: 2.5, calciumMgPerL: 50, fills, feedings });
  const round = aRound({ day: day("2027-07-06"), beds: [aBedRound({ mixes: [mix] })] });
  const plan = aPlan({ rules: [{ ...rule, highestRateMlPerL: 5 }], rounds: [round], ...differs });
  const [bed] = round.beds;
  return bed === undefined ? [] : bedLines(plan)(round, bed);
}

describe("in the card of a bed", () => {
  test("a sign says what the amount is and would be without it", () => {
    expect(linesOf([raised()])).toEqual(["25 mL, was 20: blossom-end rot seen 2 Jul"]);
    const garden = { amounts: "us" } as const;
    expect(linesOf([raised()], { garden: aPlan({ garden }).garden })).toEqual([
      "25 mL, was 1 tbsp + 1 tsp: blossom-end rot seen Jul 2",
    ]);
  });

  test("an amount that is the rule's highest with the sign and without it has not changed", () => {
    const atHighest = { rules: [{ ...rule, highestRateMlPerL: 2 }] };
    const feeding = raised({ targetMgPerL: 100 });
    expect(linesOf([feeding], { rules: [{ ...rule, highestRateMlPerL: 2.5 }] })).toEqual([
      "blossom-end rot seen 2 Jul; the amount stays",
    ]);
    expect(linesOf([raised({ level: 1 })], atHighest)[0]).toMatch(/seen 2 Jul/);
  });

  test("a sign of one of several is told by its name", () => {
    expect(linesOf([raised(), aFeeding({ name: "basil" })])[0]).toMatch(/^toms: 25 mL, was 20/);
  });

  test("late and early say when it is due", () => {
    const off = (earliest: string, latest: string) =>
      aFeeding({ inWindow: false, window: { earliest: day(earliest), latest: day(latest) } });
    expect(linesOf([off("2027-06-20", "2027-06-24")])).toEqual(["late: due by 24 Jun"]);
    expect(linesOf([off("2027-07-09", "2027-07-14")])).toEqual(["early: due from 9 Jul"]);
  });

  test("what was missed is told in the bed's next round, and once", () => {
    const missed = [
      ...(["log", "away"] as const).map((why, i) => ({
        ...{
          day: day(`2027-06-0${i + 1}`),
          bed: "south",
          bedName: "South bed",
          plantings: ["toms"],
        },
        why,
      })),
    ];
    expect(linesOf([aFeeding()], { missed })).toEqual(["not given 1 Jun", "not given 2 Jun: away"]);
    const rounds = ["2027-06-12", "2027-07-06"].map((on) => aRound({ day: day(on) }));
    expect(linesOf([aFeeding()], { missed, rounds })).toEqual([]);
  });

  test("there is nothing where all is as usual, or given already", () => {
    expect(linesOf([aFeeding()])).toEqual([]);
    const given = aMix({ given: true, feedings: [raised({ inWindow: false })] });
    const bed = aBedRound({ mixes: [given] });
    expect(bedLines(aPlan())(aRound({ beds: [bed] }), bed)).toEqual([]);
  });
});
