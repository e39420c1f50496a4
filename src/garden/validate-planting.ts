import type { Planting as PlantingFile } from "../compiled/garden-file.js";
import { type Crop, cropSuggestion, findCrop, stageNames } from "../crops/index.js";
import { addDays, type Day, type DaySpan } from "../dates.js";
import type { FilePath } from "../problem.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import { type Planting, routes, type StageSeen } from "./garden.js";
import type { Bounds, WaterAmount } from "./quantity.js";
import type { Validation } from "./validation.js";

/** Of a bed, and of a planting in it. */
export const areaBounds: Bounds = { least: 0.01, most: 100_000, words: "0.01 to 100,000 m2" };

const intervalBounds: Bounds = { least: 1, most: 120, words: "1 to 120 days" };

/** A planting before its water is known, which can depend on its bed. */
export type PlantingDraft = Omit<Planting, "waterL" | "sprayL" | "sprayIsUsual"> & {
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
  if (word !== undefined && crop === undefined && raw.feed !== false)
    entry.report({
      code: "unknown-crop",
      path: entry.at("crop"),
      message: `the crop \`${word}\` is not known`,
      mend: `${cropSuggestion(word, catalogue)} (with \`feed: false\` any name is listed and not fed)`,
    });
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
    path,
    waterGiven: entry.water("water"),
    sprayGiven: entry.water("spray"),
    areaM2: entry.quantity("area", "area", areaBounds) ?? (raw.area === undefined ? undefined : 1),
  };
  if (crop) checkStart(crop, entry);
  // What is only listed may have stood for years.
  checkDates(draft, crop === undefined || crop.perennial, season, entry);
  if (crop) checkSeen(crop, seen, entry);
  return draft;
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

/** Days that contradict each other or the season. */
function checkDates(
  { sown, transplanted, bloom, removed, seen }: PlantingDraft,
  perennial: boolean,
  season: DaySpan | undefined,
  entry: Entry<PlantingFile>,
): void {
  const contradict = (key: FilePath, message: string, mend: string): void => {
    entry.report({ code: "date-order", path: entry.at(...key), message, mend });
  };
  if (sown !== undefined && transplanted !== undefined && sown > transplanted)
    contradict(
      ["transplanted"],
      `transplanted on ${transplanted}, before it was sown on ${sown}`,
      "swap the two dates or mend the year",
    );
  const start = sown ?? transplanted;
  const startWord = sown === undefined ? "transplanted" : "sown";
  for (const [i, { stage, on }] of seen.entries()) {
    const before =
      start !== undefined && on < start
        ? `before it was ${startWord} on ${start}`
        : removed !== undefined && on >= removed
          ? `but it was removed on ${removed}`
          : undefined;
    if (before !== undefined)
      contradict(
        ["seen", i, "on"],
        `${stage} was seen on ${on}, ${before}`,
        "mend one of the two dates",
      );
    else if (season !== undefined)
      inReach(["seen", i, "on"], `${stage} seen`, on, season, perennial);
  }
  const begins = start ?? bloom;
  const beginsWord = start === undefined ? "in bloom" : startWord;
  if (removed !== undefined && begins !== undefined && removed < begins)
    contradict(
      ["removed"],
      `removed on ${removed}, before it was ${beginsWord} on ${begins}`,
      "mend one of the two dates",
    );
  if (season === undefined) return;
  if (start !== undefined) inReach([startWord], startWord, start, season, perennial);
  if (bloom !== undefined) inReach(["bloom"], "in bloom", bloom, season, perennial);

  /** Not after the season, and not long before it; a perennial may have stood for years. */
  function inReach(key: FilePath, what: string, on: Day, span: DaySpan, anyYear = false): void {
    if (on > span.to)
      contradict(
        key,
        `${what} on ${on}, after the season ends on ${span.to}`,
        "mend the year, or let the season end later",
      );
    else if (!anyYear && on < addDays(span.from, -longestLeadDays))
      contradict(
        key,
        `${what} on ${on}, more than ${longestLeadDays} days before the season begins`,
        "mend the year",
      );
  }
}

/** Overwintered crops are sown the year before; nothing fed now was sown earlier than that. */
const longestLeadDays = 400;

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
