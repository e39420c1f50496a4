/**
 * One walk along the allowed days, taking or passing over each, that keeps the choices worth keeping.
 *
 * After some days, all that a choice leaves to the days to come is, for every course, the set of
 * days that could be its next feeding, and how many rounds it has spent. Choices with the same sets
 * are one; a choice that leaves every course at least the days another does, for no more rounds,
 * makes the other needless. What is still too many either falls away (the walk then finds a good
 * answer, which may not be the best) or is melted into choices with all their days and the least
 * of their rounds, one for each last round (the walk then finds a number of rounds that no answer can
 * undercut).
 */
import { type BitCourse, setBit } from "./bit-course.js";

export interface WalkTerms {
  readonly courses: readonly BitCourse[];
  readonly dayCount: number;
  readonly wordCount: number;
  /** By day, what a round on it counts: 1, or 0 where it is there anyway; Infinity for none. */
  readonly roundPrices: ArrayLike<number>;
  /** Most choices kept after a day, before what is melted. */
  readonly room: number;
  readonly overflow: "drop" | "melt";
  /** No answer with more rounds is wanted. */
  readonly atMost: number;
  /** By day: rounds that are surely needed from that day on, at least. Of length dayCount + 1. */
  readonly toGo: ArrayLike<number>;
}

export interface Walk {
  /** Fewest rounds found; Infinity when none within `atMost`. */
  readonly fewest: number;
  /** Sorted day indexes of such a choice. Means nothing after melting. */
  readonly rounds: readonly number[];
  /** By day: fewest rounds of any choice kept, on the days before it. Of length dayCount + 1. */
  readonly soFar: Float64Array;
  /** Nothing had to fall away or melt. */
  readonly exact: boolean;
  /** Words of sets written and compared, as a measure of effort that is the same on every machine. */
  readonly work: number;
}

/** Choices after one day; choice c has its sets at c * stride. */
interface Layer {
  size: number;
  sets: Int32Array;
  counts: Int32Array;
  trails: Int32Array;
  /** Bits set: a choice can only cover one that is no fuller. */
  fullness: Int32Array;
}

