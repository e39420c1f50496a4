// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { FeedingSpan } from "../../src/season/season-plan.js";
import {
  fedFromTo,
  fedSpans,
  type FeedingBegin,
  type FeedingEnd,
  keyThatChanges,
  moreOrFewer,
  whyFedSo,
  whyItBegins,
  whyItEnds,
} from "../../src/words/feeding-span.js";
import { aPlantingInPlan } from "../support/a-plan.js";

const on = day("2027-08-30");

test.each<[FeedingEnd, string, string]>([
  [{ kind: "feedings", feedings: 4, missed: 0 }, "The rule gives 4 feedings.", "through: harvest"],
  [
    { kind: "feedings", feedings: 4, missed: 1 },
    "The rule gives 4 feedings, and 1 of them passed without.",
    "through: harvest",
  ],
  [
    { kind: "sign", feedings: 2, name: "blossom-end rot", on },
    "2 more feedings came with blossom-end rot seen on 30 Aug.",
    "signs",
  ],
  [
    { kind: "stage", stage: "fruit-set", on },
    "The rule feeds until fruit set ends, on 30 Aug, and no further feeding falls due by then.",
    "through: harvest",
  ],
  [
    { kind: "before-harvest", on, days: 3 },
    "Harvest begins on 30 Aug, and nothing is given in the 3 days before it.",
    "days_to_harvest",
  ],
  [
    { kind: "before-last-pick", pick: { kind: "picked-until", on }, days: 28 },
    "The last pick is on 30 Aug, and a feeding in the 28 days before it helps no fruit that is still picked.",
    "picked_until",
  ],
  [
    { kind: "before-last-pick", pick: { kind: "season", on }, days: 28 },
    "The season ends on 30 Aug, taken as the last pick, and a feeding in the 28 days before it helps no fruit that is still picked.",
    "picked_until",
  ],
  [{ kind: "picked-until", on }, "The last pick is on 30 Aug.", "picked_until"],
  [
    { kind: "harvest", on },
    "Its harvest ends on 30 Aug, by the usual lengths of its stages.",
    "days_to_harvest",
  ],
  [{ kind: "frost", on }, "The first frost, which ends it, is expected about 30 Aug.", "frost"],
  [{ kind: "removed", on }, "It is removed on 30 Aug.", "removed"],
  [{ kind: "season", on }, "The season ends on 30 Aug.", "season"],
])("%j is told with the key that changes it", (end, words, key) => {
  expect(whyItEnds(end, "metric")).toBe(words);
  expect(keyThatChanges(end)).toBe(key);
});

const span = (last: string, why = "The season ends on 31 Oct."): FeedingSpan => ({
  first: day("2027-06-22"),
  last: day(last),
  begins: "It begins with the season.",
  why,
  key: "season",
});

test("the first and the last feeding, or the only one", () => {
  expect(fedFromTo(span("2027-08-01"), "metric")).toBe("Fed 22 Jun to 1 Aug.");
  expect(fedFromTo(span("2027-06-22"), "metric")).toBe("Fed on 22 Jun.");
  expect(whyFedSo(span("2027-08-01"))).toBe(
    "It begins with the season. The season ends on 31 Oct. `season` changes that.",
  );
});

describe("the spans of several plantings", () => {
  test("are told once where they are alike, in the order of the first of each", () => {
    const plantings = [
      aPlantingInPlan({ id: "a", feeding: span("2027-08-01") }),
      aPlantingInPlan({ id: "b", feeding: span("2027-08-15") }),
      aPlantingInPlan({ id: "basil", fed: false }),
      aPlantingInPlan({ id: "c", feeding: span("2027-08-01") }),
      aPlantingInPlan({ id: "d", feeding: span("2027-08-01", "It is removed on 2 Aug.") }),
    ];
    expect(
      fedSpans(plantings, "metric").map((one) => [one.plantings.map(({ id }) => id), one.text]),
    ).toEqual([
      [
        ["a", "c"],
        "Fed 22 Jun to 1 Aug. It begins with the season. The season ends on 31 Oct. `season` changes that.",
      ],
      [
        ["b"],
        "Fed 22 Jun to 15 Aug. It begins with the season. The season ends on 31 Oct. `season` changes that.",
      ],
      [
        ["d"],
        "Fed 22 Jun to 1 Aug. It begins with the season. It is removed on 2 Aug. `season` changes that.",
      ],
    ]);
  });
});

test.each<[FeedingBegin, string]>([
  [
    { kind: "stage", stage: "fruit-set", on, how: "by warmth" },
    "It begins with fruit set, on 30 Aug, by warmth.",
  ],
  [{ kind: "planted-out", on }, "It begins with planting out, on 30 Aug."],
  [{ kind: "season" }, "It begins with the season."],
])("%j is where it begins", (begin, words) => {
  expect(whyItBegins(begin, "metric")).toBe(words);
});

test("a planting to be fed for which no day is left is told of, too", () => {
  const [told] = fedSpans([aPlantingInPlan({ id: "late", fed: true })], "metric");
  expect(told?.text).toBe("No feeding day is left for it; the warnings say why.");
});

test("more or fewer than the calendar tells", () => {
  expect(moreOrFewer(2, 3)).toBe("1 feeding more to come than the calendar tells");
  expect(moreOrFewer(6, 4)).toBe("2 feedings fewer to come than the calendar tells");
});
