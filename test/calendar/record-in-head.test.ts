/** The published state in the head of a calendar file. */
import { describe, expect, it } from "vitest";
import { daysTold, readEarlierCalendar } from "../../src/calendar/earlier-calendar.js";
import { day } from "../../src/dates.js";
import { aPlan, roundsOn } from "../support/a-plan.js";
import {
  aPublished,
  aPublishedBatch,
  aPublishedMix,
  aPublishedRound,
} from "../support/a-published.js";
import { earlierOf, rewritten, textOf } from "../support/calendars.js";

const bed = "Süd, links; \\ 水 ".repeat(9).trim();
const published = aPublished({
  rounds: [
    aPublishedRound("2027-06-05", { mixes: [aPublishedMix({ bed }), aPublishedMix()] }),
    aPublishedRound("2027-06-19"),
  ],
  feeds: [{ feed: "nettle", day: day("2027-06-06"), first: day("2027-03-01") }],
  batches: [aPublishedBatch("2027-06-01")],
  shells: { day: day("2027-04-01"), first: day("2027-03-01") },
});
const plan = aPlan({ rounds: roundsOn(["2027-06-05", "2027-06-19"]), published });
const text = textOf(plan);

/** Without a record, as an earlier version wrote it. */
const bare = text.replace(/X-FEEDROUND-(?:ROUND|FEED|BATCH|SHELLS):.*\r\n(?:[ \t].*\r\n)*/g, "");

describe("the published state", () => {
  it("is read again as it was written, whatever its texts", () => {
    expect(earlierOf(text).published).toEqual(published);
    expect(rewritten(plan, text)).toBe(text);
  });

  it("is in the head: no event is another with it", () => {
    expect(earlierOf(text).events).toEqual(earlierOf(bare).events);
    expect(text.lastIndexOf("X-FEEDROUND-SHELLS")).toBeLessThan(text.indexOf("BEGIN:VEVENT"));
  });

  it("is in no copy", () => {
    expect(textOf(plan, { isCopy: true })).toBe(bare);
    expect(earlierOf(bare).published).toBeUndefined();
  });

  it.each([
    ["cut off", (one: string) => one.slice(0, -3)],
    ["of another shape", (one: string) => one.replace('"feed"', '"food"')],
  ])("with a line %s makes the file damaged, at the first line of it", (_, edit) => {
    const line = /X-FEEDROUND-FEED:.*/.exec(text)?.[0] ?? "";
    const read = readEarlierCalendar(text.replace(line, edit(line)), "weir-cottage");
    const at = text.slice(0, text.indexOf("X-FEEDROUND-ROUND")).split("\n").length;
    expect(read).toMatchObject({ ok: false, problems: [{ code: "damaged", at: { line: at } }] });
  });
});

describe("the days told by a file without a record", () => {
  it("are those of its rounds, first told when their entries were made", () => {
    const stamp = "2027-05-02T08:00:00Z";
    const first = textOf(aPlan({ rounds: roundsOn(["2027-06-05"]) }), { isCopy: true, stamp });
    const next = textOf(aPlan({ rounds: roundsOn(["2027-06-05", "2027-06-19"]) }), {
      isCopy: true,
      previous: first,
      stamp: "2027-05-20T08:00:00Z",
    });
    expect(daysTold(earlierOf(next))).toEqual(
      aPublished({
        rounds: [
          aPublishedRound("2027-06-05", { first: "2027-05-02", mixes: [] }),
          aPublishedRound("2027-06-19", { first: "2027-05-20", mixes: [] }),
        ],
      }),
    );
  });

  it("are not those of cancelled rounds, nor of batches and notices", () => {
    const stamp = "2027-05-20T08:00:00Z";
    const none = textOf(aPlan({ rounds: [] }), { isCopy: true, previous: text, stamp });
    expect(earlierOf(none).events.length).toBeGreaterThan(0);
    expect(daysTold(earlierOf(none)).rounds).toEqual([]);
  });
});
