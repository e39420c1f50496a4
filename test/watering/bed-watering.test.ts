/** Litres a week for beds. */
import { describe, expect, test } from "vitest";
import { referenceEvapotranspirationMm } from "../../src/climate/evapotranspiration.js";
import { weatherOn } from "../../src/climate/index.js";
import { addDays, day, eachDay } from "../../src/dates.js";
import { bedWatering } from "../../src/watering/bed-watering.js";
import { coefficientOn, coefficientsOf } from "../../src/watering/coefficients.js";
import type { BedWatering, WateringWeek } from "../../src/watering/watering.js";
import { aPlace, bed, cropCoefficients, grown, season, tables } from "./a-watered-bed.js";

const litres = (weeks: readonly WateringWeek[]): number =>
  weeks.reduce((sum, { waterL }) => sum + waterL, 0);

const tomatoes = grown("tomato", { transplanted: day("2027-05-20"), areaM2: 4 });

const watered = (
  differs: Parameters<typeof bed>[0] = {},
  those = [tomatoes],
  place = aPlace(),
): BedWatering => bedWatering(bed(differs), "auto", those, { weather: place, season }, tables);

describe("by the weather", () => {
  test("a whole week is its days' evapotranspiration times their coefficients, over the ground", () => {
    const { weeks } = watered();
    const week = weeks.find(({ from }) => from === "2027-07-12");
    const found = coefficientsOf(tomatoes.crop as never, tomatoes.planting, cropCoefficients);
    if (!found.ok || tomatoes.life.periods === undefined) throw new Error("not known");
    const { periods } = tomatoes.life;
    const place = aPlace();
    const needMm = [...eachDay({ from: day("2027-07-12"), to: day("2027-07-18") })].reduce(
      (sum, d) =>
        sum +
        referenceEvapotranspirationMm(d, weatherOn(place, d), 50) *
          coefficientOn(d, periods, found.whole),
      0,
    );
    // Days are rounded at the ninth place.
    expect(week?.needMm).toBeCloseTo(needMm, 7);
    expect(week?.waterL).toBeCloseTo(4 * needMm, 7);
    // A meadow of 3.6 mm a day, times 1.2 for staked tomatoes in the middle of their life, a week, 4 m2.
    expect(week?.waterL).toBeGreaterThan(100);
    expect(week?.waterL).toBeLessThan(140);
  });

  test("goes from the week of planting out to that of the last day, Monday to Sunday", () => {
    const { weeks } = watered();
    expect([weeks[0]?.from, weeks[0]?.to]).toEqual(["2027-05-17", "2027-05-23"]);
    expect(weeks.at(-1)?.to).toBe("2027-10-31");
    for (const [i, { from, to }] of weeks.entries()) {
      expect(to).toBe(addDays(from, 6));
      if (i > 0) expect(from).toBe(addDays(weeks[i - 1]?.to as never, 1));
    }
  });

  test("counts only the days on which it stands in the bed in its first week", () => {
    const [first, second] = watered().weeks;
    // Planted out on a Thursday: four days of seven.
    // They grow meanwhile: somewhat less than four sevenths.
    expect((first?.needMm ?? 0) / (second?.needMm ?? 0)).toBeGreaterThan(0.45);
    expect((first?.needMm ?? 0) / (second?.needMm ?? 0)).toBeLessThan(4 / 7);
  });

  test("takes rain off, and never below nothing", () => {
    const dry = litres(watered().weeks);
    const wet = watered({}, [tomatoes], aPlace({ rainMm: 50 }));
    expect(litres(wet.weeks)).toBeLessThan(dry);
    expect(wet.weeks[0]?.rainMm).toBeGreaterThan(0);
    expect(litres(watered({}, [tomatoes], aPlace({ rainMm: 400 })).weeks)).toBe(0);
  });

  test("counts a gauge's rain of one week in that week alone", () => {
    const days = { "2027-07-13": { minC: 10, maxC: 20, rainMm: 12 } };
    const place = aPlace({ days });
    const { weeks, usualWeeks } = watered({}, [tomatoes], place);
    const differing = weeks.filter((week, i) => week.waterL !== usualWeeks[i]?.waterL);
    expect(differing.map(({ from, rainMm }) => [from, rainMm])).toEqual([["2027-07-12", 12]]);
    const usual = usualWeeks.find(({ from }) => from === "2027-07-12");
    expect((usual?.waterL ?? 0) - (differing[0]?.waterL ?? 0)).toBeCloseTo(48, 9);
  });

  test("counts the usual rain on days of a forecast, and their temperatures", () => {
    const days = { "2027-07-13": { minC: 10, maxC: 20, rainMm: 40 } };
    const place = aPlace({ rainMm: 30, days, from: "forecast" });
    const { weeks, usualWeeks } = watered({}, [tomatoes], place);
    expect(weeks).toEqual(usualWeeks);
    const hot = { "2027-07-13": { minC: 20, maxC: 34, rainMm: 40 } };
    const warm = watered({}, [tomatoes], aPlace({ rainMm: 30, days: hot, from: "forecast" }));
    const at = usualWeeks.findIndex(({ from }) => from === "2027-07-12");
    expect(warm.weeks[at]?.needMm).toBeGreaterThan(usualWeeks[at]?.needMm ?? Infinity);
    expect(warm.weeks[at]?.rainMm).toBe(usualWeeks[at]?.rainMm);
  });

  test("tells the most rain that it takes off a week, outdoors", () => {
    // 60 mm a month, of which FAO's CROPWAT counts 54, are 12.2 mm in a week of a month of 31 days.
    const place = aPlace({ rainMm: 60 });
    expect(watered({}, [tomatoes], place).usualRainMm).toBeCloseTo(
      (60 * (125 - 12) * 7) / 125 / 30,
      1,
    );
    expect(watered({ cover: { kind: "glass" } }, [tomatoes], place)).not.toHaveProperty(
      "usualRainMm",
    );
    expect(watered()).not.toHaveProperty("usualRainMm");
  });

  test("goes on after the last pick of a perennial, at the coefficient of its end", () => {
    const berries = grown("strawberry", { established: true, areaM2: 4 });
    const { weeks } = watered({}, [berries]);
    expect(berries.life.last.day < "2027-09-01").toBe(true);
    expect(weeks.at(-1)?.to).toBe("2027-10-31");
    const found = coefficientsOf(berries.crop as never, berries.planting, cropCoefficients);
    const end = found.ok ? found.whole.end : NaN;
    const autumn = [...eachDay({ from: day("2027-09-06"), to: day("2027-09-12") })];
    const meadowMm = autumn.reduce(
      (sum, d) => sum + referenceEvapotranspirationMm(d, weatherOn(aPlace(), d), 50),
      0,
    );
    expect(weeks.find(({ from }) => from === "2027-09-06")?.waterL).toBeCloseTo(
      4 * end * meadowMm,
      6,
    );
    const removed = grown("strawberry", {
      established: true,
      areaM2: 4,
      removed: day("2027-08-16"),
    });
    expect(watered({}, [removed]).weeks.at(-1)?.to).toBe("2027-08-15");
  });

  test("carries no rain over to the next week", () => {
    const days = { "2027-07-13": { minC: 10, maxC: 20, rainMm: 500 } };
    const { weeks, usualWeeks } = watered({}, [tomatoes], aPlace({ days }));
    const at = weeks.findIndex(({ from }) => from === "2027-07-12");
    expect(weeks[at]?.waterL).toBe(0);
    expect(weeks[at + 1]?.waterL).toBe(usualWeeks[at + 1]?.waterL);
  });

  test("says so where no rain is known, and counts none", () => {
    const { weeks, assumptions } = watered({}, [tomatoes], aPlace({ rainMm: "none" }));
    expect(assumptions).toContain("no rain is known: none is counted");
    expect(weeks[0]).not.toHaveProperty("rainMm");
    expect(litres(weeks)).toBeCloseTo(litres(watered().weeks), 9);
  });

  test("of two plantings adds their litres up", () => {
    const lettuce = grown("lettuce", { sown: day("2027-06-01"), areaM2: 1 });
    const [one, other, both] = [
      watered(),
      watered({}, [lettuce]),
      watered({}, [tomatoes, lettuce]),
    ];
    expect(litres(both.weeks)).toBeCloseTo(litres(one.weeks) + litres(other.weeks), 6);
    expect(both.plantings.map(({ planting }) => planting)).toEqual(["tomato", "lettuce"]);
  });
});

