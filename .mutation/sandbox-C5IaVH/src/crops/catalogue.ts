// @ts-nocheck
import { meant, type Mending, nearest } from "../suggest.js";
import { given } from "../values.js";
import type {
  Crop,
  CropWarmth,
  LifeCourse,
  PlantArea,
  RowSums,
  StageLengths,
  StageSum,
} from "./crop.js";

/** The crops that are known, with their lengths and life courses joined to them. */
export interface CropCatalogue {
  readonly crops: readonly Crop[];
  /** Every understood word, in lower case and singular, to its crop. */
  readonly byWord: ReadonlyMap<string, Crop>;
}

/** `waterLPerPlant` is `water_l_per_plant` in the data files. */
type InFile<T> = { readonly [Key in keyof T as SnakeCase<Key & string>]: T[Key] };
type SnakeCase<Text extends string> = Text extends `${infer First}${infer Rest}`
  ? `${First extends Lowercase<First> ? First : `_${Lowercase<First>}`}${SnakeCase<Rest>}`
  : "";

/** A row of `crops.yaml`: the crop with the key of its life course. */
export interface CropRow extends Omit<
  InFile<Crop>,
  "also" | "course" | "packet_days_from" | "lengths" | "warmth" | "area_m2_per_plant"
> {
  readonly also?: Crop["also"];
  readonly course: string;
  readonly packet_days_from?: Crop["packetDaysFrom"];
  readonly spacing?: { readonly plant_cm: ClosestToWidest; readonly row_cm: ClosestToWidest };
  readonly spacing_source?: string;
}

type ClosestToWidest = readonly [number, number];

/** A row of `life-courses.yaml`. */
export type LifeCourseRow = InFile<LifeCourse>;

export interface StageLengthRow extends InFile<StageLengths> {
  readonly crop: string;
}

/** A row of `warmth.yaml`. */
export interface WarmthRow extends Omit<InFile<CropWarmth>, "sums" | "rows"> {
  readonly crop: string;
  readonly source: string;
  readonly sums: readonly InFile<StageSum>[];
  readonly rows: readonly Omit<InFile<RowSums>, "least_total" | "most_total" | "source">[];
  readonly rows_source?: string;
}

/** The four data files -> one catalogue. Throws when they do not fit together: our own bug. */
export function cropCatalogue(data: {
  readonly crops: readonly CropRow[];
  readonly stageLengths: readonly StageLengthRow[];
  readonly lifeCourses: readonly LifeCourseRow[];
  readonly warmth: readonly WarmthRow[];
}): CropCatalogue {
  const courses = new Map(
    data.lifeCourses.map(({ picked_repeatedly, ...row }): [string, LifeCourse] => [
      row.key,
      { ...row, pickedRepeatedly: picked_repeatedly },
    ]),
  );
  const crops = data.crops.map((row): Crop => {
    const course = courses.get(row.course);
    const lengths = data.stageLengths.filter((lengthRow) => lengthRow.crop === row.key);
    if (!course || lengths.length === 0)
      throw new Error(`crops.yaml: ${row.key} lacks a life course or stage lengths`);
    const warmth = warmthOf(data.warmth.find((warmthRow) => warmthRow.crop === row.key));
    return { ...cropOf(row, course, lengths.map(lengthsOf)), ...given({ warmth }) };
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
    tender: row.tender,
    ...given({ usualHabit: row.usual_habit }),
    ...given({ acidSoil: row.acid_soil, areaM2PerPlant: plantArea(row) }),
    waterLPerPlant: row.water_l_per_plant,
    sprayLPerPlant: row.spray_l_per_plant,
    ...given({ disorder: row.disorder }),
    sensitivity: row.sensitivity,
    reason: row.reason,
    source: row.source,
    sourceStatus: row.source_status,
  };
}

function plantArea({ spacing, spacing_source: source }: CropRow): PlantArea | undefined {
  if (spacing === undefined || source === undefined) return undefined;
  const [plantLow, plantHigh] = spacing.plant_cm;
  const [rowLow, rowHigh] = spacing.row_cm;
  return {
    low: (plantLow * rowLow) / cm2PerM2,
    usual: (((plantLow + plantHigh) / 2) * ((rowLow + rowHigh) / 2)) / cm2PerM2,
    high: (plantHigh * rowHigh) / cm2PerM2,
    source,
  };
}

const cm2PerM2 = 10_000;

function lengthsOf(row: StageLengthRow): StageLengths {
  return {
    id: row.id,
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

function warmthOf(row: WarmthRow | undefined): CropWarmth | undefined {
  if (row === undefined) return undefined;
  const totals = row.rows.map((sums) => sums.initial + sums.development + sums.mid + sums.late);
  return {
    auto: row.auto,
    reason: row.reason,
    method: row.method,
    baseC: row.base_c,
    ...given({ upperC: row.upper_c, flowersAfter: row.flowers_after }),
    sums: row.sums.map(({ degree_days: degreeDays, day_length_h: dayLengthH, ...sum }) => ({
      ...sum,
      degreeDays,
      ...given({ dayLengthH }),
    })),
    rows: row.rows.map((sums) => ({
      ...sums,
      leastTotal: Math.min(...totals),
      mostTotal: Math.max(...totals),
      source: row.rows_source ?? row.source,
    })),
  };
}

/** The crop a grower's word means: any case, singular or plural, hyphens or blanks. */
export function findCrop(word: string, catalogue: CropCatalogue): Crop | undefined {
  return catalogue.byWord.get(singular(word));
}

/** ``did you mean `tomato`?`` */
export function cropSuggestion(word: string, catalogue: CropCatalogue): string {
  return cropMend(word, catalogue).mend;
}

export function cropMend(word: string, catalogue: CropCatalogue): Mending {
  const plain = singular(word);
  const words = [...catalogue.byWord.keys()];
  const near = nearest(plain, words) ?? words.find((known) => known.split(" ").includes(plain));
  return meant(near, "`feedround crops` lists the crops that are known");
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
