import { describe, expect, test } from "vitest";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { feedingDays } from "../../src/calendar/earlier-calendar.js";
import { addDays, day } from "../../src/dates.js";
import type { Published } from "../../src/published/published.js";
import { publishedBy } from "../../src/season/published-by.js";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, examplePath, examples, scratchFile } from "../support/run-cli.js";
import { aheadDays, growing, planOn } from "./a-live-garden.js";

const today = "2027-03-01";

/** What a file of an earlier plan tells. */
function publishedOf(plan: Plan, as: "plan" | "calendar"): Published {
  if (as === "plan") return publishedBy(plan, 0);
  const calendar = calendarText(plan, {});
  if (!calendar.ok) throw new Error("no calendar");
  return { days: feedingDays(calendar.value), extraRounds: 0 };
}

const daysOf = (plan: Plan): string[] => plan.rounds.map((round) => round.day);

describe.each(["plan", "calendar"] as const)("with an earlier %s", (as) => {
  test("of the same garden nothing moves", () => {
    const earlier = planOn(today, growing({}, { id: "more", transplanted: "2027-05-01" }));
    const again = planOn(today, growing({}, { id: "more", transplanted: "2027-05-01" }), {
      keep: publishedOf(earlier, as),
    });
    expect(again.rounds).toEqual(earlier.rounds);
  });
});

describe("days that the plan alone would not choose", () => {
  const earlier = planOn(today);
  // The first stands at the end of its window; the others have room.
  const moved = daysOf(earlier).map((on, i) => addDays(day(on), i === 0 ? 0 : 1));

  test("are kept where the windows allow them, at no round more", () => {
    const byDays = planOn(today, {}, { keep: { days: moved, extraRounds: 0 } });
    expect(daysOf(byDays)).toEqual(moved);
    const feedings = new Map([["toms/drench", moved]]);
    const byFeedings = planOn(today, {}, { keep: { days: [], feedings, extraRounds: 0 } });
    expect(daysOf(byFeedings)).toEqual(moved);
  });

  test("cost no more rounds than are allowed for them", () => {
    const days = moved.flatMap((on) => [on, addDays(on, 5)]);
    const roundsAt = (extraRounds: number): number =>
      planOn(today, {}, { keep: { days, extraRounds } }).rounds.length;
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
    const kept = planOn(today, beds, { keep: publishedBy(earlier, 0) });
    const free = planOn(today, beds);
    expect(kept.rounds.length).toBe(free.rounds.length);
    if (aheadDays(kept).join() !== aheadDays(earlier).join()) {
      // What moved was worth a round.
      const wasKept = planOn(today, beds, { keep: publishedBy(earlier, 3) });
      expect(aheadDays(wasKept)).toEqual(aheadDays(earlier));
      expect(wasKept.rounds.length).toBeGreaterThan(kept.rounds.length);
    }
  }
});

test("days of the past are not asked for again", () => {
  const earlier = planOn(today);
  const log = [{ on: "2027-06-20", planting: "toms" }];
  const plan = planOn("2027-06-24", { log }, { keep: publishedBy(earlier, 0) });
  expect(daysOf(plan).filter((on) => on < "2027-06-24")).toEqual(["2027-06-20"]);
});

test.each(examples)(
  "plan --keep of the example %s over its own plan gives it again",
  async (name) => {
    const argv = ["plan", examplePath(name), "--json", "--today", today];
    const first = await cli(argv);
    const calendar = await cli(["calendar", examplePath(name), "--today", today]);
    const earlier = [
      scratchFile("earlier.json", first.stdout),
      scratchFile("garden.ics", calendar.stdout),
    ];
    for (const file of earlier) expect(await cli([...argv, "--keep", file])).toEqual(first);
  },
);
