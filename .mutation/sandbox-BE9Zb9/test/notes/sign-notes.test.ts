/** What a grower saw, through the plan of a garden: advice, one step of the rate, and what is told. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Day } from "../../src/dates.js";
import type { Plan, PlanNote } from "../../src/season/season-plan.js";
import {
  gardenText,
  planFile,
  planted,
  type PlantingDiffers,
  referenceBottle,
} from "../support/a-garden.js";

/** Tomatoes fed from 17 June to 24 July at 2.5 mL to the litre, at most 5. */
function seasonWith(
  signs: readonly { on: string; sign: string; planting?: string }[],
  differs: PlantingDiffers = {},
  today = "2027-06-18",
): Plan {
  const seen = signs.map((sign) => ({ planting: "toms", ...sign }));
  const feeding = { days: ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] };
  const text = gardenText({
    ...planted({ interval: "10 days", ...differs }),
    ...referenceBottle,
    feeding,
    signs: seen,
  });
  const plan = planFile(text, undefined, today as Day);
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return plan.value;
}
const rates = (plan: Plan): (readonly [Day, number])[] =>
  plan.rounds
    .filter(({ day }) => day >= plan.today)
    .flatMap(({ day, beds }) =>
      beds.flatMap((bed) =>
        bed.mixes.map((mix) => [day, Number(mix.rateMlPerL.toFixed(3))] as const),
      ),
    );
const highest = (plan: Plan): number => Math.max(...rates(plan).map(([, rate]) => rate));
const notesOf = (plan: Plan): PlanNote[] => plan.notes.filter(({ code }) => code === "sign");
/** Holds for 28 days. */
const early = { on: "2027-06-05", sign: "blossom-end-rot" };
const rot = { on: "2027-06-18", sign: "blossom-end-rot" };

describe("a sign that the feed may help against", () => {
  test("raises the rate one step, from the day it was seen for as long as it holds", () => {
    const plan = seasonWith([early]);
    for (const [day, rate] of rates(plan))
      expect([day, rate]).toEqual([day, day <= "2027-07-03" ? 3.75 : 2.5]);
    expect(new Set(rates(plan).map(([, rate]) => rate))).toEqual(new Set([3.75, 2.5]));
  });

  test("is told with what changed, until when and why, and what to do first", () => {
    const [note, ...more] = notesOf(seasonWith([rot]));
    expect(more).toEqual([]);
    expect(note).toMatchObject({ planting: "toms", day: "2027-06-18" });
    expect(note?.message).toContain(
      "blossom-end rot seen on Fri 18 Jun; the rate rises from 2.5 to 3.75 mL per L from 18 Jun until 16 Jul. Fruit that shows it cannot be mended",
    );
    expect(note?.advice.find((one) => one.startsWith("Water evenly"))).toBeDefined();
    expect(note?.advice[0]).toContain("10 kPa");
    expect(note?.advice.join(" ")).toMatch(/nitrogen.*pH/);
  });

  test("moves no round, and leaves other plantings at their rate", () => {
    const twoBeds = {
      beds: ["south", "north"].map((id) => ({
        id,
        plantings: [
          {
            id: `toms-${id}`,
            crop: "tomato",
            plants: 6,
            transplanted: "2027-05-20",
            water: "12 L",
          },
        ],
      })),
    };
    const signs = [{ ...rot, planting: "toms-south" }];
    const plan = planFile(
      gardenText({ ...referenceBottle, ...twoBeds, signs }),
      undefined,
      "2027-06-18" as Day,
    );
    const first = plan.ok ? plan.value.rounds.find(({ day }) => day >= "2027-06-18") : undefined;
    expect(first?.beds.map(({ bed, mixes }) => [bed, mixes[0]?.rateMlPerL.toFixed(2)])).toEqual([
      ["south", "3.75"],
      ["north", "2.50"],
    ]);
    expect(rates(seasonWith([rot])).map(([day]) => day)).toEqual(
      rates(seasonWith([])).map(([day]) => day),
    );
  });

  test("seen again holds longer and is still one step", () => {
    const twice = seasonWith([early, { ...early, on: "2027-06-25" }], {}, "2027-06-25");
    expect(highest(twice)).toBe(3.75);
    expect(rates(twice).at(-1)?.[1]).toBe(3.75);
    expect(rates(seasonWith([early])).at(-1)?.[1]).toBe(2.5);
  });

  test.each([
    [1, 3.75, "rises from 2.5 to 3.75 mL per L from"],
    [1.5, 5, "rises from 3.75 to 5 mL per L, the rule's highest, from"],
    [2, 5, "stays at 5 mL per L, the rule's highest"],
  ])("over a level of %d never passes the rule's highest rate", (level, rate, words) => {
    const plan = seasonWith([rot], { level });
    expect(highest(plan)).toBe(rate);
    expect(notesOf(plan)[0]?.message).toContain(words);
  });

  test("seen before the stages it speaks of changes nothing then, and that is said", () => {
    const plan = seasonWith([{ ...rot, on: "2027-05-10" }], {}, "2027-05-10");
    expect(highest(plan)).toBe(2.5);
    expect(notesOf(plan)[0]?.message).toContain("so the rate stays as it is");
  });
});

describe("a sign of too much", () => {
  test("halves the rate, and the plan says so", () => {
    const plan = seasonWith([{ on: "2027-06-18", sign: "white-crust" }]);
    expect(rates(plan).find(([day]) => day >= "2027-06-18")?.[1]).toBe(1.25);
    expect(notesOf(plan)[0]?.message).toContain("falls from 2.5 to 1.25 mL per L");
  });

  test("beside one of too little: both steps count, each told from what the other left", () => {
    const plan = seasonWith([rot, { on: "2027-06-19", sign: "white-crust" }], {}, "2027-06-19");
    expect(rates(plan).find(([day]) => day >= "2027-06-19")?.[1]).toBe(1.875);
    expect(notesOf(plan)[1]?.message).toContain("falls from 3.75 to 1.88 mL per L");
  });
});

describe("what changes no rate", () => {
  test.each([
    ["wilting at noon: advice only", "wilting-at-noon", {}, /the rate stays as it is\. /],
    ["a sign not known on that crop", "bitter-pit", {}, /not known on tomato: look again/],
    ["on a planting that is not fed", "blossom-end-rot", { feed: false }, /it is not fed/],
  ])("%s", (_, sign, differs, words) => {
    const plan = seasonWith([{ on: "2027-06-18", sign }], differs);
    const before = seasonWith([], differs);
    expect(rates(plan)).toEqual(rates(before));
    expect(notesOf(plan)[0]?.message).toMatch(words);
    expect(notesOf(plan)[0]?.advice.length).toBeGreaterThan(0);
  });
});
