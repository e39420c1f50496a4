/** Any garden that is valid: wide in crops, places, seasons, measures and wishes. */
// @ts-nocheck

import fc from "fast-check";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import type { Crop } from "../../src/crops/crop.js";
import { addDays, day, type Day, daysBetween, type DaySpan, weekdays } from "../../src/dates.js";
import { eggSizes } from "../../src/garden/garden.js";
import { amendmentKinds, extracts, grades, mulches, soilKinds } from "../../src/garden/soil.js";
import { loadTables } from "../../src/tables.js";

const { catalogue, builtInRules } = loadTables();

type PlantingFile = GardenFile["beds"][number]["plantings"][number];

/** Any day of a span, both ends among them. */
function dayWithin({ from, to }: DaySpan): fc.Arbitrary<Day> {
  return fc.noBias(fc.nat(Math.max(daysBetween(from, to), 0))).map((n) => addDays(from, n));
}

const aSeason = fc
  .record({
    start: fc.noBias(fc.nat(1200)),
    length: fc.oneof(
      fc.integer({ min: 0, max: 380 }),
      fc.noBias(fc.integer({ min: 150, max: 380 })),
    ),
  })
  .map(({ start, length }): DaySpan => {
    const from = addDays(day("2026-01-01"), start);
    return { from, to: addDays(from, length) };
  });

const volumes = (...texts: string[]): fc.Arbitrary<string> => fc.constantFrom(...texts);

function aBedPlace(season: DaySpan): fc.Arbitrary<GardenFile["beds"][number]> {
  return fc
    .record(
      {
        id: fc.constant(""),
        name: fc.constantFrom("South bed", "Größe 2", "菜园", 'by the "wall"; east, back\\slash'),
        area: fc.constantFrom("4 m2", "40 ft²", "½ m2", "1.5 sq yd"),
        water: fc.constantFrom("12 L", "2 L per plant", "4 L per m2", "1 gal per 10 ft2", "3½ gal"),
        cover: aCover(season),
        soil: aSoil(season),
        amendments: fc.array(anAmendment(season), { maxLength: 2 }),
        watering: fc.constantFrom("auto", "60 L", "15 gal"),
        plantings: fc.array(aPlantingFile(season), { maxLength: 4 }),
      },
      { requiredKeys: ["id", "plantings"] },
    )
    .map((bed) => {
      const needs = bed.water?.split(" per ")[1];
      const isPlants = needs === "plant";
      return {
        ...bed,
        ...(needs !== undefined && !isPlants ? { area: bed.area ?? "4 m2" } : {}),
        plantings: bed.plantings.map((planting) => ({
          ...planting,
          ...(isPlants ? { plants: planting.plants ?? 3 } : {}),
        })),
      };
    });
}

function aSoil(season: DaySpan): fc.Arbitrary<NonNullable<GardenFile["soil"]>> {
  const test = fc.record({
    on: fc.nat(700).map((days) => addDays(season.from, -days)),
    extract: fc.constantFrom(...extracts),
    calcium: fc.constantFrom("850 ppm", "200 lb/acre", "7 meq/100 g"),
    ph: fc.constantFrom(5.2, 5.8, 6.5),
    ph_in: fc.constantFrom("water", "cacl2"),
  });
  return fc.record(
    { kind: fc.constantFrom(...soilKinds), mulch: fc.constantFrom(...mulches), test },
    { requiredKeys: ["kind"] },
  );
}

function anAmendment(
  season: DaySpan,
): fc.Arbitrary<NonNullable<GardenFile["beds"][number]["amendments"]>[number]> {
  return fc.record(
    {
      on: fc.nat(500).map((days) => addDays(season.from, -days)),
      what: fc.constantFrom(...amendmentKinds),
      amount: fc.constantFrom("500 g", "2 lb"),
      fineness: fc.constantFrom(...grades),
    },
    { requiredKeys: ["on", "what", "amount"] },
  );
}

function aCover(season: DaySpan): fc.Arbitrary<NonNullable<GardenFile["beds"][number]["cover"]>> {
  const dated = fc.tuple(dayWithin(season), fc.nat(300)).map(([from, days]) => ({
    kind: "tunnel" as const,
    from,
    to: addDays(from, days),
    warmer: "4 F",
  }));
  return fc.oneof(fc.constantFrom("glass" as const, "fleece" as const), dated);
}

