/** Feedings that a sign opens after the feeding of a planting has ended. */
// @ts-nocheck

import { addDays, type Day, earlier, later } from "../dates.js";
import { chooseDays, type FeedingCourse, intervalFor } from "../days/index.js";
import type { Garden, Route } from "../garden/index.js";
import { feedableTo, type LifeToFeed, type Sighting } from "../rules/index.js";
import { given } from "../values.js";
import { resumed } from "./given.js";
import type { Past } from "./past.js";
import { lessMissed } from "./progress.js";

/** A planting with what was seen on it. */
interface SeenPlanting {
  readonly planting: { readonly id: string };
  readonly life: LifeToFeed;
  readonly sightings: readonly Sighting[];
}

interface FedDay {
  readonly planting: string;
  /** Absent for all that the planting was due. */
  readonly route?: Route;
  readonly day: Day;
}

/** How courses stand at the beginning of a day. */
interface CourseStanding {
  /** What they still owe. */
  readonly owed: readonly FeedingCourse[];
  /** Days on which their plantings were fed. */
  readonly given: readonly FedDay[];
  /** Nobody tells what was given: it is what is planned, and stays so. */
  readonly isPlanned?: true;
}

type StandingOn = (courses: readonly FeedingCourse[], on: Day) => CourseStanding;

/**
 * The courses, and behind each that had ended when a sign was seen one of so many feedings as the sign
 * opens. Where the feeding has not ended, a sign changes only the rate.
 *
 * @param standingOn asked once for each day on which a sign was seen, in their order
 */
export function reopened(
  courses: readonly FeedingCourse[],
  plantings: readonly SeenPlanting[],
  standingOn: StandingOn,
  season: Garden["season"],
): readonly FeedingCourse[] {
  const seen = plantings.flatMap((planting) =>
    planting.sightings
      .filter(({ sign, isKnown }) => isKnown && sign.reopens !== undefined)
      .map((sighting) => ({ planting, sighting, on: sighting.seen.on })),
  );
  return [...new Set(seen.map(({ on }) => on))].sort().reduce((before, on) => {
    const standing = standingOn(before, on);
    return seen
      .filter((one) => one.on === on)
      .reduce(
        (all, one) => withOpened(all, one.planting, one.sighting, standing, season.to),
        before,
      );
  }, courses);
}

/**
 * As it was published or written down. A missed feeding counts, also one that might still be made: those
 * that a sign opens take its place.
 *
 * @param untoldTo see `lessMissed`
 */
export function standingAsTold(
  { given: fed, notGiven }: Pick<Past, "given" | "notGiven">,
  untoldTo: Day | undefined,
): StandingOn {
  return (courses, on) => {
    const isBefore = ({ day }: { readonly day: Day }): boolean => day < on;
    const past = { given: fed.filter(isBefore), notGiven: notGiven.filter(isBefore) };
    const behind = { past, untoldTo, allowed: [], today: on };
    return { owed: resumed(lessMissed(courses, behind), past.given), given: past.given };
  };
}

/**
 * Where nobody tells what was given, all was that would be planned.
 *
 * @param apart keeps courses away from other feeds
 */
export function standingAsPlanned(
  apart: (courses: readonly FeedingCourse[]) => readonly FeedingCourse[],
  allowedDays: readonly Day[],
): StandingOn {
  return (courses, on) => {
    const those = apart(courses);
    const byId = new Map(those.map((one) => [one.course.id, one]));
    const { feedings } = chooseDays({ allowedDays, courses: those.map(({ course }) => course) });
    const fed = feedings.flatMap(({ course, day }) => {
      const of = byId.get(course);
      if (of === undefined || day >= on) return [];
      return [{ planting: of.planting.id, route: of.route, day }];
    });
    return { owed: resumed(courses, fed), given: fed, isPlanned: true };
  };
}

function withOpened(
  courses: readonly FeedingCourse[],
  { planting, life }: SeenPlanting,
  { seen: { on }, sign }: Sighting,
  standing: CourseStanding,
  seasonEnd: Day,
): readonly FeedingCourse[] {
  const own = courses.filter((course) => course.planting.id === planting.id);
  const hasOpen = (route: Route): boolean =>
    own.some((course) => course.route === route && !hasEnded(course, standing, on));
  const ended = own.filter(({ route }) => !hasOpen(route));
  const opened = [...new Set(ended.map(({ route }) => route))].flatMap((route) => {
    const last = ended.findLast((course) => course.route === route);
    return last === undefined ? [] : openedAfter(last, life, on, sign.reopens, standing, seasonEnd);
  });
  const routes = new Set(opened.map(({ route }) => route));
  return [
    ...courses.map((course) =>
      ended.includes(course) && routes.has(course.route) ? closed(course, standing, on) : course,
    ),
    ...opened,
  ];
}

function openedAfter(
  last: FeedingCourse,
  life: LifeToFeed,
  on: Day,
  reopens: Sighting["sign"]["reopens"],
  standing: CourseStanding,
  seasonEnd: Day,
): FeedingCourse[] {
  const { planting, route } = last;
  const rule = last.spans.at(-1)?.rule;
  if (rule === undefined || reopens === undefined) return [];
  const interval = intervalFor(planting, rule);
  const lastFed = daysFed(last, standing.given, on).at(-1);
  const earliest = later(on, lastFed === undefined ? on : addDays(lastFed, interval.shortestDays));
  const to = earlier(feedableTo(rule, life), seasonEnd);
  if (to < earliest) return [];
  const latest = earlier(later(earliest, addDays(on, reopens.within_days)), to);
  const course = {
    id: `${planting.id}/${route}/after-${on}`,
    first: { earliest, latest },
    phases: [{ from: on, ...interval }],
    feedings: reopens.feedings,
    coverTo: to,
  };
  return [{ course, planting, route, spans: [{ route, rule, from: on, to }], openedBySignOn: on }];
}

/** Its days are over, or it has all the feedings that it owed. */
function hasEnded({ course }: FeedingCourse, { owed }: CourseStanding, on: Day): boolean {
  const left = owed.find((one) => one.course.id === course.id)?.course.feedings;
  return course.coverTo < on || left === 0;
}

/** In order, before a day. */
function daysFed(
  { course, planting, route }: FeedingCourse,
  fed: readonly FedDay[],
  before: Day,
): Day[] {
  return fed
    .filter((one) => one.planting === planting.id && (one.route ?? route) === route)
    .map(({ day }) => day)
    .filter((day) => course.first.earliest <= day && day <= course.coverTo && day < before)
    .sort();
}

/** What is given from the day of the sign on is not of it. */
function closed(one: FeedingCourse, standing: CourseStanding, on: Day): FeedingCourse {
  const days = daysFed(one, standing.given, on);
  const coverTo = earlier(one.course.coverTo, days.at(-1) ?? addDays(on, -1));
  const heldDays = standing.isPlanned ? days : undefined;
  return { ...one, course: { ...one.course, ...given({ heldDays }), coverTo } };
}
