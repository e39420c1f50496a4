/**
 * The plan of a season: one plain value, JSON as it stands. Every output (calendar, sheet, labels,
 * page) is a pure function of it. `schemas/plan.schema.json` documents it for other programs.
 */
import type { PlantingCalcium } from "../calcium/index.js";
import type { PlaceClimate, SeasonFrost } from "../climate/index.js";
import type { StageName } from "../crops/index.js";
import type { Day, DaySpan } from "../dates.js";
import type { Amounts, CalendarWishes, LogEntry, Route, WateringDays } from "../garden/index.js";
import type { Published } from "../published/index.js";
import type { Evidence, FeedRule } from "../rules/index.js";
import type { StageSpan } from "../stages/index.js";
import type { SignsOfFeeding } from "./feeding-signs.js";
import type { Pour, SeasonStock } from "./stock-side.js";
import type { PlanWatering } from "./water-side.js";

/** The plan of a season, as `plan --json` prints it (`schemas/plan.schema.json`). Plain data: it can be kept as JSON. */
export interface Plan {
  readonly planVersion: 1;
  /** The day it was made for: what lies before it is past. */
  readonly today: Day;
  readonly garden: PlanGarden;
  readonly plantings: readonly PlannedPlanting[];
  /** Sorted by day. */
  readonly rounds: readonly Round[];
  /** The rules behind the feedings. */
  readonly rules: readonly FeedRule[];
  /** Bottles in hand, batches to make, and which bottle each feeding is poured from. */
  readonly stock?: SeasonStock;
  /** Of beds whose watering the garden file tells; absent where it tells none. */
  readonly watering?: readonly PlanWatering[];
  /** Where the calcium of each planting comes from, and what can be expected of the feed. */
  readonly calcium: readonly PlantingCalcium[];
  readonly warnings: readonly PlanWarning[];
  /** What the log, the signs and the forecast changed, and why. */
  readonly notes: readonly PlanNote[];
  /** Published feedings that were not given, by day. */
  readonly missed?: readonly MissedFeedings[];
  /** The state of the calendar with this plan in it. */
  readonly published: Published;
  /** Defaults used where the garden file was silent. */
  readonly assumptions: readonly string[];
  readonly totals: PlanTotals;
}

/** What outputs need to know of the garden. */
export interface PlanGarden {
  readonly id: string;
  readonly name: string;
  readonly timezone: string;
  readonly season: DaySpan;
  readonly amounts: Amounts;
  readonly canL: number;
  readonly sprayerL: number;
  readonly timeOfDay?: string;
  readonly durationMin: number;
  readonly calendar: CalendarWishes;
  /** How watering days stand in the calendar; absent where they don't. */
  readonly watering?: Pick<WateringDays, "timeOfDay" | "remindersMinBefore">;
  /** Of its place; absent where it is not known. */
  readonly climate?: PlanClimate;
  /** About its season; absent where none is to be expected, or nothing is known. */
  readonly frost?: PlanFrost;
}

export interface PlanFrost extends SeasonFrost {
  /** It can come in any month. */
  readonly allYear?: true;
}

/** Where the means are from, and how far they can be trusted. */
export interface PlanClimate extends Pick<PlaceClimate, "origin" | "point" | "errorC"> {
  /** First and last day of the season's years that weather files tell; absent where they tell none. */
  readonly weather?: DaySpan;
}

/** A planting with the dates of its stages; `reason` says why it is fed, or why not. */
export interface PlannedPlanting {
  readonly id: string;
  readonly name: string;
  readonly bed: string;
  readonly bedName: string;
  readonly crop: string;
  readonly cropName: string;
  readonly stages: readonly StageSpan[];
  readonly fed: boolean;
  /** Why it is fed, or why not. */
  readonly reason: string;
  readonly rules: readonly string[];
  /** From its first feeding to its last; absent where it is not fed. */
  readonly feeding?: FeedingSpan;
}

/** When a planting is fed first and last, and why it begins and ends there. */
export interface FeedingSpan {
  readonly first: Day;
  readonly last: Day;
  /** Why it is not fed before, in words for the grower. */
  readonly begins: string;
  /** Why it is not fed after, in words for the grower. */
  readonly why: string;
  /** Key of the garden file that changes it. */
  readonly key: string;
}

/** One trip on one day. */
export interface Round {
  readonly day: Day;
  /** `HH:MM`, absent for all-day. */
  readonly timeOfDay?: string;
  /** All of it was given: written down in the log, or published and past. */
  readonly given?: true;
  /** Nobody wrote any of it down: it was published, and its day is past. */
  readonly asPublished?: true;
  /** The published day that it stands for, where it was given on another. */
  readonly standsFor?: Day;
  /** What the log says of that day. */
  readonly log?: readonly SaidInLog[];
  readonly beds: readonly BedRound[];
  /** Other liquid feeds of that day. */
  readonly feeds?: readonly OtherFeedMix[];
  readonly waterL: number;
  readonly stockMl: number;
  /** How much of `stockMl` no bottle gives; absent where there is stock for all. */
  readonly shortMl?: number;
}

/** A log entry without its place in the file. */
export type SaidInLog = Omit<LogEntry, "path">;

/** What was published for a bed on a day and was not given there. */
export interface MissedFeedings {
  readonly day: Day;
  readonly bed: string;
  readonly bedName: string;
  /** Names of the plantings. */
  readonly plantings: readonly string[];
  /** What says so: the log, an absence, the dates of the plantings, or that there was nothing to pour. */
  readonly why: "log" | "away" | "removed" | "not-yet-planted" | "no-stock";
}

/** What one bed gets on one trip. */
export interface BedRound {
  readonly bed: string;
  readonly bedName: string;
  readonly mixes: readonly CanMix[];
}

