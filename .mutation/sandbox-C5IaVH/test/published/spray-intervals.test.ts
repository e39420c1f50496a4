/** Rules against the published programmes that they lean on. Sources stand in the titles. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, daysBetween, parseDay } from "../../src/dates.js";
import { amount, days, rateMlPerL, ruleRow, temperatureC } from "../data/data-files.js";

const day = (text: string): Day => parseDay(text) as Day;

/** How many sprays fall between two days when the first is on the first day. */
function spraysBetween(first: string, last: string, everyDays: number): number {
  return 1 + Math.floor(daysBetween(day(first), day(last)) / everyDays);
}

// CIAAW abridged atomic weights: Ca 40.078, Cl 35.45, S 32.06, O 15.999, H 1.008.
const calciumInChloride = 40.078 / (40.078 + 2 * 35.45);
const calciumInGypsum = 40.078 / (40.078 + 32.06 + 4 * 15.999 + 2 * (2 * 1.008 + 15.999));
const mgPerLb = 453_592.37;
const lPer100UsGal = 378.5411784;
const m2PerAcre = 4046.8564224;

const calcium = (rule: string): number => amount(ruleRow(rule).calcium, "concentration");

describe("apple-foliar", () => {
  const rule = ruleRow("apple-foliar");

  test("Hoying (Cornell) in Good Fruit Grower: 14-day intervals beginning 7 to 10 days after petal fall", () => {
    expect(days(rule.interval.target)).toBe(14);
    expect(days(rule.first_within)).toBeGreaterThanOrEqual(7);
    expect(days(rule.first_within)).toBeLessThanOrEqual(10);
    expect(rule.stages[0]).toBe("fruit-set");
  });

  test("WSU Tree Fruit: 6 to 12 applications from early June to late August", () => {
    for (const interval of Object.values(rule.interval)) {
      const sprays = spraysBetween("2027-06-01", "2027-08-31", days(interval));
      expect(sprays).toBeGreaterThanOrEqual(6);
      expect(sprays).toBeLessThanOrEqual(12);
    }
  });

  test("Peryea and others 2007, Start-timing for calcium chloride spray programs: six biweekly sprays from mid-May, mid-June or mid-July end before harvest", () => {
    const sixth = addDays(day("2027-06-15"), 5 * days(rule.interval.target));
    expect(sixth).toBe("2027-08-24");
  });

  test("Hoying: 1 to 2 lb of 78 % calcium chloride in 100 US gal, 340 to 670 mg/L, are 4 to 8 times this spray; the 3 to 4 lb of the last two sprays, four and two weeks before harvest, 11 to 15 times", () => {
    const mgPerL = (lb: number): number =>
      ((lb * mgPerLb) / lPer100UsGal) * 0.78 * calciumInChloride;
    expect([1, 2].map((lb) => Math.round(mgPerL(lb) / 10) * 10)).toEqual([340, 680]);
    const times = [1, 2, 3, 4].map((lb) => Math.round(mgPerL(lb) / calcium("apple-foliar")));
    expect(times).toEqual([4, 8, 11, 15]);
    expect(rule.reason).toMatch(
      /at 4 to 8 times .* four and two weeks before picking at 11 to 15/s,
    );
  });

  test("Penn State and Maryland, The Delmarva Farmer 2017: 8 to 13 lb of calcium to the acre is 0.9 to 1.5 g to the square metre; six sprays of 3 L on a tree of 10 m2 bring less than a fifth", () => {
    const trialled = [8, 13].map((lb) => (lb * mgPerLb) / 1000 / m2PerAcre);
    expect(trialled[0]).toBeCloseTo(0.9, 1);
    expect(trialled[1]).toBeCloseTo(1.5, 1);
    const fed = (6 * 3 * calcium("apple-foliar")) / 1000 / 10;
    expect(fed / (trialled[0] ?? NaN)).toBeLessThan(0.2);
  });

  test("since no trial is of this stock, the evidence for it is not called published", () => {
    expect(rule.evidence).toBe("common-practice");
  });
});

test("Lopez (Michigan State): strawberries are sprayed below 80 F (26.7 C); Healthy Fruit 7(17), 1999: apples not at 85 F (29.4 C) or higher", () => {
  expect(temperatureC(ruleRow("strawberry-foliar").highest_temperature ?? "")).toBeCloseTo(26.7, 1);
  expect(temperatureC(ruleRow("apple-foliar").highest_temperature ?? "")).toBeCloseTo(29.4, 1);
});

test("Raese and Drake on Anjou pears: 60.5 g of calcium in 100 L, 14 times what pear-foliar brings; PNW Handbook: rates below those for apple", () => {
  const strength = 60_500 / 100;
  expect(Math.round(strength / calcium("pear-foliar"))).toBe(14);
  expect(ruleRow("pear-foliar").reason).toContain("14 times weaker");
  expect(rateMlPerL(ruleRow("pear-foliar").highest_rate)).toBeLessThan(
    rateMlPerL(ruleRow("apple-foliar").highest_rate),
  );
});

