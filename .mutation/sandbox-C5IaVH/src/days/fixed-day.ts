/** A feeding on a day that is settled already. */
// @ts-nocheck

import { type Day, dayFromNumber, dayNumber, type DaySpan } from "../dates.js";
import { gapPhases, startWindow } from "./course-graph.js";
import type { Course, Schedule } from "./schedule-problem.js";

/** The window of the course's next feeding; to its end where it owes nothing any more. */
export function nextWindow(course: Course): DaySpan {
  const { earliest, latest } = startWindow(course, gapPhases(course));
  return {
    from: dayFromNumber(earliest),
    to: Number.isFinite(latest) ? dayFromNumber(latest) : course.coverTo,
  };
}

/** The course's next feeding on that day, and the window it misses, if it does. */
export function fedOn(course: Course, day: Day): Schedule {
  const { from, to } = nextWindow(course);
  const window = { earliest: from, latest: to };
  const lateDays = dayNumber(day) - startWindow(course, gapPhases(course)).latest;
  return {
    feedings: [{ course: course.id, day, window }],
    unmet: lateDays > 0 ? [{ course: course.id, window, fedOn: day, lateDays }] : [],
  };
}
