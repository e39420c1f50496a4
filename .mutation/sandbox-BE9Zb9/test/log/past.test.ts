// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { type FeedingCourse, feedingCourses } from "../../src/days/courses.js";
import type { Garden } from "../../src/garden/garden.js";
import { asScheduled, type GivenFeeding, resumed } from "../../src/log/given.js";
import { type Past, pastOf } from "../../src/log/past.js";
import type { Published } from "../../src/published/published.js";
import { matchRules } from "../../src/rules/match.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, type GardenDiffers, planted } from "../support/a-garden.js";
import { aPublished, aPublishedMix, aPublishedRound as told } from "../support/a-published.js";

const tables = loadTables();
const today = day("2027-07-01");

function coursesOf(garden: Garden): FeedingCourse[] {
  return garden.beds.flatMap((bed) =>
    bed.plantings.flatMap((planting) => {
      const crop = tables.catalogue.crops.find(({ key }) => key === planting.crop);
      if (crop === undefined) throw new Error(`no crop ${planting.crop}`);
      const life = plantingLife(planting, crop, garden);
      const { spans } = matchRules(planting, crop, life, tables.builtInRules);
      return feedingCourses(planting, spans, garden.season);
    }),
  );
}

const stock = { batches: [{ id: "B1", made: "2027-05-10", volume: "500 mL" }] };
const twoOfABed = (log: readonly object[]): Garden =>
  aGarden({
    ...planted({ water: "12 L" }, { id: "chillies", crop: "chili", water: "6 L" }),
    stock,
    log,
  });

describe("without a published calendar", () => {
  const pastIn = (garden: Garden): Past => pastOf(garden, coursesOf(garden), undefined, today);

  test("an entry for a bed is shared out by water among those that are fed", () => {
    const garden = twoOfABed([{ on: "2027-06-20", bed: "south", stock: "45 mL", batch: "B1" }]);
    expect(pastIn(garden).given).toEqual([
      { planting: "toms", day: "2027-06-20", stockMl: 30, batch: "B1" },
      { planting: "chillies", day: "2027-06-20", stockMl: 15, batch: "B1" },
    ]);
  });

  test("entries after today, of other feeds, and of what was missed gave nothing", () => {
    const garden = aGarden({
      feeds: [{ name: "seaweed", days: ["wed"], rate: "5 mL per L" }],
      log: [
        { on: "2027-06-20", feed: "seaweed" },
        { on: "2027-06-21", planting: "toms", missed: true },
        { on: "2027-07-02", planting: "toms" },
      ],
    });
    expect(pastIn(garden)).toEqual({
      given: [],
      todays: [],
      notGiven: [],
      taken: [],
      early: [],
      silentDays: [],
    });
  });

  test("what was written down leaves its bottle", () => {
    const log = [
      { on: "2027-06-20", planting: "toms", stock: "30 mL", batch: "B1" },
      { on: "2027-06-21", planting: "toms" },
    ];
    expect(pastIn(twoOfABed(log)).taken).toMatchObject([
      { day: "2027-06-20", ml: 30, batch: "B1", path: ["log", 0] },
    ]);
  });
});

/** Tomatoes with 12 L and chillies with 6 L out of one can. */
const both = aPublishedMix({
  fed: [
    { planting: "toms", crop: "tomato", waterL: 12 },
    { planting: "chillies", crop: "chili", waterL: 6 },
  ],
  pours: [{ batch: "B1", ml: 45 }],
});
const published = aPublished({
  rounds: ["2027-06-05", "2027-06-19", "2027-07-03"].map((on) => told(on, { mixes: [both] })),
});

function pastWith(
  log: readonly object[],
  differs: GardenDiffers = {},
  of: Published = published,
  now = today,
): Past {
  const plantings = planted({ water: "12 L" }, { id: "chillies", crop: "chili", water: "6 L" });
  const garden = aGarden({ ...plantings, stock, log, ...differs });
  return pastOf(garden, coursesOf(garden), of, now);
}

