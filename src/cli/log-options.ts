/** What the `log` command is asked for; what does not go together is wrong usage. */
import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import { type Amounts, parseQuantity, signKey } from "../garden/index.js";
import { hiddenIn, onOneLine, quoted } from "../legible.js";
import { didYouMean } from "../suggest.js";
import { loadTables } from "../tables.js";
import { given } from "../values.js";
import type { StepWord } from "./log-steps.js";
import { wrongUsage } from "./shell.js";

export interface LogOptions {
  readonly on?: Day;
  readonly planting?: string;
  readonly bed?: string;
  readonly stock?: string;
  readonly batch?: string;
  readonly feed?: string;
  readonly missed?: true;
  readonly again?: true;
  /** An amount far beyond the plan is meant. */
  readonly soMuch?: true;
  readonly step?: StepWord;
  readonly volume?: string;
  readonly sign?: string;
  readonly stage?: StageName;
  readonly undo?: true;
  readonly dryRun?: true;
  readonly today?: Day;
}

type Key = keyof LogOptions;

const ofFeeding = ["bed", "stock", "batch", "feed", "missed", "again"] as const;

/** Options that leave no room for some others. */
const alone: Partial<Record<Key, readonly Key[]>> = {
  undo: [
    ...["on", "planting", "bed", "stock", "feed", "missed", "again"],
    ...["step", "volume", "sign", "stage"],
  ] as readonly Key[],
  sign: [...ofFeeding, "step", "volume", "stage"],
  stage: [...ofFeeding, "step", "volume"],
  step: ["planting", "bed", "stock", "feed", "missed", "again"],
  missed: ["stock", "batch", "again"],
};

/** The names as they are to stand in the file: each on one line. */
export function namesOnOneLine(options: LogOptions): LogOptions {
  const { planting, bed, batch, feed } = options;
  const named = Object.entries(given({ planting, bed, batch, feed }));
  return { ...options, ...Object.fromEntries(named.map(([key, name]) => [key, onOneLine(name)])) };
}

export function checkLogUsage(file: string, options: LogOptions): void {
  const { planting, bed, stock, batch, feed, again, step, volume, sign, stage } = options;
  if (file === "-")
    throw wrongUsage("a log is written into a garden file, not to standard input: give the file");
  for (const [key, others] of Object.entries(alone)) {
    const other = others.find((one) => options[one] !== undefined);
    if (options[key as Key] !== undefined && other !== undefined)
      throw wrongUsage(`--${other} does not go with --${key}: give one of the two`);
  }
  if (planting !== undefined && bed !== undefined)
    throw wrongUsage("--planting and --bed: give one of the two");
  if (feed !== undefined && batch !== undefined)
    throw wrongUsage("--batch is of the calcium feed, not of another: leave out --batch or --feed");
  if (step !== undefined && batch === undefined)
    throw wrongUsage("--step is of a batch: name it with --batch");
  if (volume !== undefined && step === undefined)
    throw wrongUsage("--volume is of a batch: say with --step what was done, such as --step made");
  if (again && planting === undefined && bed === undefined && feed === undefined)
    throw wrongUsage("--again goes with --planting or --bed: a second round is rarely meant");
  if (options.soMuch && stock === undefined)
    throw wrongUsage("--so-much goes with --stock: say how much it was");
  if (stock !== undefined && planting === undefined && bed === undefined && feed === undefined)
    throw wrongUsage(
      "--stock goes with --planting or --bed; without them the plan's own amounts are written down",
    );
  for (const [key, name] of Object.entries({ planting, bed, batch, feed }))
    if (name !== undefined && hiddenIn(name) !== undefined)
      throw wrongUsage(`--${key}: something hides in \`${quoted(name)}\`: write the name anew`);
  const seen = sign === undefined ? stage && "stage" : "sign";
  if (seen !== undefined && planting === undefined)
    throw wrongUsage(`--${seen} is of a planting: name it with --planting`);
  if (sign !== undefined) checkSign(sign);
  for (const [key, amount] of Object.entries({ stock, volume })) checkVolume(key, amount);
}

function checkSign(word: string): void {
  const keys = loadTables().signs.map(({ key }) => key);
  if (!keys.includes(signKey(word)))
    throw wrongUsage(
      `--sign: \`${word}\` is not known: ${didYouMean(word, keys, `it is one of ${keys.join(", ")}`)}`,
    );
}

function checkVolume(key: string, text: string | undefined): void {
  if (text === undefined) return;
  const amount = parseQuantity(text, "volume", { units: loadTables().units, amounts: "metric" });
  if (!amount.ok) throw wrongUsage(`--${key}: ${amount.message}: ${amount.mend}`);
}

/** `30mL` -> `30 mL`, as it is to stand in the file. */
export function spaced(amount: string): string {
  return amount.trim().replace(/(?<=\d)(?=[^\d\s./])/, " ");
}

/** Undefined where it is no amount. */
export function stockMlOf(stock: string, amounts: Amounts): number | undefined {
  const volume = parseQuantity(stock, "volume", { units: loadTables().units, amounts });
  return volume.ok ? volume.value * 1000 : undefined;
}
