// @ts-nocheck
import { dayFromNumber, dayNumber } from "../dates.js";
import { type DueWindow, gapPhases, startWindow, windowAfter } from "./course-graph.js";
import type { Course, Schedule, ScheduledFeeding, UnmetWindow } from "./schedule-problem.js";

/** A course's days as feedings with their windows, and which windows they miss. Day numbers, sorted. */
export function served(course: Course, dayNos: readonly number[]): Schedule {
  const { id, coverTo } = course;
  const phases = gapPhases(course);
  const feedings: ScheduledFeeding[] = [];
  const unmet: UnmetWindow[] = [];
  let due = startWindow(course, phases);
  for (const dayNo of dayNos) {
    const day = dayFromNumber(dayNo);
    const window = named(due);
    feedings.push({ course: id, day, window });
    if (dayNo > due.latest)
      unmet.push({ course: id, window, fedOn: day, lateDays: dayNo - due.latest });
    due = windowAfter(phases, dayNo);
  }
  const end = dayNumber(coverTo) + 1;
  const isDone = dayNos.length === course.feedings;
  if (!isDone && due.latest < end)
    unmet.push({ course: id, window: named(due), lateDays: end - due.latest });
  return { feedings, unmet };
}

function named(w: DueWindow): ScheduledFeeding["window"] {
  return { earliest: dayFromNumber(w.earliest), latest: dayFromNumber(w.latest) };
}
