// @ts-nocheck
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchEvents } from "../../src/calendar/match-events.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import type { WrittenEvent } from "../../src/calendar/vevent.js";
import { addDays, day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { aBedRound, aFill, aMix, aPlan, aRound, aWarning } from "../support/a-plan.js";
import { earlierOf, textOf } from "../support/calendars.js";
import { eventsIn } from "../support/ics.js";

const first = day("2027-06-01");

/** Days from the first on which a bed is fed, how strong, and days of warnings. */
const aSeason = fc.record({
  feedings: fc.uniqueArray(
    fc.record({
      offset: fc.integer({ min: 0, max: 60 }),
      bed: fc.constantFrom("a", "b"),
      stockMl: fc.integer({ min: 20, max: 22 }),
    }),
    { maxLength: 10, selector: ({ offset, bed }) => `${bed}${offset}` },
  ),
  warnings: fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { maxLength: 2 }),
});
type Season = typeof aSeason extends fc.Arbitrary<infer T> ? T : never;

function planOf({ feedings, warnings }: Season, group: "round" | "bed"): Plan {
  const offsets = [...new Set(feedings.map(({ offset }) => offset))].sort((a, b) => a - b);
  return aPlan({
    rounds: offsets.map((offset) =>
      aRound({
        day: addDays(first, offset),
        beds: feedings
          .filter((f) => f.offset === offset)
          .map(({ bed, stockMl }) => {
            const fills = [aFill({ stockMl, stockText: `${stockMl} mL` })];
            return aBedRound({ bed, bedName: bed, mixes: [aMix({ fills })] });
          }),
      }),
    ),
    warnings: warnings.map((offset) => aWarning({ day: addDays(first, offset) })),
    garden: { calendar: { group, remindersMinBefore: [-480], color: "teal", refreshHours: 12 } },
  });
}

const anEdit = fc.record({
  season: aSeason,
  use: fc.constantFrom("import" as const, "subscription" as const),
  /** Days that pass before the edit. */
  passing: fc.integer({ min: 0, max: 40 }),
});

describe("a calendar made again and again over random edits of the garden", () => {
  it("never repeats a UID, never lowers a SEQUENCE, keeps CREATED, and is its own fixed point", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("round" as const, "bed" as const),
        aSeason,
        fc.array(anEdit, { minLength: 1, maxLength: 6 }),
        (group, season, edits) => {
          let today = day("2027-05-01");
          let text = textOf(planOf(season, group), { stamp: `${today}T00:00:00Z` });
          const known = new Map<string, WrittenEvent>();
          for (const edit of edits) {
            const before = earlierOf(text).events;
            for (const event of before) known.set(event.uid, event);
            today = addDays(today, edit.passing);
            const plan = planOf(edit.season, group);
            const options = { for: edit.use, stamp: `${today}T12:00:00Z`, today };
            text = textOf(plan, { ...options, previous: text });

            const { events } = earlierOf(text);
            expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
            expect(new Set(events.map(({ key }) => key)).size).toBe(events.length);
            for (const event of events) {
              const was = known.get(event.uid);
              if (was === undefined) expect(event.sequence).toBe(0);
              else if (event.text !== was.text) {
                expect(event.sequence).toBeGreaterThan(was.sequence);
                expect(event.modified >= was.modified).toBe(true);
                expect(event.created).toBe(was.created);
              }
            }
            const live = events.filter(({ cancelled }) => !cancelled);
            const past = before.filter((was) => !was.cancelled && was.day < today);
            for (const was of past) expect(text).toContain(was.text);
            const keys = [...past, ...planEvents(plan)].map(({ key }) => key);
            expect(live.map(({ key }) => key).sort()).toEqual([...new Set(keys)].sort());
            if (edit.use === "subscription") expect(live).toHaveLength(events.length);
            expect(textOf(plan, { ...options, previous: text })).toBe(text);
            expect(
              eventsIn(text)
                .map(({ uid, sequence }) => `${uid} ${sequence}`)
                .sort(),
            ).toEqual(events.map(({ uid, sequence }) => `${uid} ${sequence}`).sort());
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("keeps on its day every UID whose day stays, and moves as few others as any assignment could", () => {
    fc.assert(
      fc.property(aSeason, aSeason, (before, now) => {
        const small = (season: Season) => ({ feedings: season.feedings.slice(0, 5), warnings: [] });
        const earlier = earlierOf(textOf(planOf(small(before), "bed"))).events;
        const plan = planOf(small(now), "bed");
        const events = planEvents(plan);
        const { events: matches } = matchEvents(earlier, plan, plan.today);
        const found = score(matches.map(({ event, was }) => [event.key, was?.key]));
        expect(found).toEqual(
          bestScore(
            events.map(({ key }) => key),
            earlier.map(({ key }) => key),
          ),
        );
      }),
      { numRuns: 150 },
    );
  });
});

type Score = readonly [stay: number, continued: number, daysMovedNegated: number];

function score(assignment: readonly (readonly [now: string, was: string | undefined])[]): Score {
  const pairs = assignment.flatMap(([now, was]) =>
    was === undefined ? [] : [[now, was] as const],
  );
  const moved = pairs.map(([now, was]) => daysApart(now, was));
  return [
    moved.filter((days) => days === 0).length,
    pairs.length,
    0 - moved.reduce((a, b) => a + b, 0),
  ];
}

/** By trying every assignment of earlier events to new ones in the same row, no more than 14 days apart. */
function bestScore(news: readonly string[], olds: readonly string[]): Score {
  const [now, ...rest] = news;
  if (now === undefined) return [0, 0, 0];
  const without = bestScore(rest, olds);
  const others = olds.flatMap((was): Score[] => {
    if (was.slice(0, -10) !== now.slice(0, -10) || daysApart(now, was) > 14) return [];
    const [stay, continued, daysNegated] = bestScore(
      rest,
      olds.filter((old) => old !== was),
    );
    const days = daysApart(now, was);
    return [[stay + (days === 0 ? 1 : 0), continued + 1, daysNegated - days]];
  });
  return others.reduce((a, b) => (compare(a, b) >= 0 ? a : b), without);
}

function compare(a: Score, b: Score): number {
  return a[0] - b[0] || a[1] - b[1] || a[2] - b[2];
}

function daysApart(a: string, b: string): number {
  return Math.abs(Date.parse(a.slice(-10)) - Date.parse(b.slice(-10))) / 86_400_000;
}