const daysOf = (past: Past, planting = "toms"): string[] =>
  past.given.filter((one) => one.planting === planting).map((one) => one.day);
const takenMl = (past: Past): number => past.taken.reduce((sum, { ml }) => sum + ml, 0);

describe("a published round whose day is past", () => {
  test("of which the log is silent was given as planned, amounts and bottle included", () => {
    const past = pastWith([]);
    const asPublished: Omit<GivenFeeding, "planting" | "stockMl" | "waterL"> = {
      day: day("2027-06-05"),
      route: "drench",
      batch: "B1",
      mix: "2027-06-05/0",
      asPublished: true,
    };
    expect(past.given.filter((one) => one.day === "2027-06-05")).toEqual([
      { ...asPublished, planting: "toms", waterL: 12, stockMl: 30 },
      { ...asPublished, planting: "chillies", waterL: 6, stockMl: 15 },
    ]);
    expect(past.silentDays).toEqual(["2027-06-05", "2027-06-19"]);
    expect(takenMl(past)).toBe(90);
    expect(past.taken.every(({ path }) => path === undefined)).toBe(true);
    expect([past.notGiven, past.todays]).toEqual([[], []]);
  });

  test("was not given where it was first published only after its day", () => {
    const late = aPublished({ rounds: [told("2027-06-05", { first: "2027-06-06" })] });
    expect(pastWith([], {}, late)).toMatchObject({
      given: [],
      taken: [],
      early: [],
      silentDays: [],
    });
    const sameDay = aPublished({ rounds: [told("2027-06-05", { first: "2027-06-05" })] });
    expect(daysOf(pastWith([], {}, sameDay))).toEqual(["2027-06-05"]);
  });

  test("was not given where silence says so", () => {
    const past = pastWith([], { unlogged: "not-given" });
    expect(past).toMatchObject({ given: [], taken: [], early: [], silentDays: [] });
  });

  test("stays today's round as long as the log is silent of it", () => {
    const past = pastWith([], {}, published, day("2027-06-19"));
    expect(daysOf(past)).toEqual(["2027-06-05"]);
    expect(past.todays).toEqual([
      { planting: "toms", route: "drench" },
      { planting: "chillies", route: "drench" },
    ]);
    const written = pastWith(
      [{ on: "2027-06-19", planting: "toms" }],
      {},
      published,
      day("2027-06-19"),
    );
    expect(written.todays).toEqual([{ planting: "chillies", route: "drench" }]);
  });

  test("stays today's where silence does not count as given", () => {
    const past = pastWith([], { unlogged: "not-given" }, published, day("2027-06-19"));
    expect(past.todays.map(({ planting }) => planting)).toEqual(["toms", "chillies"]);
  });
});

describe("silence is judged by itself", () => {
  test("for each planting", () => {
    const past = pastWith([{ on: "2027-06-05", planting: "toms", missed: true }]);
    expect(daysOf(past, "toms")).toEqual(["2027-06-19"]);
    expect(daysOf(past, "chillies")).toEqual(["2027-06-05", "2027-06-19"]);
    expect(past.notGiven).toEqual([
      { planting: "toms", bed: "south", route: "drench", day: "2027-06-05", why: "log" },
    ]);
    expect(takenMl(past)).toBe(60);
  });

  test("for each route", () => {
    const sprayed = aPublishedMix({ route: "foliar", pours: [{ batch: "B1", ml: 5 }] });
    const twoWays = aPublished({
      rounds: [told("2027-06-05", { mixes: [aPublishedMix(), sprayed] })],
    });
    const past = pastWith(
      [{ on: "2027-06-05", planting: "toms", route: "foliar", missed: true }],
      {
        ...planted({ feed: "both", spray: "2 L" }),
      },
      twoWays,
    );
    expect(past.given.map(({ route }) => route)).toEqual(["drench"]);
    expect(past.notGiven.map(({ route }) => route)).toEqual(["foliar"]);
  });

  test.each([
    ["of a bed", { bed: "south" }],
    ["of the whole round", {}],
  ])("what is said %s is said of all in it", (_, of) => {
    const past = pastWith([{ on: "2027-06-05", ...of, missed: true }]);
    expect(past.notGiven.map(({ planting }) => planting)).toEqual(["toms", "chillies"]);
    expect(takenMl(past)).toBe(45);
    const less = pastWith([{ on: "2027-06-05", ...of, stock: "30 mL" }]);
    expect(less.given.filter((one) => one.day === "2027-06-05")).toMatchObject([
      { planting: "toms", stockMl: 20, batch: "B1" },
      { planting: "chillies", stockMl: 10, batch: "B1" },
    ]);
    expect(takenMl(less)).toBe(75);
  });

  test("what is said of another bed is not said of this one", () => {
    const beds = [
      ...((planted({ water: "12 L" }).beds ?? []) as object[]),
      {
        id: "north",
        plantings: [{ id: "more", crop: "tomato", transplanted: "2027-05-20", water: "2 L" }],
      },
    ];
    const past = pastWith([{ on: "2027-06-05", bed: "north", missed: true }], { beds });
    expect(daysOf(past)).toEqual(["2027-06-05", "2027-06-19"]);
    expect(past.notGiven).toEqual([]);
  });
});