test("UGA pegging zone pages: 1,000 lb of gypsum to the acre brings about 26 g of calcium to the square metre, a feeding of 4 L 0.2 g", () => {
  const advised = ((1000 * mgPerLb) / 1000 / m2PerAcre) * calciumInGypsum;
  const fed = (4 * calcium("peanut-drench")) / 1000;
  expect(advised).toBeCloseTo(26, 0);
  expect(fed).toBeCloseTo(0.2, 1);
  expect(ruleRow("peanut-drench")).toMatchObject({ by_default: false });
  expect(ruleRow("peanut-drench").reason).toMatch(/0\.2 g.*26 g/s);
});

test("Wisconsin, HortScience 30(4):759A: 168 kg of calcium to the hectare is 17 g to the square metre, a hundred feedings; Banks: every two or three weeks", () => {
  const trial = (168 * 1000) / 10_000;
  expect(trial).toBeCloseTo(17, 0);
  expect(trial / ((4 * calcium("potato-drench")) / 1000)).toBeCloseTo(95.5, 0);
  const { interval, by_default: byDefault } = ruleRow("potato-drench");
  expect([days(interval.shortest), days(interval.longest)]).toEqual([14, 21]);
  expect(byDefault).toBe(false);
});

test("Hartz and others, HortScience 42(7):1681: soil and leaf calcium unrelated to tipburn of romaine, so lettuce is fed only when asked for", () => {
  expect(ruleRow("leafy-head-drench")).toMatchObject({
    evidence: "advised-against",
    by_default: false,
  });
});

test("Rutgers 2013: lettuce is susceptible 1 to 3 weeks before harvest, so a drench that is asked for comes weekly", () => {
  expect(days(ruleRow("leafy-head-drench").interval.target)).toBe(7);
});

test("Cubeta and others 2000, Everaarts 2001: tipburn of cabbage follows potash and transport, not the soil's calcium, so its kin are fed only when asked for", () => {
  const { crops, evidence, by_default: byDefault, reason } = ruleRow("head-brassica-drench");
  expect({ evidence, byDefault }).toEqual({ evidence: "advised-against", byDefault: false });
  expect(crops).toContain("cabbage");
  expect(reason).toMatch(/six field trials.* pH 5\.3 to 6\.6/s);
});

test("University of Delaware, Weekly Crop Update: foliar calcium not shown effective against tipburn of brassicas", () => {
  expect(ruleRow("head-brassica-foliar")).toMatchObject({
    evidence: "advised-against",
    by_default: false,
  });
});

test("Pacific Northwest Plant Disease Management Handbook, Celery blackheart: 5 lb of calcium nitrate to 10 lb of calcium chloride in 100 US gal, into the heart, is 26 to 77 times the can", () => {
  // Of the fertilisers sold: calcium nitrate holds 19 % calcium, the flake is 78 % calcium chloride.
  const mgPerL = (lb: number, share: number): number => ((lb * mgPerLb) / lPer100UsGal) * share;
  const strengths = [mgPerL(5, 0.19), mgPerL(10, 0.78 * calciumInChloride)];
  expect(strengths.map((mg) => Math.round(mg / calcium("celery-drench")))).toEqual([26, 77]);
  const { evidence, reason } = ruleRow("celery-drench");
  expect(reason).toContain("26 to 77 times this can's");
  expect(evidence).toBe("common-practice");
});

test("Lopez (Michigan State) speaks of sprays in greenhouses, so strawberries are fed only when asked for, and never sprayed in flower", () => {
  for (const id of ["strawberry-drench", "strawberry-foliar"])
    expect(ruleRow(id)).toMatchObject({ by_default: false, evidence: "common-practice" });
  expect(ruleRow("strawberry-foliar").stages).toEqual(["vegetative"]);
});

test("AHDB FV 443 and FV 457: rots that get in at the flower scar of courgettes are no lack of calcium, so the rule cannot tell whether a feed helps", () => {
  expect(ruleRow("cucurbit-picked-young-drench").reason).toMatch(
    /^Whether it helps cannot be told: .*look for mould first/s,
  );
});

test("K-State against, New Brunswick for: foliar calcium on tomato is disputed and not given unasked", () => {
  expect(ruleRow("solanaceous-foliar")).toMatchObject({ evidence: "disputed", by_default: false });
});

test("the trade (common practice, no source): 10 mL of stock in 4 L is 25 mL in a 10 L can, every 14 days", () => {
  const rule = ruleRow("tomato-cordon-drench");
  expect(rateMlPerL(rule.rate) * 10).toBe(25);
  expect(rateMlPerL(rule.rate)).toBe(rateMlPerL("10 mL in 4 L"));
  expect(days(rule.interval.target)).toBe(14);
});
