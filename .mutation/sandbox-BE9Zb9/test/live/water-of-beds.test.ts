/** What a garden that tells of watering is told: litres a week, less its rounds, and the driest days. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Plan, PlanWatering } from "../../src/season/index.js";
import { cli, scratchFolder } from "../support/run-cli.js";

interface Differs {
  /** Lines of the bed. */
  readonly bed?: readonly string[];
  readonly garden?: readonly string[];
  readonly weather?: string;
}

/** Potsdam's kind of summer, every month alike. */
const means = [
  "climate:",
  "  source: a test",
  "  temperature: C",
  "  rain_unit: mm",
  `  max: [${Array(12).fill(22).join(", ")}]`,
  `  min: [${Array(12).fill(12).join(", ")}]`,
  `  rain: [${Array(12).fill(50).join(", ")}]`,
];

async function wateringOf({ bed = [], garden = means, weather }: Differs): Promise<Plan> {
  const folder = scratchFolder();
  const file = join(folder, "garden.yaml");
  if (weather !== undefined) writeFileSync(join(folder, "weather.csv"), weather);
  const text = [
    "version: 1",
    "garden: Test",
    "timezone: Europe/Berlin",
    "season: { from: 2027-03-01, to: 2027-10-31 }",
    "location: { latitude: 52.4 }",
    "can: 9 L",
    "feeding: { days: [tue, fri], away: [{ from: 2027-07-10, to: 2027-07-20 }] }",
    ...garden,
    ...(weather === undefined ? [] : ["weather: { seen: weather.csv }"]),
    "beds:",
    "  - id: north",
    "    area: 4 m2",
    ...bed.map((line) => `    ${line}`),
    "    plantings:",
    "      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20, water: 2 L per plant }",
    "",
  ];
  writeFileSync(file, text.join("\n"));
  const { code, stdout, stderr } = await cli(["plan", file, "--json"], { today: "2027-04-01" });
  expect({ code, stderr }).toMatchObject({ code: 0 });
  return JSON.parse(stdout) as Plan;
}

const auto = ["watering: auto"];
const one = (plan: Plan): PlanWatering => plan.watering?.[0] as PlanWatering;
const weekOf = (plan: Plan, monday: string): PlanWatering["weeks"][number] | undefined =>
  one(plan).weeks.find(({ from }) => from === monday);

test("a bed that says nothing of watering is told nothing of it", async () => {
  expect(await wateringOf({})).not.toHaveProperty("watering");
});

describe("watering: auto", () => {
  test("tells of each week what the bed needs, what rain brings, and what is left beside the rounds", async () => {
    const plan = await wateringOf({ bed: auto });
    const round = plan.rounds[0];
    const week = one(plan).weeks.find(
      ({ from, to }) => from <= `${round?.day}` && `${round?.day}` <= to,
    );
    expect(week?.roundL).toBe(12);
    expect(week?.leftL).toBeCloseTo((week?.waterL ?? 0) - 12, 9);
    expect(week?.waterL).toBeCloseTo(4 * ((week?.needMm ?? 0) - (week?.rainMm ?? 0)), 9);
  });

  test("a week of rain in the gauge needs no can, and the next one as many as ever", async () => {
    const rows = ["2027-07-26", "2027-07-27"].map((on) => `${on},12,22,40`);
    const weather = ["date,tmin_c,tmax_c,rain_mm", ...rows, ""].join("\n");
    const [wet, usual] = [
      await wateringOf({ bed: auto, weather }),
      await wateringOf({ bed: auto }),
    ];
    expect(weekOf(wet, "2027-07-26")?.waterL).toBe(0);
    expect(weekOf(wet, "2027-08-02")?.waterL).toBe(weekOf(usual, "2027-08-02")?.waterL);
  });

  test("rain and rounds aside, it follows mulch and cover", async () => {
    const total = async (...lines: readonly string[]): Promise<number> =>
      one(await wateringOf({ bed: [...auto, ...lines] })).weeks.reduce(
        (sum, { needMm = 0 }) => sum + needMm,
        0,
      );
    const bare = await total();
    expect(await total("soil: { mulch: straw }")).toBeLessThan(bare);
    expect(await total("cover: glass")).toBeLessThan(bare);
  });

  test("without a climate says why it can't be told", async () => {
    const { weeks, unknown } = one(await wateringOf({ bed: auto, garden: ["climate: off"] }));
    expect(weeks).toEqual([]);
    expect(unknown).toEqual([
      {
        planting: "toms",
        why: "the climate of the garden's place is not known (`location:`)",
      },
    ]);
  });
});

test("an amount is the same in each week, in any unit, and needs no climate", async () => {
  const litres = one(
    await wateringOf({ bed: ["watering: 25 L per m2"], garden: ["climate: off"] }),
  );
  const depth = one(await wateringOf({ bed: ["watering: 25 mm"], garden: ["climate: off"] }));
  expect(new Set(litres.weeks.map(({ waterL }) => waterL))).toEqual(new Set([100]));
  expect(depth).toEqual(litres);
});

test("the longest time without water is the one away, and says so", async () => {
  const { dryGap } = one(await wateringOf({ bed: auto }));
  expect(dryGap).toMatchObject({ isAway: true });
  expect([dryGap?.from, dryGap?.to, dryGap?.days]).toEqual(["2027-07-10", "2027-07-22", 13]);
});
