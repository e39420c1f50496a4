/**
 * The garden as the program sees it: every quantity in one unit, every default filled in, every
 * name resolved. Made only by `validateGarden`; see `schemas/garden.schema.json` for the file.
 */
import type { FrostDays, MonthlyMeans } from "../climate/index.js";
import type { Habit } from "../crops/index.js";
import type { Day, DaySpan, Weekday } from "../dates.js";
import type { FilePath } from "../problem.js";
import type { Amendment, Soil } from "./soil.js";

/** What printed amounts look like: mL and L, teaspoons and US gallons, or mL and imperial gallons. */
export type Amounts = "metric" | "us" | "imperial";
export const acids = ["citric", "vinegar"] as const;
export type Acid = (typeof acids)[number];
/** In the order of the work. */
export const routes = ["drench", "foliar"] as const;
export type Route = (typeof routes)[number];
export const pourStyles = ["shaken", "clear"] as const;
export type PourStyle = (typeof pourStyles)[number];
/** What the stock went through on its way into the bottle. */
export const strainers = ["mesh", "cloth"] as const;
export type Strainer = (typeof strainers)[number];
export const keptIn = ["fridge", "shelf"] as const;
export type KeptIn = (typeof keptIn)[number];

export const feedWishes = ["always", "might-help"] as const;

/** A garden file that is right, in our units: litres, degrees Celsius, calendar days; what the file left out is as usual. */
export interface Garden {
  /** Names the garden in calendar UIDs: stays when the name changes. */
  readonly id: string;
  /** The file names no id: it was made from the name. */
  readonly idIsFromName: boolean;
  readonly name: string;
  /** IANA name. */
  readonly timezone: string;
  readonly season: DaySpan;
  readonly hemisphere: "north" | "south";
  readonly location?: Location;
  /** The grower's own means; or stages stay on the calendar. */
  readonly climate?: GrowersClimate | "off";
  readonly weather?: WeatherFiles;
  /** Days of the year between which frost is not to be expected; overrides the estimate. */
  readonly frost?: FrostDays;
  /** Whether stages follow warmth, unless a planting says otherwise. */
  readonly warmth: WarmthWish;
  /** Temperature at which young plants are raised; the usual one where absent. */
  readonly raisedAtC?: number;
  readonly amounts: Amounts;
  readonly canL: number;
  readonly sprayerL: number;
  /** The sprayer's size is the usual one, not the grower's word. */
  readonly sprayerIsUsual: boolean;
  readonly sourceWater?: SourceWater;
  readonly watering: WateringDays;
  /** Whether a verdict that the feed cannot be expected to help takes feedings away. */
  readonly feedWhen: (typeof feedWishes)[number];
  readonly feeding: FeedingDays;
  readonly calendar: CalendarWishes;
  readonly stock: StockSettings;
  readonly beds: readonly Bed[];
  readonly feeds: readonly OtherFeed[];
  /** What a past round is that was published and of which the log says nothing. */
  readonly unlogged: "given" | "not-given";
  readonly log: readonly LogEntry[];
  readonly signs: readonly SignSeen[];
  /** Path of the grower's own rule file, as written. */
  readonly rulesFile?: string;
  /** Path of the calendar file that this garden publishes, as written: beside the garden file or below. */
  readonly calendarFile?: string;
  /** Defaults used because the file was silent, in words for the grower. */
  readonly assumptions: readonly string[];
}

export interface Location {
  /** South is negative. */
  readonly latitudeDeg: number;
  /** West is negative. */
  readonly longitudeDeg?: number;
  readonly elevationM?: number;
}

export interface GrowersClimate {
  readonly source: string;
  readonly means: MonthlyMeans;
}

/** Paths as written: beside the garden file or below. */
export interface WeatherFiles {
  readonly seen?: string;
  readonly forecast?: string;
}

/** `auto`: where sources carry it. */
export const warmthWishes = ["auto", "on", "off"] as const;
export type WarmthWish = (typeof warmthWishes)[number];

export const covers = ["glass", "tunnel", "fleece"] as const;
export type CoverKind = (typeof covers)[number];

export interface Cover extends Partial<DaySpan> {
  readonly kind: CoverKind;
  /** Warmer than outdoors by so many degC; the usual gain of the kind where absent. */
  readonly warmerC?: number;
}

