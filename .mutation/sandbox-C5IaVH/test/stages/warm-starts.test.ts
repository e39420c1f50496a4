/** Stages that follow warmth: where they count from, how far they may move, and what stays. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Crop, CropWarmth, StageSum } from "../../src/crops/crop.js";
import { addDays, day, type Day, daysBetween } from "../../src/dates.js";
import type { Planting } from "../../src/garden/garden.js";
import type { Place } from "../../src/stages/place.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import type { StageSpan } from "../../src/stages/stage-span.js";
import { loadTables } from "../../src/tables.js";
import { aPlant, aWarmPlace, climateForTests, cropWith } from "./a-warm-place.js";

const source = "for a test";
const flower: StageSum = {
  stage: "flowering",
  from: "transplanting",
  degreeDays: 200,
  least: 100,
  most: 300,
  source,
};
/** FAO-56 Table 11, Tomato, Mediterranean: 30, 40, 45 and 30 days, here of 10 degree days each. */
const row = {
  row: "mediterranean-apr-may",
  initial: 300,
  development: 400,
  mid: 450,
  late: 300,
  leastTotal: 1450,
  mostTotal: 1450,
  source,
};
const tomato = (warmth: Partial<CropWarmth> = {}): Crop =>
  cropWith("tomato", { sums: [flower], rows: [row], ...warmth });

/** Planted out on 20 May; by the calendar it flowers on 17 June and is picked from 1 August on. */
function spans(
  crop: Crop,
  times: Partial<Planting> = {},
  place: Place = aWarmPlace(),
): StageSpan[] {
  return [
    ...plantingLife(aPlant(crop, { transplanted: day("2027-05-20"), ...times }), crop, place).spans,
  ];
}

function starts(...of: Parameters<typeof spans>): Record<string, Day> {
  return Object.fromEntries(spans(...of).map((span) => [span.stage, span.from]));
}

const flowering = (...of: Parameters<typeof spans>): StageSpan | undefined =>
  spans(...of).find(({ stage }) => stage === "flowering");

describe("a tomato with a sum from planting out", () => {
  test("flowers when it is reached: 20 days of 10 degree days, the first of them 20 May", () => {
    expect(flowering(tomato())?.from).toBe("2027-06-08");
    expect(starts(tomato(), {}, aWarmPlace({}, 15))["flowering"]).toBe("2027-06-28");
  });

  test("goes on by the degree days of its growth periods", () => {
    const { flowering: from, "fruit-set": set, harvest } = starts(tomato());
    // 0.2 and all of 450 degree days further, at 10 a day.
    expect([from, set, harvest]).toEqual(["2027-06-08", "2027-06-17", "2027-07-23"]);
  });

  test("stays on the calendar before the first stage that warmth dates, never after it", () => {
    expect(starts(tomato())["vegetative"]).toBe("2027-05-08");
    const soon = tomato({ sums: [{ ...flower, degreeDays: 10, least: 10, most: 10 }] });
    const early = starts(soon, { transplanted: day("2027-04-10"), sown: day("2027-04-09") });
    expect(early["seedling"]).toBe("2027-04-09");
  });

  test("says what it counted, and keeps the calendar's date and the band beside it", () => {
    const span = flowering(tomato());
    expect(span?.origin).toBe("by warmth");
    expect(span?.warmth).toEqual({
      day: "2027-06-08",
      earliest: "2027-05-29",
      latest: "2027-06-18",
      calendar: "2027-06-17",
      isFollowed: true,
      degreeDays: 200,
      baseC: 10,
      after: "planting out on 20 May",
      sources: ["for a test"],
    });
  });

  test("widens the band by the error of the means", () => {
    const climate = { ...climateForTests, errorC: 5 };
    const { earliest, latest } = flowering(tomato(), {}, aWarmPlace({ climate }))?.warmth ?? {};
    expect([earliest, latest]).toEqual(["2027-05-26", "2027-07-18"]);
  });

  test("flowers sooner under a cover, and only on the days under it", () => {
    const all = aWarmPlace({ cover: [{ byC: 10 }] });
    expect(flowering(tomato(), {}, all)?.from).toBe("2027-05-29");
    const until = aWarmPlace({ cover: [{ byC: 10, to: day("2027-05-24") }] });
    expect(flowering(tomato(), {}, until)?.from).toBe("2027-06-03");
  });

  test("takes longer where the variety does", () => {
    // 42 and 96 days from sowing where the row has 115: 1.2 times as long.
    expect(flowering(tomato(), { daysToHarvest: 96 })?.from).toBe("2027-06-12");
  });
});

