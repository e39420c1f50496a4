/** Made from schemas/garden.schema.json; test/garden/garden-file.test.ts says how. Do not edit. */

/**
 * true feeds also where the plan would feed only on request; false never feeds. `drench`, `foliar` or `both` ask for a route: onto the soil, or sprayed on leaves and fruit.
 */
export type Feed = true | false | "drench" | "foliar" | "both";

/**
 * One garden: its season, water, feeding days, stock, beds and crops. Every quantity is text with its unit (9 L, 2 gal, 1.5 kg, 40 ft2). Every date is YYYY-MM-DD.
 */
export interface GardenFile {
  /**
   * The version of this file format. Always 1.
   */
  version: 1;
  /**
   * A short name for the garden: letters, digits, dots, dashes and underscores. It names the garden in commands and calendars, so keep it when other things change.
   */
  id?: string;
  /**
   * What the garden is called; shown in the plan and as the calendar's name.
   */
  garden: string;
  /**
   * The garden's time zone by its IANA name.
   */
  timezone: string;
  season: Season;
  /**
   * Which half of the earth. Without it the latitude or the time zone decides.
   */
  hemisphere?: "north" | "south";
  location?: Location;
  /**
   * How amounts are printed: metric (mL, L), us (teaspoons, US gallons) or imperial (mL, imperial gallons). Bare `gal`, `pt`, `fl oz` and the like in this file follow it too; in a metric garden they are US measures.
   */
  amounts?: "metric" | "us" | "imperial";
  /**
   * What one full can holds.
   */
  can?: string;
  /**
   * What the sprayer holds, for feedings sprayed on leaves and fruit.
   */
  sprayer?: string;
  source_water?: SourceWater;
  feeding?: FeedingDays;
  calendar?: Calendar;
  stock?: Stock;
  /**
   * The places in the garden.
   *
   * @minItems 1
   */
  beds: Bed[];
  /**
   * Other liquid feeds the grower uses. Calcium feedings keep a gap from them.
   */
  feeds?: OtherFeed[];
  /**
   * What was really given.
   */
  log?: LogEntry[];
  /**
   * What the grower saw on the plants.
   */
  signs?: Sign[];
  /**
   * Path of a file with the grower's own feed rules, next to this file. They add to the built-in rules or replace those with the same id.
   */
  rules?: string;
}
/**
 * The days that are planned. A southern season may run across New Year.
 */
export interface Season {
  /**
   * The first day, counted in.
   */
  from: string;
  /**
   * The last day, counted in.
   */
  to: string;
}
/**
 * Where the garden lies.
 */
export interface Location {
  /**
   * Degrees; south is negative.
   */
  latitude: number;
  /**
   * Degrees; west is negative.
   */
  longitude?: number;
  /**
   * Height above sea level.
   */
  elevation?: string;
}
/**
 * The water the cans are filled with, from the supplier's report or a test strip.
 */
export interface SourceWater {
  /**
   * Total hardness. mg/L or ppm are as CaCO3; German (dH), French (fH) and English (e) degrees, grains per US gallon (gpg) and mmol/L are understood.
   */
  hardness?: string;
  /**
   * Total alkalinity, in the same units as hardness (as CaCO3).
   */
  alkalinity?: string;
  /**
   * Calcium itself, when the report names it.
   */
  calcium?: string;
}
/**
 * When the grower can feed.
 */
export interface FeedingDays {
  /**
   * Days of the week on which rounds may lie. Without it any day may be used.
   *
   * @minItems 1
   */
  days?: ("mon" | "tue" | "wed" | "thu" | "fri" | "sat" | "sun")[];
  /**
   * When a round begins, 24-hour clock, in quotes. Without it rounds are all-day entries.
   */
  time?: string;
  /**
   * How long a round takes; only used with a time.
   */
  duration?: string;
  /**
   * Spans with no feeding: holidays, work away.
   */
  away?: Away[];
}
/**
 * Days away, both ends counted.
 */
export interface Away {
  /**
   * The first day, counted in.
   */
  from: string;
  /**
   * The last day, counted in.
   */
  to: string;
}
/**
 * What the calendar looks like.
 */
