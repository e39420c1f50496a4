/** Feedings that a sign opens after the feeding of a planting has ended. */
import { addDays, type Day, earlier, later } from "../dates.js";
import { chooseDays, type FeedingCourse, intervalFor } from "../days/index.js";
import type { Garden, Route } from "../garden/index.js";
import { feedableTo, type LifeToFeed, type Sighting } from "../rules/index.js";
import { given } from "../values.js";

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

/** Days on which plantings were fed, and those on which they were to be and were not. */
interface FedBefore {
  readonly given: readonly FedDay[];
  readonly notGiven: readonly FedDay[];
  /** Nobody tells what was given: it is what is planned, and stays so. */
  readonly isPlanned?: true;
}

/**
 * The courses, and behind each that had ended when a sign was seen one of so many feedings as the sign
 * opens. Where the feeding has not ended, a sign changes only the rate.
 *
 * @param fedBefore what was fed of courses; asked once for each day on which a sign was seen
 */
export function reopened(
  courses: readonly FeedingCourse[],
  plantings: readonly SeenPlanting[],
  fedBefore: (courses: readonly FeedingCourse[]) => FedBefore,
  season: Garden["season"],
): readonly FeedingCourse[] {
  const seen = plantings.flatMap((planting) =>
    planting.sightings
      .filter(({ sign, isKnown }) => isKnown && sign.reopens !== undefined)
      .map((sighting) => ({ planting, sighting, on: sighting.seen.on })),
  );
  return [...new Set(seen.map(({ on }) => on))].sort().reduce((before, on) => {
    const fed = fedBefore(before);
    return seen
      .filter((one) => one.on === on)
      .reduce((all, one) => withOpened(all, one.planting, one.sighting, fed, season.to), before);
  }, courses);
}

/** Where nobody tells what was given, all was that would be planned. */
export function fedAsPlanned(
  courses: readonly FeedingCourse[],
  allowedDays: readonly Day[],
): FedBefore {
  const { feedings } = chooseDays({ allowedDays, courses: courses.map(({ course }) => course) });
  const byId = new Map(courses.map((one) => [one.course.id, one]));
  const fed = feedings.flatMap(({ course, day }) => {
    const of = byId.get(course);
    return of === undefined ? [] : [{ planting: of.planting.id, route: of.route, day }];
  });
  return { given: fed, notGiven: [], isPlanned: true };
}

function withOpened(
  courses: readonly FeedingCourse[],
  { planting, life }: SeenPlanting,
  { seen: { on }, sign }: Sighting,
  fed: FedBefore,
  seasonEnd: Day,
): readonly FeedingCourse[] {
  const own = courses.filter((course) => course.planting.id === planting.id);
  const hasOpen = (route: Route): boolean =>
    own.some((course) => course.route === route && !hasEnded(course, fed, on));
  const ended = own.filter(({ route }) => !hasOpen(route));
  const opened = [...new Set(ended.map(({ route }) => route))].flatMap((route) => {
    const last = ended.findLast((course) => course.route === route);
    return last === undefined ? [] : openedAfter(last, life, on, sign.reopens, fed, seasonEnd);
  });
  const routes = new Set(opened.map(({ route }) => route));
  return [
    ...courses.map((course) =>
      ended.includes(course) && routes.has(course.route) ? closed(course, fed, on) : course,
    ),
    ...opened,
  ];
}

function openedAfter(
  last: FeedingCourse,
  life: LifeToFeed,
  on: Day,
  reopens: Sighting["sign"]["reopens"],
  fed: FedBefore,
  seasonEnd: Day,
): FeedingCourse[] {
  const { planting, route } = last;
  const rule = last.spans.at(-1)?.rule;
  if (rule === undefined || reopens === undefined) return [];
  const interval = intervalFor(planting, rule);
  const lastFed = daysFed(last, fed.given, on).at(-1);
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
function hasEnded(one: FeedingCourse, fed: FedBefore, on: Day): boolean {
  const { coverTo, feedings } = one.course;
  const settled = new Set(daysFed(one, [...fed.given, ...fed.notGiven], on));
  return coverTo < on || (feedings !== undefined && settled.size >= feedings);
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
function closed(one: FeedingCourse, fed: FedBefore, on: Day): FeedingCourse {
  const days = daysFed(one, fed.given, on);
  const coverTo = earlier(one.course.coverTo, days.at(-1) ?? addDays(on, -1));
  const heldDays = fed.isPlanned ? days : undefined;
  return { ...one, course: { ...one.course, ...given({ heldDays }), coverTo } };
}
