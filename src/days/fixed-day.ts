/** A feeding on a day that is settled already. */
import { type Day, dayFromNumber, dayNumber } from "../dates.js";
import { gapPhases, startWindow } from "./course-graph.js";
import type { Course, Schedule } from "./schedule-problem.js";

/** The course's next feeding on that day, and the window it misses, if it does. */
export function fedOn(course: Course, day: Day): Schedule {
  const { earliest, latest } = startWindow(course, gapPhases(course));
  const window = {
    earliest: dayFromNumber(earliest),
    // A course that owes nothing any more has a window without an end.
    latest: Number.isFinite(latest) ? dayFromNumber(latest) : course.coverTo,
  };
  const lateDays = dayNumber(day) - latest;
  return {
    feedings: [{ course: course.id, day, window }],
    unmet: lateDays > 0 ? [{ course: course.id, window, fedOn: day, lateDays }] : [],
  };
}
