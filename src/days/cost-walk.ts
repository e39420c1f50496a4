/**
 * One walk along the allowed days, as in `round-walk.ts`, that also weighs what the rounds cost.
 *
 * Here a choice leaves to every course not only the days that could be its next feeding, but with
 * each the least regret of getting there. A choice makes another needless when it has spent no
 * more rounds and, whatever days are taken from here on, costs no more: the most that any course
 * could lose by the exchange, summed, is not above zero. Of equals the one with earlier days stays.
 */
import type { CostCourse } from "./cost-course.js";
import { copyChoice, grown, newLayer } from "./cost-layer.js";

export interface CostTerms {
  readonly courses: readonly CostCourse[];
  readonly dayCount: number;
  /** Most choices kept after a day. */
  readonly room: number;
  readonly overflow: "drop" | "melt";
  /** By day, the price of a round on it. */
  readonly roundCosts: ArrayLike<number>;
  /** No answer with more rounds is wanted. */
  readonly maxRounds: number;
  /** No answer with more regret is wanted. */
  readonly maxCost: number;
  /** The walk gives up, with nothing found, beyond so much work. */
  readonly maxWork: number;
  /**
   * Regret surely to come from day d on when at most r rounds are left, at d * (maxRounds + 1) + r;
   * Infinity when r rounds cannot do.
   */
  readonly toGo: Float64Array;
}

export interface CostWalk {
  /** Least regret found; Infinity when none is within the terms. */
  readonly cost: number;
  readonly rounds: readonly number[];
  /**
   * Least regret of any choice kept with at most r rounds on the days before d, up to the last
   * feedings before d and without the steps that lead on from them; laid out as `toGo`. Only
   * filled when melting.
   */
  readonly soFar: Float64Array;
  /** Nothing had to fall away or melt. */
  readonly exact: boolean;
  /** Regrets written and compared, as a measure of effort that is the same on every machine. */
  readonly work: number;
}

