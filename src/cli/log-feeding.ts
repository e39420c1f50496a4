/** The entries that `log` writes: feedings given and missed. */
import type { Day } from "../dates.js";
import {
  type Amounts,
  type LogEntry,
  type NewLogEntry,
  pouredText,
  shortDay,
} from "../garden/index.js";
import {
  daysAround,
  entriesOfDay,
  fedDays,
  feedsOfDay,
  heldAlready,
  roundOf,
  type WhatOf,
} from "../log/index.js";
import type { Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { given } from "../values.js";
import { farBeyond, mostPlannedMl } from "./far-beyond.js";
import { withBottles } from "./log-bottles.js";
import { batchesOfDay, type LogJob, type CommandWish, plansOfDay } from "./log-job.js";
import { spaced, stockMlOf } from "./log-options.js";
import { type Shell, wrongUsage } from "./shell.js";

export async function feedingWish(job: LogJob, shell: Shell): Promise<Result<CommandWish>> {
  const { on, options } = job;
  const { feed, missed } = options;
  const of = given({ planting: options.planting, bed: options.bed });
  const stock = options.stock === undefined ? undefined : spaced(options.stock);
  if (feed !== undefined)
    return { ok: true, value: freshOf(job, [{ on, ...of, ...given({ missed, stock, feed }) }]) };
  const plans = await plansOfDay(job, shell);
  if (!plans.ok) return plans;
  const feeds = isAll(of) && options.batch === undefined ? feedsAlone(plans.value, on) : [];
  if (feeds.length > 0) {
    const entries = feeds.map((name) => ({ on, ...given({ missed }), feed: name }));
    return { ok: true, value: freshOf(job, entries) };
  }
  if (missed) return { ok: true, value: freshOf(job, missedEntries(job, plans.value, of)) };
  refuseFarBeyond(job, plans.value, of);
  const entries = givenEntries(job, plans.value, of, stock);
  const wish = freshOf(job, entries, plans.value);
  return { ok: true, value: await poured(job, wish, plans.value, shell) };
}

function refuseFarBeyond({ garden, options }: LogJob, plans: readonly Plan[], of: WhatOf): void {
  const { stock, soMuch } = options;
  if (stock === undefined || soMuch) return;
  const { amounts } = garden;
  const mlOf = (amount: string): number | undefined => stockMlOf(amount, amounts);
  const mostMl = Math.max(...plans.map((plan) => mostPlannedMl(plan, of, mlOf)));
  const odd = farBeyond(mlOf(stock), mostMl, amounts);
  if (odd === undefined) return;
  throw wrongUsage(
    `--stock: ${odd}: check the amount and its unit; if it was really so much, add --so-much`,
  );
}

function isAll({ planting, bed }: WhatOf): boolean {
  return planting === undefined && bed === undefined;
}

/** Other feeds of a day on which no calcium is planned. */
function feedsAlone(plans: readonly Plan[], on: Day): readonly string[] {
  const plan = plans.find(({ rounds }) => rounds.some(({ day }) => day === on));
  const isFed = plan === undefined || fedDays(plan, {}).some(({ day }) => day === on);
  return isFed ? [] : feedsOfDay(plan, on);
}

/** A feeding that was due, on the day it was due. */
function missedEntries(
  { garden, on }: LogJob,
  plans: readonly Plan[],
  of: WhatOf,
): readonly NewLogEntry[] {
  const roundIn = (one: Plan): Day | undefined => roundOf(one, on, of, false);
  const plan = plans.find((one) => roundIn(one) !== undefined);
  const day = plan && roundIn(plan);
  if (plan === undefined || day === undefined) throw noRound(plans, on, of);
  const whole: NewLogEntry = { on: day, ...of, missed: true };
  const due = fedDays(plan, of)
    .filter((one) => one.day === day)
    .flatMap(({ mixes }) => mixes.flatMap((mix) => mix.feedings.map(({ planting }) => planting)));
  const isHeld = (entry: NewLogEntry): boolean => heldAlready(entry, garden, due).length > 0;
  if (!isHeld(whole)) return [whole];
  // What is written down of some of them stays as it is.
  const rest = [...new Set(due)].map((planting): NewLogEntry => {
    return { on: day, planting, missed: true };
  });
  return rest.every(isHeld) || of.planting !== undefined
    ? [whole]
    : rest.filter((entry) => !isHeld(entry));
}

function givenEntries(
  { on, garden }: LogJob,
  plans: readonly [Plan, ...Plan[]],
  of: WhatOf,
  stock: string | undefined,
): readonly NewLogEntry[] {
  const entriesIn = (plan: Plan): NewLogEntry[] => {
    const day = roundOf(plan, on, of, !isAll(of));
    if (day === undefined) return [];
    // Only a calendar that is kept tells later which day was meant.
    const isOfRound = day !== on && garden.calendarFile !== undefined;
    const when = { on, ...(isOfRound ? { round: day } : {}) };
    if (stock !== undefined) return [{ ...when, ...of, stock }];
    return entriesOfDay(plan, day, of).map((entry) => ({ ...when, ...entry, ...when }));
  };
  const planned = plans.map(entriesIn).filter((entries) => entries.length > 0);
  const isBottled = ({ batch }: NewLogEntry): boolean => batch !== undefined;
  const found = planned.find((entries) => entries.every(isBottled)) ?? planned[0];
  if (found !== undefined) return found;
  const isPlanned = plans.some((plan) => fedDays(plan, of).some(({ day }) => day === on));
  if (isAll(of) && !isPlanned) throw noRound(plans, on, of);
  return [{ on, ...of, ...given({ stock }) }];
}

function noRound(plans: readonly Plan[], on: Day, of: WhatOf): Error {
  const near = plans.map((plan) => daysAround(plan, on, of)).find((days) => days.length > 0) ?? [];
  const days = near.map(({ day, feeds }) =>
    feeds.length === 0 ? day : `${day} (${feeds.join(", ")})`,
  );
  const nearest = days.length > 0 ? `; the nearest are on ${days.join(" and ")}` : "";
  const what = of.planting ?? of.bed;
  return wrongUsage(
    what === undefined
      ? `no round is planned on ${on}${nearest}: give --on with its day, or say with --planting or --bed what was fed`
      : `no feeding of ${what} is planned on ${on}${nearest}: give --on with its day`,
  );
}

/** Without what the log holds already, unless it was given again. */
function freshOf(
  { garden, options, on }: LogJob,
  entries: readonly NewLogEntry[],
  plans: readonly Plan[] = [],
): CommandWish {
  const fed = plans.flatMap(({ plantings }) => plantings.filter((p) => p.fed)).map(({ id }) => id);
  const checked = entries.map((entry) => ({
    entry,
    held: options.again ? [] : heldAlready(entry, garden, fed),
  }));
  const fresh = checked.filter(({ held }) => held.length === 0).map(({ entry }) => entry);
  if (fresh.length > 0) return { edits: [{ kind: "add-to-log", entries: fresh }], entries: fresh };
  const { planting, bed, feed, missed } = options;
  const isRound = [planting, bed, feed, missed].every((one) => one === undefined);
  if (isRound) return { edits: [], already: `the log holds the round of ${on} already` };
  const held = [...new Set(checked.flatMap((one) => one.held))];
  const second = missed
    ? "if it was missed all the same, take that out first"
    : "for a second feeding of that day give --again";
  return {
    edits: [],
    already: `the log holds that already (${held.map((one) => heldText(one, garden.amounts)).join("; ")}): ${second}`,
  };
}

function heldText({ on, planting, bed, stockMl, missed }: LogEntry, amounts: Amounts): string {
  const amount = missed
    ? "missed"
    : stockMl === undefined
      ? undefined
      : pouredText(stockMl, amounts);
  return [on, planting ?? bed ?? "the round", amount].filter(Boolean).join(", ");
}

/** The wish with the bottles that its entries are poured from. */
async function poured(
  job: LogJob,
  wish: CommandWish,
  plans: readonly Plan[],
  shell: Shell,
): Promise<CommandWish> {
  const { options } = job;
  const entries = (wish.entries ?? []).map((entry) => ({
    ...entry,
    ...given({ batch: options.batch ?? entry.batch }),
  }));
  if (entries.length === 0) return wish;
  const isNamed = entries.some(({ batch }) => batch !== undefined);
  const known = isNamed ? await batchesOfDay(job, plans, "poured", shell) : [];
  const isLacking =
    options.stock === undefined && entries.some(({ batch, stock }) => stock && batch === undefined);
  const bottled = withBottles(job, entries, job.on, known);
  const dayIn = (day: Day): string => shortDay(day, job.garden.amounts);
  const remarks = [
    ...(isLacking
      ? [
          `no bottle in it held enough stock on ${dayIn(job.on)}: list the batch under \`stock:\`, or name it with --batch`,
        ]
      : []),
    ...bottled.unready.map(
      ({ id, notBefore }) =>
        `${batchName(id)} cannot be bottled before ${dayIn(notBefore)}, so it is not written down as made on ${dayIn(job.on)}: log that on its day, with --batch ${id} --step made`,
    ),
  ];
  return { edits: bottled.edits, entries: bottled.entries, remarks };
}