describe("how far warmth moves a date", () => {
  test("28 days at most, and it says that it was held back", () => {
    const { from, warmth } = flowering(tomato(), {}, aWarmPlace({}, 12)) ?? {};
    expect(from).toBe("2027-07-15");
    expect(warmth).toMatchObject({ day: "2027-08-27", isHeldBack: true, isFollowed: true });
  });

  test("a stage that it doesn't bring before the season ends stays on the calendar", () => {
    const { from, warmth, origin } = flowering(tomato(), {}, aWarmPlace({}, 10.5)) ?? {};
    expect(from).toBe("2027-06-17");
    expect(warmth).toMatchObject({ calendar: "2027-06-17", isFollowed: false });
    expect(warmth).not.toHaveProperty("day");
    expect(origin).toContain("FAO Irrigation and Drainage Paper 56");
  });

  test("stages keep their order where some are reached and others not", () => {
    const ordered = spans(tomato(), {}, aWarmPlace({}, 13)).map(({ from }) => from);
    expect(ordered).toEqual([...ordered].sort());
  });
});

describe("a stage that warmth does not bring, after one that it does", () => {
  // At 6 degree days a day fruit grows from 18 July on and ripens on 25 August.
  const cool = (to: string) => {
    const season = { from: day("2027-03-01"), to: day(to) };
    return starts(tomato(), {}, aWarmPlace({}, 16, season));
  };

  test("keeps the calendar's distance from it, so that this one does not shrink to days", () => {
    // By the calendar 5 July, and 22 days on.
    const { "fruit-growth": growth, ripening } = cool("2027-08-24");
    expect([growth, ripening]).toEqual(["2027-07-18", "2027-08-09"]);
    expect(cool("2027-08-25")).toMatchObject({ "fruit-growth": growth, ripening: "2027-08-22" });
  });

  test("stays on the calendar where that leaves more than the distance", () => {
    const { flowering: from, "fruit-set": set } = starts(
      tomato({ rows: [{ ...row, mid: 60_000 }] }),
    );
    expect([from, set]).toEqual(["2027-06-08", "2027-06-26"]);
  });

  test("never makes that one shorter than by the calendar", () => {
    const { crops } = loadTables().catalogue;
    let met = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...crops.filter(({ warmth, perennial }) => warmth && !perennial)),
        fc.integer({ min: 6, max: 26 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 100, max: 260 }),
        fc.constantFrom("transplanted" as const, "sown" as const),
        (crop, temperatureC, startDays, seasonDays, key) => {
          const from = day("2027-03-01");
          const place = aWarmPlace({}, temperatureC, { from, to: addDays(from, seasonDays) });
          const times = { [key]: addDays(from, startDays), warmth: "on" as const };
          const { spans: own } = plantingLife(aPlant(crop, times), crop, place);
          for (const [i, { from: begins, stage, warmth }] of own.entries()) {
            const next = own[i + 1];
            if (warmth?.isFollowed !== true || next?.warmth?.isFollowed !== false) continue;
            met += 1;
            const usual = daysBetween(warmth.calendar, next.warmth.calendar);
            expect(daysBetween(begins, next.from), stage).toBeGreaterThanOrEqual(usual);
          }
        },
      ),
      { numRuns: 500 },
    );
    expect(met).toBeGreaterThan(50);
  });
});

describe("who follows warmth", () => {
  const on = (crop: Crop, times: Partial<Planting>, place = aWarmPlace()) =>
    flowering(crop, times, place)?.warmth?.isFollowed;

  test("crops with sums that sources carry, unless the grower says otherwise", () => {
    expect(on(tomato(), {})).toBe(true);
    expect(on(tomato({ auto: false }), {})).toBe(false);
    expect(on(tomato({ auto: false }), { warmth: "on" })).toBe(true);
    expect(on(tomato(), { warmth: "off" })).toBe(false);
    expect(on(tomato(), {}, aWarmPlace({ wish: "off" }))).toBe(false);
  });

  test("the others are told what warmth would say", () => {
    const span = flowering(tomato({ auto: false }));
    expect(span?.from).toBe("2027-06-17");
    expect(span?.warmth).toMatchObject({ day: "2027-06-08", isFollowed: false });
  });

  test("not what overwinters", () => {
    const season = { from: day("2027-09-01"), to: day("2028-07-31") };
    const place = aWarmPlace({}, 20, season);
    expect(on(tomato(), { transplanted: day("2027-11-20") }, place)).toBe(false);
    expect(on(tomato(), { transplanted: day("2028-03-20") }, place)).toBe(true);
    // Young plants stood indoors over midwinter.
    expect(on(tomato(), { transplanted: day("2028-02-01") }, place)).toBe(true);
    const tropical = { ...climateForTests, latitudeDeg: -1.3 };
    const nairobi = aWarmPlace({ climate: tropical }, 20, season);
    expect(on(tomato(), { transplanted: day("2027-11-20") }, nairobi)).toBe(true);
  });

  test("nobody where no climate is known", () => {
    expect(
      spans(tomato(), {}, { hemisphere: "north", season: aWarmPlace().season }).some(
        (s) => s.warmth,
      ),
    ).toBe(false);
  });
});

