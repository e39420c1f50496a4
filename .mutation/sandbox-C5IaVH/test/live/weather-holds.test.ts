/** A weather file that gets a row each day of a season, cool at first, then warm: alarms do not wander. */
// @ts-nocheck

import { appendFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { weatherOn } from "../../src/climate/index.js";
import { addDays, day, type Day, eachDay, within } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { placeWeather } from "../support/a-place.js";
import { type Fed, fedOf } from "./a-live-garden.js";
import { keptGarden } from "./a-kept-garden.js";

const season = { from: day("2027-03-01"), to: day("2027-10-31") };
const means = {
  max: [7, 8, 10, 13, 17, 20, 22, 22, 19, 15, 10, 8],
  min: [2, 2, 3, 5, 8, 11, 13, 13, 11, 8, 5, 3],
};
const garden = keptGarden(`version: 1
id: gate-plot
garden: Gate plot
timezone: Europe/Dublin
season: { from: ${season.from}, to: ${season.to} }
location: { latitude: 51.5 }
climate: { source: a test, temperature: C, max: [${means.max.join()}], min: [${means.min.join()}] }
weather: { seen: weather.csv }
calendar: { file: gate.ics }
beds:
  - id: south
    plantings:
      - { id: toms, crop: tomato, transplanted: 2027-05-18, water: 6 L }
      - { id: early, crop: tomato, transplanted: 2027-05-02, water: 6 L }
      - { id: late, crop: tomato, transplanted: 2027-05-25, water: 6 L }
      - { id: melons, crop: cantaloupe, transplanted: 2027-05-25, water: 6 L }
      - { id: chilis, crop: chili, transplanted: 2027-05-20, water: 6 L }
      - { id: cukes, crop: cucumber, transplanted: 2027-05-20, water: 6 L }
`);

const byMeans = placeWeather({ maxC: means.max, minC: means.min });

/** How much warmer than usual it is from then on: a cool spring, a cold week in June, a warm summer. */
const spells: readonly (readonly [string, number])[] = [
  ["2027-07-03", 5],
  ["2027-06-21", -9],
  ["2027-05-24", 0],
  ["2027-03-01", -4],
];

function rowOf(on: Day): string {
  const { minC, maxC } = weatherOn(byMeans, on);
  const byC = spells.find(([from]) => from <= on)?.[1] ?? 0;
  return `${on},${(minC + byC).toFixed(1)},${(maxC + byC).toFixed(1)}\n`;
}

interface Morning {
  readonly today: Day;
  readonly plan: Plan;
  /** The calendar's entries by their days. */
  readonly entries: ReadonlyMap<string, string>;
}

function entriesOf(calendar: string): Map<string, string> {
  const all = calendar.split("BEGIN:VEVENT").slice(1);
  // A cancelled one is told for a while only.
  const events = all.filter((event) => !event.includes("STATUS:CANCELLED"));
  return new Map(
    events.map((event) => {
      const date = /DTSTART[^:]*:(\d{8})/.exec(event)?.[1] ?? "";
      const uid = /UID:(\S+)/.exec(event)?.[1] ?? "";
      return [`${date} ${uid}`, event];
    }),
  );
}

const plantings = ["toms", "early", "late", "melons", "chilis", "cukes"];
const mornings: Morning[] = [];

beforeAll(async () => {
  const file = join(dirname(garden.file), "weather.csv");
  writeFileSync(file, "date,tmin_c,tmax_c\n");
  for (const on of eachDay({ from: season.from, to: day("2027-09-20") })) {
    appendFileSync(file, rowOf(on));
    const today = addDays(on, 1);
    if (today < "2027-05-10") continue;
    const entries = entriesOf(await garden.publish(today));
    mornings.push({ today, plan: await garden.plan(today), entries });
  }
});

function isInStage({ plan }: Morning, planting: string, { feeding, day: on }: Fed): boolean {
  const { stages } = plan.plantings.find(({ id }) => id === planting) ?? { stages: [] };
  const rule = plan.rules.find(({ id }) => id === feeding.rule);
  return stages.some((span) => rule?.stages.includes(span.stage) && within(on as Day, span));
}

interface Move {
  readonly planting: string;
  readonly from: Day;
  readonly today: Day;
  readonly why: "stage" | "window" | "nothing";
}

/** Feedings of a plan that the next morning's has no more, and what moved them. */
function movesOf(before: Morning, after: Morning): Move[] {
  return plantings.flatMap((planting) => {
    const [old, now] = [before, after].map(({ plan }) => fedOf(plan, planting));
    const kept = new Set(now?.map((fed) => fed.day));
    return (old ?? []).flatMap((fed, i): Move[] => {
      const from = fed.day as Day;
      if (kept.has(from)) return [];
      const window = now?.[i]?.feeding.window;
      const isInWindow = window && window.earliest <= from && from <= window.latest;
      const left = isInWindow === true ? "nothing" : "window";
      const why = isInStage(after, planting, fed) ? left : "stage";
      return [{ planting, from, today: after.today, why }];
    });
  });
}

const pairs = (): [Morning, Morning][] =>
  mornings.slice(1).map((after, i) => [mornings[i] as Morning, after]);

describe("with a day of weather more each morning", () => {
  test("a feeding moves only when its day leaves its window or its stage", () => {
    const moves = pairs().flatMap(([before, after]) => movesOf(before, after));
    expect(moves.filter(({ why }) => why === "nothing")).toEqual([]);
    expect(moves.length).toBeGreaterThan(0);
    // Of six plantings, in 130 mornings with weather as unlike the means as that.
    expect(moves.length).toBeLessThanOrEqual(15);
  });

  test("nothing moves in the next three days", () => {
    const moves = pairs().flatMap(([before, after]) => movesOf(before, after));
    expect(moves.filter(({ from, today }) => from <= addDays(today, 3))).toEqual([]);
    // Some would have moved otherwise.
    const held = mornings.flatMap((morning) =>
      plantings.flatMap((planting) =>
        fedOf(morning.plan, planting)
          .filter(({ day: on }) => morning.today < on && on <= addDays(morning.today, 3))
          .filter((fed) => !isInStage(morning, planting, fed))
          .map((fed) => [morning.today, planting, fed.day]),
      ),
    );
    expect(held.length).toBeGreaterThan(0);
  });

  test("no entry of the past changes", () => {
    for (const [before, after] of pairs())
      for (const [key, entry] of before.entries)
        if (key.slice(0, 8) < after.today.replaceAll("-", ""))
          expect(after.entries.get(key), `${after.today}: ${key}`).toBe(entry);
  });
});