export function walkRounds(terms: WalkTerms): Walk {
  const { courses, dayCount, wordCount, roundPrices, room, overflow, atMost, toGo } = terms;
  const stride = courses.length * wordCount;
  const top = 32 * wordCount - 2;
  let layer = newLayer(64, stride);
  let spare = newLayer(64, stride);
  let children = newLayer(128, stride);
  const trailDays: number[] = [];
  const trailBefore: number[] = [];
  const soFar = new Float64Array(dayCount + 1).fill(Infinity);
  let order = new Int32Array(128);
  let table = new Int32Array(256);
  let work = 0;
  const startWords = courses.map((c) => startBits(c, dayCount));
  const lastStarts = Int32Array.from(courses, (c) => c.starts.at(-1) ?? -1);
  const underWay = coursesUnderWay(courses, dayCount, top);
  let exact = true;

  beginLayer(layer, courses, wordCount, top);
  soFar[0] = 0;
  for (let day = 0; day < dayCount && layer.size > 0; day++) {
    makeReady(2 * layer.size);
    const price = roundPrices[day] as number;
    const allowance = atMost - (toGo[day + 1] as number);
    for (let p = 0; p < layer.size; p++) {
      const count = layer.counts[p] as number;
      if (count + price <= allowance && advance(p, day, true)) keepChild(p, count + price, day);
      if (count <= allowance && advance(p, day, false)) keepChild(p, count, -1);
    }
    selectBest();
    [layer, spare] = [spare, layer];
    for (let p = 0; p < layer.size; p++)
      soFar[day + 1] = Math.min(soFar[day + 1] as number, layer.counts[p] as number);
  }
  let best = 0;
  for (let p = 1; p < layer.size; p++)
    if ((layer.counts[p] as number) < (layer.counts[best] as number)) best = p;
  const rounds: number[] = [];
  if (layer.size > 0)
    for (let t = layer.trails[best] as number; t >= 0; t = trailBefore[t] as number)
      rounds.push(trailDays[t] as number);
  return {
    fewest: layer.size > 0 ? (layer.counts[best] as number) : Infinity,
    rounds: rounds.reverse(),
    soFar,
    exact,
    work,
  };

  /** Room for so many children. */
  function makeReady(most: number): void {
    work += (most * stride) / 2;
    children.size = 0;
    if (most > children.counts.length) {
      const capacity = 2 * most;
      children = newLayer(capacity, stride);
      order = new Int32Array(capacity);
      table = new Int32Array(1 << (32 - Math.clz32(2 * capacity)));
    } else table.fill(0);
    if (most > spare.counts.length) spare = newLayer(2 * most, stride);
  }

  /** Writes the sets of a child into the next free place; false when it strands a course. */
  function advance(p: number, day: number, take: boolean): boolean {
    const out = children.sets;
    const to = children.size * stride;
    out.set(layer.sets.subarray(p * stride, (p + 1) * stride), to);
    const coming = day + 1 + top;
    let fed = false;
    for (const c of underWay[day] as Int32Array) {
      const course = courses[c] as BitCourse;
      const at = to + c * wordCount;
      if ((out[at + wordCount - 1] as number) < 0) continue;
      const feeds = take && ((out[at] as number) & 1) === 1;
      if (feeds) {
        fed = true;
        if (course.ends[day] === 1) {
          for (let w = 0; w < wordCount; w++) out[at + w] = -1;
          continue;
        }
      }
      let any = 0;
      let carry = 0;
      for (let w = wordCount - 1; w >= 0; w--) {
        let word = out[at + w] as number;
        if (feeds) word |= course.next[day * wordCount + w] as number;
        const shifted = (word >>> 1) | carry;
        carry = word << 31;
        out[at + w] = shifted;
        any |= shifted;
      }
      if (coming <= (lastStarts[c] as number)) {
        any = 1;
        if ((startWords[c] as Uint8Array)[coming] === 1) setBit(out, at, top);
      }
      if (any === 0) return false;
    }
    return fed || !take;
  }

  /** Counts the child just written, unless an equal one is there already. */
  function keepChild(parent: number, count: number, day: number): void {
    const { sets, counts, trails } = children;
    const at = children.size * stride;
    let hash = 0;
    for (let s = at; s < at + stride; s++) hash = Math.imul(hash ^ (sets[s] as number), 0x9e3779b1);
    let slot = (hash ^ (hash >>> 15)) & (table.length - 1);
    for (; table[slot] !== 0; slot = (slot + 1) & (table.length - 1)) {
      const other = (table[slot] as number) - 1;
      if (!sameSets(sets, other * stride, at, stride)) continue;
      if (count >= (counts[other] as number)) return;
      counts[other] = count;
      trails[other] = trail(parent, day);
      return;
    }
    counts[children.size] = count;
    trails[children.size] = trail(parent, day);
    children.size++;
    table[slot] = children.size;
  }

  function trail(parent: number, day: number): number {
    const before = layer.trails[parent] as number;
    if (day < 0) return before;
    trailDays.push(day);
    return trailBefore.push(before) - 1;
  }

  /** Fills `spare` from the children, fewest rounds and fullest sets first. */
  function selectBest(): void {
    for (let c = 0; c < children.size; c++) {
      order[c] = c;
      children.fullness[c] = bitCount(children.sets, c * stride, stride);
    }
    const { counts, sets, trails, fullness } = children;
    order
      .subarray(0, children.size)
      .sort(
        (a, b) =>
          (counts[a] as number) - (counts[b] as number) ||
          (fullness[b] as number) - (fullness[a] as number) ||
          a - b,
      );
    spare.size = 0;
    const melted = new Map<number, number>();
    for (let o = 0; o < children.size; o++) {
      const c = order[o] as number;
      if (isCovered(c)) continue;
      if (spare.size < room) {
        put(c);
        continue;
      }
      exact = false;
      if (overflow === "drop") break;
      // Alike are those with as many rounds and the same last one.
      const t = trails[c] as number;
      const kind = (counts[c] as number) * dayCount + (t < 0 ? 0 : (trailDays[t] as number));
      const m = melted.get(kind);
      if (m === undefined) melted.set(kind, c);
      else
        for (let s = 0; s < stride; s++)
          sets[m * stride + s] =
            (sets[m * stride + s] as number) | (sets[c * stride + s] as number);
    }
    for (const m of melted.values()) put(m);

    function put(c: number): void {
      spare.sets.set(sets.subarray(c * stride, (c + 1) * stride), spare.size * stride);
      spare.counts[spare.size] = counts[c] as number;
      spare.trails[spare.size] = trails[c] as number;
      spare.fullness[spare.size] = fullness[c] as number;
      spare.size++;
    }
  }

  function isCovered(c: number): boolean {
    const ours = children.sets;
    const theirs = spare.sets;
    const at = c * stride;
    const full = children.fullness[c] as number;
    for (let k = 0, base = 0; k < spare.size; k++, base += stride) {
      if ((spare.fullness[k] as number) < full) continue;
      let s = 0;
      while (s < stride && ((ours[at + s] as number) & ~(theirs[base + s] as number)) === 0) s++;
      work += s;
      if (s === stride) return true;
    }
    return false;
  }
}

function newLayer(capacity: number, stride: number): Layer {
  return {
    size: 0,
    sets: new Int32Array(capacity * stride),
    counts: new Int32Array(capacity),
    trails: new Int32Array(capacity),
    fullness: new Int32Array(capacity),
  };
}

function beginLayer(
  layer: Layer,
  courses: readonly BitCourse[],
  wordCount: number,
  top: number,
): void {
  layer.size = 1;
  layer.trails[0] = -1;
  courses.forEach((course, c) => {
    const base = c * wordCount;
    if (course.endsAtStart) layer.sets.fill(-1, base, base + wordCount);
    else for (const i of course.starts) if (i <= top) setBit(layer.sets, base, i);
  });
}

/** By day, the courses that are neither surely done nor so far from their start that nothing shows. */
function coursesUnderWay(
  courses: readonly BitCourse[],
  dayCount: number,
  top: number,
): Int32Array[] {
  const byDay: number[][] = Array.from({ length: dayCount }, () => []);
  courses.forEach((course, c) => {
    if (course.endsAtStart) return;
    const from = Math.max(0, (course.starts[0] ?? 0) - top - 1);
    for (let day = from; day <= course.ends.lastIndexOf(1); day++) byDay[day]?.push(c);
  });
  return byDay.map((list) => Int32Array.from(list));
}

function startBits(course: BitCourse, dayCount: number): Uint8Array {
  const bits = new Uint8Array(dayCount);
  for (const i of course.starts) bits[i] = 1;
  return bits;
}

function sameSets(sets: Int32Array, a: number, b: number, stride: number): boolean {
  for (let s = 0; s < stride; s++) if (sets[a + s] !== sets[b + s]) return false;
  return true;
}

function bitCount(sets: Int32Array, at: number, stride: number): number {
  let sum = 0;
  for (let s = at; s < at + stride; s++) {
    let word = sets[s] as number;
    word -= (word >>> 1) & 0x55555555;
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333);
    sum += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  }
  return sum;
}