const isFed = (crop: Crop): boolean =>
  builtInRules.some((rule) => rule.crops.includes(crop.key) || rule.groups.includes(crop.group));

const aCrop = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...catalogue.crops.filter(isFed)) },
  { weight: 1, arbitrary: fc.constantFrom(...catalogue.crops) },
);

/** Days of its own, in the order of its life: only the first is sure to lie in the season. */
function aPlantingFile(season: DaySpan): fc.Arbitrary<PlantingFile> {
  return aCrop.chain((crop) =>
    fc
      .record({
        word: fc.constantFrom(crop.key, crop.name, ...crop.also, crop.key.toUpperCase()),
        begin: dayWithin({ from: addDays(season.from, -150), to: season.to }),
        begun: fc.constantFrom("sown", "transplanted", "both", "established"),
        nurseryDays: fc.nat(80),
        seenAfter: fc.option(fc.array(fc.integer({ min: 1, max: 50 }), { maxLength: 4 })),
        stages: fc.shuffledSubarray(crop.course.stages.map((s) => s.stage)),
        removedAfter: fc.option(fc.integer({ min: 1, max: 200 }), { freq: 3 }),
        rest: aPlantingRest(crop),
      })
      .map(({ word, begin, begun, nurseryDays, seenAfter, stages, removedAfter, rest }) => {
        const later =
          addDays(begin, nurseryDays) <= season.to ? addDays(begin, nurseryDays) : begin;
        const times = crop.perennial
          ? perennialTimes(begun, begin, season)
          : annualTimes(begun, begin, later);
        const started = [times.sown, times.transplanted].find((d) => d !== undefined) ?? begin;
        const seen = sightings(crop, stages, seenAfter ?? [], started as Day, season);
        const isEstablished = times.established === true && !crop.perennial;
        const needed = isEstablished && seen.length === 0;
        const first = crop.course.stages[0]?.stage ?? "vegetative";
        const allSeen = needed ? [{ stage: first, on: begin }] : seen;
        const last = allSeen.at(-1)?.on ?? times.transplanted ?? times.bloom ?? begin;
        return {
          id: "",
          crop: word,
          ...times,
          ...(allSeen.length === 0 ? {} : { seen: allSeen }),
          ...(removedAfter === null ? {} : { removed: addDays(last as Day, removedAfter) }),
          ...rest,
        };
      }),
  );
}

type Times = Pick<PlantingFile, "sown" | "transplanted" | "established" | "bloom">;

function annualTimes(begun: string, begin: Day, later: Day): Times {
  switch (begun) {
    case "sown":
      return { sown: begin };
    case "transplanted":
      return { transplanted: begin };
    case "both":
      return { sown: begin, transplanted: later };
    default:
      return { established: true };
  }
}

function perennialTimes(begun: string, begin: Day, season: DaySpan): Times {
  switch (begun) {
    case "sown":
      return { bloom: begin };
    case "transplanted":
      return { transplanted: begin };
    case "both":
      return { transplanted: addDays(season.from, -2000) };
    default:
      return {};
  }
}

function sightings(
  crop: Crop,
  stages: readonly string[],
  after: readonly number[],
  started: Day,
  season: DaySpan,
): NonNullable<PlantingFile["seen"]> {
  const order = crop.course.stages.map((s) => s.stage).filter((stage) => stages.includes(stage));
  const earliest = addDays(season.from, -390);
  let on = started < earliest ? earliest : started;
  return after.flatMap((days, i) => {
    const stage = order[i];
    on = addDays(on, days);
    return stage === undefined || on > season.to ? [] : [{ stage, on }];
  });
}

