/**
 * What a choice of rounds costs, in one number whose order is the order of wishes 3 to 5, and small
 * moves that make a choice cheaper.
 */
import type { CostCourse, Weights } from "./cost-course.js";
import { boundsAt, type CourseGraph } from "./course-graph.js";

/**
 * Weights so large that less of an earlier wish always outweighs all of a later one. Where the
 * numbers would no longer be exact (some hundred courses), later wishes may outweigh earlier ones.
 */
export function weightsFor(
  graphs: readonly CourseGraph[],
  dayNos: readonly number[],
  keeps: { readonly any: boolean; readonly extraRounds: number },
): Weights {
  let offSum = 0;
  let feedingSum = 0;
  for (const g of graphs) {
    const shortest = Math.min(...g.course.phases.map((p) => p.shortestDays));
    const span = (dayNos.at(-1) ?? 0) - (dayNos[g.starts[0] ?? 0] ?? 0);
    const feedings = 1 + Math.floor(span / Math.max(1, shortest));
    offSum += feedings * worstOff(g, dayNos);
    feedingSum += feedings;
  }
  const feeding = offSum + 1;
  if (!keeps.any) return { feeding, round: 0, newFeeding: 0, newRound: 0 };
  // The number of rounds can only differ when there may be extra ones.
  const round = keeps.extraRounds > 0 ? feeding * (feedingSum + 1) : 0;
  const newFeeding = round > 0 ? round * (dayNos.length + 1) : feeding * (feedingSum + 1);
  return { feeding, round, newFeeding, newRound: newFeeding * (feedingSum + 1) };
}

function worstOff(g: CourseGraph, dayNos: readonly number[]): number {
  let worst = 0;
  const look = (fromNo: number, days: readonly number[]): void => {
    if (days.length === 0) return;
    const { targetDays } = boundsAt(g.phases, fromNo);
    for (const j of [days[0] as number, days.at(-1) as number])
      worst = Math.max(worst, ((dayNos[j] as number) - fromNo - targetDays) ** 2);
  };
  g.next.forEach((days, i) => {
    look(dayNos[i] as number, days);
  });
  if (g.lastFedNo !== undefined) look(g.lastFedNo, g.starts);
  return worst;
}

export type CostOfRounds = (rounds: readonly number[]) => number;

/** The regret of sorted rounds; Infinity when they strand a course. */
export function costMeter(
  courses: readonly CostCourse[],
  roundCosts: ArrayLike<number>,
): CostOfRounds {
  const dayCount = roundCosts.length;
  const regret = new Float64Array(dayCount);
  const writtenIn = new Int32Array(dayCount).fill(-1);
  let turn = 0;
  const reach = (j: number, value: number): void => {
    if (writtenIn[j] === turn && (regret[j] as number) <= value) return;
    writtenIn[j] = turn;
    regret[j] = value;
  };
  const ofCourse = (course: CostCourse, rounds: readonly number[]): number => {
    turn++;
    course.starts.forEach((day, k) => {
      reach(day, course.startCosts[k] as number);
    });
    let done = course.endAtStart;
    for (const i of rounds) {
      if (writtenIn[i] !== turn) continue;
      const here = regret[i] as number;
      done = Math.min(done, here + (course.ends[i] as number));
      const stop = course.nextFrom[i + 1] as number;
      for (let k = course.nextFrom[i] as number; k < stop; k++)
        reach(course.nextDays[k] as number, here + (course.nextCosts[k] as number));
    }
    return done;
  };
  return (rounds) => {
    let sum = 0;
    for (const i of rounds) sum += roundCosts[i] as number;
    for (const course of courses) {
      sum += ofCourse(course, rounds);
      if (sum === Infinity) break;
    }
    return sum;
  };
}

/** Moves single rounds, to a day between their neighbours, while that makes the choice better. */
export function shiftRounds(
  start: readonly number[],
  costOf: CostOfRounds,
  dayCount: number,
  mostTries: number,
): { readonly rounds: readonly number[]; readonly cost: number } {
  const rounds = [...start];
  let cost = costOf(rounds);
  let tries = 0;
  for (let moved = true; moved && tries < mostTries;) {
    moved = false;
    for (let r = 0; r < rounds.length; r++) {
      const from = (rounds[r - 1] ?? -1) + 1;
      const to = (rounds[r + 1] ?? dayCount) - 1;
      let best = rounds[r] as number;
      for (let i = from; i <= to && tries < mostTries; i++) {
        if (i === best) continue;
        rounds[r] = i;
        tries++;
        const tried = costOf(rounds);
        if (tried > cost || (tried === cost && i > best)) continue;
        cost = tried;
        best = i;
        moved = true;
      }
      rounds[r] = best;
    }
  }
  return { rounds, cost };
}
