/** Feedings that a sign opens after the feeding of a planting has ended. */
import { addDays, type Day, earlier, later } from "../dates.js";
import { chooseDays, type FeedingCourse, intervalFor } from "../days/index.js";
import type { Garden, Route } from "../garden/index.js";
import { feedableTo, type LifeToFeed, type Sighting } from "../rules/index.js";

/** A planting with what was seen on it. */
export interface SeenPlanting {
  readonly planting: { readonly id: string };
  readonly life: LifeToFeed;
  readonly sightings: readonly Sighting[];
}

/** What was fed on a day, or was to be. */
export interface FedDay {
  readonly planting: string;
  /** Absent for all that the planting was due. */
  readonly route?: Route;
  readonly day: Day;
}

/** Days on which a planting was fed, and those on which it was not though it was to be. */
export interface FedBefore {
  readonly given: readonly FedDay[];
  readonly notGiven: readonly FedDay[];
}

/** Where nobody tells what was given, all was that is planned. */
export function fedAsPlanned(
  courses: readonly FeedingCourse[],
  allowedDays: readonly Day[],
): FedBefore {
  const { feedings } = chooseDays({ allowedDays, courses: courses.map(({ course }) => course) });
  const byId = new Map(courses.map((one) => [one.course.id, one]));
  const given = feedings.flatMap(({ course, day }) => {
    const of = byId.get(course);
    return of === undefined ? [] : [{ planting: of.planting.id, route: of.route, day }];
  });
  return { given, notGiven: [] };
}

/** Whether a sign on a planting may open anything. */
export function mayReopen({ sign, isKnown }: Sighting): boolean {
  return isKnown && sign.reopens !== undefined;
}

/**
 * The courses, and behind each that had ended when a sign was seen, one of so many feedings as the sign
 * opens. Where the feeding has not ended, a sign changes only the rate.
 */
export function reopened(
  courses: readonly FeedingCourse[],
  plantings: readonly SeenPlanting[],
  before: FedBefore,
  season: Garden["season"],
): FeedingCourse[] {
  return plantings.reduce<FeedingCourse[]>(
    (all, seen) =>
      seen.sightings
        .filter(mayReopen)
        .reduce((those, sighting) => after(those, seen, sighting, before, season.to), all),
    [...courses],
  );
}

function after(
  courses: readonly FeedingCourse[],
  { planting, life }: SeenPlanting,
  { seen: { on }, sign: { reopens } }: Sighting,
  before: FedBefore,
  seasonEnd: Day,
): FeedingCourse[] {
  const own = courses.filter((course) => course.planting.id === planting.id);
  const opened = [...new Set(own.map(({ route }) => route))].flatMap((route) => {
    const ofRoute = own.filter((course) => course.route === route);
    const [last] = ofRoute.slice(-1);
    const rule = last?.spans.at(-1)?.rule;
    const isOpen = ofRoute.some((course) => !hasEnded(course, before, on));
    if (last === undefined || rule === undefined || reopens === undefined || isOpen) return [];
    const interval = intervalFor(last.planting, rule);
    const lastFed = daysFed(last, before.given, on).at(-1);
    const earliest = later(
      on,
      lastFed === undefined ? on : addDays(lastFed, interval.shortestDays),
    );
    const to = earlier(feedableTo(rule, life), seasonEnd);
    if (to < earliest) return [];
    const latest = earlier(later(earliest, addDays(on, reopens.within_days)), to);
    return [
      {
        course: {
          id: `${planting.id}/${route}/after-${on}`,
          first: { earliest, latest },
          phases: [{ from: on, ...interval }],
          feedings: reopens.feedings,
          coverTo: to,
        },
        planting: last.planting,
        route,
        spans: [{ route, rule, from: on, to }],
        openedBySignOn: on,
      },
    ];
  });
  const isReopened = (course: FeedingCourse): boolean =>
    own.includes(course) && opened.some(({ route }) => route === course.route);
  return courses
    .flatMap((course) => (isReopened(course) ? [closed(course, before, on)] : [course]))
    .concat(opened);
}

/** Its days are over, or it has all the feedings that it owed. */
function hasEnded(
  { course, ...of }: FeedingCourse,
  { given, notGiven }: FedBefore,
  on: Day,
): boolean {
  if (course.coverTo < on) return true;
  const settled = new Set(daysFed({ course, ...of }, [...given, ...notGiven], on));
  return course.feedings !== undefined && settled.size >= course.feedings;
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

/** What is given from the sign on is not of it. */
function closed(course: FeedingCourse, { given }: FedBefore, on: Day): FeedingCourse {
  const end = daysFed(course, given, on).at(-1) ?? addDays(on, -1);
  const coverTo = earlier(course.course.coverTo, end);
  return { ...course, course: { ...course.course, coverTo } };
}
