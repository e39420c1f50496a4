import type {
  Planting as PlantingFile,
  StageSeen as StageSeenFile,
} from "../compiled/garden-file.js";
import { type Crop, cropSuggestion, findCrop, stageNames } from "../crops/index.js";
import { addDays, type Day, type DaySpan } from "../dates.js";
import type { FilePath } from "../problem.js";
import { given } from "../values.js";
import { among, list, type Loose, number, record, text } from "./fields.js";
import { type Planting, routes, type StageSeen } from "./garden.js";
import type { WaterAmount } from "./quantity.js";
import type { Validation } from "./validation.js";

/** Of a bed, and of a planting in it. */
export const areaBounds = { least: 0.01, most: 100_000, words: "0.01 to 100,000 m2" };

/** A planting before its water is known, which can depend on its bed. */
export type PlantingDraft = Omit<Planting, "waterL" | "sprayL" | "sprayIsUsual"> & {
  readonly waterGiven: WaterAmount | undefined;
  readonly sprayGiven: WaterAmount | undefined;
  readonly areaM2: number | undefined;
};

export function validatePlanting(
  value: unknown,
  path: FilePath,
  bed: string,
  season: DaySpan | undefined,
  validation: Validation,
): PlantingDraft {
  const { fields, tables } = validation;
  const raw = record<PlantingFile>(value);
  const word = text(raw.crop);
  const crop = word === undefined ? undefined : findCrop(word, tables.catalogue);
  if (word !== undefined && crop === undefined)
    fields.report({
      code: "unknown-crop",
      path: [...path, "crop"],
      message: `the crop \`${word}\` is not known`,
      mend: cropSuggestion(word, tables.catalogue),
    });
  const days = {
    sown: fields.day(raw.sown, [...path, "sown"]),
    transplanted: fields.day(raw.transplanted, [...path, "transplanted"]),
    bloom: fields.day(raw.bloom, [...path, "bloom"]),
    removed: fields.day(raw.removed, [...path, "removed"]),
  };
  const seen = list(raw.seen).flatMap((item, i): StageSeen[] => {
    const stage = record<StageSeenFile>(item);
    const on = fields.day(stage.on, [...path, "seen", i, "on"]);
    const name = text(stage.stage);
    return on !== undefined && name !== undefined
      ? [{ stage: name, on, path: [...path, "seen", i] }]
      : [];
  });
  const established = raw.established === true;
  // A date that cannot be read is told already: it is a beginning all the same.
  if (crop) checkStart(crop, raw, path, validation);
  checkDates({ ...days, seen }, crop?.perennial === true, path, season, validation);
  if (crop) checkSeen(crop, seen, validation);
  // What is given wrongly is told once; a stand-in keeps it from being told as missing too.
  const plants = number(raw.plants) ?? (raw.plants === undefined ? undefined : 1);
  const areaM2 = fields.quantity(raw.area, [...path, "area"], "area", areaBounds);
  return {
    id: text(raw.id) ?? "",
    name: text(raw.name) ?? text(raw.id) ?? "",
    bed,
    crop: crop?.key ?? word ?? "",
    cropWord: word?.toLowerCase().trim() ?? "",
    ...given({ variety: text(raw.variety), plants, ...days }),
    ...(established ? { established } : {}),
    seen,
    ...given({ daysToHarvest: number(raw.days_to_harvest) }),
    ...given({
      rateMlPerL: fields.rate(raw.rate, [...path, "rate"]),
      intervalDays: wholeDays(
        fields.quantity(raw.interval, [...path, "interval"], "time", {
          least: 1,
          most: 120,
          words: "1 to 120 days",
        }),
      ),
    }),
    level: number(raw.level) ?? 1,
    feed: feedOf(raw.feed),
    path,
    waterGiven: fields.water(raw.water, [...path, "water"]),
    sprayGiven: fields.water(raw.spray, [...path, "spray"]),
    areaM2: areaM2 ?? (raw.area === undefined ? undefined : 1),
  };
}

function feedOf(value: unknown): PlantingDraft["feed"] {
  if (typeof value === "boolean") return value ? "yes" : "no";
  return among([...routes, "both"], value) ?? "by-rule";
}

function wholeDays(days: number | undefined): number | undefined {
  return days === undefined ? undefined : Math.round(days);
}

interface PlantingDates {
  readonly sown: Day | undefined;
  readonly transplanted: Day | undefined;
  readonly bloom: Day | undefined;
  readonly removed: Day | undefined;
  readonly seen: readonly StageSeen[];
}

/** A planting must be placed in time by something. */
function checkStart(
  crop: Crop,
  raw: Loose<PlantingFile>,
  path: FilePath,
  { fields }: Validation,
): void {
  const { sown, transplanted, bloom } = raw;
  if (bloom !== undefined && !crop.perennial)
    fields.report({
      code: "bloom-of-annual",
      path: [...path, "bloom"],
      message: `\`bloom\` is for perennials, and ${crop.name} is an annual`,
      mend: "write `seen: [{ stage: flowering, on: ... }]` instead",
    });
  if (crop.perennial || sown !== undefined || transplanted !== undefined) return;
  if (raw.established !== true)
    fields.report({
      code: "no-start",
      path,
      message: "nothing says when this planting begins",
      mend: "add `sown: 2027-04-01` or `transplanted: 2027-05-20`, or `established: true` with a stage seen",
    });
  else if (list(raw.seen).length === 0)
    fields.report({
      code: "no-start",
      path: [...path, "established"],
      message: "an established annual needs a stage that was seen, to know where it is in its life",
      mend: "add `seen: [{ stage: flowering, on: 2027-06-12 }]`",
    });
}

/** Days that contradict each other or the season. */
function checkDates(
  { sown, transplanted, bloom, removed, seen }: PlantingDates,
  perennial: boolean,
  path: FilePath,
  season: DaySpan | undefined,
  { fields }: Validation,
): void {
  const contradict = (key: FilePath, message: string, mend: string): void => {
    fields.report({ code: "date-order", path: [...path, ...key], message, mend });
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
    else if (season !== undefined) inReach(["seen", i, "on"], `${stage} seen`, on, season);
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
  if (bloom !== undefined) inReach(["bloom"], "in bloom", bloom, season);

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
function checkSeen(crop: Crop, seen: readonly StageSeen[], { fields }: Validation): void {
  const course: readonly string[] = crop.course.stages.map((stage) => stage.stage);
  const known = seen.filter(({ stage, path }) => {
    if (course.includes(stage)) return true;
    // A stage of no crop at all is told by the schema.
    if (!stageNames.some((name) => name === stage)) return false;
    fields.report({
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
      fields.report({
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
