/** The hunt as a command: what it is asked for, what it tells while it runs and at its end. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { Worker } from "node:worker_threads";
import {
  type Caught,
  hunt,
  keepSlowest,
  repeat,
  sharesOf,
  type Tally,
  type Timed,
} from "./hunt.js";
import { kinds } from "./kinds.js";
import { Broken } from "./must-hold.js";
import { coverageSoFar, watchCoverage } from "./reached.js";

const usage = `npm run fuzz -- [--count 20000] [--kind ${kinds.map(({ name }) => name).join("|")}]
                [--seed 1] [--from 0] [--no-coverage] [--missed <part of a path>]
`;

/** More of one input fails the run: nothing a grower writes may take so long. */
const mostCpuMs = 1000;
/** An input at which the processor has been this long is told, and the run ends. */
const hangMs = 60_000;

interface Asked {
  readonly count: number;
  readonly seed: number;
  readonly from: number;
  readonly kind?: string;
  readonly isCovered: boolean;
  /** Files whose lines that were not reached are listed. */
  readonly missed?: string;
}

/** @param root the repository, for what is kept of inputs that broke something */
export async function fuzz(argv: readonly string[], root: string): Promise<number> {
  const asked = askedIn(argv);
  if (asked === undefined) {
    process.stderr.write(usage);
    return 2;
  }
  const { count, seed, from, kind } = asked;
  const chosen = kinds.filter(({ name }) => kind === undefined || name === kind);
  console.log(`seed ${seed}, ${count} inputs from ${from} on`);
  const coverage = asked.isCovered ? await watchCoverage() : undefined;
  const began = performance.now();
  const known = new Map<string, number>();
  const watch = watchForHang(seed);
  const tallies: Tally[] = [];
  for (const [one, inputs] of sharesOf(chosen, count)) {
    const onCaught = (caught: Caught): void => {
      tell(caught, known, root);
    };
    const tally = await hunt(one, { seed, count: inputs, from, now: watch.now, onCaught });
    tallies.push(tally);
    console.log(lineOf(tally));
  }
  await watch.end();
  const slowest = slowestOf(tallies);
  console.log(`\n${total(tallies)}, ${Math.round((performance.now() - began) / 1000)} s in all`);
  for (const { kind: name, index, cpuMs } of slowest)
    console.log(`slowest: ${Math.round(cpuMs)} ms, ${repeat({ kind: name, seed, index })}`);
  if (coverage !== undefined) console.log(`\n${await coverageSoFar(coverage, asked.missed)}`);
  for (const [what, times] of known) console.log(`${times} x ${what}`);
  const isSlow = slowest.some(({ cpuMs }) => cpuMs > mostCpuMs);
  if (isSlow) console.log(`an input took more than ${mostCpuMs} ms`);
  return known.size > 0 || isSlow ? 1 : 0;
}

function askedIn(argv: readonly string[]): Asked | undefined {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: {
        ...{ count: { type: "string", default: "20000" }, seed: { type: "string", default: "1" } },
        ...{ from: { type: "string", default: "0" }, kind: { type: "string" } },
        ...{ "no-coverage": { type: "boolean", default: false }, missed: { type: "string" } },
      },
    });
    const { kind, missed } = values;
    const [count, seed, from] = [values.count, values.seed, values.from].map(Number);
    if (![count, seed, from].every((one) => Number.isSafeInteger(one))) return undefined;
    if (kind !== undefined && !kinds.some(({ name }) => name === kind)) return undefined;
    return {
      ...{ count: count ?? 0, seed: seed ?? 0, from: from ?? 0 },
      ...{ isCovered: !values["no-coverage"] },
      ...(kind === undefined ? {} : { kind }),
      ...(missed === undefined ? {} : { missed }),
    };
  } catch {
    return undefined;
  }
}

/** Where it broke: what must hold, else the first lines of ours in the stack. */
function whatBroke({ kind, error }: Caught): string {
  if (error instanceof Broken) return `${kind}: ${error.what}`;
  const { stack = String(error) } = error as Error;
  const [first = "", ...lines] = stack.split("\n");
  const ours = lines.filter((line) => line.includes("/src/")).slice(0, 2);
  return [kind, first.slice(0, 80), ...ours.map((line) => line.replace(/^.*\/src\//, ""))].join(
    ": ",
  );
}

const shownOfEach = 3;

/** The first few of each sort are told, and kept as files with the way to repeat them. */
function tell(caught: Caught, known: Map<string, number>, root: string): void {
  const what = whatBroke(caught);
  const times = (known.get(what) ?? 0) + 1;
  known.set(what, times);
  if (times > shownOfEach) return;
  const folder = join(root, "fuzz-caught");
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${caught.kind}-${caught.seed}-${caught.index}`);
  writeFileSync(`${file}.input`, caught.input);
  const { stack = String(caught.error) } = caught.error as Error;
  writeFileSync(`${file}.txt`, `${repeat(caught)}\n${stack}\n`);
  const message = caught.error instanceof Broken ? caught.error.message : stack;
  console.log(`\ncaught: ${message}\n${repeat(caught)}\n`);
}

function lineOf({ kind, inputs, accepted, refused, cpuMs, caught }: Tally): string {
  const each = (cpuMs / Math.max(inputs, 1)).toFixed(2);
  return `${kind}: ${inputs} inputs, ${accepted} accepted, ${refused} refused, ${caught.length} caught, ${each} ms each`;
}

function total(tallies: readonly Tally[]): string {
  const sum = (of: (tally: Tally) => number): number =>
    tallies.reduce((all, tally) => all + of(tally), 0);
  return `${sum((t) => t.inputs)} inputs, ${sum((t) => t.accepted)} accepted, ${sum((t) => t.refused)} refused, ${sum((t) => t.caught.length)} caught, ${Math.round(sum((t) => t.cpuMs) / 1000)} s of processor time`;
}

function slowestOf(tallies: readonly Tally[]): readonly Timed[] {
  const slowest: Timed[] = [];
  for (const tally of tallies) for (const one of tally.slowest) keepSlowest(slowest, one);
  return slowest;
}

/** A thread of its own looks on: what never ends can't tell so itself. */
function watchForHang(seed: number): {
  readonly now: (kind: string, index: number) => void;
  readonly end: () => Promise<unknown>;
} {
  const at = new Int32Array(new SharedArrayBuffer(8));
  const source = `
    const { workerData: { at, names, hangMs }, parentPort } = require("node:worker_threads");
    let last = "", usedMs = 0;
    const used = () => { const { user, system } = process.cpuUsage(); return (user + system) / 1000; };
    setInterval(() => {
      const now = at.join();
      if (now !== last) { last = now; usedMs = used(); return; }
      if (used() - usedMs < hangMs) return;
      require("node:fs").writeSync(2, "hangs: --kind " + names[at[0]] + " --seed ${seed} --from " + at[1] + " --count 1\\n");
      process.kill(process.pid, "SIGKILL");
    }, 1000);
    parentPort.on("message", () => process.exit());`;
  const names = kinds.map(({ name }) => name);
  const worker = new Worker(source, { eval: true, workerData: { at, names, hangMs } });
  return {
    now: (kind, index) => {
      at[0] = names.indexOf(kind);
      at[1] = index;
    },
    end: () => worker.terminate(),
  };
}
