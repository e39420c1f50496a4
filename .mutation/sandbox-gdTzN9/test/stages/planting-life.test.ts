/** Dated stages: from sowing, transplanting, bloom or what was seen. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Crop } from "../../src/crops/crop.js";
import { addDays, day, type Day, daysBetween } from "../../src/dates.js";
import type { Garden, Planting } from "../../src/garden/garden.js";
import { plantingLife, type PlantingLife } from "../../src/stages/planting-life.js";
import { lifeSpan, stageOn, type StageSpan } from "../../src/stages/stage-span.js";
import { loadTables } from "../../src/tables.js";
import type { Place } from "../../src/stages/place.js";
import { aWarmPlace } from "./a-warm-place.js";

const { catalogue } = loadTables();

function crop(key: string): Crop {
  const found = catalogue.crops.find((c) => c.key === key);
  if (found === undefined) throw new Error(`no crop ${key}`);
  return found;
}

type Times = Partial<
  Pick<
    Planting,
    "sown" | "transplanted" | "bloom" | "removed" | "pickedUntil" | "daysToHarvest" | "established"
  >
> & { seen?: Record<string, string> };

const north = { hemisphere: "north", season: { from: day("2027-03-01"), to: day("2027-10-31") } };
const south = { hemisphere: "south", season: { from: day("2027-09-01"), to: day("2028-05-31") } };

function life(
  key: string,
  { seen = {}, ...times }: Times,
  place: unknown = north,
): PlantingLife & { starts: Record<string, Day>; end: Day | undefined } {
  const planting: Planting = {
    id: "p",
    name: "p",
    bed: "b",
    crop: key,
    cropWord: key,
    waterL: 1,
    sprayL: 1,
    sprayIsUsual: true,
    level: 1,
    feed: "by-rule",
    path: [],
    ...times,
    seen: Object.entries(seen).map(([stage, on]) => ({ stage, on: day(on), path: [] })),
  };
  const result = plantingLife(planting, crop(key), place as Pick<Garden, "hemisphere" | "season">);
  return {
    ...result,
    starts: Object.fromEntries(result.spans.map((span) => [span.stage, span.from])),
    end: result.spans.at(-1)?.to,
  };
}

const origins = ({ spans }: PlantingLife): string[] => spans.map((span) => span.origin);

describe("an annual counted from sowing", () => {
  // FAO-56 Table 11, Tomato, Mediterranean: 30, 40, 45 and 30 days.
  test("begins on the day it was sown and has its stages by the published lengths", () => {
    const tomato = life("tomato", { sown: day("2027-04-10") });
    expect(tomato.starts).toEqual({
      seedling: "2027-04-10",
      vegetative: "2027-05-10",
      flowering: "2027-06-19",
      "fruit-set": "2027-06-28",
      "fruit-growth": "2027-07-05",
      ripening: "2027-07-27",
      harvest: "2027-08-03",
    });
    expect(tomato.harvestFrom).toBe("2027-08-03");
    expect(tomato.assumptions).toEqual([]);
  });

  test("was sown its usual age before transplanting, which its origin says", () => {
    const tomato = life("tomato", { transplanted: day("2027-05-22") });
    expect(tomato.starts["seedling"]).toBe("2027-04-10");
    for (const origin of origins(tomato))
      expect(origin).toContain("; sown about 42 days before transplanting, usual for tomato");
  });

  test("counts from sowing where it is planted out at its usual age or younger", () => {
    for (const transplanted of [day("2027-05-10"), day("2027-05-22")])
      expect(life("tomato", { sown: day("2027-04-10"), transplanted }).starts).toEqual(
        life("tomato", { sown: day("2027-04-10") }).starts,
      );
  });

  test("grows no further in its tray than at its usual age, which its origin says", () => {
    const late = life("tomato", { sown: day("2027-02-20"), transplanted: day("2027-05-22") });
    expect(late.starts).toEqual({
      ...life("tomato", { sown: day("2027-04-10") }).starts,
      seedling: "2027-02-20",
    });
    for (const origin of origins(late))
      expect(origin).toContain("; counted from 10 Apr, 42 days before transplanting");
  });
});

describe("an annual counted from transplanting", () => {
  // FAO-56 Table 11, Cabbage, Mediterranean, planted in April: 20, 30, 20 and 10 days.
  test("begins when it is planted out", () => {
    expect(life("cabbage", { transplanted: day("2027-04-10") }).starts).toEqual({
      establishment: "2027-04-10",
      vegetative: "2027-04-30",
      heading: "2027-05-30",
      harvest: "2027-06-19",
    });
  });

  test("is a seedling between the days given for sowing and planting out", () => {
    const { spans } = life("cabbage", { sown: day("2027-03-01"), transplanted: day("2027-04-10") });
    expect(spans[0]).toEqual({
      stage: "seedling",
      bbch: "00-13",
      from: "2027-03-01",
      to: "2027-04-09",
      origin: "between the days given for sowing and transplanting",
    });
  });

  test("is planted out at its usual age where only sowing is known", () => {
    const cabbage = life("cabbage", { sown: day("2027-03-06") });
    expect(cabbage.starts).toMatchObject({ seedling: "2027-03-06", establishment: "2027-04-15" });
    expect(cabbage.spans[1]?.origin).toContain("; transplanted about 40 days after sowing");
  });
});

describe("a perennial", () => {
  test("counts from the bloom that the grower saw", () => {
    const apple = life("apple", { bloom: day("2027-04-28") });
    expect(apple.starts["flowering"]).toBe("2027-04-28");
    expect(apple.starts["fruit-set"]).toBe("2027-05-08");
    expect(apple.assumptions).toEqual([]);
  });

  test("else blooms when usual, which is told as an assumption", () => {
    const apple = life("apple", {});
    expect(apple.starts["flowering"]).toBe("2027-05-05");
    expect(apple.assumptions).toEqual([
      "p: full bloom on 5 May, usual for apple in temperate gardens, as no `bloom` of this season is given",
    ]);
  });

  test("blooms half a year later in the south", () => {
    expect(life("apple", {}, south).starts["flowering"]).toBe("2027-11-05");
  });

  test("blooms in the season, also when that begins in winter or the year before", () => {
    const late = {
      hemisphere: "north",
      season: { from: day("2026-11-01"), to: day("2027-10-31") },
    };
    expect(life("apple", {}, late).starts["flowering"]).toBe("2027-05-05");
    const summer = {
      hemisphere: "north",
      season: { from: day("2027-06-15"), to: day("2027-10-31") },
    };
    expect(life("apple", {}, summer).starts["flowering"]).toBe("2027-05-05");
    const autumn = {
      hemisphere: "north",
      season: { from: day("2027-08-01"), to: day("2027-10-31") },
    };
    expect(life("apple", {}, autumn).starts["flowering"]).toBe("2027-05-05");
  });

  test("planted years ago blooms this year, not on the day it was planted", () => {
    expect(life("apple", { transplanted: day("2012-11-20") }).starts["flowering"]).toBe(
      "2027-05-05",
    );
    expect(life("strawberry", { transplanted: day("2025-08-20") }).starts["flowering"]).toBe(
      "2027-05-10",
    );
  });

  test("planted after bloom has only what is left of its year", () => {
    const apple = life("apple", { transplanted: day("2027-06-01") });
    expect(apple.spans[0]).toMatchObject({ stage: "fruit-set", from: "2027-06-01" });
    expect(apple.starts["flowering"]).toBeUndefined();
  });

  test("strawberries planted after bloom make leaves first, then flower", () => {
    const strawberry = life("strawberry", { transplanted: day("2027-06-01") });
    expect(strawberry.starts).toMatchObject({ vegetative: "2027-06-01", flowering: "2027-07-01" });
    expect(strawberry.spans[0]?.origin).toContain("; begun by planting on 1 Jun");
    expect(strawberry.assumptions).toEqual([]);
  });

  test("stages before bloom run back from it", () => {
    const strawberry = life("strawberry", { bloom: day("2027-05-16") });
    expect(strawberry.starts).toMatchObject({ vegetative: "2027-04-16", flowering: "2027-05-16" });
  });

  test("counts from a stage that was seen where no bloom is given", () => {
    const apple = life("apple", {
      transplanted: day("2012-11-20"),
      seen: { "fruit-set": "2027-05-20" },
    });
    expect(apple.starts).toMatchObject({ flowering: "2027-05-10", "fruit-set": "2027-05-20" });
    expect(apple.assumptions).toEqual([]);
  });
});

describe("what was seen", () => {
  test("is when the stage begins, and moves all later stages as far", () => {
    const plain = life("tomato", { sown: day("2027-04-10") });
    const seen = life("tomato", { sown: day("2027-04-10"), seen: { flowering: "2027-06-24" } });
    expect(seen.starts["vegetative"]).toBe(plain.starts["vegetative"]);
    for (const stage of ["flowering", "fruit-set", "fruit-growth", "ripening", "harvest"])
      expect(seen.starts[stage], stage).toBe(addDays(plain.starts[stage] as Day, 5));
    expect(seen.harvestFrom).toBe(addDays(plain.harvestFrom, 5));
  });

  test("is told as the origin of its stage and of those after it", () => {
    const seen = life("tomato", { sown: day("2027-04-10"), seen: { flowering: "2027-06-24" } });
    expect(origins(seen).slice(1, 5)).toEqual([
      expect.stringContaining("FAO Irrigation and Drainage Paper 56"),
      "seen on 24 Jun",
      "counted from flowering seen on 24 Jun",
      "counted from flowering seen on 24 Jun",
    ]);
  });

  test("last decides: a second stage seen moves what comes after it", () => {
    const seen = { flowering: "2027-06-24", "fruit-growth": "2027-07-05" };
    const twice = life("tomato", { sown: day("2027-04-10"), seen });
    expect(twice.starts).toMatchObject({
      flowering: "2027-06-24",
      "fruit-set": "2027-07-03",
      "fruit-growth": "2027-07-05",
      ripening: "2027-07-27",
    });
  });

  test("early cuts short, or leaves out, the stages before it", () => {
    const early = life("tomato", { sown: day("2027-04-10"), seen: { "fruit-set": "2027-06-10" } });
    expect(early.starts["flowering"]).toBeUndefined();
    expect(early.spans.find((span) => span.stage === "vegetative")?.to).toBe("2027-06-09");
  });

  test("places an established annual", () => {
    const tomato = life("tomato", { established: true, seen: { flowering: "2027-06-10" } });
    expect(tomato.starts).toMatchObject({ seedling: "2027-04-01", flowering: "2027-06-10" });
  });

  test("before planting out shortens the time in the bed, not the seedling's", () => {
    const seen = { vegetative: "2027-04-15" };
    const cabbage = life("cabbage", {
      sown: day("2027-03-01"),
      transplanted: day("2027-04-10"),
      seen,
    });
    expect(cabbage.starts).toMatchObject({
      seedling: "2027-03-01",
      establishment: "2027-04-10",
      vegetative: "2027-04-15",
    });
  });
});

describe("region and season", () => {
  const lengths = (key: string, sown: string, place: unknown = north): string => {
    const [origin = ""] = origins(life(key, { sown: day(sown) }, place));
    return / \(([^();]*); counted/.exec(origin)?.[1] ?? origin;
  };

  test("the row planted in that month is taken", () => {
    expect(lengths("tomato", "2027-04-10")).toBe("Mediterranean");
    expect(lengths("tomato", "2027-01-10")).toBe("California desert, USA");
    expect(lengths("tomato", "2027-10-10")).toBe("arid region");
  });

  test("between rows the nearest month decides, around New Year too", () => {
    expect(lengths("tomato", "2027-07-10")).toBe("Mediterranean");
    expect(lengths("tomato", "2027-12-10")).toBe(lengths("tomato", "2027-01-10"));
  });

  test("the south's October is the north's April", () => {
    expect(lengths("tomato", "2027-10-10", south)).toBe("Mediterranean");
    expect(lengths("tomato", "2027-04-10", south)).toBe("arid region");
    const northern = life("tomato", { sown: day("2027-04-10") });
    const southern = life("tomato", { sown: day("2027-10-10") }, south);
    // Both are picked to the end of their season.
    const untilPicked = ({ spans }: PlantingLife): number[] => spans.slice(0, -1).map(spanDays);
    expect(untilPicked(southern)).toEqual(untilPicked(northern));
    expect(southern.harvestFrom).toBe("2028-02-02");
  });
});

function spanDays({ from, to }: StageSpan): number {
  return daysBetween(from, to) + 1;
}

describe("a variety's days to harvest", () => {
  test("scale all stages so that harvest begins on that day", () => {
    // Counted from planting out on a packet of tomatoes.
    const fast = life("tomato", {
      sown: day("2027-04-10"),
      transplanted: day("2027-05-22"),
      daysToHarvest: 55,
    });
    expect(fast.harvestFrom).toBe(addDays(day("2027-05-22"), 55));
    expect(fast.starts["flowering"]).toBe(addDays(day("2027-04-10"), Math.round((70 * 97) / 115)));
    expect(fast.spans[0]?.origin).toContain("; scaled by 0.84 to 55 days to harvest");
  });

  test("count from planting out at the usual age where only sowing is known", () => {
    const tomato = life("tomato", { sown: day("2027-04-10"), daysToHarvest: 60 });
    expect(tomato.harvestFrom).toBe(addDays(day("2027-04-10"), 42 + 60));
  });

  test("count from sowing for crops whose packets do", () => {
    const lettuce = life("lettuce", { sown: day("2027-04-10"), daysToHarvest: 50 });
    expect(lettuce.harvestFrom).toBe(addDays(day("2027-04-10"), 50));
  });

  test("count from planting out for crops counted from there", () => {
    const cabbage = life("cabbage", { transplanted: day("2027-04-10"), daysToHarvest: 90 });
    expect(cabbage.harvestFrom).toBe(addDays(day("2027-04-10"), 90));
  });

  test("go with what was seen: the rest of its life keeps its pace", () => {
    const times = { sown: day("2027-04-10"), daysToHarvest: 60 };
    const plain = life("tomato", times);
    const seen = life("tomato", { ...times, seen: { flowering: "2027-07-01" } });
    const shift = daysBetween(plain.starts["flowering"] as Day, day("2027-07-01"));
    expect(seen.harvestFrom).toBe(addDays(plain.harvestFrom, shift));
  });
});

describe("removal", () => {
  test("ends the planting's life the day before, and its harvest begins no later", () => {
    const cut = life("tomato", { sown: day("2027-04-10"), removed: day("2027-07-01") });
    expect(cut.end).toBe("2027-06-30");
    expect(cut.spans.at(-1)?.stage).toBe("fruit-set");
    expect(cut.harvestFrom).toBe("2027-07-01");
  });

  test("after the end of its life changes nothing", () => {
    const times = { transplanted: day("2027-04-10") };
    expect(life("cabbage", { ...times, removed: day("2027-10-30") })).toEqual(
      life("cabbage", times),
    );
  });
});

test("a planting that nothing places in time is our own bug", () => {
  expect(() => life("tomato", {})).toThrow("p has no beginning: was it validated?");
});

describe("the last day", () => {
  const tomato = (times: Times, place: unknown = north) =>
    life("tomato", { transplanted: day("2027-05-20"), ...times }, place).last;
  const frosty = (frost: Pick<Place, "firstFrostAfter">): Place => ({
    ...aWarmPlace({ wish: "off" }),
    ...frost,
  });
  const onOctober20 = {
    firstFrostAfter: (from: Day) => (from < "2027-10-20" ? day("2027-10-20") : undefined),
  };

  test("of what is picked again and again is the season's, for want of better", () => {
    expect(tomato({})).toEqual({ day: "2027-10-31", by: "season" });
    // What was over before the season began is of an earlier year.
    expect(life("tomato", { transplanted: day("2026-05-20") }).last.by).toBe("lengths");
    expect(life("tomato", { transplanted: day("2026-05-20") }).last.day < "2026-12-31").toBe(true);
    expect(tomato({ removed: day("2027-09-10") })).toEqual({ day: "2027-09-09", by: "removed" });
  });

  test("is the last pick that the grower names, also after frost, and in the plants' time", () => {
    expect(tomato({ pickedUntil: day("2027-10-10") })).toEqual({
      day: "2027-10-10",
      by: "picked-until",
    });
    expect(tomato({ pickedUntil: day("2027-10-28") }, frosty(onOctober20)).by).toBe("picked-until");
    expect(tomato({ pickedUntil: day("2027-10-10"), removed: day("2027-10-01") }).by).toBe(
      "removed",
    );
  });

  test("is the first frost for a tender crop, unless it was seen alive after it", () => {
    expect(tomato({}, frosty(onOctober20))).toEqual({ day: "2027-10-20", by: "frost" });
    const seen = { harvest: "2027-10-25" };
    expect(tomato({ seen }, frosty(onOctober20))).toEqual({ day: "2027-10-31", by: "season" });
    const kale = life("kale", { transplanted: day("2027-08-20") }, frosty(onOctober20));
    expect(kale.last.by).toBe("lengths");
  });

  test("of a crop picked once is where its lengths end", () => {
    const pumpkin = life("pumpkin", { sown: day("2027-05-10") }).last;
    expect(pumpkin.by).toBe("lengths");
    expect(life("pumpkin", { sown: day("2027-07-10") }, frosty(onOctober20)).last).toEqual({
      day: "2027-10-20",
      by: "frost",
    });
  });
});

test("the stage on a day, and the span of a life", () => {
  const { spans } = life("tomato", { sown: day("2027-04-10"), removed: day("2027-09-02") });
  expect(stageOn(spans, day("2027-06-19"))?.stage).toBe("flowering");
  expect(stageOn(spans, day("2027-06-18"))?.stage).toBe("vegetative");
  expect(stageOn(spans, day("2027-04-09"))).toBeUndefined();
  expect(stageOn(spans, day("2027-09-02"))).toBeUndefined();
  expect(lifeSpan(spans)).toEqual({ from: "2027-04-10", to: "2027-09-01" });
  expect(lifeSpan([])).toBeUndefined();
});

test("stages of any crop follow each other in order, without holes, each with its origin and BBCH code", () => {
  const anyDay = (span: { from: Day; to: Day }): fc.Arbitrary<Day> =>
    fc.integer({ min: 0, max: daysBetween(span.from, span.to) }).map((n) => addDays(span.from, n));
  fc.assert(
    fc.property(
      fc.constantFrom(...catalogue.crops),
      fc.constantFrom(north, south),
      fc.infiniteStream(fc.boolean()),
      anyDay(north.season),
      fc.integer({ min: 0, max: 200 }),
      fc.option(fc.integer({ min: 14, max: 400 })),
      fc.infiniteStream(fc.integer({ min: 1, max: 40 })),
      (anyCrop, place, flags, begin, later, daysToHarvest, gaps) => {
        const next = (): boolean => flags.next().value === true;
        const [sown, transplanted] = [next(), next()];
        let on = addDays(begin, 200);
        const seen = Object.fromEntries(
          anyCrop.course.stages.filter(next).map((s) => {
            on = addDays(on, Number(gaps.next().value));
            return [s.stage, on];
          }),
        );
        const times: Times = {
          ...(sown || !(transplanted || anyCrop.perennial) ? { sown: begin } : {}),
          ...(transplanted ? { transplanted: addDays(begin, later) } : {}),
          ...(daysToHarvest === null ? {} : { daysToHarvest }),
          seen,
        };
        const { spans } = life(anyCrop.key, times, place);
        const order = ["seedling", ...anyCrop.course.stages.map((s) => s.stage as string)];
        for (const [i, span] of spans.entries()) {
          const before = spans[i - 1];
          expect(span.from <= span.to).toBe(true);
          expect(span.origin).not.toBe("");
          expect(span.bbch).toMatch(/^\d\d(-\d\d)?$/);
          if (before === undefined) continue;
          expect(daysBetween(before.to, span.from)).toBe(1);
          expect(order.lastIndexOf(span.stage)).toBeGreaterThan(order.indexOf(before.stage));
        }
        for (const [stage, day] of Object.entries(seen))
          expect(spans.find((span) => span.stage === stage)?.from).toBe(day);
      },
    ),
    { numRuns: 300 },
  );
});