export interface SourceWater {
  /** mg/L as CaCO3. */
  readonly hardnessMgPerL?: number;
  /** mg/L as CaCO3. */
  readonly alkalinityMgPerL?: number;
  /** mg/L of calcium itself, when the grower has it from a water report. */
  readonly calciumMgPerL?: number;
}

export interface WateringDays {
  readonly days: readonly Weekday[];
  /** `HH:MM` in the garden's zone; without it watering days are all-day events. */
  readonly timeOfDay?: string;
  /** They stand in the calendar. */
  readonly inCalendar: boolean;
  /** As those of rounds. */
  readonly remindersMinBefore: readonly number[];
}

export interface FeedingDays {
  readonly days: readonly Weekday[];
  /** `HH:MM` in the garden's zone; without it rounds are all-day events. */
  readonly timeOfDay?: string;
  readonly durationMin: number;
  readonly away: readonly DaySpan[];
  /** Rounds above the fewest that keeping published days may cost. */
  readonly extraRounds?: number;
}

export interface CalendarWishes {
  readonly group: "round" | "bed";
  /** Minutes before the start (all-day: before the midnight that begins the day; negative is after it). Empty for no reminder. */
  readonly remindersMinBefore: readonly number[];
  /** A CSS3 colour name, as RFC 7986 asks. */
  readonly color: string;
  readonly refreshHours: number;
}

/** Weight classes of eggs as they are sold; keys of `egg-sizes.yaml`. */
export const eggSizes = [
  "us-small",
  "us-medium",
  "us-large",
  "us-extra-large",
  "us-jumbo",
  "eu-s",
  "eu-m",
  "eu-l",
  "eu-xl",
] as const;
export type EggSizeKey = (typeof eggSizes)[number];

export interface EggSize {
  /** `EU M`. */
  readonly name: string;
  /** Of one egg. */
  readonly dryShellG: number;
}

export interface StockSettings {
  readonly acid: Acid;
  /** Anhydrous or monohydrate for citric acid. */
  readonly citricForm: "anhydrous" | "monohydrate";
  /** For vinegar, g of acetic acid per 100 mL. */
  readonly vinegarPercent: number;
  readonly keep: KeptIn;
  readonly pour: PourStyle;
  readonly bottleMl: number;
  readonly largestBatchMl: number;
  /** Days before it is first poured that a batch is to be bottled; absent for the usual ones. */
  readonly readyBeforeDays?: number;
  /** Whose shells are kept. */
  readonly eggs: EggSize;
  readonly shellsPerWeek?: number;
  /** Eggs' shells already kept. */
  readonly shellsInHand?: number;
  /** Share of calcium carbonate in the dry shell, 0 to 1. */
  readonly shellPurity: number;
  /** Bottled; also those thrown away since. */
  readonly batches: readonly BatchInHand[];
  /** Under way: neither bottled nor given up. */
  readonly begun: readonly BatchBegun[];
  /** Given up before they were bottled. */
  readonly dropped: readonly BatchDropped[];
}

interface ListedBatch {
  readonly id: string;
  /** Id or number of the published batch that it stands for. */
  readonly planned?: string;
  readonly path: FilePath;
}

/** A batch the grower has already made. */
export interface BatchInHand extends ListedBatch {
  readonly shellsOut?: Day;
  readonly acidIn?: Day;
  readonly made: Day;
  /** From this day on there is nothing in its bottles. */
  readonly thrownAway?: Day;
  readonly volumeMl: number;
  readonly leftMl: number;
  /** The day `left` was measured: log entries after it come off. Without it every log entry that names the batch does. */
  readonly leftOn?: Day;
  readonly acid: Acid;
  readonly keep: KeptIn;
  readonly useBy?: Day;
  /** Measured calcium, g/L; overrides the computed strength. */
  readonly strengthGPerL?: number;
  readonly ph?: number;
  /** Absent where the file does not say: taken as a mesh, with the doubt told. */
  readonly strained?: Strainer;
}

/** A batch on its way; at least one of its days is there. */
export interface BatchBegun extends ListedBatch {
  readonly shellsOut?: Day;
  readonly acidIn?: Day;
  /** What it is to be. */
  readonly volumeMl: number;
  readonly acid: Acid;
  readonly keep: KeptIn;
}

