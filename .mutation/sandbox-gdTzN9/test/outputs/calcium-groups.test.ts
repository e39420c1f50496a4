// @ts-nocheck
import { describe, expect, test } from "vitest";
import { calciumGroups } from "../../src/outputs/calcium-groups.js";
import { aPlantingCalcium, aVerdict } from "../support/a-plan.js";

const range = (low: number, high: number) => ({ low, high });

describe("plantings of which the same is to be said", () => {
  const close = aPlantingCalcium({
    planting: "more",
    water: {
      perM2G: range(2, 9),
      waterL: 900,
      calciumMgPerL: range(24, 36),
      perPlantG: range(2, 3),
    },
    sharePercent: range(2, 6),
  });

  test("are one group, from the least to the most of them", () => {
    const [group, ...others] = calciumGroups([aPlantingCalcium(), close]);
    expect(others).toEqual([]);
    expect(group?.plantings.map(({ planting }) => planting)).toEqual(["toms", "more"]);
    expect(group?.water?.perM2G).toEqual(range(2, 9));
    expect(group?.need?.wholeG).toEqual(range(60, 120));
    expect(group?.sharePercent).toEqual(range(2, 10));
    // Of the second the water of the whole planting is not known.
    expect(group?.water?.wholeG).toBeUndefined();
  });

  test.each([
    ["crop", { crop: "eggplant" }],
    ["verdict", { verdicts: [aVerdict({ judgement: { kind: "lime-first", ph: 5.2 } })] }],
    ["feeding", { feed: { wholeG: range(0, 0), perPlantG: range(0, 0), perM2G: range(0, 0) } }],
    [
      "digging in",
      {
        amendments: [
          {
            on: close.amendments[0]?.on ?? ("2027-03-10" as never),
            what: "gypsum" as const,
            name: "gypsum",
            amountG: 500,
            thisSeason: { perM2G: range(20, 30) },
          },
        ],
      },
    ],
  ])("are not one where they differ in %s", (_, differs) => {
    expect(calciumGroups([aPlantingCalcium(), aPlantingCalcium(differs)])).toHaveLength(2);
  });

  test("are none where neither a need nor a rule is known", () => {
    const { need, ...rest } = aPlantingCalcium({ verdicts: [] });
    expect(need).toBeDefined();
    expect(calciumGroups([rest])).toEqual([]);
  });
});

describe("what the bars stand on", () => {
  test("is the square metre, else the plant, where all parts are known on it", () => {
    const sum = aPlantingCalcium();
    const feed = { perPlantG: range(0.5, 0.5), wholeG: range(3, 3) };
    expect(calciumGroups([sum])[0]?.basis).toBe("perM2G");
    expect(calciumGroups([{ ...sum, feed }])[0]?.basis).toBe("perPlantG");
    expect(calciumGroups([{ ...sum, feed: { wholeG: range(3, 3) } }])[0]?.basis).toBeUndefined();
  });
});

test("what feeds a planting is judged, and what would only where nothing does", () => {
  const spray = aVerdict({ rule: "spray", route: "foliar", feeds: false });
  const [fed] = calciumGroups([aPlantingCalcium({ verdicts: [aVerdict(), spray] })]);
  expect(fed?.verdicts.map(({ rule }) => rule)).toEqual(["tomato-fruit"]);
  const [unfed] = calciumGroups([aPlantingCalcium({ verdicts: [spray] })]);
  expect(unfed?.verdicts).toEqual([spray]);
});
