/** What plants give off and rain brings, beside published worked examples and figures. */
import { describe, expect, test } from "vitest";
import { referenceEvapotranspirationMm } from "../../src/climate/evapotranspiration.js";
import { placeClimate, type PlaceWeather } from "../../src/climate/index.js";
import { addDays, day } from "../../src/dates.js";
import type { Planting } from "../../src/garden/garden.js";
import { loadNormals } from "../../src/tables.js";
import { bedWatering } from "../../src/watering/bed-watering.js";
import { coefficientOn } from "../../src/watering/coefficients.js";
import { effectiveRainMm } from "../../src/watering/rain.js";
import { bed, grown, season, tables } from "../watering/a-watered-bed.js";

/** Off by no more than `by`. */
function near(value: number, printed: number, by: number): void {
  expect(Math.abs(value - printed), `${value} for ${printed}`).toBeLessThanOrEqual(by);
}

test("FAO-56 Example 20: Lyon in July, 14.8 to 26.6 degC, has 5.0 mm/day by equation 52", () => {
  const lyon = 45.72;
  near(referenceEvapotranspirationMm(day("2027-07-15"), { minC: 14.8, maxC: 26.6 }, lyon), 5, 0.05);
});

describe("FAO-56 Example 28: dry bean of 25, 25, 30 and 20 days, coefficients 0.15, 1.19 and 0.35", () => {
  const first = day("2027-05-01");
  const periods = {
    initial: first,
    development: addDays(first, 25),
    mid: addDays(first, 50),
    late: addDays(first, 80),
    end: addDays(first, 99),
  };
  const on = (n: number): number =>
    coefficientOn(addDays(first, n - 1), periods, { initial: 0.15, mid: 1.19, end: 0.35 });

  test.each([
    [20, 0.15],
    [40, 0.77],
    [70, 1.19],
  ])("day %i has %f", (n, printed) => {
    near(on(n), printed, 0.005);
  });

  test.each([
    ["the last day of the initial period has its value", 25, 0.15],
    ["the last day of development that of the middle", 50, 1.19],
    ["the last day of the middle still", 80, 1.19],
    ["the last day of all the end's", 100, 0.35],
    ["and whatever comes after it", 120, 0.35],
  ])("its figure: %s", (_, n, printed) => {
    near(on(n), printed, 1e-9);
  });
});

describe("USDA Soil Conservation Service as in CROPWAT (FAO Irrigation and Drainage Paper 46)", () => {
  // P(125 - 0.2 P)/125 up to 250 mm and 125 + 0.1 P above, as an open library's manual prints them.
  test.each([
    [0, 0],
    [50, 46],
    [100, 84],
    [200, 136],
    [250, 150],
    [300, 155],
  ])("of %f mm in a month %f can be used", (monthMm, usable) => {
    near(effectiveRainMm(monthMm), usable, 1e-9);
  });
});

async function placeAt(latitudeDeg: number, longitudeDeg: number): Promise<PlaceWeather> {
  const { climate } = placeClimate(await loadNormals(), { latitudeDeg, longitudeDeg }, "metric");
  return { climate: { ...climate, daySdC: 3.5 }, days: new Map() };
}

interface Where {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

async function weeksOf(
  key: string,
  times: Partial<Planting>,
  { latitudeDeg, longitudeDeg }: Where,
) {
  const weather = await placeAt(latitudeDeg, longitudeDeg);
  const planting = grown(key, { ...times, areaM2: 1 });
  return bedWatering(bed(), "auto", [planting], { weather, season }, tables).usualWeeks;
}

const sumOf = (amounts: readonly number[]): number => amounts.reduce((sum, one) => sum + one, 0);

// National Gardening Association, Watering tomatoes, undated: at least one inch of rain or water a week,
// up to two in hotter and drier parts in summer. 25.4 mm an inch.
test.each([
  ["Potsdam", { latitudeDeg: 52.4, longitudeDeg: 13.07 }],
  ["Burlington, Vermont", { latitudeDeg: 44.48, longitudeDeg: -73.2 }],
  ["San Jose, California", { latitudeDeg: 37.34, longitudeDeg: -121.89 }],
])("tomatoes in %s need one to two inches in each week of July", async (_, where) => {
  const weeks = await weeksOf("tomato", { transplanted: day("2027-05-10"), habit: "bush" }, where);
  const july = weeks.filter(({ from, to }) => from >= "2027-07-01" && to <= "2027-07-31");
  expect(july).toHaveLength(3);
  for (const { needMm = 0 } of july) {
    expect(needMm).toBeGreaterThan(25.4);
    expect(needMm).toBeLessThan(2 * 25.4);
  }
});

// Santa Clara Valley Water District, undated: 24 1/3 inches of water for bush tomatoes in 2010. It tells
// neither their dates nor the weather of the year: a quarter off is taken as agreeing.
test("bush tomatoes in San Jose take about 24 1/3 inches of water in their season", async () => {
  const times = { transplanted: day("2027-05-10"), pickedUntil: day("2027-08-31") };
  const sanJose = { latitudeDeg: 37.34, longitudeDeg: -121.89 };
  const weeks = await weeksOf("tomato", { ...times, habit: "bush" }, sanJose);
  const waterMm = sumOf(weeks.map(({ waterL }) => waterL));
  near(waterMm, 24.33 * 25.4, 0.25 * 24.33 * 25.4);
});
