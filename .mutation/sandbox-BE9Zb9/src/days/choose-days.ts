// @ts-nocheck
import { dayNumber } from "../dates.js";
import { byText } from "../values.js";
import { bestChain } from "./best-chain.js";
import { cheapestRounds } from "./cheapest-rounds.js";
import { costCourse, weightsFor } from "./cost-course.js";
import { courseGraph, type CourseGraph } from "./course-graph.js";
import { fewestRounds } from "./fewest-rounds.js";
import type { Schedule, ScheduleProblem } from "./schedule-problem.js";
import { served } from "./served.js";

/**
 * The days that `ScheduleProblem` asks for; see there for what is wanted, in which order.
 *
 * Late days and late windows are always the least there can be, and each course's feedings always
 * the best for the rounds chosen. The rounds come from two walks that keep a bounded number of
 * choices: one for the fewest, one for the cheapest of so many. They are the best there are while
 * nothing worth keeping falls away, which is so in small gardens. Beyond that nothing is proven: in
 * the gardens of the tests rounds are the fewest for up to a dozen courses, and within 2 % of it for
 * hundreds, while with many allowed days a week a wish after the number of rounds may be missed.
 * The bounds count choices, not time, so that every machine gives the same schedule.
 *
 * Never fails: what cannot be met is in `unmet`. Throws RangeError for a course without phases.
 */
export function chooseDays(problem: ScheduleProblem): Schedule {
  if (problem.courses.length === 0) return { feedings: [], unmet: [] };
  const dayNos = problem.allowedDays.map(dayNumber);
  const graphs = [...problem.courses]
    .sort((a, b) => byText(a.id, b.id))
    .map((course) => courseGraph(course, dayNos));
  const rounds = bestRounds(problem, graphs, dayNos);
  return together(
    graphs.map((graph) => {
      const chain = bestChain(graph, dayNos, rounds);
      if (!chain) throw new Error(`course ${graph.course.id} is stranded`);
      return served(
        graph.course,
        chain.days.map((i) => dayNos[i] as number),
      );
    }),
  );
}

/** One schedule of several, feedings by day and unmet windows by their ends. */
export function together(schedules: readonly Schedule[]): Schedule {
  return {
    feedings: schedules
      .flatMap(({ feedings }) => feedings)
      .sort((a, b) => byText(a.day, b.day) || byText(a.course, b.course)),
    unmet: schedules
      .flatMap(({ unmet }) => unmet)
      .sort((a, b) => byText(a.window.latest, b.window.latest) || byText(a.course, b.course)),
  };
}

/** Sorted indexes into the allowed days. */
function bestRounds(
  problem: ScheduleProblem,
  graphs: readonly CourseGraph[],
  dayNos: readonly number[],
): readonly number[] {
  const fewest = fewestRounds(graphs, dayNos.length);
  const published = new Set(problem.keepDays?.map(dayNumber));
  const keepsRounds = dayNos.some((d) => published.has(d));
  const keeps = keepsRounds || graphs.some((g) => g.published.includes(true));
  const extraRounds = keeps ? (problem.keepExtraRounds ?? 0) : 0;
  const weights = weightsFor(graphs, dayNos, { any: keeps, extraRounds });
  const cheapest = cheapestRounds({
    courses: graphs.map((g) => costCourse(g, dayNos, weights)),
    roundCosts: dayNos.map(
      (d) => weights.round + (keepsRounds && !published.has(d) ? weights.newRound : 0),
    ),
    maxRounds: fewest.rounds.length + extraRounds,
    // Extra rounds may be worth their price; otherwise all end with as many.
    fewestFirst: extraRounds === 0,
    ahead: fewest.ahead,
  });
  return cheapest ?? fewest.rounds;
}
