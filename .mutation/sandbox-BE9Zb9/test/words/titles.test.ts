// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { Amounts, Route } from "../../src/garden/index.js";
import { loadTables } from "../../src/tables.js";
import type { StockJob } from "../../src/season/index.js";
import { cropWords } from "../../src/words/plants.js";
import { letters } from "../../src/words/names.js";
import {
  cancelledTitle,
  feedTitle,
  jobTitle,
  longestTitle,
  lookTitle,
  notGivenTitle,
  noteTitle,
  otherFeedsTitle,
  shellsTitle,
  warningTitle,
  wateringTitle,
} from "../../src/words/titles.js";
import { aFeeding, aFill, aMix, anOtherFeed } from "../support/a-plan.js";
import { aBatch, aDiscard } from "../support/a-stock.js";

const measures = ["metric", "imperial", "us"] as const;
const feeding = (name: string, cropName: string, waterL = 10) =>
  aFeeding({ planting: name, name, cropName, waterL });
const mixOf = (...feedings: ReturnType<typeof aFeeding>[]) =>
  aMix({ stockMl: 79, fills: [aFill({ count: 4 })], feedings });

test("says what to do, with how many cans and how much, and for whom by falling amount", () => {
  const mix = mixOf(
    feeding("toms", "tomato", 9),
    feeding("p1", "peppers", 6),
    feeding("p2", "peppers", 6),
    feeding("cel", "celery (blackheart)", 2),
    feeding("long-courgettes", "courgette", 1),
  );
  expect(feedTitle([mix], "metric")).toBe("Feed 4 cans, 79 mL: peppers, toms, …");
  expect(feedTitle([mix], "metric", { bed: "Glasshouse" })).toBe("Feed 4 cans, 79 mL: Glasshouse");
  expect(feedTitle([mix], "metric", { given: true })).toBe("Given 4 cans, 79 mL: peppers, toms, …");
  expect(feedTitle([mix], "metric", { marked: true })).toBe(
    "! Feed 4 cans, 79 mL: peppers, toms, …",
  );
});

test("names the larger of two routes, and other feeds beside", () => {
  const spray = aMix({ route: "foliar", stockMl: 20, fills: [aFill()] });
  const mix = mixOf(feeding("toms", "tomato"));
  expect(feedTitle([spray, mix], "metric")).toBe("Feed 4 cans, 79 mL + spray: toms");
  expect(feedTitle([{ ...spray, stockMl: 90 }, mix], "metric")).toBe(
    "Spray 1 sprayer, 90 mL + cans: toms",
  );
  expect(feedTitle([mix], "metric", { feeds: true })).toBe("Feed 4 cans, 79 mL + other feed: toms");
  expect(otherFeedsTitle([anOtherFeed()], "metric")).toBe("Feed 1 can, 900 mL: comfrey tea");
});

test("has whole names or none, and keeps one that runs right to left to itself", () => {
  const mix = mixOf(feeding("a-name-that-is-far-too-long-for-it", "tomato"));
  expect(feedTitle([mix], "metric")).toBe("Feed 4 cans, 79 mL");
  expect(feedTitle([mix], "metric", { bed: "חממה" })).toBe("Feed 4 cans, 79 mL: \u2068חממה\u2069");
  const beds = ["South wall", "Glasshouse", "Long bed"].map((bedName) => ({ bedName, waterL: 28 }));
  expect(wateringTitle(beds, "metric")).toBe("Water 84 L: South wall, Glasshouse, …");
  expect(wateringTitle([{ bedName: "x".repeat(40), waterL: 28 }], "metric")).toBe("Water 28 L");
});

test("drops the cans before the amount", () => {
  const mix = {
    ...mixOf(feeding("toms", "tomato")),
    stockMl: 47_000,
    fills: [aFill({ count: 123 })],
  };
  expect(feedTitle([mix], "us", { marked: true, feeds: true })).toBe(
    "! Feed 12 1/4 gal + 2 3/4 cups",
  );
});

test("says of the log's word on a title what it was", () => {
  expect(notGivenTitle("Feed 4 cans, 79 mL: toms")).toBe("Not given: 4 cans, 79 mL: toms");
  expect(notGivenTitle("! Feed 4 cans, 79 mL: peppers, toms, …")).toBe("Not given: 4 cans, 79 mL");
  expect(notGivenTitle("Not given: 4 cans, 79 mL")).toBe("Not given: 4 cans, 79 mL");
  expect(cancelledTitle("Feed 4 cans, 79 mL: peppers, toms")).toBe("Cancelled: Feed 4 cans, 79 mL");
  // What an earlier program published stays whole.
  const before = "Given: Sweet pepper, tomato: 2 cans × 25 mL; new bottle B2";
  expect(notGivenTitle(before)).toBe(before.replace("Given", "Not given"));
});