export function walkCosts(terms: CostTerms): CostWalk {
  const { courses, dayCount, room, overflow, roundCosts, maxRounds, maxCost, maxWork, toGo } =
    terms;
  const width = 1 + Math.max(1, ...courses.map(longestStep));
  const row = overflow === "melt" ? 2 * width + 2 : width + 1;
  const stride = courses.length * row;
  const courseCount = courses.length;
  const rounds1 = maxRounds + 1;
  let layer = newLayer(64, courseCount, row);
  let spare = newLayer(64, courseCount, row);
  let children = newLayer(64, courseCount, row);
  const trailDays: number[] = [];
  const trailBefore: number[] = [];
  const soFar = new Float64Array((dayCount + 1) * rounds1).fill(Infinity);
  const startAt = courses.map((c) => startsByDay(c, dayCount));
  const lastStarts = courses.map((c) => c.starts.at(-1) ?? -1);
  const lastSteps = courses.map(lastStepByDay);
  let exact = true;
  let work = 0;

  begin();
  note(0);
  for (let day = 0; day < dayCount && layer.size > 0; day++) {
    children.size = 0;
    for (let p = 0; p < layer.size; p++) {
      advance(p, day, true);
      advance(p, day, false);
    }
    selectBest();
    [layer, spare] = [spare, layer];
    note(day + 1);
    if (work > maxWork) {
      exact = false;
      layer.size = 0;
    }
  }
  let best = -1;
  for (let p = 0; p < layer.size; p++) {
    const less =
      best < 0
        ? -1
        : (layer.total[p] as number) - (layer.total[best] as number) ||
          (layer.rank[p] as number) - (layer.rank[best] as number);
    if (less < 0) best = p;
  }
  const rounds: number[] = [];
  if (best >= 0)
    for (let t = layer.trails[best] as number; t >= 0; t = trailBefore[t] as number)
      rounds.push(trailDays[t] as number);
  return {
    cost: best >= 0 ? (layer.total[best] as number) : Infinity,
    rounds: rounds.reverse(),
    soFar,
    exact,
    work,
  };

  function begin(): void {
    layer.size = 1;
    layer.values.fill(Infinity, 0, stride);
    layer.trails[0] = -1;
    courses.forEach((course, c) => {
      course.starts.forEach((day, k) => {
        if (day < width) layer.values[c * row + day] = course.startCosts[k] as number;
      });
      layer.values[c * row + width] = course.endAtStart;
      if (row > width + 1 && course.endAtStart !== Infinity) layer.values[(c + 1) * row - 1] = 0;
    });
    // Zero is the least regret of any start, seen or not yet seen.
  }

  /** What is known of the choices before `day`, for walks in the other direction. */
  function note(day: number): void {
    if (overflow === "drop") return;
    const at = day * rounds1;
    for (let p = 0; p < layer.size; p++) {
      const r = at + (layer.counts[p] as number);
      soFar[r] = Math.min(soFar[r] as number, spentBefore(p, day));
    }
    for (let r = at + 1; r < at + rounds1; r++)
      soFar[r] = Math.min(soFar[r] as number, soFar[r - 1] as number);
  }

  function spentBefore(p: number, day: number): number {
    let sum = layer.own[p] as number;
    for (let c = 0; c < courseCount; c++) {
      if ((lastStarts[c] as number) >= day) continue;
      const base = p * stride + c * row;
      let min = layer.values[base + row - 1] as number;
      const ends = lastSteps[c] as Int32Array;
      for (let d = Math.max(0, day - width); d < day; d++)
        if ((ends[d] as number) >= day)
          min = Math.min(min, layer.values[base + width + 1 + (d % width)] as number);
      sum += min;
    }
    return sum;
  }

  function advance(p: number, day: number, take: boolean): void {
    const count = (layer.counts[p] as number) + (take ? 1 : 0);
    if (count > maxRounds) return;
    const ahead = toGo[(day + 1) * rounds1 + maxRounds - count] as number;
    if (ahead === Infinity) return;
    if (children.size === children.counts.length) children = grown(children, courseCount, row);
    const k = children.size;
    const { values, least } = children;
    const from = p * stride;
    const to = k * stride;
    work += stride;
    values.set(layer.values.subarray(from, from + stride), to);
    const slot = day % width;
    const coming = day + width;
    let fed = false;
    let total = (layer.own[p] as number) + (take ? (roundCosts[day] as number) : 0);
    children.own[k] = total;
    for (let c = 0, base = to; c < courseCount; c++, base += row) {
      const course = courses[c] as CostCourse;
      const here = values[base + slot] as number;
      values[base + slot] = Infinity;
      if (row > width + 1) values[base + width + 1 + slot] = take ? here : Infinity;
      if (take && here !== Infinity) {
        fed = true;
        if (
          row > width + 1 &&
          course.ends[day] !== Infinity &&
          here < (values[base + row - 1] as number)
        )
          values[base + row - 1] = here;
        const done = here + (course.ends[day] as number);
        if (done < (values[base + width] as number)) values[base + width] = done;
        const stop = course.nextFrom[day + 1] as number;
        for (let s = course.nextFrom[day] as number; s < stop; s++) {
          const at = base + ((course.nextDays[s] as number) % width);
          const value = here + (course.nextCosts[s] as number);
          if (value < (values[at] as number)) values[at] = value;
        }
      }
      const startsToCome = coming <= (lastStarts[c] as number);
      if (startsToCome) {
        const start = (startAt[c] as Float64Array)[coming] as number;
        if (start < (values[base + slot] as number)) values[base + slot] = start;
      }
      const done = values[base + width] as number;
      let min = done;
      let ahead32 = 0;
      for (let s = base; s < base + width; s++) {
        const value = values[s] as number;
        if (value >= done) values[s] = Infinity;
        else {
          ahead32 |= 1 << (s - base);
          if (value < min) min = value;
        }
      }
      children.reach[k * courseCount + c] = done === Infinity ? ahead32 : -1;
      if (startsToCome) min = 0;
      if (min === Infinity) return;
      least[k * courseCount + c] = min;
      total += min;
    }
    if (take && !fed) return;
    if (total + ahead > maxCost) return;
    cutDear(to, k, maxCost - total);
    children.counts[k] = count;
    children.total[k] = total;
    children.outlook[k] = total + ahead;
    children.rank[k] = 2 * (layer.rank[p] as number) + (take ? 0 : 1);
    const before = layer.trails[p] as number;
    children.trails[k] = take ? trailBefore.push(before) - 1 : before;
    if (take) trailDays.push(day);
    children.size++;
  }

  /**
   * Ways of one course that alone cost more than may be spent are no ways. What is to come must not
   * count here: it is only known of some best choice, which may not be the one with earliest days.
   */
  function cutDear(to: number, k: number, slack: number): void {
    const { values, least } = children;
    for (let c = 0, base = to; c < courseCount; c++, base += row) {
      const limit = (least[k * courseCount + c] as number) + slack;
      let ahead32 = 0;
      for (let s = base; s <= base + width; s++)
        if ((values[s] as number) > limit) values[s] = Infinity;
        else if (s < base + width) ahead32 |= 1 << (s - base);
        else ahead32 = -1;
      children.reach[k * courseCount + c] = ahead32;
    }
  }

  /** Fills `spare` from the children, cheapest first. */
  function selectBest(): void {
    const { size, total, outlook, counts, rank, trails } = children;
    const order = Array.from({ length: size }, (_, c) => c);
    // Ranks double each day: made small again.
    order
      .sort((a, b) => (rank[a] as number) - (rank[b] as number))
      .forEach((c, r) => {
        rank[c] = r;
      });
    order.sort(
      (a, b) =>
        (outlook[a] as number) - (outlook[b] as number) ||
        (total[a] as number) - (total[b] as number) ||
        (counts[a] as number) - (counts[b] as number) ||
        (rank[a] as number) - (rank[b] as number),
    );
    spare.size = 0;
    const melted = new Map<number, number>();
    for (const c of order) {
      if (isNeedless(c)) continue;
      if (spare.size < room) {
        put(c);
        continue;
      }
      exact = false;
      if (overflow === "drop") break;
      const t = trails[c] as number;
      const key = (counts[c] as number) * 4096 + (t < 0 ? 0 : (trailDays[t] as number) + 1);
      const into = melted.get(key);
      if (into === undefined) melted.set(key, c);
      else melt(into, c);
    }
    for (const c of melted.values()) put(c);
  }

  function melt(into: number, c: number): void {
    const { values, least, reach, own, total } = children;
    for (let s = 0; s < stride; s++)
      values[into * stride + s] = Math.min(
        values[into * stride + s] as number,
        values[c * stride + s] as number,
      );
    own[into] = Math.min(own[into] as number, own[c] as number);
    let sum = own[into];
    for (let s = 0; s < courseCount; s++) {
      reach[into * courseCount + s] =
        (reach[into * courseCount + s] as number) | (reach[c * courseCount + s] as number);
      const min = Math.min(
        least[into * courseCount + s] as number,
        least[c * courseCount + s] as number,
      );
      least[into * courseCount + s] = min;
      sum += min;
    }
    total[into] = sum;
  }

  function put(c: number): void {
    if (spare.size === spare.counts.length) spare = grown(spare, courseCount, row);
    copyChoice(children, c, spare, spare.size++, courseCount, row);
  }

  function isNeedless(c: number): boolean {
    for (let k = 0; k < spare.size; k++)
      if ((spare.counts[k] as number) <= (children.counts[c] as number) && isNoDearer(k, c))
        return true;
    return false;
  }

  /** Whether kept choice k never costs more than child c; on a tie it must have the earlier days. */
  function isNoDearer(k: number, c: number): boolean {
    if ((spare.total[k] as number) > (children.total[c] as number)) return false;
    // The least that the exchange can cost, raised course by course to the most.
    for (let n = 0; n < courseCount; n++)
      if (
        (children.reach[c * courseCount + n] as number) &
        ~(spare.reach[k * courseCount + n] as number)
      )
        return false;
    let loss = (spare.total[k] as number) - (children.total[c] as number);
    const mine = spare.values;
    const theirs = children.values;
    for (let n = 0; n < courseCount; n++) {
      const base =
        (spare.least[k * courseCount + n] as number) -
        (children.least[c * courseCount + n] as number);
      let most = base;
      const a = k * stride + n * row;
      const b = c * stride + n * row;
      const doneMine = mine[a + width] as number;
      for (let s = 0; s <= width; s++) {
        const their = theirs[b + s] as number;
        if (their === Infinity) continue;
        const own = mine[a + s] as number;
        const diff = (own < doneMine ? own : doneMine) - their;
        if (diff > most) most = diff;
      }
      work += row;
      loss += most - base;
      if (loss > 0) return false;
    }
    return loss < 0 || (spare.rank[k] as number) <= (children.rank[c] as number);
  }
}

function longestStep(course: CostCourse): number {
  return lastStepByDay(course).reduce((longest, j, i) => Math.max(longest, j - i), 0);
}

function lastStepByDay(course: CostCourse): Int32Array {
  const last = new Int32Array(course.ends.length).fill(-1);
  for (let i = 0; i < last.length; i++)
    for (let k = course.nextFrom[i] as number; k < (course.nextFrom[i + 1] as number); k++)
      last[i] = Math.max(last[i] as number, course.nextDays[k] as number);
  return last;
}

function startsByDay(course: CostCourse, dayCount: number): Float64Array {
  const costs = new Float64Array(dayCount).fill(Infinity);
  course.starts.forEach((day, k) => {
    costs[day] = course.startCosts[k] as number;
  });
  return costs;
}
