/** Shapes of the crop catalogue: `crops.yaml`, `stage-lengths.yaml`, `life-courses.yaml`. */

/** Growers' words for where a planting is in its life, in the order they can come. */
export const stageNames = [
  "seedling",
  "establishment",
  "vegetative",
  "heading",
  "root-swelling",
  "flowering",
  "fruit-set",
  "fruit-growth",
  "ripening",
  "harvest",
  "after-harvest",
] as const;
export type StageName = (typeof stageNames)[number];

export interface Crop {
  /** Kebab case, singular: `tomato`, `sweet-pepper`. */
  readonly key: string;
  /** What the plan prints: `tomato`, `courgette (zucchini)`. */
  readonly name: string;
  /** Other words growers use for it: synonyms, American and British names. Plurals are understood without being listed. */
  readonly also: readonly string[];
  readonly botanical: string;
  /** A group that feed rules may name: `solanaceous`, `cucurbit`, `leafy-head`... */
  readonly group: string;
  readonly course: LifeCourse;
  readonly perennial: boolean;
  /** What day 1 of the stage lengths is. Perennials count from bloom. */
  readonly countedFrom: "sowing" | "transplanting" | "bloom";
  /** From where seed packets count days to harvest. */
  readonly packetDaysFrom: "sowing" | "transplanting" | "bloom";
  /** Usual age of a transplant: how long before transplanting it was sown; older ones grew no further. */
  readonly transplantAgeDays: number;
  /** Usual full bloom in temperate northern gardens, `MM-DD`; perennials only. */
  readonly usualBloomNorth?: string;
  /** Published or usual lengths, in the order of preference. At least one. */
  readonly lengths: readonly StageLengths[];
  /** Default water in one feeding, L per plant. */
  readonly waterLPerPlant: number;
  /** Default spray liquid in one foliar feeding, L per plant. */
  readonly sprayLPerPlant: number;
  /** Fails without calcium, and how; absent for companions that need no calcium feed. */
  readonly disorder?: string;
  readonly sensitivity: "high" | "moderate" | "low" | "none";
  /** In words for the grower: why it is fed, or why it needs no calcium feed. */
  readonly reason: string;
  readonly source: string;
  readonly sourceStatus: "read" | "weak source" | "from memory";
}

/** Days in the four growth periods of FAO Irrigation and Drainage Paper 56, Table 11. */
export interface StageLengths {
  readonly initialDays: number;
  readonly developmentDays: number;
  readonly midDays: number;
  readonly lateDays: number;
  /** Months of planting the row stands for (northern hemisphere), 1 to 12; empty for any. */
  readonly plantedMonths: readonly number[];
  readonly region: string;
  readonly note?: string;
  readonly source: string;
  readonly sourceStatus: "read" | "weak source" | "from memory";
}

/** Where the growers' stages of one kind of plant begin within the FAO periods. */
export interface LifeCourse {
  readonly key: string;
  readonly description: string;
  readonly stages: readonly CourseStage[];
  readonly source: string;
}

export interface CourseStage {
  readonly stage: StageName;
  /** BBCH codes, two digits, as in `69-71`. */
  readonly bbch: string;
  /** Where it begins: that share (0 to 1) of that FAO period. */
  readonly period: "initial" | "development" | "mid" | "late";
  readonly share: number;
}
