/** When frost is to be expected at a place: on its grower's days, else by an estimate. */
// @ts-nocheck

import {
  addDays,
  type Day,
  day,
  dayFromNumber,
  dayNumber,
  type DaySpan,
  yearOf,
} from "../dates.js";
import { given } from "../values.js";
import type { PlaceClimate } from "./climate.js";
import { dailyFromMonthly } from "./daily-means.js";

/** The grower's own, `MM-DD`, never 29 February. */
export interface FrostDays {
  /** Last one of spring. */
  readonly last?: string;
  /** First one of autumn. */
  readonly first?: string;
}

/** As `frost.yaml` has it. */
export interface FrostRules {
  /** Standard deviation of a frost date from year to year. */
  readonly scatter: { readonly days: number };
  /** An estimate that is further off does not end a harvest. */
  readonly largest_error: { readonly days: number };
  /** The first whose box holds the place counts; the last has none. */
  readonly regions: readonly FrostRegion[];
}

interface FrostRegion {
  /** In words for the grower. */
  readonly region: string;
  readonly box?: Readonly<Record<"south" | "north" | "west" | "east", number>>;
  /** The mean daily minimum at which half of the years have had their last frost, or had their first. */
  readonly mean_minimum_c: number;
  readonly spring: FrostError;
  readonly autumn: FrostError;
}

/** Root mean square error against the published dates of so many places. */
interface FrostError {
  readonly error_days: number;
  readonly places: number;
}

interface FrostDate {
  /** Of the grower, or the median of the estimate. */
  readonly day: Day;
  readonly by: "own" | "estimate";
  /** How it came about, in words for the grower. */
  readonly why: string;
}

export interface LastFrost extends FrostDate {
  /** Frost comes later in one spring of ten; the grower's own day is taken as it is. */
  readonly oneInTen: Day;
}

export interface FirstFrost extends FrostDate {
  /** Good enough to end the harvest of tender crops; else it only advises. */
  readonly endsPicking: boolean;
}

/** The frosts about one summer. */
export interface SeasonFrost {
  readonly lastSpring?: LastFrost;
  readonly firstAutumn?: FirstFrost;
}

export interface FrostEstimate {
  /** No month is without it, as far as is known; then there are no dates. */
  readonly allYear: boolean;
  /** About the summer that lies nearest to the middle of the span. */
  readonly around: (span: DaySpan) => SeasonFrost;
}

/**
 * The grower's days, each before the estimate's; undefined where no frost is to be expected, or nothing
 * is known.
 *
 * @source `frost.yaml`: an estimate from simulation
 */
export function frostOf(
  climate: PlaceClimate | undefined,
  own: FrostDays | undefined,
  rules: FrostRules,
): FrostEstimate | undefined {
  const region = climate && regionOf(climate, rules);
  const estimate = region && frostFree(dailyFromMonthly(climate.means.minC), region.mean_minimum_c);
  const between = typeof estimate === "object" ? estimate : undefined;
  const last = own?.last ?? between?.last;
  const first = own?.first ?? between?.first;
  if (last === undefined && first === undefined)
    return estimate === "always" ? { allYear: true, around: () => ({}) } : undefined;
  return {
    allYear: false,
    around: (span) => {
      const dates = aroundSummer({ ...given({ last, first }) }, span);
      return given({
        lastSpring: dates.last && lastFrost(dates.last, own, region, rules),
        firstAutumn: dates.first && firstFrost(dates.first, own, region, rules),
      });
    },
  };
}

function regionOf(
  { latitudeDeg, longitudeDeg }: PlaceClimate,
  { regions }: FrostRules,
): FrostRegion {
  const region = regions.find(
    ({ box }) =>
      box === undefined ||
      (longitudeDeg !== undefined &&
        box.south <= latitudeDeg &&
        latitudeDeg <= box.north &&
        box.west < longitudeDeg &&
        longitudeDeg <= box.east),
  );
  if (region === undefined) throw new Error("frost.yaml: the last region has a box");
  return region;
}

/** From the warmest day of the ring both ways, to where the mean minimum is below the threshold. */
function frostFree(
  minC: readonly number[],
  thresholdC: number,
): Required<FrostDays> | "never" | "always" {
  const warmest = minC.indexOf(Math.max(...minC));
  const isFrosty = (index: number): boolean =>
    (minC[(index + minC.length) % minC.length] as number) < thresholdC;
  if (isFrosty(warmest)) return "always";
  const steps = Array.from({ length: minC.length }, (_, i) => i);
  const back = steps.find((i) => isFrosty(warmest - i));
  const ahead = steps.find((i) => isFrosty(warmest + i));
  if (back === undefined || ahead === undefined) return "never";
  return { last: monthDayOf(warmest - back), first: monthDayOf(warmest + ahead) };
}

/** Of a common year; 0 is 1 January. */
function monthDayOf(index: number): string {
  return addDays(day("2027-01-01"), index).slice(5);
}

/** Where only one of the two days is known, the other lies about so far. */
const usualSummerDays = 180;

function aroundSummer(
  { last, first }: FrostDays,
  { from, to }: DaySpan,
): { readonly last?: Day; readonly first?: Day } {
  const middle = Math.round((dayNumber(from) + dayNumber(to)) / 2);
  const year = yearOf(dayFromNumber(middle));
  const summers = [year - 1, year, year + 1].map((y) => {
    const begin = last === undefined ? undefined : dayIn(y, last);
    const end =
      first === undefined
        ? undefined
        : begin === undefined || dayIn(y, first) > begin
          ? dayIn(y, first)
          : dayIn(y + 1, first);
    const beginNumber = begin ? dayNumber(begin) : dayNumber(end as Day) - usualSummerDays;
    const endNumber = end ? dayNumber(end) : beginNumber + usualSummerDays;
    const away = Math.abs((beginNumber + endNumber) / 2 - middle);
    return { away, dates: given({ last: begin, first: end }) };
  });
  return summers.reduce((a, b) => (b.away < a.away ? b : a)).dates;
}

function dayIn(year: number, monthDay: string): Day {
  return `${year}-${monthDay}` as Day;
}

/** Of the normal distribution: nine of ten lie below. */
const ninetyPercentZ = 1.2816;

function lastFrost(
  day: Day,
  own: FrostDays | undefined,
  region: FrostRegion | undefined,
  rules: FrostRules,
): LastFrost {
  if (own?.last !== undefined || region === undefined) return { ...ownDate(day), oneInTen: day };
  // The day is as uncertain as years differ, and as the estimate itself is.
  const spreadDays = Math.hypot(rules.scatter.days, region.spring.error_days);
  return {
    ...estimated(day, region, region.spring, rules),
    oneInTen: addDays(day, Math.round(ninetyPercentZ * spreadDays)),
  };
}

function firstFrost(
  day: Day,
  own: FrostDays | undefined,
  region: FrostRegion | undefined,
  rules: FrostRules,
): FirstFrost {
  if (own?.first !== undefined || region === undefined)
    return { ...ownDate(day), endsPicking: true };
  return {
    ...estimated(day, region, region.autumn, rules),
    endsPicking: region.autumn.error_days <= rules.largest_error.days,
  };
}

function ownDate(day: Day): FrostDate {
  return { day, by: "own", why: "your own day, `frost:`" };
}

function estimated(
  day: Day,
  { region }: FrostRegion,
  { error_days, places }: FrostError,
  { scatter }: FrostRules,
): FrostDate {
  return {
    day,
    by: "estimate",
    why: `an estimate from simulation: the median, with ${scatter.days} days of scatter from year to year, and ${Math.round(error_days)} days off at ${places} places with published dates (${region})`,
  };
}
