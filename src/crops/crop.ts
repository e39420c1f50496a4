/** Shapes of the crop catalogue: `crops.yaml`, `stage-lengths.yaml`, `life-courses.yaml`, `warmth.yaml`. */
import type { Thresholds } from "../climate/index.js";

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

/** A crop as the catalogue has it; `source` says where its row is from, `sourceStatus` how far that was read. */
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
  /** How its stages follow warmth; absent where no sums are known. */
  readonly warmth?: CropWarmth;
  /** The first frost ends it. */
  readonly tender: boolean;
  /** Where it is grown in either way, the usual one. */
  readonly usualHabit?: Habit;
  /** Grows in sour soil and is never limed. */
  readonly acidSoil?: true;
  /** Ground that one plant has at published spacing, between plants times between rows. */
  readonly areaM2PerPlant?: PlantArea;
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

/** m2 of one plant: at the closest spacing, at the widest, and in the middle of both. */
export interface PlantArea {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly source: string;
}

export const habits = ["bush", "cordon"] as const;
export type Habit = (typeof habits)[number];

/** How the stages of a crop follow warmth: a row of `warmth.yaml`. */
export interface CropWarmth extends Thresholds {
  /** Followed without being asked for. */
  readonly auto: boolean;
  /** Why it is, or is not, in words for the grower. */
  readonly reason: string;
  /** Sums that fix the first day of a stage, in the order of the life. */
  readonly sums: readonly StageSum[];
  /** Degree days of the growth periods of rows of stage lengths, the usual one first. */
  readonly rows: readonly RowSums[];
  /** For a crop that never flowers before another one planted on the same day: the other's key. */
  readonly flowersAfter?: string;
}

/** A published sum: the degree days from one event of the life to the first day of a stage. */
export interface StageSum {
  readonly stage: StageName;
  /** From where it counts: a stage stands for that stage's first day. */
  readonly from: "sowing" | "transplanting" | "new-year" | StageName;
  readonly degreeDays: number;
  readonly least: number;
  readonly most: number;
  /** The stage begins no earlier than the day reaches this length, in hours. */
  readonly dayLengthH?: number;
  readonly source: string;
}

/** Degree days of the four growth periods, where and when the row was measured. */
export interface RowSums {
  /** Id of a row of stage lengths. */
  readonly row: string;
  readonly initial: number;
  readonly development: number;
  readonly mid: number;
  readonly late: number;
  /** Of the whole life, over all rows of the crop that can be compared. */
  readonly leastTotal: number;
  readonly mostTotal: number;
  readonly source: string;
}

/** Days in the four growth periods of FAO Irrigation and Drainage Paper 56, Table 11. */
export interface StageLengths {
  /** Names the row within its crop: `mediterranean-apr-may`. */
  readonly id: string;
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
  /** Picked again and again: the harvest goes on for as long as the plants stand. */
  readonly pickedRepeatedly: boolean;
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
