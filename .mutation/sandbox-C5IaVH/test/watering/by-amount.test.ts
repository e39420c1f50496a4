/** An amount that the grower gave, in each week, and against what the weather asks for. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { bedWatering } from "../../src/watering/bed-watering.js";
import type { BedWatering } from "../../src/watering/watering.js";
import { aPlace, bed, grown, season, tables } from "./a-watered-bed.js";

const tomatoes = grown("tomato", { transplanted: day("2027-05-20"), areaM2: 4 });

describe("an amount", () => {
  const byAmount = (
    wish: { weeklyL: number } | { weeklyMm: number },
    differs: Parameters<typeof bed>[0],
    those = [tomatoes],
  ): BedWatering => bedWatering(bed(differs), wish, those, { weather: undefined, season }, tables);

  test("for the bed is poured in each week in which something grows", () => {
    const { weeks, usualWeeks } = byAmount({ weeklyL: 60 }, {});
    expect(weeks).toHaveLength(24);
    expect(new Set(weeks.map(({ waterL }) => waterL))).toEqual(new Set([60]));
    expect(usualWeeks).toEqual(weeks);
  });

  test("is held against what a usual year asks for, and the worst week told below half of it", () => {
    const against = (weeklyL: number): BedWatering["shortfall"] =>
      bedWatering(bed(), { weeklyL }, [tomatoes], { weather: aPlace(), season }, tables).shortfall;
    const auto = bedWatering(bed(), "auto", [tomatoes], { weather: aPlace(), season }, tables);
    const asked = auto.usualWeeks.reduce((most, week) => (week.waterL > most.waterL ? week : most));
    const { from, to, waterL: asksL } = asked;
    expect(against(asksL / 2 - 1)).toEqual({ from, to, waterL: asksL / 2 - 1, asksL });
    expect(against(asksL / 2 + 1)).toBeUndefined();
    expect(byAmount({ weeklyL: 1 }, {})).not.toHaveProperty("shortfall");
  });

  test("to the square metre is that of the bed, else of what grows there", () => {
    expect(byAmount({ weeklyMm: 25 }, { areaM2: 10 }).weeks[0]?.waterL).toBe(250);
    expect(byAmount({ weeklyMm: 25 }, {}).weeks[0]?.waterL).toBe(100);
  });

  test("is shared by the ground of what grows that week", () => {
    const lettuce = grown("lettuce", { sown: day("2027-06-01"), areaM2: 1 });
    const { plantings } = byAmount({ weeklyL: 50 }, {}, [tomatoes, lettuce]);
    const inJune = plantings.map(
      ({ weeks }) => weeks.find(({ from }) => from === "2027-06-07")?.waterL,
    );
    expect(inJune).toEqual([40, 10]);
    expect(plantings[0]?.weeks[0]?.waterL).toBe(50);
  });

  test("whose shares can't be told is told of the bed alone", () => {
    const peppers = grown("sweet-pepper", { transplanted: day("2027-05-20") });
    const { plantings, unknown, weeks } = byAmount({ weeklyL: 50 }, {}, [tomatoes, peppers]);
    expect([plantings, weeks[0]?.waterL]).toEqual([[], 50]);
    expect(unknown.map(({ planting }) => planting)).toEqual(["tomato", "sweet-pepper"]);
  });
});
