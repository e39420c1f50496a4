/** A forecast with rain or heat beside a garden file, as the commands meet it. */
// @ts-nocheck

import { rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { cli } from "../support/run-cli.js";
import { aheadDays } from "./a-live-garden.js";
import { type KeptGarden, keptGarden } from "./a-kept-garden.js";

const toms = "{ id: toms, crop: tomato, transplanted: 2027-05-10, water: 6 L }";

interface Differs {
  readonly plantings?: string;
  readonly cover?: string;
  readonly days?: string;
  readonly weather?: string;
  readonly amounts?: string;
  readonly more?: string;
}

/** Tomatoes that are due on Wednesdays: 9 and 23 June, 7 and 21 July; from a bottle that lasts. */
function aGarden(differs: Differs = {}): KeptGarden {
  const { plantings = toms, cover, days = "wed, fri, sat", weather, amounts, more = "" } = differs;
  return keptGarden(`version: 1
id: gate-plot
garden: Gate plot
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
location: { latitude: 51.5 }
climate: { source: a test, temperature: C, max: [7,8,10,13,17,20,22,22,19,15,10,8], min: [2,2,3,5,8,11,13,13,11,8,5,3] }
weather: { ${weather ?? "forecast: weather.csv"} }
warmth: off
feeding: { days: [${days}] }
calendar: { file: gate.ics }
${amounts === undefined ? "" : `amounts: ${amounts}\n`}${more}
stock:
  batches: [{ id: R, made: 2027-02-01, volume: 9 L, strength: 17.75 g/L, use_by: 2027-10-31 }]
beds:
  - id: south
    ${cover === undefined ? "" : `cover: ${cover}`}
    plantings:
      - ${plantings}
`);
}

type Row = readonly [on: string, differs: { readonly rain?: number; readonly max?: number }];

/** Dry days of 20 C from the day on, but for some. */
function foretell(garden: KeptGarden, from: string, ...rows: readonly Row[]): void {
  const differs = new Map(rows);
  const days = Array.from({ length: 14 }, (_, i) => addDays(day(from), i));
  const lines = days.map((on) => {
    const { rain = 0, max = 20 } = differs.get(on) ?? {};
    return `${on},10,${max},${rain}`;
  });
  const text = ["date,tmin_c,tmax_c,rain_mm", ...lines, ""].join("\n");
  writeFileSync(join(dirname(garden.file), "weather.csv"), text);
}

function entryOf(calendar: string, on: string): string {
  const unfolded = calendar.replaceAll(/\r?\n /g, "").replaceAll("\\", "");
  const events = unfolded.split("BEGIN:VEVENT").slice(1);
  return (
    events.find((event) => event.includes(`DTSTART;VALUE=DATE:${on.replaceAll("-", "")}`)) ?? ""
  );
}

const forecastWarnings = (plan: Plan) =>
  plan.warnings.filter(({ code }) => code.endsWith("-forecast"));

/** Published on 20 May with nothing against any day, then foretold anew. */
async function published(differs: Differs, today: string, ...rows: Row[]): Promise<KeptGarden> {
  const garden = aGarden(differs);
  foretell(garden, "2027-05-20");
  await garden.publish("2027-05-20");
  foretell(garden, today, ...rows);
  return garden;
}

const usual = ["2027-06-09", "2027-06-23", "2027-07-07", "2027-07-21"];
const heavy = { rain: 18 };
const rainOnThursday: Row = ["2027-06-10", heavy];

describe("a drench before heavy rain", () => {
  const movedWords =
    "Fri 11 Jun: this round is moved from Wed 9 Jun: 18 mm of rain was forecast for Thu 10 Jun";

  test("moves inside its window; plan, changes and calendar entry say from where and why", async () => {
    const garden = await published({}, "2027-06-07", rainOnThursday);
    const plan = await garden.plan("2027-06-07");
    expect(aheadDays(plan)).toEqual(["2027-06-11", ...usual.slice(1)]);
    expect(plan.notes.map(({ message }) => message)).toEqual([movedWords]);
    expect(forecastWarnings(plan)).toEqual([]);
    const { stdout } = await garden.run("2027-06-07", "plan");
    expect(stdout.replaceAll(/\s+/g, " ")).toContain(`What changed - ${movedWords}`);
    const world = { today: "2027-06-07" };
    const changes = await cli(["changes", garden.calendar, garden.file], world);
    expect(changes.stdout).toMatch(/moved +Fri 11 Jun +from Wed 9 Jun/);
    const calendar = await garden.publish("2027-06-07");
    expect(entryOf(calendar, "2027-06-11")).toContain(`Note: ${movedWords}`);
    expect(entryOf(calendar, "2027-06-09")).toBe("");
  });

  test("stays where it was moved, and its entry as it was told, whatever is forecast then", async () => {
    const garden = await published({}, "2027-06-07", rainOnThursday);
    const told = entryOf(await garden.publish("2027-06-07"), "2027-06-11");
    foretell(garden, "2027-06-08");
    expect(entryOf(await garden.publish("2027-06-08"), "2027-06-11")).toBe(told);
    foretell(garden, "2027-06-09", ["2027-06-12", heavy]);
    const again = await garden.plan("2027-06-09");
    expect(aheadDays(again)).toEqual(["2027-06-11", ...usual.slice(1)]);
    expect(forecastWarnings(again).map(({ message }) => message)).toEqual([
      "18 mm of rain is forecast for Sat 12 Jun, the day after the round of Fri 11 Jun",
    ]);
    await garden.publish("2027-06-11");
    expect((await garden.days("2027-06-20", "toms")).given).toEqual(["2027-06-11"]);
  });

  test("is warned of once, with what to do, where its window holds no better day", async () => {
    const garden = await published({ days: "wed" }, "2027-06-07", rainOnThursday);
    expect(aheadDays(await garden.plan("2027-06-07"))).toEqual(usual);
    const words = "18 mm of rain is forecast for Thu 10 Jun, the day after the round of Wed 9 Jun";
    const mend =
      "feed after the rain and write that down, or leave the round and expect some of it washed down";
    for (const command of ["plan", "check"]) {
      const { code, stdout } = await garden.run("2027-06-07", command);
      expect(code).toBe(0);
      expect(stdout.replaceAll(/\s+/g, " ").split(`${words}: ${mend}`)).toHaveLength(2);
    }
    const entry = entryOf(await garden.publish("2027-06-07"), "2027-06-09");
    expect(entry).toContain(`Warning: ${words}nWhat helps: ${mend}`);
    const next = entryOf(await garden.publish("2027-06-09"), "2027-06-09");
    expect(next).toContain(words);
  });

  test("is told in inches in a garden with US measures", async () => {
    const garden = await published({ amounts: "us" }, "2027-06-07", rainOnThursday);
    const [note] = (await garden.plan("2027-06-07")).notes;
    expect(note?.message).toContain("0.7 in of rain was forecast for Thu Jun 10");
  });

  test("stays where the bottle does not last to the day it would move to", async () => {
    const garden = await published({}, "2027-06-07", rainOnThursday);
    expect(aheadDays(await garden.plan("2027-06-08"))).not.toEqual(usual);
    // A batch that is begun today is bottled on 12 June.
    garden.edit("use_by: 2027-10-31", "use_by: 2027-06-09");
    const plan = await garden.plan("2027-06-08");
    expect(aheadDays(plan)).toEqual(usual);
    expect(forecastWarnings(plan)).toHaveLength(1);
  });
});

describe("a spray", () => {
  const plantings = "{ id: toms, crop: tomato, transplanted: 2027-05-10, feed: foliar }";
  const daysOf = async (garden: KeptGarden, today: string): Promise<string[]> =>
    aheadDays(await garden.plan(today));

  test("moves off a day that is hotter than its rule allows, or is warned of", async () => {
    const days = "mon, wed, fri, sat";
    const garden = await published({ plantings, days }, "2027-06-17");
    const [first = ""] = await daysOf(garden, "2027-06-17");
    foretell(garden, "2027-06-17", [first, { max: 31 }]);
    const plan = await garden.plan("2027-06-17");
    const [now = ""] = aheadDays(plan);
    expect(now).not.toBe(first);
    expect(plan.notes[0]?.message).toMatch(
      /^\w{3} \d+ Jun: this round is moved from \w{3} \d+ Jun: up to 31 degrees C was expected on \w{3} \d+ Jun, and leaves may burn above 26\.7 degrees C$/,
    );
    const narrow = await published({ plantings, days: "wed" }, "2027-06-17");
    foretell(narrow, "2027-06-17", ["2027-06-23", { max: 31 }]);
    expect(forecastWarnings(await narrow.plan("2027-06-17"))).toMatchObject([
      { code: "heat-forecast", day: "2027-06-23" },
    ]);
  });

  test("is washed off by less rain than a drench", async () => {
    const light: Row = ["2027-06-24", { rain: 6 }];
    const spray = await published({ plantings, days: "wed" }, "2027-06-20", light);
    const [warning] = forecastWarnings(await spray.plan("2027-06-20"));
    expect(warning?.mend).toContain("washed off");
    const drench = await published({ days: "wed" }, "2027-06-20", light);
    expect(forecastWarnings(await drench.plan("2027-06-20"))).toEqual([]);
  });
});

describe("nothing moves and nothing is warned of", () => {
  const untouched = async (garden: KeptGarden, today: string): Promise<void> => {
    const plan = await garden.plan(today);
    expect(aheadDays(plan)).toEqual(usual);
    expect(plan.notes).toEqual([]);
    expect(forecastWarnings(plan)).toEqual([]);
  };

  test("for rain that is forecast for another day", async () => {
    const rows: Row[] = [
      ["2027-06-08", heavy],
      ["2027-06-11", heavy],
    ];
    await untouched(await published({}, "2027-06-07", ...rows), "2027-06-07");
  });

  test("for a round of the eighth day after today, and none moves to it", async () => {
    const garden = await published({}, "2027-06-01", rainOnThursday);
    await untouched(garden, "2027-06-01");
    const eighth = await garden.plan("2027-06-03");
    expect(aheadDays(eighth)).toEqual(usual);
    expect(forecastWarnings(eighth)).toHaveLength(1);
    expect(aheadDays(await garden.plan("2027-06-04"))).toEqual(["2027-06-11", ...usual.slice(1)]);
  });

  test.each(["glass", "tunnel"])("for rain on a bed under %s", async (cover) => {
    await untouched(await published({ cover }, "2027-06-07", rainOnThursday), "2027-06-07");
  });

  test("for rain that has fallen", async () => {
    const weather = "seen: weather.csv";
    const garden = await published({ weather }, "2027-06-01", rainOnThursday, [
      "2027-06-09",
      heavy,
    ]);
    const plan = await garden.plan("2027-06-15");
    expect([...plan.rounds.map(({ day: on }) => on)]).toEqual(usual);
    expect(plan.notes).toEqual([]);
    expect(forecastWarnings(plan)).toEqual([]);
  });

  test("where the file has a header alone", async () => {
    const garden = await published({}, "2027-06-07");
    writeFileSync(join(dirname(garden.file), "weather.csv"), "date,tmin_c,tmax_c,rain_mm\n");
    await untouched(garden, "2027-06-07");
  });
});

test("today's round stays, with a warning; tomorrow's may move", async () => {
  const garden = await published({}, "2027-06-07", rainOnThursday);
  const today = await garden.plan("2027-06-09");
  expect(aheadDays(today)).toEqual(usual);
  expect(forecastWarnings(today)).toHaveLength(1);
  expect(aheadDays(await garden.plan("2027-06-08"))).toEqual(["2027-06-11", ...usual.slice(1)]);
});

test("a garden whose calendar nobody keeps has its rounds moved by the forecast of each day", async () => {
  const garden = await published({}, "2027-06-07", rainOnThursday);
  garden.edit("calendar: { file: gate.ics }\n", "");
  rmSync(garden.calendar);
  expect(aheadDays(await garden.plan("2027-06-07"))).toContain("2027-06-11");
  foretell(garden, "2027-06-08");
  expect(aheadDays(await garden.plan("2027-06-08"))).toEqual(usual);
});
