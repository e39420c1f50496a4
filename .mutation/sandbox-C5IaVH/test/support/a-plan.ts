// @ts-nocheck
import type { FeedingVerdict, PlantingCalcium } from "../../src/calcium/index.js";
import { addDays, day, type Day } from "../../src/dates.js";
import { nothingPublished } from "../../src/published/index.js";
import type {
  BedRound,
  CanFill,
  CanMix,
  Feeding,
  OtherFeedMix,
  Plan,
  PlanGarden,
  PlannedPlanting,
  PlanWarning,
  Round,
} from "../../src/season/season-plan.js";
import type { PlanWatering } from "../../src/season/water-side.js";

/** Each builder gives a valid value; a test states only what differs. */
export function aPlan(
  differs: Partial<Omit<Plan, "garden">> & { garden?: Partial<PlanGarden> } = {},
): Plan {
  const rounds = differs.rounds ?? [aRound()];
  return {
    planVersion: 1,
    today: day("2027-01-01"),
    plantings: [aPlantingInPlan()],
    rules: [],
    calcium: [],
    warnings: [],
    notes: [],
    assumptions: [],
    published: nothingPublished,
    totals: {
      rounds: rounds.length,
      feedings: rounds
        .flatMap(({ beds }) => beds)
        .flatMap(({ mixes }) => mixes)
        .flatMap(({ feedings }) => feedings).length,
      waterL: sum(rounds, ({ waterL }) => waterL),
      stockMl: sum(rounds, ({ stockMl }) => stockMl),
    },
    ...differs,
    rounds,
    garden: aPlanGarden(differs.garden),
  };
}

function aPlanGarden(differs: Partial<PlanGarden> = {}): PlanGarden {
  return {
    id: "weir-cottage",
    name: "Weir Cottage",
    timezone: "Europe/Dublin",
    season: { from: day("2027-03-01"), to: day("2027-10-31") },
    amounts: "metric",
    canL: 9,
    sprayerL: 5,
    durationMin: 45,
    calendar: { group: "round", remindersMinBefore: [], color: "seagreen", refreshHours: 12 },
    ...differs,
  };
}

export function aPlantingInPlan(differs: Partial<PlannedPlanting> = {}): PlannedPlanting {
  return {
    id: "toms",
    name: "toms",
    bed: "south",
    bedName: "South bed",
    crop: "tomato",
    cropName: "tomato",
    stages: [],
    fed: true,
    reason: "blossom-end rot",
    rules: ["tomato-fruit"],
    ...differs,
  };
}

/** 6 plants on 4 m2, watered with 500 L and fed. */
export function aPlantingCalcium(differs: Partial<PlantingCalcium> = {}): PlantingCalcium {
  const amount = (low: number, high: number) => ({
    wholeG: { low, high },
    perPlantG: { low: low / 6, high: high / 6 },
    perM2G: { low: low / 4, high: high / 4 },
  });
  return {
    planting: "toms",
    name: "toms",
    bed: "south",
    bedName: "South bed",
    crop: "tomato",
    cropName: "tomato",
    plants: 6,
    areaM2: 4,
    need: { ...amount(30, 60), sources: ["a trial of whole tomato plants"] },
    water: { ...amount(12, 18), waterL: 500, calciumMgPerL: { low: 24, high: 36 } },
    amendments: [],
    feed: amount(3, 3),
    sharePercent: { low: 5, high: 10 },
    verdicts: [aVerdict()],
    ...differs,
  };
}

export function aVerdict(differs: Partial<FeedingVerdict> = {}): FeedingVerdict {
  return {
    rule: "tomato-fruit",
    route: "drench",
    disorder: "blossom-end rot",
    feeds: true,
    judgement: { kind: "cannot-tell", why: "soil-not-known", decidedBy: "soil-test" },
    ...differs,
  };
}

/** Weeks of so many litres, the first from a Monday, 9 L of each in the rounds. */
export function aBedWatered(
  waterL: readonly number[],
  differs: Partial<PlanWatering> = {},
): PlanWatering {
  const monday = day("2027-05-31");
  return {
    bed: "south",
    bedName: "South bed",
    by: "weather",
    days: [],
    weeks: waterL.map((liters, i) => ({
      from: addDays(monday, 7 * i),
      to: addDays(monday, 7 * i + 6),
      waterL: liters,
      usualL: liters,
      roundL: 9,
      leftL: Math.max(0, liters - 9),
    })),
    unknown: [],
    ...differs,
  };
}

export function aRound(differs: Partial<Round> = {}): Round {
  const beds = differs.beds ?? [aBedRound()];
  const mixes = beds.flatMap((bed) => bed.mixes);
  return {
    day: day("2027-06-12"),
    beds,
    waterL: sum(mixes, ({ waterL }) => waterL),
    stockMl: sum(mixes, ({ stockMl }) => stockMl),
    ...differs,
  };
}

export function aBedRound(differs: Partial<BedRound> = {}): BedRound {
  return { bed: "south", bedName: "South bed", mixes: [aMix()], ...differs };
}

/** 22 L at 2.5 mL to the litre in 9 L cans. */
export function aMix(differs: Partial<CanMix> = {}): CanMix {
  const fills = differs.fills ?? [
    aFill({ count: 2 }),
    aFill({ full: false, waterL: 4, stockMl: 10, waterText: "4 L", stockText: "10 mL" }),
  ];
  return {
    route: "drench",
    rateMlPerL: 2.5,
    feedings: [aFeeding()],
    waterL: sum(fills, ({ count, waterL }) => count * waterL),
    exactStockMl: 55,
    stockMl: sum(fills, ({ count, stockMl }) => count * stockMl),
    calciumMgPerL: 50,
    fills,
    ...differs,
  };
}

export function aFill(differs: Partial<CanFill> = {}): CanFill {
  return {
    count: 1,
    full: true,
    waterL: 9,
    stockMl: 23,
    waterText: "9 L",
    stockText: "23 mL",
    ...differs,
  };
}

export function aFeeding(differs: Partial<Feeding> = {}): Feeding {
  return {
    planting: "toms",
    name: "toms",
    crop: "tomato",
    cropName: "tomato",
    rule: "tomato-fruit",
    evidence: "common-practice",
    disorder: "blossom-end rot",
    stage: "fruit-growth",
    stageOrigin: "seen on 2027-06-01",
    baseRateMlPerL: 2.5,
    level: 1,
    number: 3,
    window: { earliest: day("2027-06-10"), latest: day("2027-06-16") },
    inWindow: true,
    waterL: 22,
    ...differs,
  };
}

export function anOtherFeed(differs: Partial<OtherFeedMix> = {}): OtherFeedMix {
  return {
    feed: "comfrey tea",
    bed: "south",
    bedName: "South bed",
    plantings: ["toms"],
    rateMlPerL: 100,
    waterL: 9,
    fills: [aFill({ stockMl: 900, stockText: "900 mL" })],
    ...differs,
  };
}

export function aWarning(differs: Partial<PlanWarning> = {}): PlanWarning {
  return { code: "window-missed", message: "toms go unfed", mend: "feed by hand", ...differs };
}

/** Rounds of the same kind on many days. */
export function roundsOn(days: readonly string[], differs: Partial<Round> = {}): Round[] {
  return days.map((text) => aRound({ ...differs, day: day(text) }));
}

export function daysFrom(first: Day, count: number, everyDays: number): Day[] {
  return Array.from({ length: count }, (_, i) => addDays(first, i * everyDays));
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}
