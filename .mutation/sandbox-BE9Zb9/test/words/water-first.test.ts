// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import {
  fedThoughUnlikely,
  feedIsSmall,
  feedMightHelp,
  limeFirst,
  longestDry,
  plain,
  wouldDecide,
} from "../../src/words/index.js";

describe("what to do first", () => {
  test("is said of whom it concerns, with the key that changes it", () => {
    const gap = { from: day("2027-07-08"), to: day("2027-07-27"), days: 20, isAway: true };
    expect(longestDry(plain, gap, "South wall", "metric")).toBe(
      "South wall: without water for 20 days (8 Jul to 27 Jul) while you are away: have someone water.",
    );
    expect(limeFirst(plain, "toms")).toBe("Lime first, as the soil test asks: toms.");
    expect(wouldDecide(plain, "watering", "toms")).toBe(
      "For toms how much you water may decide it (`watering: auto`).",
    );
    expect(feedMightHelp(plain, "toms")).toContain("might help toms, after even watering");
    expect(fedThoughUnlikely(plain, "toms")).toContain("`feed_when: might-help`");
  });

  test("shows how small the feed is", () => {
    expect(feedIsSmall({ low: 3.3, high: 22 })).toBe(
      "The season's feed is 3.3 to 22 % of what a fed planting takes up.",
    );
  });
});
