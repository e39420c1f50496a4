// @ts-nocheck
import { describe, expect, it } from "vitest";
import { calendarChanges } from "../../src/calendar/calendar-changes.js";
import { addDays, day } from "../../src/dates.js";
import type { Plan, Round } from "../../src/season/season-plan.js";
import {
  aBedRound,
  aFill,
  aMix,
  anOtherFeed,
  aPlan,
  aRound,
  daysFrom,
  roundsOn,
} from "../support/a-plan.js";
import { earlierOf, textOf } from "../support/calendars.js";

const weekly = daysFrom(day("2027-06-01"), 6, 7);
const june1 = "2027-06-01";
const june8 = "2027-06-08";
const june15 = "2027-06-15";
const june22 = "2027-06-22";
const today = day("2027-06-16");
const stamp = "2027-06-16T08:00:00Z";

const calendar = { remindersMinBefore: [-480], color: "teal", refreshHours: 12 };
const byRound = { calendar: { ...calendar, group: "round" } } as const;
const byBed = { calendar: { ...calendar, group: "bed" } } as const;
const stronger = [
  aBedRound({ mixes: [aMix({ fills: [aFill({ stockText: "45 mL", stockMl: 45 })] })] }),
];
const inBeds = ["north", "south"].map((bed) => aBedRound({ bed, bedName: bed }));

function planOf(rounds: readonly Round[], differs: Parameters<typeof aPlan>[0] = {}): Plan {
  return aPlan({ garden: byRound, ...differs, rounds });
}

const published = textOf(planOf(roundsOn(weekly)), { stamp: "2027-05-01T08:00:00Z" });

const live = (text: string) => earlierOf(text).events.filter(({ cancelled }) => !cancelled);
const on = (text: string, when: string) => live(text).filter((event) => event.day === when);