describe("ground", () => {
  const six = { transplanted: day("2027-05-20"), plants: 6 };
  const areaOf = (watering: BedWatering): number | undefined => watering.plantings[0]?.areaM2;

  test("of plants without an area is that of usual spacing", () => {
    const plants = grown("tomato", six);
    const told = watered({}, [plants]);
    expect(areaOf(told)).toBeCloseTo(6 * (plants.crop?.areaM2PerPlant?.usual ?? 0), 9);
  });

  test("is no more than the bed has for all that grows there at one time", () => {
    const plants = grown("tomato", six);
    const small = watered({ areaM2: 1 }, [plants, grown("sweet-pepper", six)]);
    const sum = small.plantings.reduce((area, { areaM2 = 0 }) => area + areaM2, 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  test("is whole for what follows one after the other", () => {
    const first = grown("radish", { sown: day("2027-03-10"), areaM2: 2 }, "first");
    const second = grown("lettuce", { sown: day("2027-07-01"), areaM2: 2 }, "second");
    const { plantings } = watered({ areaM2: 2 }, [first, second]);
    expect(plantings.map(({ areaM2 }) => areaM2)).toEqual([2, 2]);
  });

  test("that nobody gave and nothing tells is never guessed", () => {
    const { plantings, unknown, weeks } = watered({ areaM2: 3 }, [
      grown("tomato", { transplanted: day("2027-05-20") }),
    ]);
    expect([plantings, weeks]).toEqual([[], []]);
    expect(unknown).toEqual([
      { planting: "tomato", why: "how much ground it has is not known (`area:`, or `plants:`)" },
    ]);
  });
});

describe("cannot tell", () => {
  test("without a climate", () => {
    const { unknown } = bedWatering(
      bed(),
      "auto",
      [tomatoes],
      { weather: undefined, season },
      tables,
    );
    expect(unknown[0]?.why).toBe("the climate of the garden's place is not known (`location:`)");
  });

  test("of a crop without coefficients, and tells the rest of the bed", () => {
    const basil = grown("basil", { sown: day("2027-05-20"), areaM2: 1 });
    const { unknown, weeks } = watered({}, [tomatoes, basil]);
    expect(unknown).toEqual([
      { planting: "basil", why: "FAO-56 has no crop coefficient for basil or its kind" },
    ]);
    expect(litres(weeks)).toBeCloseTo(litres(watered().weeks), 9);
  });

  test("of an orchard, and why", () => {
    const apple = grown("apple", { established: true, areaM2: 4 });
    expect(watered({}, [apple]).unknown[0]?.why).toContain("from their first leaves");
  });

  test("of what is only listed", () => {
    const listed = {
      ...tomatoes,
      planting: { ...tomatoes.planting, cropWord: "moon flower" },
      crop: undefined,
      life: { ...tomatoes.life, spans: [] },
    };
    expect(watered({}, [listed]).unknown).toEqual([
      { planting: "tomato", why: "`moon flower` is no crop that is known" },
    ]);
  });
});

describe("mulch and covers", () => {
  const season1 = litres(watered().weeks);

  test("straw halves what the soil gives off: much while plants are small, little later", () => {
    const straw = watered({ soil: { mulch: "straw" } });
    expect(straw.weeks[0]?.waterL).toBeLessThan(0.8 * (watered().weeks[0]?.waterL ?? 0));
    const at = straw.weeks.findIndex(({ from }) => from === "2027-07-12");
    const share = (straw.weeks[at]?.waterL ?? 0) / (watered().weeks[at]?.waterL ?? 1);
    expect(share).toBeGreaterThan(0.95);
    expect(share).toBeLessThan(1);
  });

  test("film takes a fifth of all", () => {
    expect(litres(watered({ soil: { mulch: "black-film" } }).weeks)).toBeCloseTo(0.8 * season1, 6);
  });

  test("under glass no rain falls, and less is given off, which is told with its source", () => {
    const cover = { kind: "glass" } as const;
    const { weeks, assumptions } = watered({ cover }, [tomatoes], aPlace({ rainMm: 50 }));
    expect(weeks.every(({ rainMm }) => rainMm === 0)).toBe(true);
    expect(litres(weeks)).toBeCloseTo(0.68 * season1, 6);
    expect(assumptions.join()).toMatch(/under glass .* 68 % .*Amiri/);
  });

  test("fleece lets all through", () => {
    const place = aPlace({ rainMm: 50 });
    expect(watered({ cover: { kind: "fleece" } }, [tomatoes], place).weeks).toEqual(
      watered({}, [tomatoes], place).weeks,
    );
  });

  test("a cover changes nothing on days on which it does not stand", () => {
    const place = aPlace({ rainMm: 50 });
    const cover = { kind: "tunnel", to: day("2027-06-13") } as const;
    const [under, open] = [watered({ cover }, [tomatoes], place), watered({}, [tomatoes], place)];
    const after = (weeks: readonly WateringWeek[]): readonly WateringWeek[] =>
      weeks.filter(({ from }) => from >= "2027-06-14");
    expect(after(under.weeks)).toEqual(after(open.weeks));
    expect(under.weeks[1]).not.toEqual(open.weeks[1]);
  });
});
