/** Watering days in the calendar, over weeks with a forecast file, through the real commands. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { addDays, day, eachDay } from "../../src/dates.js";
import { eventsIn } from "../support/ics.js";
import { pouredL } from "../../src/words/index.js";
import { cli, scratchFile } from "../support/run-cli.js";
import { type KeptGarden, keptGarden } from "./a-kept-garden.js";

/** A bed outdoors and one under glass, watered on Tuesdays and Fridays; the grower is away in July. */
const weir = (watering: string, beds = "watering: auto"): string => `version: 1
id: weir-cottage
garden: Weir Cottage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
location: { latitude: 53.3 }
climate:
  source: a test
  temperature: C
  rain_unit: mm
  max: [8, 8, 10, 12, 15, 18, 20, 20, 17, 14, 10, 8]
  min: [2, 2, 3, 4, 7, 10, 12, 12, 10, 7, 4, 3]
  rain: [60, 50, 50, 40, 40, 40, 40, 50, 60, 70, 70, 70]
weather: { forecast: forecast.csv }
feeding: { days: [wed, sat], time: "18:30", away: [{ from: 2027-07-10, to: 2027-07-24 }] }
calendar: { file: gate.ics, reminders: [{ before: 2 hours }] }
${watering}
beds:
  - id: south
    name: South wall
    area: 4 m2
    ${beds}
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-10, water: 2 L per plant }
  - id: glass
    name: Glasshouse
    area: 3 m2
    cover: glass
    ${beds}
    plantings:
      - { id: cukes, crop: cucumber, plants: 3, transplanted: 2027-05-10, water: 2 L per plant }
`;
const inCalendar = 'watering: { calendar: true, days: [tue, fri], time: "07:00" }';

/** From one day on; rain on the days that are named. */
function forecast(
  garden: KeptGarden,
  from: string,
  rainMm: Readonly<Record<string, number>>,
): void {
  const rows = [...eachDay({ from: day(from), to: addDays(day(from), 9) })].map(
    (on) => `${on},9,18,${rainMm[on] ?? 0}`,
  );
  const file = join(dirname(garden.file), "forecast.csv");
  writeFileSync(file, ["date,tmin_c,tmax_c,rain_mm", ...rows, ""].join("\n"));
}

function aWeir(watering = inCalendar, beds?: string): KeptGarden {
  const garden = keptGarden(weir(watering, beds));
  forecast(garden, "2027-05-20", {});
  return garden;
}

interface Entry {
  readonly event: ICAL.Event;
  readonly text: string;
}

/** Of watering days that are not called off, by their days. */
function wateringIn(calendar: string): Map<string, Entry> {
  const texts = calendar.split("BEGIN:VEVENT\r\n").slice(1);
  return new Map(
    eventsIn(calendar).flatMap((event, i): [string, Entry][] => {
      const text = (texts[i] ?? "").replace("END:VCALENDAR\r\n", "");
      const isOurs = text.includes("X-FEEDROUND-KEY:watering//");
      if (!isOurs || text.includes("STATUS:CANCELLED")) return [];
      return [[event.startDate.toString().slice(0, 10), { event, text }]];
    }),
  );
}

function withoutStamps(calendar: string): string {
  return calendar.replace(
    /^(?:DTSTAMP|CREATED|LAST-MODIFIED|SEQUENCE|X-FEEDROUND-[A-Z]+)[:;].*\r\n(?: .*\r\n)*/gm,
    "",
  );
}

