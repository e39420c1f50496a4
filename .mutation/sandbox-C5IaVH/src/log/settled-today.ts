/** Feedings published for today: they stay, whatever the garden file says since this morning. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { fedOn, type FeedingCourse, type Schedule, together } from "../days/index.js";
import { byText } from "../values.js";
import { resumed } from "./given.js";
import type { Past } from "./past.js";

export interface Settled {
  readonly schedule: Schedule;
  /** The courses as they go on after it. */
  readonly after: readonly FeedingCourse[];
}

export function settledToday(
  courses: readonly FeedingCourse[],
  todays: Past["todays"],
  today: Day,
): Settled {
  const fed = todays.flatMap(({ planting, route }) => {
    const course = courses.find(
      (one) => one.planting.id === planting && one.route === route && today <= one.course.coverTo,
    );
    return course === undefined ? [] : [course];
  });
  const schedules = fed
    .sort((a, b) => byText(a.course.id, b.course.id))
    .map(({ course }) => fedOn(course, today));
  return {
    schedule: together(schedules),
    after: resumed(
      courses,
      fed.map(({ planting, route }) => ({ planting: planting.id, route, day: today })),
    ),
  };
}

/** Who writes down this morning that a round is missed does not mean this evening. */
export function notToday(
  courses: readonly FeedingCourse[],
  notGiven: Past["notGiven"],
  today: Day,
): FeedingCourse[] {
  const isMissed = ({ planting, route }: FeedingCourse): boolean =>
    notGiven.some(
      (one) =>
        one.why === "log" &&
        one.day === today &&
        one.planting === planting.id &&
        one.route === route,
    );
  return courses.map((one) => {
    const { course } = one;
    if (!isMissed(one)) return one;
    return { ...one, course: { ...course, avoidDays: [...(course.avoidDays ?? []), today] } };
  });
}