describe("an entry for a published round", () => {
  test("without amount and bottle gave the published ones", () => {
    const past = pastWith([{ on: "2027-06-05", planting: "toms" }]);
    const [first] = past.given;
    expect(first).toMatchObject({ day: "2027-06-05", stockMl: 30, batch: "B1", waterL: 12 });
    expect(first).not.toHaveProperty("asPublished");
    // An amount that nobody wrote down is never refused as too much.
    expect(past.taken[0]).toEqual({ day: "2027-06-05", batch: "B1", ml: 30 });
  });

  test("with an amount gave it from the published bottle; with a bottle, the published amount", () => {
    const amount = pastWith([{ on: "2027-06-05", planting: "toms", stock: "20 mL" }]);
    expect(amount.taken[0]).toMatchObject({ batch: "B1", ml: 20, path: ["log", 0] });
    const bottle = pastWith([{ on: "2027-06-05", planting: "toms", batch: "B2" }]);
    expect(bottle.taken[0]).toEqual({ day: "2027-06-05", batch: "B2", ml: 30 });
  });

  test.each(["2027-06-02", "2027-06-08"])(
    "stands for it, though it was given on %s, and the next is counted from that day",
    (on) => {
      const past = pastWith([{ on, planting: "toms" }]);
      expect(past.given[0]).toMatchObject({ planting: "toms", day: on, standsFor: "2027-06-05" });
      expect(daysOf(past)).toEqual([on, "2027-06-19"]);
    },
  );

  test("too far from any is one more feeding, and the published one counts as well", () => {
    const past = pastWith([{ on: "2027-06-12", planting: "toms", stock: "10 mL" }]);
    expect(daysOf(past).sort()).toEqual(["2027-06-05", "2027-06-12", "2027-06-19"]);
    expect(past.given[0]).not.toHaveProperty("standsFor");
    expect(takenMl(past)).toBe(100);
  });

  test("stands for the one it names, however far that is", () => {
    const past = pastWith([{ on: "2027-06-12", planting: "toms", round: "2027-06-05" }]);
    expect(daysOf(past)).toEqual(["2027-06-12", "2027-06-19"]);
    expect(past.given[0]).toMatchObject({ standsFor: "2027-06-05", stockMl: 30 });
  });

  test("that names one leaves a nearer one to itself", () => {
    const past = pastWith([{ on: "2027-06-18", planting: "toms", round: "2027-06-05" }]);
    expect(daysOf(past).sort()).toEqual(["2027-06-18", "2027-06-19"]);
  });

  test("and a second of the same day is the same feeding: no published amount twice", () => {
    const again = { on: "2027-06-05", planting: "toms" };
    expect(takenMl(pastWith([again, again]))).toBe(takenMl(pastWith([again])));
    const twoBottles = pastWith([
      { ...again, stock: "10 mL", batch: "B1" },
      { ...again, stock: "12 mL", batch: "B2" },
    ]);
    expect(twoBottles.taken.slice(0, 2)).toMatchObject([
      { batch: "B1", ml: 10 },
      { batch: "B2", ml: 12 },
    ]);
  });
});

