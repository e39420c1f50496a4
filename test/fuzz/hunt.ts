/** Runs inputs of one kind, one after the other, and keeps the books. */
import { Settings } from "luxon";
import { Dice } from "../live/player/dice.js";
import type { Kind } from "./kind.js";

export interface HuntOptions {
  readonly seed: number;
  readonly count: number;
  /** The first input's number: one input alone is found again by it. */
  readonly from?: number;
  /** Told before each input, to whoever watches for one that never ends. */
  readonly now?: (kind: string, index: number) => void;
  readonly onCaught?: (caught: Caught) => void;
}

/** An input that broke something. */
export interface Caught {
  readonly kind: string;
  readonly seed: number;
  readonly index: number;
  readonly error: unknown;
  readonly input: string | Uint8Array;
}

export interface Timed {
  readonly kind: string;
  readonly index: number;
  readonly cpuMs: number;
}

export interface Tally {
  readonly kind: string;
  readonly inputs: number;
  readonly accepted: number;
  readonly refused: number;
  /** Processor time. */
  readonly cpuMs: number;
  readonly slowest: readonly Timed[];
  readonly caught: readonly Caught[];
}

const slowestKept = 10;
/** After so many of one kind there is something to mend first. */
const mostCaught = 200;

export async function hunt(kind: Kind, options: HuntOptions): Promise<Tally> {
  const { seed, count, from = 0, now, onCaught } = options;
  // As the command line has it: an invalid date is a bug that must not flow on quietly.
  Settings.throwOnInvalid = true;
  const counts = { accepted: 0, refused: 0 };
  const caught: Caught[] = [];
  const slowest: Timed[] = [];
  let cpuMs = 0;
  const hunting = await kind.begin();
  let index = from;
  let before = process.cpuUsage();
  for (; index < from + count && caught.length < mostCaught; index++) {
    now?.(kind.name, index);
    const input = hunting.make(new Dice(seed, hashOf(kind.name), index));
    try {
      counts[await hunting.check(input)]++;
    } catch (error) {
      const one = { kind: kind.name, seed, index, error, input: hunting.shown(input) };
      caught.push(one);
      onCaught?.(one);
    }
    // Asked once an input, the making of the next one included: it is a call to the system.
    const after = process.cpuUsage();
    const tookMs = (after.user + after.system - before.user - before.system) / 1000;
    before = after;
    cpuMs += tookMs;
    keepSlowest(slowest, { kind: kind.name, index, cpuMs: tookMs });
  }
  await hunting.end?.();
  return { kind: kind.name, inputs: index - from, ...counts, cpuMs, slowest, caught };
}

export function keepSlowest(slowest: Timed[], one: Timed): void {
  const last = slowest.at(-1);
  if (slowest.length === slowestKept && last !== undefined && last.cpuMs >= one.cpuMs) return;
  slowest.push(one);
  slowest.sort((a, b) => b.cpuMs - a.cpuMs);
  slowest.length = Math.min(slowest.length, slowestKept);
}

function hashOf(name: string): number {
  let hash = 7;
  for (const letter of name) hash = Math.imul(hash, 31) + letter.charCodeAt(0);
  return hash;
}

/** How many inputs each kind gets of so many. */
export function sharesOf(kinds: readonly Kind[], count: number): [kind: Kind, count: number][] {
  const whole = kinds.reduce((sum, { share }) => sum + share, 0);
  return kinds.map((kind) => [kind, Math.ceil((count * kind.share) / whole)]);
}

/** The command that finds one input again. */
export function repeat({ kind, seed, index }: Pick<Caught, "kind" | "seed" | "index">): string {
  return `npm run fuzz -- --kind ${kind} --seed ${seed} --from ${index} --count 1`;
}