export interface Calendar {
  /**
   * One entry a round (all beds of a day together) or one a bed.
   */
  group?: "round" | "bed";
  /**
   * When the calendar app should remind; an empty list for never. Without it: at 08:00 on the day, or 30 minutes before a timed round.
   *
   * @maxItems 5
   */
  reminders?: Reminder[];
  /**
   * A CSS colour name for apps that show one.
   */
  color?: string;
  /**
   * How often a subscribed app should look for changes.
   */
  refresh?: string;
}
/**
 * Either `before` (a time before the round begins) or `at` (a clock time, on the day or days before).
 */
export interface Reminder {
  /**
   * This long before the round begins.
   */
  before?: string;
  /**
   * How many days before the round; 0 is the day itself.
   */
  days_before?: number;
  /**
   * Clock time of the reminder, in quotes.
   */
  at?: string;
}
/**
 * How the liquid feed is made and kept.
 */
export interface Stock {
  /**
   * What dissolves the shell.
   */
  acid?: "citric" | "vinegar";
  /**
   * As the bag says; most household citric acid is anhydrous.
   */
  acid_form?: "anhydrous" | "monohydrate";
  /**
   * Acetic acid, as the bottle says (g per 100 mL).
   */
  vinegar?: string;
  /**
   * A cold bottle keeps longer.
   */
  keep?: "fridge" | "shelf";
  /**
   * Shaken (the fine white solid goes along) or clear (only the liquid above it).
   */
  pour?: "shaken" | "clear";
  /**
   * What one storage bottle holds.
   */
  bottles?: string;
  /**
   * The most that can be made and bottled at one time.
   */
  largest_batch?: string;
  /**
   * How many eggs' shells the household keeps in a week.
   */
  shells_per_week?: number;
  /**
   * Eggs' shells already kept; without it, those kept since the latest batch was begun.
   */
  shells_in_hand?: number;
  /**
   * Calcium carbonate in the dry shell.
   */
  shell_purity?: string;
  /**
   * Stock already made.
   */
  batches?: Batch[];
}
/**
 * One making of stock.
 */
export interface Batch {
  /**
   * A short name for the batch: letters, digits, dots, dashes and underscores. It names the batch in commands and calendars, so keep it when other things change.
   */
  id: string;
  /**
   * The day it was strained and bottled.
   */
  made: string;
  /**
   * How much was made.
   */
  volume: string;
  /**
   * How much is left; without it, all of it.
   */
  left?: string;
  /**
   * The day on which that was left; later log entries come off it. Without it, every log entry that names the batch comes off.
   */
  left_on?: string;
  /**
   * When it differs from the garden's.
   */
  acid?: "citric" | "vinegar";
  /**
   * When it differs from the garden's.
   */
  keep?: "fridge" | "shelf";
  /**
   * When it differs from the usual keeping time.
   */
  use_by?: string;
  /**
   * Measured calcium; used instead of the computed one.
   */
  strength?: string;
  /**
   * Measured pH; used instead of the computed one.
   */
  ph?: number;
}
/**
 * One place, with what grows in it.
 */
export interface Bed {
  /**
   * A short name for the bed: letters, digits, dots, dashes and underscores. It names the bed in commands and calendars, so keep it when other things change.
   */
  id: string;
  /**
   * What the bed is called in the plan; without it, its id.
   */
  name?: string;
  /**
   * Size of the bed.
   */
  area?: string;
  /**
   * Water in one feeding of the whole bed, shared by its plantings by number of plants: `18 L`, or by area: `4 L per m2`, or `2 L per plant`.
   */
  water?: string;
  /**
   * The crops in this bed.
   */
  plantings: Planting[];
}
/**
 * One crop in this bed, with its dates. An annual needs `sown` or `transplanted` (or `established: true` with a stage seen); a perennial is placed by its `bloom`.
 */
