/** Full bloom of a perennial whose own day is not known: by the warmth since New Year, else when usual. */
// @ts-nocheck

import type { MonthlyMeans } from "../climate/index.js";
import type { Crop } from "../crops/index.js";
import {
  addDays,
  type Day,
  day,
  dayNumber,
  later,
  monthHalfYearOn,
  parseDay,
  yearOf,
} from "../dates.js";
import { type Planting, shortDate } from "../garden/index.js";
import type { Place } from "./place.js";

export interface Bloom {
  readonly day: Day;
  readonly isByWarmth: boolean;
  /** How it came about, in words for the grower. */
  readonly how: string;
}

/** Where warmth has it, near the usual day, if the crop has a published sum and the place a winter. */
export function bloomOfYear(
  { warmth: wish }: Planting,
  crop: Crop,
  { here, ...place }: Place,
): Bloom {
  const said = (one: Day): string => shortDate(one, place.amounts ?? "metric");
  const usual = usualBloom(crop, place);
  const isUsual = `usual for ${crop.name} in temperate gardens`;
  const unmoved = {
    day: usual,
    isByWarmth: false,
    how: `full bloom on ${said(usual)}, ${isUsual}`,
  };
  const sum = crop.warmth?.sums.find(({ from }) => from === "new-year");
  if (here === undefined || crop.warmth === undefined || sum === undefined) return unmoved;
  if ((wish ?? here.wish) === "off") return unmoved;
  // The sum counts from New Year since nothing grows before it: without a winter it says nothing.
  if (coldestMonthC(here.climate.means) >= crop.warmth.baseC)
    return { ...unmoved, how: `${unmoved.how} (winters here are too mild for the published sum)` };

  const newYear = day(`${usual.slice(0, 4)}-${place.hemisphere === "south" ? "07-01" : "01-01"}`);
  const [first, last] = [addDays(usual, -here.mostShiftDays), addDays(usual, here.mostShiftDays)];
  const span = { from: newYear, until: last };
  const reached = here.warmth.reached(sum.degreeDays, span, crop.warmth, here.cover);
  const bloom = later(reached ?? last, first);
  const warmth = `the warmth since ${said(newYear)} (${sum.source})`;
  return {
    day: bloom,
    isByWarmth: true,
    how:
      bloom === reached
        ? `full bloom about ${said(bloom)} by ${warmth}; ${said(usual)} is ${isUsual}`
        : `full bloom about ${said(bloom)}: ${warmth} has it ${reached === undefined ? "later" : "earlier"}, but moves a day by ${here.mostShiftDays} days at most, and ${said(usual)} is ${isUsual}`,
  };
}

function coldestMonthC({ maxC, minC }: MonthlyMeans): number {
  return Math.min(...maxC.map((max, month) => (max + (minC[month] ?? max)) / 2));
}

/** The usual bloom that falls in the season or, failing that, is nearest to its beginning. */
function usualBloom(crop: Crop, { hemisphere, season }: Omit<Place, "here">): Day {
  const [month, dayOfMonth] = (crop.usualBloomNorth ?? "05-01").split("-").map(Number);
  const shifted = hemisphere === "south" ? monthHalfYearOn(month ?? 5) : (month ?? 5);
  const year = yearOf(season.from);
  const pad = (n: number): string => String(n).padStart(2, "0");
  const candidates = [year - 1, year, year + 1, year + 2].flatMap(
    (y) => parseDay(`${y}-${pad(shifted)}-${pad(Math.min(dayOfMonth ?? 1, 28))}`) ?? [],
  );
  const middle = Math.round((dayNumber(season.from) + dayNumber(season.to)) / 2);
  const inSeason = candidates.find((d) => d >= addDays(season.from, -60) && d <= season.to);
  const byDistance = [...candidates].sort(
    (a, b) => Math.abs(dayNumber(a) - middle) - Math.abs(dayNumber(b) - middle),
  );
  return inSeason ?? byDistance[0] ?? season.from;
}
