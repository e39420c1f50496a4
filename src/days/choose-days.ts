import { dayFromNumber, dayNumber } from "../dates.js";
import { byText } from "../values.js";
import { bestChain } from "./best-chain.js";
import { bestRounds } from "./best-rounds.js";
import {
  courseGraph,
  type CourseGraph,
  type DueWindow,
  startWindow,
  windowAfter,
} from "./course-graph.js";
import type {
  Schedule,
  ScheduledFeeding,
  ScheduleProblem,
  UnmetWindow,
} from "./schedule-problem.js";

/**
 * Enough to prove the number of rounds for a dozen plantings, and the whole schedule for most gardens
 * fed on up to three days a week; little enough for about 50 ms there, and two seconds for 1,000
 * plantings. Counted in work, not in time, so that every machine gives the same schedule.
 */
const effort = { rounds: 1e8, wishes: 3e6 };

/**
 * The days that `ScheduleProblem` asks for; see there for what is wanted, in which order.
 *
 * Late days and late windows are always the least there can be, and each course's feedings always
 * the best for the rounds chosen. The choice of rounds is proven best unless the effort runs out:
 * with many allowed days a week it may then miss a wish after the number of rounds and, for
 * hundreds of courses with narrow gaps, have a few rounds more than the fewest.
 *
 * Never fails: what cannot be met is in `unmet`. Throws RangeError for a course without phases.
 */
export function chooseDays(problem: ScheduleProblem): Schedule {
  if (problem.courses.length === 0) return { feedings: [], unmet: [] };
  const dayNos = problem.allowedDays.map(dayNumber);
  const graphs = [...problem.courses]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((course) => courseGraph(course, dayNos));
  const published = new Set(problem.keepDays?.map(dayNumber));
  const publishedRounds = dayNos.map((d) => published.has(d));
  const { rounds } = bestRounds({
    graphs,
    dayNos,
    publishedRounds: publishedRounds.includes(true) ? publishedRounds : undefined,
    extraRounds: problem.keepExtraRounds ?? 0,
    effort,
  });
  const feedings: ScheduledFeeding[] = [];
  const unmet: UnmetWindow[] = [];
  for (const graph of graphs) {
    const chain = bestChain(graph, dayNos, rounds);
    if (!chain) throw new Error(`course ${graph.course.id} is stranded`);
    const told = tell(graph, dayNos, chain.days);
    feedings.push(...told.feedings);
    unmet.push(...told.unmet);
  }
  return {
    feedings: feedings.sort((a, b) => byText(a.day, b.day) || byText(a.course, b.course)),
    unmet: unmet.sort(
      (a, b) => byText(a.window.latest, b.window.latest) || byText(a.course, b.course),
    ),
  };
}

/** A course's days as feedings with their windows, and which windows they miss. */
function tell(graph: CourseGraph, dayNos: readonly number[], days: readonly number[]): Schedule {
  const { id, coverTo } = graph.course;
  const feedings: ScheduledFeeding[] = [];
  const unmet: UnmetWindow[] = [];
  let due = startWindow(graph.course, graph.phases);
  for (const i of days) {
    const dayNo = dayNos[i] as number;
    const day = dayFromNumber(dayNo);
    const window = named(due);
    feedings.push({ course: id, day, window });
    if (dayNo > due.latest)
      unmet.push({ course: id, window, fedOn: day, lateDays: dayNo - due.latest });
    due = windowAfter(graph.phases, dayNo);
  }
  const end = dayNumber(coverTo) + 1;
  if (due.latest < end) unmet.push({ course: id, window: named(due), lateDays: end - due.latest });
  return { feedings, unmet };
}

function named(w: DueWindow): ScheduledFeeding["window"] {
  return { earliest: dayFromNumber(w.earliest), latest: dayFromNumber(w.latest) };
}
