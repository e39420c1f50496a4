// @ts-nocheck
import type { Planting as PlantingFile } from "../compiled/garden-file.js";
import {
  type Crop,
  type CropCatalogue,
  cropMend,
  findCrop,
  type Habit,
  habits,
  stageNames,
} from "../crops/index.js";
import type { DaySpan } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import { type Planting, routes, type StageSeen, warmthWishes } from "./garden.js";
import { checkDates } from "./planting-dates.js";
import type { Bounds, WaterAmount } from "./quantity.js";
import type { Validation } from "./validation.js";

/** Of a bed, and of a planting in it. */
export const areaBounds: Bounds = { least: 0.01, most: 100_000, words: "0.01 to 100,000 m2" };

/** Where young plants are raised. */
export const raisedBounds: Bounds = { least: 5, most: 40, words: "5 to 40 C (41 to 104 F)" };

const intervalBounds: Bounds = { least: 1, most: 120, words: "1 to 120 days" };

/** A planting before its water is known, which can depend on its bed. */
export type PlantingDraft = Omit<Planting, "areaM2" | "waterL" | "sprayL" | "sprayIsUsual"> & {
  readonly waterGiven: WaterAmount | undefined;
  readonly sprayGiven: WaterAmount | undefined;
  readonly areaM2: number | undefined;
};

export function validatePlanting(
  entry: Entry<PlantingFile>,
  bed: string,
  season: DaySpan | undefined,
  { tables: { catalogue } }: Validation,
): PlantingDraft {
  const { raw, path } = entry;
  const word = entry.text("crop");
  const crop = word === undefined ? undefined : findCrop(word, catalogue);
  if (word !== undefined && crop === undefined && raw.feed !== false) {
    const { mend, ...fix } = cropMend(word, catalogue);
    entry.report({
      ...fix,
      code: "unknown-crop",
      path: entry.at("crop"),
      message: `the crop \`${word}\` is not known`,
      mend: `${mend} (with \`feed: false\` any name is listed and not fed)`,
    });
  }
  const seen = entry.entries("seen").flatMap((sighting): StageSeen[] => {
    const [stage, on] = [sighting.text("stage"), sighting.day("on")];
    return on === undefined || stage === undefined ? [] : [{ stage, on, path: sighting.path }];
  });
  const draft: PlantingDraft = {
    id: entry.text("id") ?? "",
    name: entry.text("name") ?? entry.text("id") ?? "",
    bed,
    crop: crop?.key ?? word ?? "",
    cropWord: word?.toLowerCase().trim() ?? "",
    ...given({
      variety: entry.text("variety"),
      // What is given wrongly is told once; a stand-in keeps it from being told as missing too.
      plants: entry.number("plants") ?? (raw.plants === undefined ? undefined : 1),
      sown: entry.day("sown"),
      transplanted: entry.day("transplanted"),
      bloom: entry.day("bloom"),
      removed: entry.day("removed"),
      pickedUntil: entry.day("picked_until"),
      habit: habitOf(entry, word, crop),
      row: entry.text("row"),
      warmth: entry.among(warmthWishes, "warmth"),
      raisedAtC: entry.temperature("raised_at", raisedBounds),
      established: raw.established === true ? true : undefined,
    }),
    seen,
    ...given({
      daysToHarvest: entry.number("days_to_harvest"),
      rateMlPerL: entry.rate("rate"),
      intervalDays: entry.days("interval", intervalBounds),
    }),
    level: entry.number("level") ?? 1,
    feed:
      typeof raw.feed === "boolean"
        ? raw.feed
          ? "yes"
          : "no"
        : (entry.among([...routes, "both"], "feed") ?? "by-rule"),
    ...given({ through: entry.among(["harvest"] as const, "through") }),
    path,
    waterGiven: entry.water("water"),
    sprayGiven: entry.water("spray"),
    areaM2: entry.quantity("area", "area", areaBounds) ?? (raw.area === undefined ? undefined : 1),
  };
  if (crop) {
    checkStart(crop, entry);
    checkCropsOwn(crop, entry, catalogue);
  }
  if (draft.feed === "no" && draft.through !== undefined)
    entry.report({
      code: "through-unfed",
      path: entry.at("through"),
      message:
        "`through: harvest` feeds it to the end of the harvest, and `feed: false` never feeds it",
      mend: "leave one of the two out",
    });
  // What is only listed may have stood for years.
  const anyYear = crop === undefined || crop.perennial;
  const reach = season === undefined ? undefined : { season, anyYear };
  checkDates(draft, reach, crop?.transplantAgeDays ?? 0, entry);
  if (crop) checkSeen(crop, seen, entry);
  return draft;
}

