/** What holds for the plan of any valid garden at any place of the earth, with any climate and weather. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { type MonthlyMeans, weatherOn } from "../../src/climate/index.js";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { addDays, day, type Day, daysBetween, type DaySpan, eachDay } from "../../src/dates.js";
import type { PlaceSources } from "../../src/garden-place.js";
import { problemLine, type Result } from "../../src/problem.js";
import type { Plan } from "../../src/season/season-plan.js";
import type { StageSpan } from "../../src/stages/stage-span.js";
import { loadNormals } from "../../src/tables.js";
import { aSeason, planFile, planted } from "../support/a-garden.js";
import { placeWeather } from "../support/a-place.js";
import { anyGarden, anyPlannedGarden } from "../support/arbitrary-garden.js";

/** Each property tries gardens of its own, the same ones each time. PROPERTY_RUNS asks for more. */
function runs(): { numRuns: number; seed: number } {
  const title = expect.getState().currentTestName ?? "";
  const seed = Array.from(title).reduce((sum, c) => (31 * sum + c.charCodeAt(0)) % 1_000_003, 0);
  return { numRuns: Number(process.env["PROPERTY_RUNS"] ?? 60), seed };
}

type Location = NonNullable<GardenFile["location"]>;

const anyLocation = fc
  .record({
    latitude: fc.oneof(
      { weight: 1, arbitrary: fc.constantFrom(-90, -66.6, -23.4, 0, 23.4, 66.6, 90) },
      { weight: 3, arbitrary: fc.integer({ min: -9000, max: 9000 }).map((n) => n / 100) },
    ),
    longitude: fc.oneof(
      { weight: 1, arbitrary: fc.constantFrom(-180, 180, 0, -179.9, 179.9) },
      { weight: 3, arbitrary: fc.integer({ min: -18000, max: 18000 }).map((n) => n / 100) },
    ),
    elevation: fc.option(fc.integer({ min: 0, max: 6000 })),
  })
  .map(({ elevation, ...where }): Location => ({
    ...where,
    ...(elevation === null ? {} : { elevation: `${elevation} m` }),
  }));

/** The latitude tells its half of the earth. */
function gardenAt(garden: GardenFile, location: Location, more: object = {}): object {
  return { ...garden, hemisphere: undefined, location, ...more };
}

const northOrSouth = fc.constantFrom<Location>(
  { latitude: 48, longitude: 10 },
  { latitude: -48, longitude: 179 },
);

/** Of any latitude: whole degrees, so that they are whole in degrees Fahrenheit too. */
const anyMeans = fc
  .record({
    mean: fc.integer({ min: -2, max: 4 }),
    swing: fc.integer({ min: 0, max: 3 }),
    warmest: fc.constantFrom(0, 6, 7),
    range: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ mean, swing, warmest, range }): MonthlyMeans => {
    const minC = Array.from(
      { length: 12 },
      (_, month) => 5 * (mean + Math.round(swing * Math.cos(((month - warmest) * Math.PI) / 6))),
    );
    return { minC, maxC: minC.map((c) => c + 5 * range) };
  });

function ownClimate(
  { minC, maxC }: MonthlyMeans,
  temperature: "C" | "F" = "C",
): Pick<GardenFile, "climate"> {
  const told = (c: number): number => (temperature === "F" ? (c * 9) / 5 + 32 : c);
  return {
    climate: { source: "a test", temperature, max: maxC.map(told), min: minC.map(told) },
  };
}

const warmerBy = ({ minC, maxC }: MonthlyMeans, byC: number): MonthlyMeans => ({
  minC: minC.map((c) => c + byC),
  maxC: maxC.map((c) => c + byC),
});

function planOf(garden: object, sources: PlaceSources = {}): Plan {
  const text = stringify(garden);
  return planOrThrow(planFile(text, undefined, undefined, sources), text);
}

function planOrThrow(plan: Result<Plan>, text: string): Plan {
  if (!plan.ok) throw new Error(`${plan.problems.map(problemLine).join("\n")}\n${text}`);
  return plan.value;
}

const stagesOf = (plan: Plan): Map<string, StageSpan> =>
  new Map(
    plan.plantings.flatMap(({ id, stages }) =>
      stages.map((span) => [`${id} ${span.stage}`, span] as const),
    ),
  );