describe("over weeks with a forecast", () => {
  const garden = aWeir();

  test("a day of rain is left to the rain, but for the bed under glass", async () => {
    forecast(garden, "2027-06-07", { "2027-06-08": 8 });
    const entries = wateringIn(await garden.publish("2027-06-07"));
    const [rainy, dry] = ["2027-06-08", "2027-06-11"].map((on) => entries.get(on)?.event);
    expect(rainy?.summary).toMatch(/^Water \d+ L: Glasshouse$/);
    expect(rainy?.description).not.toContain("South wall");
    expect(dry?.summary).toMatch(/^Water \d+ L: .*South wall/);
    // The rain has not fallen: it took nothing off, and its day's half is poured on no other.
    const { watering } = await garden.plan("2027-06-07");
    const week = watering?.[0]?.weeks.find(({ from }) => from === "2027-06-07");
    const half = pouredL((week?.leftL ?? 0) / 2, "metric");
    expect(dry?.description).toContain(`South wall: ${half} L`);
  });

  test("rain that is foretold for another day takes nothing off before it falls", async () => {
    const outdoors = aWeir();
    const tuesday = async (rainMm: Readonly<Record<string, number>>) => {
      forecast(outdoors, "2027-06-07", rainMm);
      return wateringIn(await outdoors.publish("2027-06-07")).get("2027-06-08")?.event.description;
    };
    const usual = await tuesday({});
    expect(usual).toContain("South wall");
    expect(await tuesday({ "2027-06-13": 60 })).toBe(usual);
  });

  test("nobody waters while away, and on no other weekday", async () => {
    const days = [...wateringIn(await garden.publish("2027-06-07")).keys()];
    expect(days.length).toBeGreaterThan(20);
    expect(days.filter((on) => on >= "2027-07-10" && on <= "2027-07-24")).toEqual([]);
    expect(new Set(days.map((on) => new Date(on).getUTCDay()))).toEqual(new Set([2, 5]));
  });

  test("rain that is foretold calls a day off, and it comes back when the rain stays away", async () => {
    const outdoors = aWeir();
    outdoors.edit("    cover: glass\n", "");
    forecast(outdoors, "2027-06-07", {});
    const before = wateringIn(await outdoors.publish("2027-06-07")).get("2027-06-11");
    forecast(outdoors, "2027-06-08", { "2027-06-11": 12 });
    const rainy = await outdoors.publish("2027-06-08");
    expect(wateringIn(rainy).has("2027-06-11")).toBe(false);
    expect(rainy).toMatch(/SUMMARY:Cancelled: Water [^]*?X-FEEDROUND-KEY:watering\/\/2027-06-11/);
    forecast(outdoors, "2027-06-09", {});
    const after = wateringIn(await outdoors.publish("2027-06-09")).get("2027-06-11");
    expect(after?.event.uid).toBe(before?.event.uid);
    expect(after?.event.sequence).toBeGreaterThan(before?.event.sequence ?? 0);
  });

  test("that many days tell other amounts is one line of what would change", async () => {
    const changed = aWeir();
    await changed.publish("2027-06-07");
    changed.edit("area: 4 m2", "area: 6 m2");
    changed.edit("days: [tue, fri]", "days: [tue, sat]");
    const argv = ["changes", changed.calendar, changed.file];
    const now = { today: "2027-06-08", columns: 200 };
    const { changes } = JSON.parse((await cli([...argv, "--json"], now)).stdout) as {
      changes: { summary: string; amountsAlone?: true }[];
    };
    const alone = changes.filter(({ amountsAlone }) => amountsAlone);
    const { stdout } = await cli(argv, now);
    expect(alone.length).toBeGreaterThan(10);
    expect(stdout.match(/^.*other amounts of water$/gm)).toHaveLength(1);
    expect(stdout).toMatch(
      new RegExp(`^changed +Tue 8 Jun +to Tue .* +${alone.length} watering days tell`, "m"),
    );
    // Days that move are still told one by one.
    const lines = stdout.split("\n").filter((line) => / Water \d+ L: /.test(line));
    const watering = changes.filter(({ summary }) => summary.startsWith("Water "));
    expect(lines).toHaveLength(watering.length - alone.length);
    expect(lines.length).toBeGreaterThan(10);
    expect(lines.filter((line) => line.startsWith("changed"))).toEqual([]);
  });

  test("entries of the past stay byte for byte while the forecast goes on", async () => {
    const morning = aWeir();
    let before = new Map<string, Entry>();
    for (let today = day("2027-06-01"); today < "2027-06-25"; today = addDays(today, 2)) {
      forecast(morning, today, { [addDays(today, 3)]: 14 });
      const entries = wateringIn(await morning.publish(today));
      for (const [on, { text }] of before)
        if (on < today) expect({ on, text: entries.get(on)?.text }).toEqual({ on, text });
      before = entries;
    }
    expect([...before.keys()].filter((on) => on < "2027-06-23").length).toBeGreaterThan(4);
  });
});

describe("an entry", () => {
  test("has the time and the reminders of the watering, in summer and in winter time", async () => {
    const garden = aWeir();
    garden.edit("timezone: Europe/Dublin", "timezone: Australia/Hobart");
    garden.edit(/transplanted: 2027-05-10/g, "transplanted: 2027-03-10");
    const entries = wateringIn(await garden.publish("2027-03-01"));
    const starts = new Set<string>();
    for (const { event, text } of entries.values()) {
      expect(event.startDate.toString()).toMatch(/T07:00:00$/);
      expect(event.startDate.zone.tzid).toBe("Australia/Hobart");
      expect(text).toContain("TRIGGER;RELATED=START:-PT30M");
      expect(text).not.toContain("-PT2H");
      starts.add(event.startDate.toJSDate().toISOString().slice(11, 16));
    }
    // 11 hours ahead of UTC until 4 April, then 10: the time zone database of IANA.
    expect(starts).toEqual(new Set(["20:00", "21:00"]));
  });

  test("is all day without a time, with a reminder on the day", async () => {
    const garden = aWeir("watering: { calendar: true, days: [tue, fri] }");
    const entries = wateringIn(await garden.publish("2027-03-01"));
    expect(entries.size).toBeGreaterThan(20);
    for (const { event, text } of entries.values()) {
      expect(event.startDate.isDate).toBe(true);
      expect(text).toContain("TRIGGER;RELATED=START:PT8H");
    }
  });

  test("has no reminder where none is wished for, and a round keeps its own", async () => {
    const garden = aWeir("watering: { calendar: true, days: [tue, fri], reminders: [] }");
    const calendar = await garden.publish("2027-03-01");
    for (const { text } of wateringIn(calendar).values()) expect(text).not.toContain("VALARM");
    expect(calendar).toContain("TRIGGER;RELATED=START:-PT2H");
  });
});