function aPlantingRest(crop: Crop): fc.Arbitrary<Partial<PlantingFile>> {
  return fc
    .record(
      {
        name: fc.constantFrom("by the wall", "Marmande; early, big", "Größte"),
        variety: fc.constantFrom("plum", "Early"),
        plants: fc.integer({ min: 1, max: 60 }),
        area: fc.constantFrom("1 m2", "20 sq ft", "0.5 m²"),
        days_to_harvest: fc.integer({ min: 14, max: 200 }),
        water: fc.constantFrom("6 L", "2 L per plant", "4 L per m2", "¾ gal per plant", "50 mL"),
        spray: fc.constantFrom("500 mL", "0.2 L per plant", "1 pt"),
        rate: fc.constantFrom("2 mL per L", "10 mL in 4 L", "1/2 tsp per gal", "2.5 mL/L"),
        interval: ownInterval(crop),
        level: fc.constantFrom(0.5, 0.75, 1, 1.25, 1.5, 2),
        feed: fc.constantFrom(true, false, "drench", "foliar", "both"),
        row: fc.constantFrom(...crop.lengths.map(({ id }) => id)),
        warmth: fc.constantFrom("auto", "on", "off"),
        raised_at: fc.constantFrom("18 C", "68 °F"),
        habit: fc.constantFrom("bush", "cordon"),
        through: fc.constant("harvest"),
      },
      { requiredKeys: [] },
    )
    .map(
      ({ level, interval, habit, through, ...planting }) =>
        ({
          ...planting,
          ...(habit !== undefined && crop.usualHabit !== undefined ? { habit } : {}),
          ...(through !== undefined && planting.feed !== false ? { through } : {}),
          ...(level !== undefined && planting.rate === undefined ? { level } : {}),
          ...(interval === undefined ? {} : { interval }),
          ...(planting.water?.includes("per plant") || planting.spray?.includes("per plant")
            ? { plants: planting.plants ?? 2 }
            : {}),
          ...(planting.water?.includes("m2") ? { area: planting.area ?? "1 m2" } : {}),
        }) as Partial<PlantingFile>,
    );
}

/** What all rules for the crop allow, if they agree on anything. */
function ownInterval(crop: Crop): fc.Arbitrary<string | undefined> {
  const gaps = builtInRules
    .filter((rule) => rule.crops.includes(crop.key) || rule.groups.includes(crop.group))
    .map((rule) => rule.interval);
  const least = Math.max(...gaps.map((gap) => gap.shortestDays));
  const most = Math.min(...gaps.map((gap) => gap.longestDays));
  return gaps.length === 0 || least > most
    ? fc.constant(undefined)
    : fc.integer({ min: least, max: most }).map((days) => `${days} days`);
}

function aFeeding(season: DaySpan): fc.Arbitrary<GardenFile["feeding"]> {
  const away = fc.tuple(dayWithin(season), fc.nat(60)).map(([from, days]) => ({
    from,
    to: addDays(from, days),
  }));
  return fc.record(
    {
      days: fc.shuffledSubarray([...weekdays], { minLength: 1 }),
      time: fc.constantFrom("18:30", "6:05", "00:00", "23:59", "02:30"),
      duration: fc.constantFrom("30 min", "1½ h", "12 hours"),
      away: fc.array(away, { maxLength: 3 }),
    },
    { requiredKeys: [] },
  );
}

const aCalendar = fc.record(
  {
    group: fc.constantFrom("round", "bed"),
    reminders: fc.array(
      fc.constantFrom({ before: "30 min" }, { at: "18:00", days_before: 1 }, { at: "07:00" }),
      { maxLength: 2 },
    ),
    color: fc.constantFrom("seagreen", "yellowgreen"),
    refresh: fc.constantFrom("1 h", "1 day"),
  },
  { requiredKeys: [] },
) as fc.Arbitrary<GardenFile["calendar"]>;

function aStock(season: DaySpan): fc.Arbitrary<GardenFile["stock"]> {
  const made = dayWithin({ from: addDays(season.from, -90), to: addDays(season.from, -61) });
  const batch = fc.record(
    {
      made,
      volume: volumes("1 L", "500 mL", "1 qt"),
      left: volumes("0 mL", "400 mL", "1 cup"),
      strength: fc.constantFrom("18 g/L", "5 g/L"),
      acid: fc.constantFrom("citric", "vinegar"),
      keep: fc.constantFrom("fridge", "shelf"),
    },
    { requiredKeys: ["made", "volume"] },
  );
  return fc
    .record(
      {
        acid: fc.constantFrom("citric", "vinegar"),
        vinegar: fc.constantFrom("4 %", "6 %"),
        keep: fc.constantFrom("fridge", "shelf"),
        pour: fc.constantFrom("shaken", "clear"),
        bottles: volumes("250 mL", "1 L", "1 pt"),
        eggs: fc.constantFrom(...eggSizes),
        shells_per_week: fc.integer({ min: 0, max: 40 }),
        batches: fc.array(batch, { maxLength: 2 }),
      },
      { requiredKeys: [] },
    )
    .map((stock) => ({
      ...stock,
      ...(stock.batches === undefined
        ? {}
        : { batches: stock.batches.map((b, i) => ({ id: `B${i + 1}`, ...b })) }),
    })) as unknown as fc.Arbitrary<GardenFile["stock"]>;
}