describe("what was seen", () => {
  const seen = [{ stage: "flowering", on: day("2027-06-20"), path: [] }];

  test("wins, and what follows counts on from it", () => {
    const { flowering: from, harvest } = starts(tomato(), { seen });
    expect([from, harvest]).toEqual(["2027-06-20", "2027-08-03"]);
  });

  test("of a stage that warmth says nothing of moves the calendar alone", () => {
    const early = [{ stage: "vegetative", on: day("2027-05-21"), path: [] }];
    const span = flowering(tomato(), { seen: early });
    expect(span?.from).toBe("2027-06-08");
    expect(span?.warmth?.calendar).toBe("2027-06-30");
  });
});

describe("raised indoors", () => {
  const fromSowing = tomato({
    sums: [{ ...flower, from: "sowing", degreeDays: 800, least: 800, most: 800 }],
  });

  test("a crop counted from sowing brings along what it had in its tray", () => {
    // 42 days of 10 degree days before, 380 to go.
    expect(flowering(fromSowing)?.from).toBe("2027-06-26");
    expect(flowering(fromSowing, {}, aWarmPlace({ raisedAtC: 18 }))?.from).toBe("2027-07-05");
  });

  test("no more than its days in the tray, nor than its usual age", () => {
    expect(flowering(fromSowing, { sown: day("2027-04-30") })?.from).toBe("2027-07-18");
    expect(flowering(fromSowing, { sown: day("2027-02-01") })?.from).toBe("2027-06-26");
  });

  test("no further than usual at that age, however warm it stood", () => {
    // By the lengths 42 of the 70 days to flowering: 480 of the 800.
    expect(flowering(fromSowing, {}, aWarmPlace({ raisedAtC: 28 }))?.from).toBe("2027-06-20");
  });
});

describe("a crop with the degree days of its growth periods alone", () => {
  test("counts them from where its lengths count", () => {
    const cabbage = cropWith("cabbage", {
      rows: [{ ...row, row: "mediterranean-apr", initial: 100 }],
    });
    const from = starts(cabbage, {}, aWarmPlace());
    expect([from["vegetative"], from["heading"]]).toEqual(["2027-05-29", "2027-07-08"]);
  });
});

describe("a stage that needs a long day as well", () => {
  test("waits for it, and is not reached where the day never gets so long", () => {
    const bulbs = (dayLengthH: number): Crop =>
      cropWith("onion", {
        sums: [{ ...flower, stage: "root-swelling", from: "sowing", degreeDays: 10, dayLengthH }],
      });
    const times = {
      transplanted: undefined,
      sown: day("2027-03-20"),
    } as unknown as Partial<Planting>;
    const swelling = (h: number) => spans(bulbs(h), times).find((s) => s.stage === "root-swelling");
    // At 50 degrees north the day has 13.75 hours about 19 April.
    expect(swelling(13.75)?.warmth?.day).toBe("2027-04-19");
    expect(swelling(20)?.warmth?.day).toBeUndefined();
  });
});

describe("a crop that never flowers before another", () => {
  const cropOf = (): Crop => tomato();
  const pepper = cropWith("sweet-pepper", { auto: false, flowersAfter: "tomato" });

  test("waits for the other, and what comes after it moves as far", () => {
    const cool = aWarmPlace({ cropOf }, 15);
    const { flowering: from, harvest } = starts(pepper, {}, cool);
    // By the calendar it flowers on 5 June and is picked from 15 July on.
    expect([from, harvest]).toEqual(["2027-06-28", "2027-08-07"]);
    expect(flowering(pepper, {}, cool)?.origin).toBe(
      "no sooner than a tomato planted out on the same day",
    );
  });

  test("keeps its own date where that is later, or where it was seen", () => {
    expect(flowering(pepper, {}, aWarmPlace({ cropOf }, 35))?.from).toBe("2027-06-05");
    const seen = [{ stage: "flowering", on: day("2027-06-01"), path: [] }];
    expect(flowering(pepper, { seen }, aWarmPlace({ cropOf }, 15))?.from).toBe("2027-06-01");
  });
});