describe.each(["import", "subscription"] as const)("a past entry of a file for %s", (use) => {
  const over = (previous: string, plan: Plan, now = today) =>
    textOf(plan, { previous, for: use, stamp: `${now}T08:00:00Z`, today: now });

  it("stands byte for byte, whatever days, amounts and words the plan has now", () => {
    const plan = planOf(
      roundsOn(["2027-06-02", june8, "2027-06-17", "2027-06-22"], { beds: stronger }),
    );
    const next = over(published, plan);
    for (const past of [june1, june8, june15]) expect(on(next, past)).toEqual(on(published, past));
    expect(on(next, "2027-06-02")).toMatchObject([{ sequence: 0 }]);
    expect(on(next, june22)[0]?.text).not.toBe(on(published, june22)[0]?.text);
  });

  it("is never taken for a round to come near by", () => {
    const next = over(published, planOf(roundsOn(["2027-06-17"])));
    expect(on(next, june15)).toEqual(on(published, june15));
    expect(on(next, "2027-06-17")[0]?.uid).toBe(on(published, june22)[0]?.uid);
  });

  it("stands where nothing is planned any more, until 60 days after the season, and is never called off", () => {
    const nothing = planOf([]);
    const next = over(published, nothing);
    expect(live(next).map((event) => event.day)).toEqual([june1, june8, june15]);
    const lastDay = addDays(nothing.garden.season.to, 60);
    expect(live(over(next, nothing, lastDay))).toEqual(live(next));
    const after = over(next, nothing, addDays(lastDay, 1));
    expect(earlierOf(after).events).toEqual([]);
    expect(earlierOf(after).retired.map(({ day }) => day)).toEqual(
      expect.arrayContaining([june1, june8, june15]),
    );
  });

  it("of an earlier season goes 60 days after its own day", () => {
    const season = { from: day("2028-03-01"), to: day("2028-10-31") };
    const nextYear = planOf([], { garden: { ...byRound, season } });
    const whole = over(published, planOf(roundsOn(weekly)), day("2027-08-01"));
    expect(live(over(whole, nextYear, day("2027-08-07"))).map((event) => event.day)).toEqual([
      "2027-06-08",
      ...weekly.slice(2),
    ]);
  });

  it("stands where the plan takes it as given as published", () => {
    const rounds = roundsOn(weekly, { beds: stronger }).map((round) =>
      round.day < today ? { ...round, asPublished: true as const } : round,
    );
    const next = over(published, planOf(rounds));
    for (const past of [june1, june8, june15]) expect(on(next, past)).toEqual(on(published, past));
  });

  it("that the log tells of is revised on its UID, once", () => {
    const rounds = roundsOn([june1, june8], { given: true, beds: stronger });
    const next = over(published, planOf(rounds));
    const [was, is] = [on(published, june8)[0], on(next, june8)[0]];
    expect(is).toMatchObject({ uid: was?.uid, created: was?.created, sequence: 1 });
    expect(is?.text).toContain("SUMMARY:Given ");
    expect(is?.text).not.toContain("VALARM");
    expect(over(next, planOf(rounds), addDays(today, 1))).toBe(next);
  });

  it.each(["2027-06-10", today, "2027-06-05"])(
    "moves to %s where the log says that it was given then",
    (given) => {
      const fed = aRound({ day: day(given), given: true, standsFor: day(june8) });
      const next = over(published, planOf([fed, ...roundsOn(weekly.slice(3))]));
      expect(on(next, given)).toMatchObject([{ uid: on(published, june8)[0]?.uid, sequence: 1 }]);
      expect(on(next, june8)).toEqual([]);
      expect(on(next, june1)).toEqual(on(published, june1));
    },
  );

  it("is what it was again when the log takes back what it told", () => {
    const given = over(published, planOf(roundsOn([june8], { given: true })));
    const taken = over(given, planOf(roundsOn([june8], { asPublished: true })));
    expect(on(taken, june8)).toMatchObject([{ sequence: 2, uid: on(published, june8)[0]?.uid }]);
    expect(on(taken, june8)[0]?.text).not.toContain("Given: ");
  });

  describe("of another grouping", () => {
    const inOne = textOf(planOf(roundsOn(weekly, { beds: inBeds })), { stamp });
    const taken = roundsOn(weekly, { beds: inBeds }).map((round) =>
      round.day < today ? { ...round, asPublished: true as const } : round,
    );

    it("stays one entry for all beds", () => {
      const next = over(inOne, planOf(taken, { garden: byBed }));
      expect(on(next, june8)).toEqual(on(inOne, june8));
      expect(on(next, june22).map(({ key }) => key.split("/")[1])).toEqual(["north", "south"]);
    });

    it("stays one entry a bed, and what the log tells of one bed changes that one", () => {
      const inTwo = textOf(planOf(roundsOn(weekly, { beds: inBeds }), { garden: byBed }), {
        stamp,
      });
      const logged = [
        aBedRound({ ...inBeds[0], mixes: [aMix({ given: true, stockMl: 77 })] }),
        ...inBeds.slice(1),
      ];
      const next = over(inTwo, planOf([aRound({ day: day(june8), beds: logged })]));
      const texts = (text: string) => on(text, june8).map((event) => event.text);
      expect(texts(next)).toHaveLength(2);
      expect(texts(next)[0]).not.toBe(texts(inTwo)[0]);
      expect(texts(next)[1]).toBe(texts(inTwo)[1]);
    });

    it("leaves out what is taken as given in a bed that has another name by now", () => {
      const renamed = [aBedRound({ bed: "long", bedName: "Long bed" })];
      const inTwo = textOf(planOf(roundsOn(weekly, { beds: inBeds }), { garden: byBed }), {
        stamp,
      });
      const plan = planOf(roundsOn([june8], { beds: renamed, asPublished: true }), {
        garden: byBed,
      });
      expect(on(over(inTwo, plan), june8)).toEqual(on(inTwo, june8));
    });
  });

  describe("of which nothing was given", () => {
    const missed = [
      {
        day: day(june8),
        bed: "south",
        bedName: "South bed",
        plantings: ["Tomatoes"],
        why: "log" as const,
      },
    ];
    const next = over(published, planOf([], { missed }));

    it("says so on its UID, reminds of nothing and is not called off", () => {
      const [was, is] = [on(published, june8)[0], on(next, june8)[0]];
      expect(is).toMatchObject({ uid: was?.uid, created: was?.created, sequence: 1 });
      expect(is?.text).toMatch(/\r\nSUMMARY:Not given: 3 cans/);
      expect(is?.text).not.toMatch(/VALARM|\nSTATUS/);
      expect(on(next, june1)).toEqual(on(published, june1));
    });

    it("is rewritten once", () => {
      expect(on(over(next, planOf([], { missed }), addDays(today, 9)), june8)).toEqual(
        on(next, june8),
      );
    });

    it("stands as it is where a part of it was given", () => {
      const rest = roundsOn([june8], { asPublished: true, beds: stronger });
      expect(on(over(published, planOf(rest, { missed })), june8)).toEqual(on(published, june8));
      const onlyFeeds = roundsOn([june8], { asPublished: true, beds: [], feeds: [anOtherFeed()] });
      expect(on(over(published, planOf(onlyFeeds, { missed })), june8)).toEqual(
        on(published, june8),
      );
    });

    it("is one bed's where each bed has an entry", () => {
      const inTwo = textOf(planOf(roundsOn([june8], { beds: inBeds }), { garden: byBed }), {
        stamp,
      });
      const after = over(inTwo, planOf([], { garden: byBed, missed }));
      expect(on(after, june8).map(({ text }) => text.includes("Not given: "))).toEqual([
        false,
        true,
      ]);
    });

    it("is as it was again when the log no longer says so", () => {
      const back = over(next, planOf(roundsOn([june8], { asPublished: true })));
      expect(on(back, june8)).toMatchObject([{ sequence: 2 }]);
      expect(on(back, june8)[0]?.text).not.toContain("Not given: ");
    });

    it("is told as a change, once", () => {
      const told = (text: string) =>
        calendarChanges(earlierOf(text), planOf([], { missed }), today);
      const past = (text: string) => told(text).filter(({ change }) => change !== "gone");
      expect(past(published)).toMatchObject([
        {
          change: "changed",
          event: { day: june8, summary: expect.stringMatching(/^Not given: 3 cans/) as string },
          was: { day: june8, uid: on(published, june8)[0]?.uid },
          properties: ["SUMMARY", "VALARM"],
        },
      ]);
      expect(past(next)).toEqual([]);
    });
  });
});

it("changes tell nothing of entries that stand", () => {
  const plan = planOf(roundsOn(weekly.slice(3)));
  expect(calendarChanges(earlierOf(published), plan, today)).toEqual([]);
  const over = addDays(plan.garden.season.to, 61);
  expect(calendarChanges(earlierOf(published), planOf([]), over)).toEqual([]);
});

it("an entry that is taken as given reminds of nothing and does not say that the log holds it", () => {
  const rounds = roundsOn([june8], { asPublished: true, given: true });
  const [event] = live(textOf(planOf(rounds), { stamp }));
  expect(event?.text).not.toMatch(/VALARM|Given/);
});
