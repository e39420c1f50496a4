// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { pastOfFeed } from "../../src/log/past-of-feed.js";
import { aGarden, type GardenDiffers } from "../support/a-garden.js";
import { aPublished } from "../support/a-published.js";

const nettle = { name: "nettle", every: "14 days", rate: "5 mL per L" };

function pastDays(
  log: readonly object[],
  differs: GardenDiffers = {},
  { first = "2027-03-01", today = "2027-07-01" } = {},
): string[] {
  const garden = aGarden({ feeds: [nettle], log, ...differs });
  const [feed] = garden.feeds;
  if (feed === undefined) throw new Error("a garden without another feed");
  const feeds = ["2027-06-05", "2027-06-19", "2027-07-03"].map((on) => ({
    feed: "nettle",
    day: day(on),
    first: day(first),
  }));
  const kelp = { feed: "kelp", day: day("2027-06-07"), first: day(first) };
  const published = aPublished({ feeds: [...feeds, kelp] });
  return pastOfFeed(garden, feed, published, day(today)).map(
    (one) => `${one.day}${one.given ? " written" : ""}${one.asPublished ? " published" : ""}`,
  );
}
const written = (on: string, more: object = {}) => ({ on, feed: "nettle", ...more });

describe("a published day of another feed", () => {
  test("of which the log is silent was given", () => {
    expect(pastDays([])).toEqual(["2027-06-05 published", "2027-06-19 published"]);
  });

  test("is today's as long as the log is silent", () => {
    const at = { today: "2027-06-19" };
    expect(pastDays([], {}, at)).toEqual(["2027-06-05 published", "2027-06-19"]);
    expect(pastDays([written("2027-06-19")], {}, at)).toEqual([
      "2027-06-05 published",
      "2027-06-19 written",
    ]);
    expect(pastDays([], { unlogged: "not-given" }, at)).toEqual(["2027-06-19"]);
  });

  test("is what the log says of it, some days off too, and no second feeding", () => {
    expect(pastDays([written("2027-06-11")])).toEqual([
      "2027-06-11 written",
      "2027-06-19 published",
    ]);
  });

  test("was not given where it was missed, or nobody was there", () => {
    expect(pastDays([written("2027-06-05", { missed: true })])).toEqual(["2027-06-19 published"]);
    const away = [{ from: "2027-06-19", to: "2027-06-20" }];
    expect(pastDays([], { feeding: { away } })).toEqual(["2027-06-05 published"]);
  });

  test("was not given where silence says so, or it was told only after its day", () => {
    expect(pastDays([], { unlogged: "not-given" })).toEqual([]);
    expect(pastDays([], {}, { first: "2027-06-06" })).toEqual(["2027-06-19 published"]);
  });
});