describe("a garden at any point of the earth", async () => {
  const normals = await loadNormals();

  test("is planned, in under a second of work, its stages in order and its feedings in its season", () => {
    const met = new Set<string>();
    fc.assert(
      fc.property(anyGarden, anyLocation, (garden, location) => {
        const before = process.cpuUsage();
        const plan = planOf(gardenAt(garden, location), { normals });
        const { user, system } = process.cpuUsage(before);
        expect((user + system) / 1e6).toBeLessThan(1);

        expect(plan.garden.climate?.origin).toContain("CRU CL 2.0");
        for (const { id, stages } of plan.plantings)
          for (const [i, span] of stages.entries()) {
            expect(span.from <= span.to, id).toBe(true);
            const next = stages[i + 1];
            if (next !== undefined) expect(daysBetween(span.to, next.from), id).toBe(1);
            if (span.warmth?.isFollowed === true) met.add("followed");
            if (span.warmth?.isHeldBack === true) met.add("held back");
            if (span.warmth && span.warmth.day === undefined) met.add("not reached");
          }
        for (const { code } of plan.warnings) met.add(code);
        if (plan.garden.frost?.allYear === true) met.add("frost in all months");
        if (location.latitude < 0) met.add("south");
        met.add(plan.garden.frost === undefined ? "no frost" : "frost");
      }),
      runs(),
    );
    // It must reach what it speaks of.
    expect([...met]).toEqual(
      expect.arrayContaining(
        "followed,held back,not reached,frost in all months,south,no frost,frost".split(","),
      ),
    );
  });
});

describe("a garden of any climate", () => {
  test("comes to no stage later where it is warmer, if warmth brings it in both", () => {
    let compared = 0;
    let earlier = 0;
    fc.assert(
      fc.property(
        anyPlannedGarden,
        northOrSouth,
        anyMeans,
        fc.integer({ min: 1, max: 50 }),
        (garden, location, means, tenths) => {
          const [cool, warm] = [means, warmerBy(means, tenths / 10)].map((those) =>
            stagesOf(planOf(gardenAt(garden, location, ownClimate(those)))),
          );
          for (const [name, span] of cool ?? []) {
            const other = warm?.get(name);
            if (span.warmth?.day === undefined || other?.warmth?.day === undefined) continue;
            expect(other.warmth.day <= span.warmth.day, name).toBe(true);
            if (!span.warmth.isFollowed || !other.warmth.isFollowed) continue;
            compared++;
            expect(other.from <= span.from, name).toBe(true);
            if (other.from < span.from) earlier++;
          }
        },
      ),
      runs(),
    );
    expect(compared).toBeGreaterThan(30);
    expect(earlier).toBeGreaterThan(10);
  });

  // A year below 5 degC told in Fahrenheit is taken for a slip of the unit.
  const growable = anyMeans.filter(({ maxC }) => Math.max(...maxC) >= 5);

  test("has the same plan whether its means are told in Celsius or in Fahrenheit", () => {
    fc.assert(
      fc.property(anyPlannedGarden, northOrSouth, growable, (garden, location, means) => {
        const [c, f] = (["C", "F"] as const).map((unit) =>
          planOf(gardenAt(garden, location, ownClimate(means, unit))),
        );
        expect(f).toEqual(c);
      }),
      runs(),
    );
  });
});

/** The weather of the means as a file: each day, or as single days lie about their mean. */
function fileOf(means: MonthlyMeans, span: DaySpan, spreadC: readonly number[]): string[] {
  const place = placeWeather(means);
  return [...eachDay(span)].map((on, i) => {
    const { minC, maxC } = weatherOn(place, on);
    const byC = spreadC[i % spreadC.length] ?? 0;
    return `${on},${(minC + byC).toFixed(2)},${(maxC + byC).toFixed(2)}`;
  });
}

// Three points of Gauss-Hermite quadrature with a standard deviation of 3.5 degC, in six days.
const spread = [0, 6.06, 0, 0, -6.06, 0];
const weather = { seen: "weather.csv" };
const sourcesOf = (rows: readonly string[]): PlaceSources => ({
  weather: { seen: ["date,tmin_c,tmax_c", ...rows, ""].join("\n") },
});

const temperate = fc.constantFrom<MonthlyMeans>(
  {
    maxC: [8, 8, 10, 12, 15, 18, 20, 19, 17, 14, 10, 8],
    minC: [3, 3, 3, 4, 7, 10, 11, 11, 9, 7, 4, 3],
  },
  {
    maxC: [3, 5, 9, 14, 19, 22, 24, 24, 19, 14, 8, 4],
    minC: [-2, -2, 1, 4, 8, 12, 14, 13, 10, 6, 2, -1],
  },
  {
    maxC: [12, 13, 16, 19, 23, 27, 30, 30, 27, 22, 17, 13],
    minC: [4, 4, 6, 9, 12, 16, 19, 19, 16, 12, 8, 5],
  },
);

