/** What a valid garden file means: quantities in one unit, defaults filled in and told. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { litersPerImperialGallon } from "../../src/garden/amounts.js";
import { litersPerUsGallon } from "../../src/garden/us-measures.js";
import { problemLine } from "../../src/problem.js";
import {
  aGarden,
  aPlanting,
  type GardenDiffers,
  gardenText,
  planted,
  problemsOf,
} from "../support/a-garden.js";

describe("the garden", () => {
  test("has its id from its name, in letters of any script", () => {
    expect(aGarden().id).toBe("weir-cottage");
    expect(aGarden({ garden: "Größer  Garten No. 2" }).id).toBe("größer-garten-no-2");
    expect(aGarden({ garden: "菜园" }).id).toBe("菜园");
    expect(aGarden({ garden: "***" }).id).toBe("garden");
  });

  test("keeps the id that the grower gives it", () => {
    expect(aGarden({ id: "weir" })).toMatchObject({ id: "weir", idIsFromName: false });
    expect(aGarden().idIsFromName).toBe(true);
  });

  test("keeps its place on earth", () => {
    const location = { latitude: -37.8, longitude: 145, elevation: "100 ft" };
    expect(aGarden({ location }).location).toEqual({
      latitudeDeg: -37.8,
      longitudeDeg: 145,
      elevationM: 30.48,
    });
    expect(aGarden().location).toBeUndefined();
  });

  test.each([
    ["-4 m", -4],
    ["−4 m", -4],
    ["-10 ft", -3.048],
    ["-430 m", -430],
  ])("may lie below the sea: %s", (elevation, elevationM) => {
    const location = { latitude: 52.6, longitude: 4.8, elevation };
    expect(aGarden({ location }).location?.elevationM).toBeCloseTo(elevationM, 9);
  });

  test("does not lie deeper than any land", () => {
    const location = { latitude: 52.6, longitude: 4.8, elevation: "-440 m" };
    expect(problemsOf(gardenText({ location })).map(problemLine)).toEqual([
      expect.stringMatching(
        /`-440 m` is too small to be meant: .*; -430 to 6,000 m is understood$/,
      ),
    ]);
  });

  test("spells its zone rightly", () => {
    expect(aGarden({ timezone: "europe/dublin" }).timezone).toBe("Europe/Dublin");
  });

  test("has a season of one day, or one that spans New Year", () => {
    const oneDay = { from: "2027-05-20", to: "2027-05-20" };
    expect(aGarden({ season: oneDay }).season).toEqual(oneDay);
    const southern = { from: "2027-09-01", to: "2028-05-31" };
    const beds = [{ id: "south", plantings: [] }];
    expect(aGarden({ season: southern, beds }).season).toEqual(southern);
  });

  test("names the grower's rule file", () => {
    expect(aGarden({ rules: "my-rules.yaml" }).rulesFile).toBe("my-rules.yaml");
    expect(aGarden()).not.toHaveProperty("rulesFile");
  });
});

describe("can and sprayer", () => {
  test.each<[GardenDiffers, number, string]>([
    [{}, 10, "a watering can of 10 L, as none is given (`can:`)"],
    [
      { amounts: "us" },
      2 * litersPerUsGallon,
      "a watering can of 2 gal, as none is given (`can:`)",
    ],
    [
      { amounts: "imperial" },
      2 * litersPerImperialGallon,
      "a watering can of 2 gal, as none is given (`can:`)",
    ],
  ])("the usual can of %j is told", (differs, canL, assumption) => {
    const garden = aGarden({ can: undefined, ...differs });
    expect(garden.canL).toBeCloseTo(canL, 9);
    expect(garden.assumptions).toContain(assumption);
  });

  test("a gallon can is one of the garden's own gallons", () => {
    expect(aGarden({ can: "2 gal", amounts: "us" }).canL).toBe(2 * litersPerUsGallon);
    expect(aGarden({ can: "2 gal", amounts: "imperial" }).canL).toBe(2 * litersPerImperialGallon);
  });

  test("the sprayer is the grower's or the usual one", () => {
    expect(aGarden({ sprayer: "5 L" })).toMatchObject({ sprayerL: 5, sprayerIsUsual: false });
    expect(aGarden()).toMatchObject({ sprayerL: 2, sprayerIsUsual: true });
  });
});

describe("source water", () => {
  test("is unknown unless given", () => {
    expect(aGarden()).not.toHaveProperty("sourceWater");
  });

  test("is understood in any hardness scale", () => {
    const source_water = { hardness: "10 dH", alkalinity: "100 ppm", calcium: "40 mg/L" };
    const water = aGarden({ source_water }).sourceWater;
    expect(water?.hardnessMgPerL).toBeCloseTo(178.48, 2);
    expect(water).toMatchObject({ alkalinityMgPerL: 100, calciumMgPerL: 40 });
  });
});

describe("feeding days", () => {
  test("are all days unless given, and that is told", () => {
    const garden = aGarden({ feeding: undefined });
    expect(garden.feeding).toEqual({
      days: ["mon", "tue", "wed", "thu", "fri", "sat", "sun"],
      durationMin: 30,
      away: [],
    });
    expect(garden.assumptions).toContain("feeding on any day of the week, as no days are given");
  });

  test("stand in the order of the week", () => {
    expect(aGarden({ feeding: { days: ["sat", "wed"] } }).feeding.days).toEqual(["wed", "sat"]);
  });

  test("have a time of two digits, a length in minutes and the spans of absence", () => {
    const away = [{ from: "2027-07-10", to: "2027-07-24" }];
    expect(aGarden({ feeding: { time: "8:05", duration: "1.5 h", away } }).feeding).toMatchObject({
      timeOfDay: "08:05",
      durationMin: 90,
      away,
    });
  });
});

describe("calendar", () => {
  const wishes = (calendar: object, time?: string): unknown =>
    aGarden({ calendar, ...(time === undefined ? {} : { feeding: { time } }) }).calendar;

  test("has its defaults: one event a round, a reminder at eight on the day", () => {
    expect(aGarden().calendar).toEqual({
      group: "round",
      remindersMinBefore: [-480],
      color: "yellowgreen",
      refreshHours: 6,
    });
  });

  test("reminds half an hour before a round that has a time", () => {
    expect(wishes({}, "18:30")).toMatchObject({ remindersMinBefore: [30] });
  });

  test("has no reminder when the grower wants none", () => {
    expect(wishes({ reminders: [] })).toMatchObject({ remindersMinBefore: [] });
  });

  test.each<[object, string | undefined, number]>([
    [{ before: "90 min" }, "18:30", 90],
    [{ before: "1 day" }, undefined, 1440],
    [{ at: "18:00", days_before: 1 }, undefined, 360],
    [{ at: "07:00" }, undefined, -420],
    [{ at: "18:00" }, "18:30", 30],
    [{ at: "20:00", days_before: 2 }, "06:00", 2040],
  ])("reminder %j of a round at %s comes %d minutes before its start", (reminder, time, min) => {
    expect(wishes({ reminders: [reminder] }, time)).toMatchObject({ remindersMinBefore: [min] });
  });

  test("keeps group, colour and refresh, in whole hours", () => {
    expect(wishes({ group: "bed", color: "seagreen", refresh: "90 min" })).toMatchObject({
      group: "bed",
      color: "seagreen",
      refreshHours: 2,
    });
  });
});

describe("stock", () => {
  test("has its defaults", () => {
    expect(aGarden().stock).toEqual({
      acid: "citric",
      citricForm: "anhydrous",
      vinegarPercent: 5,
      keep: "shelf",
      pour: "shaken",
      bottleMl: 500,
      largestBatchMl: 2000,
      eggs: { name: "EU M", dryShellG: 5.5 },
      shellPurity: 0.94,
      batches: [],
      begun: [],
      dropped: [],
    });
  });

  test("keeps all that the grower says of it", () => {
    const stock = {
      acid: "vinegar",
      acid_form: "monohydrate",
      vinegar: "6 %",
      keep: "fridge",
      pour: "clear",
      bottles: "1 L",
      largest_batch: "5 L",
      eggs: "eu-l",
      shells_per_week: 10,
      shell_purity: "90 %",
    };
    expect(aGarden({ stock }).stock).toMatchObject({
      acid: "vinegar",
      citricForm: "monohydrate",
      vinegarPercent: 6,
      keep: "fridge",
      pour: "clear",
      bottleMl: 1000,
      largestBatchMl: 5000,
      eggs: { name: "EU L", dryShellG: 6.5 },
      shellsPerWeek: 10,
      shellPurity: 0.9,
    });
  });

  test("batches are bottled, on their way or given up as their days have it", () => {
    const volume = "1 L";
    const batches = [
      { id: "B1", shells_out: "2027-04-17", made: "2027-04-20", planned: 1, volume },
      { id: "B2", made: "2027-04-20", thrown_away: "2027-04-20", volume },
      { id: "B3", shells_out: "2027-05-01", acid_in: "2027-05-02", volume },
      { id: "B4", acid_in: "2027-05-02", thrown_away: "2027-05-04", volume },
      { id: "B5", planned: "batch-2027-06-12", missed: "2027-06-01", volume },
    ];
    const { stock } = aGarden({ stock: { keep: "fridge", batches } });
    expect(stock.batches).toMatchObject([
      { id: "B1", planned: "1", shellsOut: "2027-04-17", made: "2027-04-20", leftMl: 1000 },
      { id: "B2", made: "2027-04-20", thrownAway: "2027-04-20" },
    ]);
    expect(stock.begun).toEqual([
      {
        id: "B3",
        shellsOut: "2027-05-01",
        acidIn: "2027-05-02",
        volumeMl: 1000,
        acid: "citric",
        keep: "fridge",
        path: ["stock", "batches", 2],
      },
    ]);
    expect(stock.dropped).toEqual([
      { id: "B4", on: "2027-05-04", how: "thrown-away", path: ["stock", "batches", 3] },
      {
        id: "B5",
        planned: "batch-2027-06-12",
        on: "2027-06-01",
        how: "missed",
        path: ["stock", "batches", 4],
      },
    ]);
  });

  test("batches are kept and made as the stock is, unless they say otherwise", () => {
    const batches = [
      { id: "B1", made: "2027-04-20", volume: "1 L" },
      {
        id: "B2",
        made: "2027-04-25",
        volume: "1 pt",
        left: "0 mL",
        acid: "citric",
        keep: "shelf",
        use_by: "2027-06-01",
        strength: "18 g/L",
        ph: 4.5,
      },
    ];
    const stock = aGarden({ stock: { acid: "vinegar", keep: "fridge", batches } }).stock;
    expect(stock.batches).toMatchObject([
      {
        id: "B1",
        made: "2027-04-20",
        volumeMl: 1000,
        leftMl: 1000,
        acid: "vinegar",
        keep: "fridge",
      },
      { id: "B2", leftMl: 0, acid: "citric", keep: "shelf", useBy: "2027-06-01", ph: 4.5 },
    ]);
    expect(stock.batches[1]?.volumeMl).toBeCloseTo(473.176473, 9);
    expect(stock.batches[1]?.strengthGPerL).toBeCloseTo(18, 9);
  });
});

describe("beds and plantings", () => {
  test("bear their ids where they have no name of their own", () => {
    const garden = aGarden();
    expect(garden.beds[0]).toMatchObject({ id: "south", name: "south" });
    const named = aGarden({ beds: [{ id: "s", name: "South bed", plantings: [] }] });
    expect(named.beds[0]).toMatchObject({ name: "South bed", plantings: [] });
  });

  test.each([
    ["tomato", "tomato"],
    ["Tomatoes", "tomato"],
    ["courgettes", "zucchini"],
    ["aubergine", "eggplant"],
    ["Brussels-Sprouts", "brussels-sprouts"],
    ["STRAWBERRIES", "strawberry"],
    ["jalapeño", "chili-pepper"],
  ])("%s is the crop %s", (word, crop) => {
    expect(aPlanting({ crop: word, bloom: undefined }).crop).toBe(crop);
  });

  test("keep variety, dates, stages, harvest days, rate, interval and level", () => {
    expect(
      aPlanting({
        name: "by the wall",
        variety: "Early Girl",
        sown: "2027-04-01",
        removed: "2027-09-30",
        seen: [{ stage: "flowering", on: "2027-06-12" }],
        days_to_harvest: 60,
        rate: "10 mL in 4 L",
        interval: "1.5 weeks",
        level: 1.5,
      }),
    ).toMatchObject({
      name: "by the wall",
      variety: "Early Girl",
      sown: "2027-04-01",
      transplanted: "2027-05-20",
      removed: "2027-09-30",
      seen: [{ stage: "flowering", on: "2027-06-12" }],
      daysToHarvest: 60,
      rateMlPerL: 2.5,
      intervalDays: 11,
      level: 1.5,
      feed: "by-rule",
    });
  });

  test.each([
    [true, "yes"],
    [false, "no"],
    ["drench", "drench"],
    ["foliar", "foliar"],
    ["both", "both"],
  ])("feed: %s", (feed, understood) => {
    expect(aPlanting({ feed }).feed).toBe(understood);
  });

  test("an established annual begins with what was seen", () => {
    const seen = [{ stage: "fruit-set", on: "2027-06-20" }];
    const planting = aPlanting({ transplanted: undefined, established: true, seen });
    expect(planting).toMatchObject({ established: true, seen });
    expect(planting).not.toHaveProperty("transplanted");
  });

  test("a perennial may have stood for years, or begin with nothing but its crop", () => {
    expect(aPlanting({ crop: "apple", transplanted: "2012-11-20" }).transplanted).toBe(
      "2012-11-20",
    );
    expect(aPlanting({ crop: "apple", transplanted: undefined })).not.toHaveProperty(
      "transplanted",
    );
    expect(aPlanting({ crop: "apple", transplanted: undefined, bloom: "2027-05-03" }).bloom).toBe(
      "2027-05-03",
    );
  });
});

describe("other feeds, log and signs", () => {
  const differs: GardenDiffers = {
    ...planted({}, { id: "kale", crop: "kale" }),
    stock: { batches: [{ id: "B1", made: "2027-04-20", volume: "1 L" }] },
    feeds: [
      {
        name: "nettle",
        rate: "1 L per 10 L",
        every: "2 weeks",
        for: ["toms", "Tomatoes", "south"],
      },
      {
        name: "salts",
        rate: "2 mL per L",
        days: ["sun"],
        from: "2027-06-01",
        to: "2027-07-01",
        holds: ["sulfate", "phosphate"],
      },
    ],
  };

  test("an entry may tell what was missed, and the round it stands for", () => {
    const log = [
      { on: "2027-06-13", round: "2027-06-12", planting: "toms", batch: "gone" },
      { on: "2027-06-26", missed: true },
    ];
    const garden = aGarden({ ...differs, log, unlogged: "not-given" });
    expect(garden.unlogged).toBe("not-given");
    expect(aGarden().unlogged).toBe("given");
    expect(garden.log).toMatchObject([
      { on: "2027-06-13", round: "2027-06-12", batch: "gone" },
      { on: "2027-06-26", missed: true },
    ]);
  });

  test("the calendar it publishes lies beside it or below", () => {
    expect(aGarden({ calendar: { file: "public/weir.ics" } }).calendarFile).toBe("public/weir.ics");
    expect(aGarden()).not.toHaveProperty("calendarFile");
  });

  test("a feed comes every so many days or on days of the week, for what it names", () => {
    expect(aGarden(differs).feeds).toMatchObject([
      {
        name: "nettle",
        everyDays: 14,
        rateMlPerL: 100,
        for: ["toms", "tomato", "south"],
        holds: [],
        gapDays: 0,
      },
      {
        name: "salts",
        days: ["sun"],
        from: "2027-06-01",
        to: "2027-07-01",
        rateMlPerL: 2,
        for: [],
        holds: ["sulfate", "phosphate"],
        gapDays: 3,
      },
    ]);
    expect(aGarden(differs).feeds[0]).not.toHaveProperty("days");
    expect(aGarden(differs).feeds[1]).not.toHaveProperty("everyDays");
  });

  test("a feed's own gap and shelf life go before the usual ones", () => {
    const feeds = [
      {
        name: "salts",
        rate: "2 mL per L",
        days: ["sun"],
        holds: ["sulfate"],
        gap: "5 days",
        shelf_life: "10 days",
      },
    ];
    expect(aGarden({ feeds }).feeds[0]).toMatchObject({ gapDays: 5, shelfLifeDays: 10 });
  });

  test("log entries name a planting, a bed, a feed or the whole round", () => {
    const log = [
      { on: "2027-06-05", planting: "toms", stock: "30 mL", batch: "B1" },
      { on: "2027-06-06", bed: "south", feed: "nettle" },
      { on: "2027-06-07" },
    ];
    expect(aGarden({ ...differs, log }).log).toEqual([
      { on: "2027-06-05", planting: "toms", stockMl: 30, batch: "B1", path: ["log", 0] },
      { on: "2027-06-06", bed: "south", feed: "nettle", path: ["log", 1] },
      { on: "2027-06-07", path: ["log", 2] },
    ]);
  });

  test("signs name planting, day and sign", () => {
    const signs = [{ on: "2027-07-02", planting: "toms", sign: "blossom-end-rot" }];
    expect(aGarden({ signs }).signs).toEqual([{ ...signs[0], path: ["signs", 0] }]);
  });
});

describe("warmth and cover", () => {
  test("are told by garden and planting, in degC", () => {
    const garden = aGarden({
      warmth: "on",
      raised_at: "68 F",
      ...planted({ warmth: "off", raised_at: "18 C", row: "california-apr-may" }),
    });
    expect(garden.warmth).toBe("on");
    expect(garden.raisedAtC).toBeCloseTo(20, 9);
    expect(garden.beds[0]?.plantings[0]).toMatchObject({
      warmth: "off",
      raisedAtC: 18,
      row: "california-apr-may",
    });
    expect(aGarden()).toMatchObject({ warmth: "auto" });
    expect(aGarden()).not.toHaveProperty("raisedAtC");
  });

  test.each<[unknown, unknown]>([
    ["glass", { kind: "glass" }],
    [
      { kind: "tunnel", from: "2026-11-01", to: "2027-12-01", warmer: "9 F" },
      { kind: "tunnel", from: "2026-11-01", to: "2027-12-01", warmerC: 5 },
    ],
    [undefined, undefined],
  ])("a bed's cover %j", (cover, read) => {
    expect(aGarden({ beds: [{ id: "a", cover, plantings: [] }] }).beds[0]?.cover).toEqual(read);
  });
});

describe("the last pick and the habit", () => {
  test("are the grower's", () => {
    const planting = aPlanting({
      picked_until: "2027-10-10",
      removed: "2027-10-10",
      habit: "bush",
      through: "harvest",
    });
    expect(planting).toMatchObject({
      pickedUntil: "2027-10-10",
      habit: "bush",
      through: "harvest",
    });
    expect(aPlanting()).not.toHaveProperty("habit");
  });

  test.each([
    ["bush tomato", {}, "bush"],
    ["Bush-Tomatoes", {}, "bush"],
    ["cordon tomato", {}, "cordon"],
    ["bush tomato", { habit: "cordon" }, "cordon"],
    ["tomato", {}, undefined],
    ["bush bean", {}, undefined],
  ])("a %s with %j grows as %s", (crop, more, habit) => {
    expect(aPlanting({ crop, ...more }).habit).toBe(habit);
  });
});
