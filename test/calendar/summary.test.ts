import { describe, expect, it } from "vitest";
import { summaryOf } from "../../src/calendar/summary.js";
import { aBedRound, aFeeding, aFill, aMix } from "../support/a-plan.js";

const partOf4L = aFill({
  full: false,
  waterL: 4,
  stockMl: 10,
  waterText: "4 L",
  stockText: "10 mL",
});

function bedOf(crops: readonly string[], differs: Partial<Parameters<typeof aMix>[0]> = {}) {
  const feedings = crops.map((cropName) => aFeeding({ cropName }));
  return aBedRound({ mixes: [aMix({ feedings, ...differs })] });
}

describe("the summary of a round", () => {
  it("says crop, number of cans and stock in each", () => {
    expect(summaryOf([aBedRound()])).toBe("Tomato: 2 cans × 23 mL, 1 part can × 10 mL (4 L)");
  });

  it("names the bed when the event is for one bed only", () => {
    expect(summaryOf([aBedRound()], "South bed")).toBe(
      "South bed: tomato: 2 cans × 23 mL, 1 part can × 10 mL (4 L)",
    );
  });

  it("adds up equal cans of beds fed at the same rate by the same route", () => {
    expect(summaryOf([bedOf(["tomato"]), bedOf(["pepper"])])).toBe(
      "Tomato, pepper: 4 cans × 23 mL, 2 part cans × 10 mL (4 L)",
    );
  });

  it("keeps part cans of different size apart", () => {
    const fills = [aFill({ full: false, waterText: "2 L", stockText: "5 mL" })];
    expect(
      summaryOf([bedOf(["tomato"], { fills: [partOf4L] }), bedOf(["pepper"], { fills })]),
    ).toBe("Tomato, pepper: 1 part can × 10 mL (4 L), 1 part can × 5 mL (2 L)");
  });

  it("keeps rates and routes apart", () => {
    const spray = {
      route: "foliar",
      rateMlPerL: 2.5,
      fills: [aFill({ stockText: "13 mL" })],
    } as const;
    const strong = { rateMlPerL: 5, fills: [aFill({ stockText: "45 mL" })] };
    expect(
      summaryOf([
        bedOf(["tomato"], { fills: [aFill()] }),
        bedOf(["apple"], spray),
        bedOf(["celery"], strong),
      ]),
    ).toBe("Tomato: 1 can × 23 mL; apple: 1 sprayer × 13 mL; celery: 1 can × 45 mL");
  });

  it("counts the cans for which a line has no room", () => {
    const rates = [1, 2, 3, 4, 5];
    const beds = rates.map((rateMlPerL) => bedOf([`crop${rateMlPerL}`], { rateMlPerL }));
    expect(summaryOf(beds)).toMatch(/^Crop1: .*; crop2: .*; crop3: .*; 6 more cans$/);
  });

  it("counts part cans beyond the fourth size", () => {
    const fills = [1, 2, 3, 4, 5, 6].map((l) =>
      aFill({ full: false, waterText: `${l} L`, stockText: `${l} mL` }),
    );
    expect(summaryOf([bedOf(["tomato"], { fills })])).toMatch(
      /1 part can × 4 mL \(4 L\), 2 more cans$/,
    );
  });

  it("names three crops of one rate and counts the others", () => {
    expect(
      summaryOf([bedOf(["tomato", "pepper", "aubergine (eggplant)", "celery", "apple", "tomato"])]),
    ).toMatch(/^Tomato, pepper, aubergine \+ 2: /);
  });
});
