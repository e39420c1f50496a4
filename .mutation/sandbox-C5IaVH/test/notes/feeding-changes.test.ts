/** Which plantings are fed more or less often than their calendar tells. */
// @ts-nocheck

import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { feedingChanges } from "../../src/notes/feeding-changes.js";
import { aPlan, aPlantingInPlan } from "../support/a-plan.js";
import { aPublished, aPublishedMix, aPublishedRound } from "../support/a-published.js";

const published = (...rounds: [day: string, ...plantings: string[]][]) =>
  aPublished({
    rounds: rounds.map(([on, ...plantings]) =>
      aPublishedRound(on, {
        mixes: [
          aPublishedMix({
            fed: plantings.map((planting) => ({ planting, crop: "tomato", waterL: 10 })),
          }),
        ],
      }),
    ),
  });
const before = published(["2027-06-12", "toms", "more"], ["2027-06-26", "toms", "more"]);
const plan = (today: string, ...rounds: [string, ...string[]][]) =>
  aPlan({
    today: day(today),
    plantings: ["more", "toms", "new"].map((id) => aPlantingInPlan({ id })),
    published: published(...rounds),
  });

test("in the order of the garden file, of today and later alone", () => {
  const now = plan("2027-06-26", ["2027-06-26", "more", "new"], ["2027-07-10", "more", "new"]);
  expect(feedingChanges(before, now).map((one) => [one.planting, one.was, one.now])).toEqual([
    ["more", 1, 2],
    ["toms", 1, 0],
    ["new", 0, 2],
  ]);
});

test("are none where feedings only move to other days, or only the past differs", () => {
  const moved = plan("2027-06-20", ["2027-07-03", "toms", "more"]);
  expect(feedingChanges(before, moved)).toEqual([]);
});

test("tell from when until when it is fed now, or why it is not", () => {
  const feeding = {
    first: day("2027-06-12"),
    last: day("2027-06-12"),
    begins: "There.",
    why: "So.",
    key: "season",
  };
  const now = aPlan({
    today: day("2027-06-20"),
    plantings: [
      aPlantingInPlan({ id: "toms", feeding, reason: "against rot" }),
      aPlantingInPlan({ id: "more", reason: "not fed" }),
    ],
    published: aPublished(),
  });
  expect(feedingChanges(before, now)).toEqual([
    { planting: "toms", cropName: "tomato", was: 1, now: 0, feeding, reason: "against rot" },
    { planting: "more", cropName: "tomato", was: 1, now: 0, reason: "not fed" },
  ]);
});