/** What the grower says, or calls it: a `bush tomato`. */
function habitOf(
  entry: Entry<PlantingFile>,
  word: string | undefined,
  crop: Crop | undefined,
): Habit | undefined {
  const said = entry.among(habits, "habit");
  if (said !== undefined || crop?.usualHabit === undefined) return said;
  const words = word?.toLowerCase().split(/[\s_-]+/) ?? [];
  return habits.find((habit) => words.includes(habit));
}

/** Keys that only some crops can have, or whose words are the crop's own. */
function checkCropsOwn(crop: Crop, entry: Entry<PlantingFile>, { crops }: CropCatalogue): void {
  const row = entry.text("row");
  const ids = crop.lengths.map(({ id }) => id);
  if (row !== undefined && !ids.includes(row))
    entry.report({
      code: "unknown-row",
      path: entry.at("row"),
      message: `${crop.name} has no row \`${row}\` of stage lengths`,
      mend: `its rows are ${ids.join(", ")}`,
    });
  if (entry.raw.habit !== undefined && crop.usualHabit === undefined) {
    const named = crops.filter(({ usualHabit }) => usualHabit !== undefined);
    entry.report({
      code: "habit-of-other-crop",
      path: entry.at("habit"),
      message: `${crop.name} is not told apart by its habit`,
      mend: `leave \`habit\` out: it is for ${named.map(({ name }) => name).join(", ")}`,
    });
  }
  if (entry.raw.picked_until !== undefined && !crop.course.pickedRepeatedly)
    entry.report({
      code: "picked-once",
      path: entry.at("picked_until"),
      message: `\`picked_until\` is for crops that are picked again and again, and ${crop.name} is not`,
      mend: "write `removed:` with the day it is taken out",
    });
}

/**
 * A planting must be placed in time by something. A date that cannot be read is told already: it is a
 * beginning all the same.
 */
function checkStart(crop: Crop, entry: Entry<PlantingFile>): void {
  const { sown, transplanted, bloom, established } = entry.raw;
  if (bloom !== undefined && !crop.perennial)
    entry.report({
      code: "bloom-of-annual",
      path: entry.at("bloom"),
      message: `\`bloom\` is for perennials, and ${crop.name} is an annual`,
      mend: "write `seen: [{ stage: flowering, on: ... }]` instead",
    });
  if (crop.perennial || sown !== undefined || transplanted !== undefined) return;
  if (established !== true)
    entry.report({
      code: "no-start",
      path: entry.path,
      message: "nothing says when this planting begins",
      mend: "add `sown: 2027-04-01` or `transplanted: 2027-05-20`, or `established: true` with a stage seen",
    });
  else if (entry.list("seen").length === 0)
    entry.report({
      code: "no-start",
      path: entry.at("established"),
      message: "an established annual needs a stage that was seen, to know where it is in its life",
      mend: "add `seen: [{ stage: flowering, on: 2027-06-12 }]`",
    });
}

/** Stages that this crop has, each once, in the order of its life. */
function checkSeen(crop: Crop, seen: readonly StageSeen[], entry: Entry<PlantingFile>): void {
  const course: readonly string[] = crop.course.stages.map((stage) => stage.stage);
  const known = seen.filter(({ stage, path }) => {
    if (course.includes(stage)) return true;
    // A stage of no crop at all is told by the schema.
    if (!stageNames.some((name) => name === stage)) return false;
    entry.report({
      code: "stage-of-other-crop",
      path: [...path, "stage"],
      message: `${crop.name} has no stage \`${stage}\` in its life`,
      mend: `its stages are ${course.join(", ")}`,
    });
    return false;
  });
  const inOrder = [...known].sort((a, b) => course.indexOf(a.stage) - course.indexOf(b.stage));
  for (const [i, later] of inOrder.entries()) {
    const before = inOrder[i - 1];
    if (before && (later.stage === before.stage || later.on <= before.on))
      entry.report({
        code: "date-order",
        path: [...later.path, "on"],
        message:
          later.stage === before.stage
            ? `${later.stage} is given twice`
            : `${later.stage} was seen on ${later.on}, not after ${before.stage} on ${before.on}`,
        mend: later.stage === before.stage ? "keep one of the two" : "mend one of the two dates",
      });
  }
}