describe("without an edit and without new weather", () => {
  test("the calendar of a later day is the same to the byte", async () => {
    const garden = aWeir();
    const first = await garden.publish("2027-03-01");
    for (const today of ["2027-03-01", "2027-05-11", "2027-06-08", "2027-06-09", "2027-08-14"])
      expect(await garden.publish(today)).toBe(first);
  });
});

describe("a calendar that asks for no watering days", () => {
  test("has none, and is the same as without `watering:` on the garden", async () => {
    const [without, off] = [aWeir(""), aWeir("watering: { days: [tue], time: '07:00' }")];
    const text = await without.publish("2027-03-01");
    expect(await off.publish("2027-03-01")).toBe(text);
    expect(wateringIn(text).size).toBe(0);
  });

  test("differs from one of beds without water by a line of its rounds alone", async () => {
    const [dry, wet] = [aWeir("", ""), aWeir("")];
    const [plain, told] = await Promise.all([dry, wet].map((one) => one.publish("2027-03-01")));
    const unfolded = (text = ""): string => text.replace(/\r\n /g, "");
    const line = /\\n[^\\]*\\, water: .*? in these cans(?=\\n|\r)/g;
    expect(unfolded(told).match(line)?.length).toBeGreaterThan(3);
    expect(withoutStamps(unfolded(told).replace(line, ""))).toBe(withoutStamps(unfolded(plain)));
  });

  test("calls off what is to come when the wish is taken back, and leaves what is past", async () => {
    const garden = aWeir();
    const before = wateringIn(await garden.publish("2027-06-01"));
    garden.edit("calendar: true, ", "");
    const after = wateringIn(await garden.publish("2027-07-01"));
    const past = [...before.keys()].filter((on) => on < "2027-07-01");
    expect([...after.keys()]).toEqual(past);
    for (const on of past) expect(after.get(on)?.text).toBe(before.get(on)?.text);
  });
});

test("what a round says of water changes little with a row of weather each morning", async () => {
  const garden = aWeir("");
  garden.edit("forecast: forecast.csv", "seen: seen.csv");
  const waterLines = (calendar: string): Map<string, string> =>
    new Map(
      eventsIn(calendar).flatMap(({ startDate, description }) => {
        const lines = description.split("\n").filter((line) => line.includes(", water:"));
        return lines.length > 0 ? [[startDate.toString(), lines.join("\n")]] : [];
      }),
    );
  const rows = ["date,tmin_c,tmax_c,rain_mm"];
  let before = new Map<string, string>();
  let changed = 0;
  for (const on of eachDay({ from: day("2027-05-01"), to: day("2027-07-31") })) {
    const i = rows.length;
    rows.push(`${on},${9 + (i % 5)},${19 + (i % 7)},${i % 4 === 0 ? 6 : 0}`);
    writeFileSync(join(dirname(garden.file), "seen.csv"), `${rows.join("\n")}\n`);
    const now = waterLines(await garden.publish(addDays(on, 1)));
    for (const [at, lines] of before) if (now.has(at) && now.get(at) !== lines) changed++;
    before = now;
  }
  expect(before.size).toBeGreaterThan(3);
  // Stages that follow warmth move a usual year's water a little; the rain of single days never does.
  expect(changed).toBeLessThanOrEqual(4);
});

test("titles of Hebrew and very long names are within 40 letters", async () => {
  const garden = aWeir();
  garden.edit("name: South wall", `name: "${"גינה ".repeat(20)}"`);
  garden.edit("name: Glasshouse", `name: ${"Glasshouse by the gate ".repeat(5)}`);
  const titles = [...wateringIn(await garden.publish("2027-03-01")).values()];
  const segmenter = new Intl.Segmenter("en", { granularity: "grapheme" });
  for (const { event } of titles)
    expect([...segmenter.segment(event.summary)].length).toBeLessThanOrEqual(40);
  expect(titles.map(({ event }) => event.summary).join("\n")).not.toContain("…");
});

test("of an amount that the grower gave, rain takes its day's part and adds it to no other", async () => {
  const garden = aWeir(inCalendar, "watering: 60 L");
  forecast(garden, "2027-06-14", { "2027-06-15": 12 });
  const entries = wateringIn(await garden.publish("2027-06-14"));
  const [rainy, dry] = ["2027-06-15", "2027-06-18"].map((on) => entries.get(on)?.event);
  expect(rainy?.description ?? "").not.toContain("South wall");
  const { watering } = await garden.plan("2027-06-14");
  const week = watering?.[0]?.weeks.find(({ from }) => from === "2027-06-14");
  expect(dry?.description).toContain(`South wall: ${pouredL((week?.leftL ?? 0) / 2, "metric")} L`);
});

test("an amount that the grower gave is poured whatever the climate", async () => {
  const text = weir(inCalendar, "watering: 40 L").replace(/location[^]*?weather: .*\n/, "");
  const { code, stdout, stderr } = await cli(["calendar", scratchFile("garden.yaml", text)]);
  expect({ code, stderr }).toMatchObject({ code: 0 });
  expect(stdout).toContain("SUMMARY:Water 40 L: South wall\\, Glasshouse");
});