/** Plantings of one bed with the same rate and route share cans. */
export interface CanMix {
  readonly route: Route;
  readonly rateMlPerL: number;
  readonly feedings: readonly Feeding[];
  readonly waterL: number;
  /** Rate times water, before rounding. */
  readonly exactStockMl: number;
  /**
   * What the bottles give, in hundredths of a mL: the sum of the fills, within 5 % of the exact figure;
   * with a jug all that goes into it. As the log has it where it was given.
   */
  readonly stockMl: number;
  /** How much of `stockMl` no bottle gives; absent where there is stock for all. */
  readonly shortMl?: number;
  /** It was given: written down in the log, or published and past. */
  readonly given?: true;
  /** Nobody wrote it down: it was published, and its day is past. */
  readonly asPublished?: true;
  /** The published day that it stands for, where it was given on another. */
  readonly standsFor?: Day;
  /** Calcium that the stock brings, mg per litre of can water. */
  readonly calciumMgPerL: number;
  /** Calcium that the source water brings beside it; absent when its hardness is not known. */
  readonly tapCalciumMgPerL?: number;
  /** It is of the water's hardness alone, of which magnesium is a part: the most that it can be. */
  readonly tapCalciumAtMost?: true;
  /** What the same mL would bring if the bottle were poured clear. */
  readonly clearCalciumMgPerL?: number;
  /** What the mixed can is like, where the source water is known. */
  readonly can?: MixedCan;
  /** The bottles it is poured from, in the order of pouring. */
  readonly pours?: readonly Pour[];
  /** Full fills first, then at most one part fill. */
  readonly fills: readonly CanFill[];
}

/** A can ready to pour, as the equilibrium of stock and tap water has it. */
export interface MixedCan {
  readonly ph: number;
  /** Dissolved, from stock and tap. */
  readonly dissolvedCalciumMgPerL: number;
  /** Fine solid that a stirred can still carries, mg/L. */
  readonly settlesMgPerL: number;
}

/** Another liquid feed for one bed. */
export interface OtherFeedMix {
  readonly feed: string;
  readonly bed: string;
  readonly bedName: string;
  readonly plantings: readonly string[];
  readonly rateMlPerL: number;
  readonly waterL: number;
  /** Written down in the log, or published and past. */
  readonly given?: true;
  /** Nobody wrote it down: it was published, and its day is past. */
  readonly asPublished?: true;
  /** A bottle opened before that day is past its shelf life, where the garden file gives one. */
  readonly openedSince?: Day;
  /** `stockMl` and `stockText` are of that feed. */
  readonly fills: readonly CanFill[];
}

/** Cans that are filled alike; the texts are in the measures of the garden. */
export interface CanFill {
  /** How many like this. */
  readonly count: number;
  readonly full: boolean;
  readonly waterL: number;
  readonly stockMl: number;
  /** As a person reads and measures it: `9 L`, `1 1/2 gal`. */
  readonly waterText: string;
  /** `23 mL`, `3 3/4 tsp`. */
  readonly stockText: string;
  /** Where the stock of each can is less than can be measured. */
  readonly jug?: FromJug;
  /** How much of it is from each bottle, where it is poured from several. */
  readonly pours?: readonly FillPour[];
}

/** Of one of several bottles. */
export interface FillPour {
  readonly batch: string;
  readonly ml: number;
  readonly stockText: string;
}

/** The stock of all cans of a mix, stirred once in a jug of water; each can takes its share of it. */
export interface FromJug {
  /** In the jug: all of them together, or the least that can be measured. */
  readonly stockMl: number;
  readonly waterL: number;
  /** Of the jug, in each can like this; all of it where it is as much as the can's water. */
  readonly takeL: number;
  readonly stockText: string;
  readonly waterText: string;
  readonly takeText: string;
}

/** One planting fed on one day. */
export interface Feeding {
  readonly planting: string;
  readonly name: string;
  readonly crop: string;
  readonly cropName: string;
  readonly rule: string;
  readonly evidence: Evidence;
  readonly disorder: string;
  readonly stage: StageName;
  readonly stageOrigin: string;
  /** 1 for the first of its course. */
  readonly number: number;
  readonly window: { readonly earliest: Day; readonly latest: Day };
  readonly inWindow: boolean;
  readonly waterL: number;
  /** The rule's rate, or the planting's own. */
  readonly baseRateMlPerL: number;
  /** What the planting, and signs seen on it, multiply it by. */
  readonly level: number;
  /** What was seen on the planting and still holds; absent where nothing does. */
  readonly signs?: SignsOfFeeding;
  /** Calcium aimed at, mg per litre of can water; absent where the grower fixed the mL. */
  readonly targetMgPerL?: number;
}

/** Something to attend to, and the mend; `code` stays, the words may change. */
export interface PlanWarning {
  readonly code: string;
  readonly planting?: string;
  readonly bed?: string;
  readonly day?: Day;
  /** The day by which to know of it, where that is before `day`: the last feeding day before time away. */
  readonly tellOn?: Day;
  readonly message: string;
  readonly mend: string;
}

/** What changed in the plan because of something that happened. */
export interface PlanNote {
  readonly code: "sign" | "missed" | "log" | "weather";
  /** What was seen, as a person says it; of a sign alone. */
  readonly sign?: string;
  /** Absent where it concerns no single one. */
  readonly planting?: string;
  readonly day: Day;
  readonly message: string;
  /** What to do first. */
  readonly advice: readonly string[];
}

/** Sums over all rounds: counts, litres of can water, mL of stock. */
export interface PlanTotals {
  readonly rounds: number;
  readonly feedings: number;
  readonly waterL: number;
  readonly stockMl: number;
}