function aGardenOver(season: DaySpan): fc.Arbitrary<GardenFile> {
  return fc
    .record(
      {
        version: fc.constant(1 as const),
        garden: fc.constantFrom("Weir Cottage", "Größer Garten", "菜园", "A, B; C\\D"),
        timezone: fc.constantFrom(
          "Europe/Dublin",
          "America/Los_Angeles",
          "Australia/Lord_Howe",
          "Pacific/Auckland",
          "Asia/Kathmandu",
          "America/Sao_Paulo",
          "Africa/Cairo",
          "UTC",
        ),
        season: fc.constant(season),
        hemisphere: fc.constantFrom("north" as const, "south" as const),
        amounts: fc.constantFrom("metric" as const, "us" as const, "imperial" as const),
        can: volumes("9 L", "2 gal", "1½ gal", "10 L", "750 mL", "5 L"),
        sprayer: volumes("2 L", "1 qt", "5 L"),
        source_water: fc.constantFrom(
          { hardness: "120 mg/L" },
          { hardness: "15 dH", calcium: "80 mg/L" },
        ),
        soil: aSoil(season),
        watering: fc.constantFrom({ days: ["tue", "fri"], calendar: true }, { time: "07:00" }),
        feed_when: fc.constantFrom("always" as const, "might-help" as const),
        feeding: aFeeding(season),
        calendar: aCalendar,
        stock: aStock(season),
        beds: fc.array(aBedPlace(season), { minLength: 1, maxLength: 4 }),
      },
      { requiredKeys: ["version", "garden", "timezone", "season", "beds"] },
    )
    .map((garden) =>
      withIds({
        // A zone of no place does not tell it.
        ...(garden.timezone === "UTC" ? { hemisphere: "north" } : {}),
        ...(garden as GardenFile),
      }),
    );
}

function withIds(garden: GardenFile): GardenFile {
  return {
    ...garden,
    beds: garden.beds.map((bed, b) => ({
      ...bed,
      id: `bed-${b + 1}`,
      plantings: bed.plantings.map((planting, p) => ({ ...planting, id: `p${b + 1}.${p + 1}` })),
    })),
  };
}

/** What was given, seen and poured beside: refers to the plantings of the garden. */
function withRecords(garden: GardenFile): fc.Arbitrary<GardenFile> {
  const plantings = garden.beds.flatMap((bed) => bed.plantings.map((planting) => planting.id));
  if (plantings.length === 0) return fc.constant(garden);
  const on = dayWithin(garden.season as DaySpan);
  const planting = fc.constantFrom(...plantings);
  const records = fc.record(
    {
      log: fc.array(
        fc.oneof(
          fc.record({ on, planting, stock: volumes("30 mL", "2 tbsp") }),
          fc.record({ on, planting }),
          fc.record({ on, bed: fc.constantFrom(...garden.beds.map((bed) => bed.id)) }),
          fc.record({ on }),
        ),
        { maxLength: 4 },
      ),
      signs: fc.array(
        fc.record({
          on,
          planting,
          sign: fc.constantFrom("blossom-end-rot", "tipburn", "leaf-edge-scorch", "white-crust"),
        }),
        { maxLength: 2 },
      ),
      feeds: fc.constantFrom(
        [{ name: "nettle", rate: "1 L per 10 L", every: "14 days" }],
        [{ name: "salts", rate: "2 mL per L", days: ["sun"], holds: ["sulfate"], gap: "3 days" }],
      ),
    },
    { requiredKeys: [] },
  ) as fc.Arbitrary<Partial<GardenFile>>;
  return records.map((more) => ({ ...garden, ...more }));
}

/** A garden that is only planned, with nothing logged, seen or poured beside. */
export const anyPlannedGarden: fc.Arbitrary<GardenFile> = aSeason.chain(aGardenOver);

/** Any valid garden, also in the middle of its season. */
export const anyGarden: fc.Arbitrary<GardenFile> = anyPlannedGarden.chain((garden) =>
  fc.oneof(
    { weight: 2, arbitrary: fc.constant(garden) },
    { weight: 1, arbitrary: withRecords(garden) },
  ),
);