describe("what the garden file says of a published day", () => {
  const onBoth = ["2027-06-05", "2027-06-19"];

  test("away: missed, and its stock stays in the bottle", () => {
    const past = pastWith([], { feeding: { away: [{ from: "2027-06-18", to: "2027-06-20" }] } });
    expect(daysOf(past)).toEqual(["2027-06-05"]);
    expect(past.notGiven).toMatchObject([
      { planting: "toms", day: "2027-06-19", why: "away" },
      { planting: "chillies", day: "2027-06-19", why: "away" },
    ]);
    expect(takenMl(past)).toBe(45);
  });

  test.each([
    ["removed before it", { removed: "2027-06-10" }, "removed", ["2027-06-19"]],
    ["not set out by it", { transplanted: "2027-06-21" }, "not-yet-planted", onBoth],
  ])("%s: its share stays in the bottle, the others were fed", (_, differs, why, not) => {
    const past = pastWith(
      [],
      planted({ water: "12 L", ...differs }, { id: "chillies", crop: "chili", water: "6 L" }),
    );
    expect(past.notGiven.map((one) => [one.planting, one.day, one.why])).toEqual(
      not.map((on) => ["toms", on, why]),
    );
    expect(daysOf(past, "chillies")).toEqual(onBoth);
    expect(takenMl(past)).toBe(90 - 30 * not.length);
  });

  test("a day of which the log tells was given all the same", () => {
    const past = pastWith([{ on: "2027-06-19", planting: "toms" }], {
      feeding: { away: [{ from: "2027-06-18", to: "2027-06-20" }] },
    });
    expect(daysOf(past).sort()).toEqual(onBoth);
    expect(past.notGiven.map(({ planting }) => planting)).toEqual(["chillies"]);
  });

  test("a planting that is gone: no feeding of it is told, its stock stays poured", () => {
    const past = pastWith([], planted({ water: "12 L" }));
    expect(daysOf(past, "chillies")).toEqual([]);
    expect(takenMl(past)).toBe(90);
    expect(past.silentDays).toEqual(onBoth);
  });
});

describe("a course", () => {
  const garden = aGarden();
  const courses = coursesOf(garden);
  const [course] = courses;
  if (course === undefined) throw new Error("tomatoes are fed");
  const on = (d: string, more: object = {}) => ({ planting: "toms", day: day(d), ...more });

  test("goes on from the last day given, whatever the order", () => {
    const given = [on("2027-06-24"), on("2027-06-20")];
    expect(resumed(courses, given)[0]?.course.lastFed).toBe("2027-06-24");
  });

  test("is not moved by what another route or planting got", () => {
    const given = [on("2027-06-24", { route: "foliar" }), { ...on("2027-06-24"), planting: "no" }];
    expect(resumed(courses, given)).toEqual(courses);
  });

  test("takes several entries of a day as one feeding, with the bottles of each", () => {
    const given = [
      on("2027-06-20", { stockMl: 20, batch: "B1" }),
      on("2027-06-20", { stockMl: 10, batch: "B2" }),
    ];
    const { feedings, strays } = asScheduled(given, courses, () => true);
    expect(strays).toEqual([]);
    expect(feedings).toMatchObject([
      {
        course: course.course.id,
        day: "2027-06-20",
        logged: {
          stockMl: 30,
          pours: [
            { batch: "B1", ml: 20 },
            { batch: "B2", ml: 10 },
          ],
        },
      },
    ]);
  });

  test("keeps an entry for what does not grow, and tells of it", () => {
    const { feedings, strays } = asScheduled([on("2027-06-20")], courses, () => false);
    expect(feedings).toHaveLength(1);
    expect(strays).toEqual([on("2027-06-20")]);
  });
});