/** A batch that was not begun or never bottled, and the day on which that was settled. */
export interface BatchDropped extends ListedBatch {
  readonly on: Day;
  readonly how: "missed" | "thrown-away";
}

export interface Bed {
  readonly id: string;
  readonly name: string;
  readonly areaM2?: number;
  readonly cover?: Cover;
  /** The garden's, where the bed does not say otherwise. */
  readonly soil?: Soil;
  readonly amendments: readonly Amendment[];
  /** Water poured on it a week, that of rounds counted in; absent where the file does not say. */
  readonly watering?: WateringWish;
  readonly plantings: readonly Planting[];
}

/** L a week for the whole bed, or mm (L per m2) of it; `auto` is reckoned from weather and crops. */
export type WateringWish = "auto" | { readonly weeklyL: number } | { readonly weeklyMm: number };

export interface Planting {
  /** Unique in the garden. */
  readonly id: string;
  readonly name: string;
  readonly bed: string;
  /** Key in the crop catalogue; of a planting that is only listed (`feed: false`) any word. */
  readonly crop: string;
  /** What the grower calls the crop: `courgette` stays courgette. */
  readonly cropWord: string;
  readonly variety?: string;
  readonly plants?: number;
  /** Its own, or its bed's where nothing else grows there. */
  readonly areaM2?: number;
  readonly sown?: Day;
  readonly transplanted?: Day;
  /** Already growing when the season begins; a day if the grower gave one. */
  readonly established?: boolean;
  /** Full bloom, for perennials. */
  readonly bloom?: Day;
  readonly removed?: Day;
  /** The last pick; the plants may stand on. */
  readonly pickedUntil?: Day;
  readonly habit?: Habit;
  readonly warmth?: WarmthWish;
  readonly raisedAtC?: number;
  /** Id of the row of stage lengths that the grower chose. */
  readonly row?: string;
  readonly seen: readonly StageSeen[];
  readonly daysToHarvest?: number;
  /** Water in one feeding of the whole planting, L. */
  readonly waterL: number;
  /** Spray liquid in one foliar feeding of the whole planting, L. */
  readonly sprayL: number;
  /** The spray liquid is the usual one of the crop, not the grower's word. */
  readonly sprayIsUsual: boolean;
  /** mL of stock per litre, over the rule's. */
  readonly rateMlPerL?: number;
  /** Days between feedings, over the rule's. */
  readonly intervalDays?: number;
  /** Multiplies the rule's rate; 1 when not given. */
  readonly level: number;
  /** As the rules have it; also where they feed only on request, by the best or the named route; or never. */
  readonly feed: "by-rule" | "yes" | Route | "both" | "no";
  /** Fed to the end of the harvest, not as long as the rule has it. */
  readonly through?: "harvest";
  readonly path: FilePath;
}

export interface StageSeen {
  readonly stage: string;
  readonly on: Day;
  readonly path: FilePath;
}

/** Another liquid feed the grower uses, for gaps and for the same calendar. */
export interface OtherFeed {
  readonly name: string;
  readonly everyDays?: number;
  readonly days?: readonly Weekday[];
  readonly from?: Day;
  readonly to?: Day;
  readonly rateMlPerL: number;
  /** Plantings or crops it is for; empty for all. */
  readonly for: readonly string[];
  readonly holds: readonly ("sulfate" | "phosphate")[];
  readonly gapDays: number;
  readonly shelfLifeDays?: number;
  readonly path: FilePath;
}

export interface LogEntry {
  readonly on: Day;
  /** It was not given: has neither amount nor batch. */
  readonly missed?: true;
  /** The published day that it stands for. */
  readonly round?: Day;
  /** Exactly one of planting, bed; neither for the whole round. */
  readonly planting?: string;
  readonly bed?: string;
  readonly stockMl?: number;
  readonly batch?: string;
  /** Only for a planting that is fed both ways. */
  readonly route?: Route;
  readonly feed?: string;
  readonly path: FilePath;
}

export interface SignSeen {
  readonly on: Day;
  readonly planting: string;
  readonly sign: string;
  readonly path: FilePath;
}