describe("a garden with days of weather", () => {
  test("that are as the means have them has nearly the same dates", () => {
    const off: number[] = [];
    fc.assert(
      fc.property(anyPlannedGarden, northOrSouth, temperate, (garden, location, means) => {
        const here = gardenAt(garden, location, ownClimate(means));
        const season = garden.season as DaySpan;
        const rows = fileOf(means, { from: addDays(season.from, -366), to: season.to }, spread);
        const alone = stagesOf(planOf(here));
        for (const [name, span] of stagesOf(planOf({ ...here, weather }, sourcesOf(rows)))) {
          const [by, byMeans] = [span.warmth?.day, alone.get(name)?.warmth?.day];
          if (by === undefined || byMeans === undefined) continue;
          off.push(Math.abs(daysBetween(by, byMeans)));
        }
      }),
      runs(),
    );
    expect(off.length).toBeGreaterThan(200);
    // In winter a degree day takes weeks.
    const near = off.filter((days) => days <= 2);
    expect(near.length / off.length).toBeGreaterThan(0.95);
  });

  test("some of which are missing is planned, or told where too many are", () => {
    const outcomes = new Set<string>();
    const gaps = fc.array(fc.tuple(fc.nat(300), fc.integer({ min: 1, max: 6 })), { maxLength: 4 });
    fc.assert(
      fc.property(
        anyPlannedGarden,
        northOrSouth,
        temperate,
        gaps,
        (garden, location, means, missing) => {
          const { from, to } = garden.season as DaySpan;
          const rows = fileOf(means, { from, to }, spread).filter(
            (_, i) => !missing.some(([start, days]) => start <= i && i < start + days),
          );
          const days = rows.map((row) => row.slice(0, 10) as Day);
          const longest = days.slice(1).map((on, i) => daysBetween(days[i] as Day, on) - 1);
          const isTold = Math.max(0, ...longest) > 5;
          const file = stringify(gardenAt(garden, location, { ...ownClimate(means), weather }));
          const plan = planFile(file, undefined, undefined, sourcesOf(rows));
          outcomes.add(isTold ? "told" : "planned");
          expect(plan.ok).toBe(!isTold);
          if (plan.ok) return;
          for (const { code, file: of, at } of plan.problems) {
            expect([code, of]).toEqual(["weather-gap", "weather.csv"]);
            expect(at.line).toBeGreaterThan(2);
          }
        },
      ),
      runs(),
    );
    expect([...outcomes].sort()).toEqual(["planned", "told"]);
  });
});

describe("a season over New Year, in the south", () => {
  /** The same garden half a year on, its climate turned by as much. */
  function datesOf(from: string, out: string, to: string, means: MonthlyMeans): Day[] {
    const south = from.slice(5, 7) === "09";
    const plan = aSeason({
      season: { from, to },
      location: { latitude: south ? -48 : 48, longitude: 10 },
      ...ownClimate(means),
      ...planted({ transplanted: out }),
    });
    return plan.plantings.flatMap(({ stages }) => stages.map((span) => span.from));
  }

  test("has stages as far apart as in the north, also through a leap day", () => {
    fc.assert(
      fc.property(temperate, fc.constantFrom(2026, 2027, 2031), ({ maxC, minC }, year) => {
        const turned = (c: readonly number[]): number[] => [...c.slice(6), ...c.slice(0, 6)];
        const north = datesOf(`${year}-03-01`, `${year}-05-20`, `${year}-11-30`, { maxC, minC });
        const south = datesOf(`${year}-09-01`, `${year}-11-20`, `${year + 1}-05-31`, {
          maxC: turned(maxC),
          minC: turned(minC),
        });
        const after = (dates: readonly Day[], out: string): number[] =>
          dates.map((on) => daysBetween(day(out), on));
        const [a, b] = [after(north, `${year}-05-20`), after(south, `${year}-11-20`)];
        expect(b).toHaveLength(a.length);
        for (const [i, days] of a.entries())
          expect(Math.abs(days - (b[i] ?? 0))).toBeLessThanOrEqual(4);
      }),
      runs(),
    );
  });
});
