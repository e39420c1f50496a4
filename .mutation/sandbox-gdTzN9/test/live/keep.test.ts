// @ts-nocheck
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { daysTold } from "../../src/calendar/earlier-calendar.js";
import { addDays, day } from "../../src/dates.js";
import { nothingPublished, type Published } from "../../src/published/published.js";
import type { Plan } from "../../src/season/season-plan.js";
import { aPublishedRound } from "../support/a-published.js";
import { earlierOf, textOf } from "../support/calendars.js";
import { cli, examplePath, examples, scratchFile, scratchFolder } from "../support/run-cli.js";
import { aheadDays, growing, planOn } from "./a-live-garden.js";

const today = "2027-03-01";

/** What a file of an earlier plan tells. */
function publishedOf(plan: Plan, as: "plan" | "calendar" | "calendar without a record"): Published {
  if (as === "plan") return plan.published;
  const calendar = earlierOf(textOf(plan), plan.garden.id);
  return as === "calendar" ? (calendar.published ?? nothingPublished) : daysTold(calendar);
}

const toldOn = (days: readonly string[], of: { readonly isKnown: boolean }): Published => ({
  ...nothingPublished,
  rounds: days.map((on) => ({
    ...aPublishedRound(on, { first: today }),
    ...(of.isKnown ? {} : { mixes: [] }),
  })),
});

const daysOf = (plan: Plan): string[] => plan.rounds.map((round) => round.day);

describe.each(["plan", "calendar", "calendar without a record"] as const)(
  "with an earlier %s",
  (as) => {
    test("of the same garden nothing moves", () => {
      const earlier = planOn(today, growing({}, { id: "more", transplanted: "2027-05-01" }));
      const again = planOn(today, growing({}, { id: "more", transplanted: "2027-05-01" }), {
        published: publishedOf(earlier, as),
      });
      expect(again.rounds).toEqual(earlier.rounds);
    });
  },
);

describe("days that the plan alone would not choose", () => {
  const earlier = planOn(today);
  // The first stands at the end of its window; the others have room.
  const moved = daysOf(earlier).map((on, i) => addDays(day(on), i === 0 ? 0 : 1));

  test("are kept where the windows allow them, at no round more", () => {
    for (const isKnown of [true, false])
      expect(daysOf(planOn(today, {}, { published: toldOn(moved, { isKnown }) }))).toEqual(moved);
  });

  test("cost no more rounds than are allowed for them", () => {
    const days = moved.flatMap((on) => [on, addDays(on, 5)]);
    const published = toldOn(days, { isKnown: false });
    const roundsAt = (extraRounds: number): number =>
      planOn(today, {}, { published, extraRounds }).rounds.length;
    expect(roundsAt(0)).toBe(earlier.rounds.length);
    expect(roundsAt(1)).toBeLessThanOrEqual(earlier.rounds.length + 1);
    expect(roundsAt(2)).toBeLessThanOrEqual(earlier.rounds.length + 2);
  });
});

test("adding a planting moves no round of others unless that saves one", () => {
  const dates = ["2027-04-20", "2027-05-01", "2027-05-15", "2027-06-01"];
  for (const transplanted of dates) {
    const earlier = planOn(today);
    const beds = growing({}, { id: "more", transplanted });
    const kept = planOn(today, beds, { published: earlier.published });
    const free = planOn(today, beds);
    expect(kept.rounds.length).toBe(free.rounds.length);
    if (aheadDays(kept).join() !== aheadDays(earlier).join()) {
      // What moved was worth a round.
      const wasKept = planOn(today, beds, { published: earlier.published, extraRounds: 3 });
      expect(aheadDays(wasKept)).toEqual(aheadDays(earlier));
      expect(wasKept.rounds.length).toBeGreaterThan(kept.rounds.length);
    }
  }
});

test("a published day of the past is fed once, on the day that the log gives", () => {
  const earlier = planOn(today);
  const [first = ""] = daysOf(earlier);
  const on = addDays(day(first), 2);
  const log = [{ on, planting: "toms" }];
  const now = addDays(on, 4);
  const plan = planOn(now, { log }, { published: earlier.published });
  expect(daysOf(plan).filter((one) => one < now)).toEqual([on]);
});

test.each(examples)(
  "plan --keep of the example %s over its own plan gives it again",
  async (name) => {
    const argv = ["plan", examplePath(name), "--json", "--today", today];
    const first = await cli(argv);
    const out = join(scratchFolder(), "garden.ics");
    await cli(["calendar", examplePath(name), "--out", out, "--today", today]);
    for (const file of [scratchFile("earlier.json", first.stdout), out])
      expect(await cli([...argv, "--keep", file])).toEqual(first);
    // A copy tells the days alone, and when it was made.
    const { stdout } = await cli(["calendar", examplePath(name), "--today", today]);
    const again = await cli([...argv, "--keep", scratchFile("copy.ics", stdout)]);
    const apart = (text: string) => ({ ...(JSON.parse(text) as Plan), published: undefined });
    expect(apart(again.stdout)).toEqual(apart(first.stdout));
  },
);