const longestAmountMl: Readonly<Record<Amounts, number>> = {
  metric: 199_990,
  imperial: 199_990,
  // 99 3/4 gallons and 3 3/4 cups.
  us: 378_480,
};
/** Every form with the most that can stand in it. */
const longest = (amounts: Amounts): Readonly<Record<string, string>> => {
  const ml = longestAmountMl[amounts];
  const mix = (route: Route) => aMix({ route, stockMl: ml, fills: [aFill({ count: 9999 })] });
  const [drench, spray] = [mix("drench"), { ...mix("foliar"), stockMl: ml + 1 }];
  const batch = aBatch("2027-06-12", { volumeMl: ml });
  const id = `batch-${"x".repeat(58)}`;
  const visit = (step: "dry-shells" | "add-acid" | "strain"): StockJob => ({
    ...{ kind: "visit", day: day("2027-06-12"), step, batch },
  });
  const discard = aDiscard("2027-09-10", { batch: id, ml });
  const useUp = (doOn: string): StockJob => ({
    ...{ kind: "use-up", day: day(doOn), discard: { ...discard, doOn: day(doOn) } },
  });
  const all = { marked: true, feeds: true };
  return {
    feed: feedTitle([drench], amounts, all),
    feedAndSpray: feedTitle([spray, drench], amounts, all),
    given: feedTitle([spray, drench], amounts, { ...all, given: true }),
    other: otherFeedsTitle(
      [anOtherFeed({ fills: [aFill({ count: 1, stockMl: ml })], feed: "y".repeat(50) })],
      amounts,
    ),
    boil: jobTitle([visit("dry-shells")], amounts),
    acid: jobTitle([visit("add-acid")], amounts),
    strain: jobTitle([visit("strain")], amounts),
    open: jobTitle([{ kind: "open-bottle", day: day("2027-06-12"), batch: id }], amounts),
    useUp: jobTitle([useUp("2027-09-10")], amounts),
    throwAway: jobTitle([useUp("2027-09-12")], amounts),
    shells: shellsTitle(99_999),
    shellsShort: shellsTitle(99_999, 99_999),
    shellsNone: shellsTitle(99_999, 99_999, false),
    water: wateringTitle([{ bedName: "z".repeat(60), waterL: 99_999.25 }], amounts),
    look: lookTitle("x".repeat(60), ["y"]),
    warning: warningTitle("no-such-code", ["y".repeat(40)]),
  };
};

describe.each(measures)("titles in %s measures", (amounts) => {
  test.each(Object.entries(longest(amounts)))("%s fits with the most in it: %s", (_, title) => {
    expect(letters(title).length).toBeLessThanOrEqual(longestTitle);
    expect(letters(notGivenTitle(title)).length).toBeLessThanOrEqual(longestTitle + 11);
  });
});

test("every sign and notice fits with the longest crop name", () => {
  const tables = loadTables();
  for (const sign of tables.signs) {
    expect(lookTitle(sign.name, [])).toBe(`Look: ${sign.name}`);
    expect(letters(lookTitle(sign.name, ["toms"])).length).toBeLessThanOrEqual(longestTitle);
  }
  expect(lookTitle("blossom-end rot", ["toms"])).toBe("Look: blossom-end rot, toms");
  expect(warningTitle("window-served-late", ["toms"])).toBe("! Feeding late, toms");
  expect(warningTitle("stock-short-away", ["toms"])).toBe("! Too little stock, toms");
  expect(noteTitle("missed", ["toms"])).toBe("Look: feeding missed, toms");
});

test("any garden's round fits, with the longest crop names and any measures", () => {
  const names = loadTables()
    .catalogue.crops.map(({ name }) => name)
    .sort((a, b) => cropWords(b).length - cropWords(a).length)
    .slice(0, 20);
  const name = fc.oneof(
    fc.constantFrom(...names),
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 50 }),
    fc.string({ unit: fc.constantFrom("א", "ب", "👩‍🌾", "é", " "), minLength: 1, maxLength: 50 }),
  );
  const mix = fc.record({
    route: fc.constantFrom("drench" as const, "foliar" as const),
    stockMl: fc.integer({ min: 1, max: 300_000 }),
    count: fc.integer({ min: 1, max: 999 }),
    names: fc.array(fc.tuple(name, fc.constantFrom(...names)), { minLength: 1, maxLength: 5 }),
  });
  fc.assert(
    fc.property(
      fc.array(mix, { minLength: 1, maxLength: 4 }),
      fc.constantFrom(...measures),
      fc.boolean(),
      fc.option(name, { nil: undefined }),
      (facts, amounts, flag, bed) => {
        const [first, ...mixes] = facts.map(({ route, stockMl, count, names: fed }) =>
          aMix({
            ...{ route, stockMl, fills: [aFill({ count })] },
            feedings: fed.map(([own, crop], i) => feeding(`${own}${i}`, crop, i + 1)),
          }),
        );
        if (first === undefined) return;
        const title = feedTitle([first, ...mixes], amounts, {
          ...{ marked: flag, feeds: flag },
          ...(bed === undefined ? {} : { bed }),
        });
        expect(letters(title).length).toBeLessThanOrEqual(longestTitle);
        expect(title).toMatch(/^(! )?(Feed|Spray) \d/);
      },
    ),
    { numRuns: 100 },
  );
});
