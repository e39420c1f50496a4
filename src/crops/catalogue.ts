import { nearest } from "../suggest.js";
import { given } from "../values.js";
import type { CourseStage, Crop, LifeCourse, StageLengths, StageName } from "./crop.js";

/** The crops that are known, with their lengths and life courses joined to them. */
export interface CropCatalogue {
  readonly crops: readonly Crop[];
  /** Every understood word, in lower case and singular, to its crop. */
  readonly byWord: ReadonlyMap<string, Crop>;
}

/** A crop row of `crops.yaml`, as `schemas/crops.schema.json` has it. */
export interface CropRow {
  readonly key: string;
  readonly name: string;
  readonly also?: readonly string[];
  readonly botanical: string;
  readonly group: string;
  readonly course: string;
  readonly perennial: boolean;
  readonly counted_from: Crop["countedFrom"];
  readonly packet_days_from?: Crop["packetDaysFrom"];
  readonly transplant_age_days: number;
  readonly usual_bloom_north?: string;
  readonly water_l_per_plant: number;
  readonly spray_l_per_plant: number;
  readonly disorder?: string;
  readonly sensitivity: Crop["sensitivity"];
  readonly reason: string;
  readonly source: string;
  readonly source_status: Crop["sourceStatus"];
}

export interface StageLengthRow {
  readonly crop: string;
  readonly initial_days: number;
  readonly development_days: number;
  readonly mid_days: number;
  readonly late_days: number;
  readonly planted_months: readonly number[];
  readonly region: string;
  readonly note?: string;
  readonly source: string;
  readonly source_status: StageLengths["sourceStatus"];
}

export interface LifeCourseRow {
  readonly key: string;
  readonly description: string;
  readonly source: string;
  readonly stages: readonly {
    readonly stage: StageName;
    readonly bbch: string;
    readonly period: CourseStage["period"];
    readonly share: number;
  }[];
}

/** The three data files -> one catalogue. Throws when they do not fit together: our own bug. */
export function cropCatalogue(data: {
  readonly crops: readonly CropRow[];
  readonly stageLengths: readonly StageLengthRow[];
  readonly lifeCourses: readonly LifeCourseRow[];
}): CropCatalogue {
  const courses = new Map<string, LifeCourse>(data.lifeCourses.map((row) => [row.key, row]));
  const crops = data.crops.map((row): Crop => {
    const course = courses.get(row.course);
    const lengths = data.stageLengths.filter((lengthRow) => lengthRow.crop === row.key);
    if (!course || lengths.length === 0)
      throw new Error(`crops.yaml: ${row.key} lacks a life course or stage lengths`);
    return cropOf(row, course, lengths.map(lengthsOf));
  });
  const byWord = new Map<string, Crop>();
  for (const crop of crops)
    for (const word of [crop.key, crop.name, ...namesWithin(crop.name), ...crop.also])
      byWord.set(singular(word), crop);
  return { crops, byWord };
}

function cropOf(row: CropRow, course: LifeCourse, lengths: readonly StageLengths[]): Crop {
  return {
    key: row.key,
    name: row.name,
    also: row.also ?? [],
    botanical: row.botanical,
    group: row.group,
    course,
    perennial: row.perennial,
    countedFrom: row.counted_from,
    packetDaysFrom: row.packet_days_from ?? row.counted_from,
    transplantAgeDays: row.transplant_age_days,
    ...given({ usualBloomNorth: row.usual_bloom_north }),
    lengths,
    waterLPerPlant: row.water_l_per_plant,
    sprayLPerPlant: row.spray_l_per_plant,
    ...given({ disorder: row.disorder }),
    sensitivity: row.sensitivity,
    reason: row.reason,
    source: row.source,
    sourceStatus: row.source_status,
  };
}

function lengthsOf(row: StageLengthRow): StageLengths {
  return {
    initialDays: row.initial_days,
    developmentDays: row.development_days,
    midDays: row.mid_days,
    lateDays: row.late_days,
    plantedMonths: row.planted_months,
    region: row.region,
    ...given({ note: row.note }),
    source: row.source,
    sourceStatus: row.source_status,
  };
}

/** The crop a grower's word means: any case, singular or plural, hyphens or blanks. */
export function findCrop(word: string, catalogue: CropCatalogue): Crop | undefined {
  return catalogue.byWord.get(singular(word));
}

/** ``did you mean `tomato`?`` */
export function cropSuggestion(word: string, catalogue: CropCatalogue): string {
  const plain = singular(word);
  const words = [...catalogue.byWord.keys()];
  const near = nearest(plain, words) ?? words.find((known) => known.split(" ").includes(plain));
  return near === undefined
    ? "`feedround crops` lists the crops that are known"
    : `did you mean \`${near}\`?`;
}

/** `eggplant (aubergine)` is found as either. */
function namesWithin(name: string): string[] {
  const match = /^(.*?)\s*\((.*)\)$/.exec(name);
  return match?.[1] !== undefined && match[2] !== undefined ? [match[1], match[2]] : [];
}

/** Lower case, single blanks, English plural endings taken off. */
export function singular(word: string): string {
  const plain = word
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[\s_-]+/g, " ")
    .trim();
  return plain
    .replace(/(?<=[a-z]{2})ies$/, "y")
    .replace(/(?<=o|sh|ch|x|ss)es$/, "")
    .replace(/(?<=[a-rt-z])s$/, "");
}
