/**
 * Rounds that a forecast moves: inside their windows, once, and without moving another.
 *
 * This alone of what is planned for coming days depends on today: forecasts are made for the next
 * days, and a round that has been moved for one is not moved again, whatever the next one says.
 */
// @ts-nocheck

import { addDays, type Day, dayNumber, daysBetween, within } from "../dates.js";
import type { ForecastHarm, Published } from "../published/index.js";
import type { RoundMove } from "../season/index.js";
import { byText } from "../values.js";
import { together } from "./choose-days.js";
import type { FeedingCourse } from "./courses.js";
import type { HarmOf } from "./forecast-harm.js";
import { nearDays } from "./held-days.js";
import type { Schedule } from "./schedule-problem.js";
import { served } from "./served.js";

/** Farther ahead no forecast moves or warns of anything: common practice, no source. */
const forecastDays = 7;

interface MoveTerms {
  readonly harmOf: HarmOf;
  readonly allowed: readonly Day[];
  readonly published: Published | undefined;
  /** Plantings whose stages follow the weather: in the days just ahead no feeding of theirs moves. */
  readonly held: readonly string[];
  readonly today: Day;
}

/**
 * The schedule with rounds moved off the days on which the forecast would harm them, each to the
 * nearest allowed day of the seven after today that harms none of what moves; of two as near to the
 * later. A round moves whole, or to another round's day with just what is harmed, so that there are no
 * more rounds than before. Where no day will do it stays.
 *
 * @param schedule what was chosen for the courses
 */
export function movedByForecast(
  schedule: Schedule,
  courses: readonly FeedingCourse[],
  { harmOf, allowed, published, held, today }: MoveTerms,
): { readonly schedule: Schedule; readonly moves: readonly RoundMove[] } {
  const free = allowed.filter((day) => today < day && day <= addDays(today, forecastDays));
  const lastNear = addDays(today, nearDays);
  const moves: RoundMove[] = [];
  const isSettled = (day: Day): boolean =>
    moves.some(({ to }) => to === day) || isToStay(day, published);
  const isHeld = ({ planting }: FeedingCourse): boolean => held.includes(planting.id);

  let now = schedule;
  for (const from of free) {
    const all = fedBy(now, courses, from);
    const harmed = all.filter((one) => harmOf(one, from) !== undefined);
    const [worst] = harmsOf(harmed, from, harmOf);
    if (worst === undefined || isSettled(from)) continue;
    for (const to of nearest(free, from)) {
      const part = fedBy(now, courses, to).length > 0;
      const moving = part ? harmed : all;
      const isNear = from <= lastNear || to <= lastNear;
      if (isSettled(to) || (isNear && moving.some(isHeld))) continue;
      if (moving.some((one) => harmOf(one, to) !== undefined)) continue;
      const then = withMoved(now, moving, from, to);
      if (then === undefined) continue;
      moves.push({ to, moved: { from, harm: worst.harm, ...(part ? { part } : {}) } });
      now = then;
      break;
    }
  }
  return { schedule: now, moves };
}

function nearest(days: readonly Day[], from: Day): Day[] {
  const off = (day: Day): number => Math.abs(daysBetween(from, day));
  return days.filter((day) => day !== from).sort((a, b) => off(a) - off(b) || byText(b, a));
}

/** A forecast has moved it; or only its day is known: it is being worked out as it was. */
function isToStay(day: Day, published: Published | undefined): boolean {
  const round = published?.rounds.find((one) => one.day === day);
  return round !== undefined && (round.moved !== undefined || round.mixes.length === 0);
}

/** Undefined where a feeding would lie outside its window, or another one later than before. */
function withMoved(
  schedule: Schedule,
  moving: readonly FeedingCourse[],
  from: Day,
  to: Day,
): Schedule | undefined {
  const ids = new Set(moving.map(({ course }) => course.id));
  const others = {
    feedings: schedule.feedings.filter(({ course }) => !ids.has(course)),
    unmet: schedule.unmet.filter(({ course }) => !ids.has(course)),
  };
  const again = moving.map(({ course }) => {
    const days = schedule.feedings.filter((one) => one.course === course.id).map(({ day }) => day);
    return served(
      course,
      days.map((day) => dayNumber(day === from ? to : day)),
    );
  });
  const then = together([others, ...again]);
  const isFree = moving.every(
    ({ course: { coverTo, avoidDays } }) => to <= coverTo && avoidDays?.includes(to) !== true,
  );
  const isInTime = again.every(({ feedings }) =>
    feedings.every(
      ({ day, window }) => window.earliest <= day && (day !== to || day <= window.latest),
    ),
  );
  return isFree && isInTime && lateDays(then) <= lateDays(schedule) ? then : undefined;
}

function lateDays({ unmet }: Schedule): number {
  return unmet.reduce((sum, one) => sum + one.lateDays, 0);
}

/** Courses that are fed on a day. */
function fedBy(
  { feedings }: Schedule,
  courses: readonly FeedingCourse[],
  day: Day,
): FeedingCourse[] {
  const fed = new Set(feedings.filter((one) => one.day === day).map(({ course }) => course));
  return courses.filter(({ course }) => fed.has(course.id));
}

interface Harmed {
  readonly harm: ForecastHarm;
  readonly courses: readonly FeedingCourse[];
}

/** The worst harm of each kind, the rain first, and whom that kind of harm meets. */
function harmsOf(courses: readonly FeedingCourse[], day: Day, harmOf: HarmOf): Harmed[] {
  return (["rain", "heat"] as const).flatMap((kind) => {
    const met = courses.flatMap((one) => {
      const harm = harmOf(one, day);
      return harm?.kind === kind ? [{ one, harm }] : [];
    });
    const [worst] = met.toSorted((a, b) => degreeOf(b.harm) - degreeOf(a.harm));
    return worst === undefined ? [] : [{ harm: worst.harm, courses: met.map(({ one }) => one) }];
  });
}

function degreeOf(harm: ForecastHarm): number {
  return harm.kind === "rain" ? harm.mm : harm.maxC - harm.limitC;
}

/** A round that stays on a day on which the forecast would harm it. */
export interface ThreatenedRound extends Harmed {
  readonly day: Day;
  /** All that is fed in it. */
  readonly all: readonly FeedingCourse[];
}

/** Of today and the seven days after it; one for each kind of harm. */
export function threatenedRounds(
  schedule: Schedule,
  courses: readonly FeedingCourse[],
  harmOf: HarmOf,
  today: Day,
): ThreatenedRound[] {
  const span = { from: today, to: addDays(today, forecastDays) };
  const days = new Set(schedule.feedings.map(({ day }) => day).filter((day) => within(day, span)));
  return [...days].flatMap((day) => {
    const all = fedBy(schedule, courses, day);
    return harmsOf(all, day, harmOf).map((harmed) => ({ day, all, ...harmed }));
  });
}
