/**
 * A walk along the allowed days, taking or passing over each, that keeps the choices worth keeping.
 *
 * A choice says of every day so far whether it is a round. All that it leaves to the days to come
 * is what it has spent and where every course stands; `Choices` holds that, one slot a choice. A
 * choice that another covers (whatever comes, it ends no better) is needless. Of the rest the
 * foremost are kept, as many as there is room for. So the walk finds the best there is while all
 * that is worth keeping has room; beyond that it finds a good one.
 */
export interface Choices {
  /** Writes the choice of nothing, before the first day. */
  begin(slot: number): void;
  /** Writes what `from` becomes; false when it strands a course or takes a day that feeds none. */
  advance(from: number, to: number, day: number, take: boolean): boolean;
  /** Negative when `a` goes before `b`; of equals the one with earlier days does. */
  compare(a: number, b: number): number;
  /** Whether `a` ends as well as `b` on any days to come, if its rounds do. */
  covers(a: number, b: number): boolean;
}

interface WalkTerms {
  readonly dayCount: number;
  /** Most choices kept after a day. */
  readonly room: number;
  /** No choice with more rounds is wanted. */
  readonly maxRounds: number;
  /** By day, rounds that are needed from that day on. Of length dayCount + 1. */
  readonly ahead?: readonly number[];
}

interface Walked {
  /** Sorted day indexes. */
  readonly rounds: readonly number[];
  /** By day, the fewest rounds of any choice kept on the days before it. Of length dayCount + 1. */
  readonly spent: readonly number[];
}

/** Slots that a walk needs: the choices of one day and of the next, two from each that is kept. */
export function slotsFor(room: number): number {
  return 4 * room;
}

/** The foremost choice at the end; undefined when every choice kept on the way strands a course. */
export function walk(
  terms: WalkTerms,
  choicesWith: (rounds: Int32Array) => Choices,
): Walked | undefined {
  const { dayCount, room, maxRounds, ahead } = terms;
  const rounds = new Int32Array(slotsFor(room));
  const slots = Array.from(rounds.keys());
  const trails = new Array<Trail | undefined>(slotsFor(room));
  const choices = choicesWith(rounds);
  const spent = [0];
  choices.begin(0);
  let kept = Int32Array.of(0);
  let foremost = 0;
  for (let day = 0; day < dayCount; day++) {
    const first = day % 2 === 0 ? 2 * room : 0;
    const most = maxRounds - (ahead?.[day + 1] ?? 0);
    let end = first;
    for (const from of kept)
      for (const take of [true, false]) {
        const count = (rounds[from] as number) + (take ? 1 : 0);
        if (count > most || !choices.advance(from, end, day, take)) continue;
        rounds[end] = count;
        trails[end++] = take ? { day, before: trails[from] } : trails[from];
      }
    const best = bestOf(first, end);
    if (best[0] === undefined) return undefined;
    foremost = best[0];
    spent.push(best.reduce((least, c) => Math.min(least, rounds[c] as number), Infinity));
    // In the order of slots, which is that of earliness: the next day's slots then have it too.
    kept = Int32Array.from(best).sort();
  }
  return { rounds: daysOf(trails[foremost]), spent };

  function bestOf(first: number, end: number): number[] {
    const best: number[] = [];
    // Of equals the one in the earlier slot stays before: a sort is stable.
    for (const c of slots.slice(first, end).sort((a, b) => choices.compare(a, b))) {
      if (best.length === room) break;
      if (!isNeedless(c, best)) best.push(c);
    }
    return best;
  }

  /** Those that go shortly before it are the likeliest to cover it. */
  function isNeedless(choice: number, best: readonly number[]): boolean {
    const count = rounds[choice] as number;
    for (let i = best.length - 1; i >= 0; i--) {
      const other = best[i] as number;
      if ((rounds[other] as number) <= count && choices.covers(other, choice)) return true;
    }
    return false;
  }
}

/** The rounds of a choice, from the last to the first; choices share what they have in common. */
interface Trail {
  readonly day: number;
  readonly before: Trail | undefined;
}

function daysOf(trail: Trail | undefined): number[] {
  const days: number[] = [];
  for (let t = trail; t; t = t.before) days.push(t.day);
  return days.reverse();
}