export interface Planting {
  /**
   * A short name for the planting: letters, digits, dots, dashes and underscores. It names the planting in commands and calendars, so keep it when other things change.
   */
  id: string;
  /**
   * What grows, in common words; `feedround crops` lists the crops that are known.
   */
  crop: string;
  /**
   * What the planting is called in the plan; without it, its id.
   */
  name?: string;
  /**
   * For the grower's own reading.
   */
  variety?: string;
  /**
   * How many plants.
   */
  plants?: number;
  /**
   * Size of the ground this planting takes, for `per m2` water.
   */
  area?: string;
  /**
   * The day of sowing, in place or in trays.
   */
  sown?: string;
  /**
   * The day the young plants went into the bed.
   */
  transplanted?: string;
  /**
   * Already growing before the season: no sowing or planting date is needed.
   */
  established?: boolean;
  /**
   * For perennials such as apple: the day of full bloom, seen or expected.
   */
  bloom?: string;
  /**
   * The day it was taken out; nothing is fed from then on.
   */
  removed?: string;
  /**
   * Of the variety, as the packet says: from sowing for crops sown in place, from transplanting for crops usually transplanted, from full bloom for tree fruit.
   */
  days_to_harvest?: number;
  /**
   * What the grower saw: the first day of a stage. All later stages move with it.
   */
  seen?: StageSeen[];
  /**
   * Water in one feeding: of the whole planting (`6 L`), by plant (`2 L per plant`) or by area (`4 L per m2`).
   */
  water?: string;
  /**
   * Spray liquid in one foliar feeding, given in the same ways as water.
   */
  spray?: string;
  /**
   * Stock in the can water, instead of the rule's rate.
   */
  rate?: string;
  /**
   * Days between feedings, instead of the rule's interval.
   */
  interval?: string;
  /**
   * Multiplies the rate: 1.5 is half as much again.
   */
  level?: number;
  feed?: Feed;
}
/**
 * A stage and the day it was first seen.
 */
export interface StageSeen {
  /**
   * The stage seen.
   */
  stage:
    | "seedling"
    | "establishment"
    | "vegetative"
    | "heading"
    | "root-swelling"
    | "flowering"
    | "fruit-set"
    | "fruit-growth"
    | "ripening"
    | "harvest"
    | "after-harvest";
  /**
   * The day it was first seen.
   */
  on: string;
}
/**
 * One liquid feed with its own days.
 */
export interface OtherFeed {
  /**
   * What the feed is called.
   */
  name: string;
  /**
   * Feed in the can water.
   */
  rate: string;
  /**
   * Days between feedings.
   */
  every?: string;
  /**
   * Or on these days of the week.
   *
   * @minItems 1
   */
  days?: ("mon" | "tue" | "wed" | "thu" | "fri" | "sat" | "sun")[];
  /**
   * First day it is used; without it, the season's first.
   */
  from?: string;
  /**
   * Last day it is used; without it, the season's last.
   */
  to?: string;
  /**
   * Plantings, beds or crops it is for; without it, all.
   *
   * @minItems 1
   */
  for?: string[];
  /**
   * Sulfate or phosphate in it settles calcium out of the can.
   */
  holds?: ("sulfate" | "phosphate")[];
  /**
   * Days that calcium feedings keep from it.
   */
  gap?: string;
  /**
   * How long an opened bottle keeps.
   */
  shelf_life?: string;
}
/**
 * One feeding given: to a planting, to a bed, or (with neither) the whole round planned for that day.
 */
export interface LogEntry {
  /**
   * The day it was given.
   */
  on: string;
  /**
   * Id of the planting fed.
   */
  planting?: string;
  /**
   * Id of the bed fed.
   */
  bed?: string;
  /**
   * Stock given in all.
   */
  stock?: string;
  /**
   * Id of the batch it came from.
   */
  batch?: string;
  /**
   * Poured onto the soil, or sprayed on leaves and fruit. Without it, all that the planting was due that day.
   */
  route?: "drench" | "foliar";
  /**
   * Name of another feed, when it was not the calcium feed.
   */
  feed?: string;
}
/**
 * One sign on one planting.
 */
export interface Sign {
  /**
   * The day it was seen.
   */
  on: string;
  /**
   * Id of the planting.
   */
  planting: string;
  /**
   * What was seen.
   */
  sign:
    | "blossom-end-rot"
    | "tipburn"
    | "bitter-pit"
    | "blackheart"
    | "leaf-edge-scorch"
    | "white-crust"
    | "wilting-at-noon";
}
