/** What a day asks for, in one line. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, counted, shortDay } from "../garden/index.js";
import {
  type AgendaDay,
  agendaOf,
  isWrittenDown,
  mixesOf,
  type Plan,
  type PlanWarning,
  type Round,
} from "../season/index.js";
import { tooLittleStock } from "./cans.js";
import { jobInShort, workMinutes } from "./jobs.js";
import { nameInText } from "./names.js";
import { feedTitle, otherFeedsTitle } from "./titles.js";

/** Undefined where nothing is left to do. */
export function dayAsks({ round, jobs }: AgendaDay, plan: Plan): string | undefined {
  const rounds =
    round === undefined || isWrittenDown(round) ? [] : roundTitles(round, plan.garden.amounts);
  const minutes = workMinutes(jobs, plan);
  const ofStock = rounds.length === 0 ? "" : " for the stock";
  const short = round?.shortMl === undefined ? [] : [tooLittleStock];
  const asked = [
    ...rounds.map(lowerFirst),
    ...(rounds.length === 0 ? [] : short),
    ...jobs.map((job) => jobInShort(job, plan)),
    ...(minutes === 0 ? [] : [counted(minutes, "minute") + ofStock]),
  ];
  return asked.length === 0 ? undefined : asked.join("; ");
}

/** Of its calcium, and of its other feeds. */
export function roundTitles(round: Round, amounts: Amounts): string[] {
  const [mix, ...mixes] = mixesOf([round]);
  const [feed, ...feeds] = round.feeds ?? [];
  return [
    ...(mix === undefined ? [] : [feedTitle([mix, ...mixes], amounts)]),
    ...(feed === undefined ? [] : [otherFeedsTitle([feed, ...feeds], amounts)]),
  ];
}

/** A day on which something is left to do, and what. */
export interface AskedDay {
  readonly day: Day;
  readonly asks: string;
}

/** Of a day and those after it; of all where none is given. */
export function askedDays(plan: Plan, from?: Day): readonly AskedDay[] {
  return agendaOf(plan).flatMap((one) => {
    const asks = from === undefined || one.day >= from ? dayAsks(one, plan) : undefined;
    return asks === undefined ? [] : [{ day: one.day, asks }];
  });
}

/** `Today, Mon 10 May: crush 16 g of shell, stir into the acid; 20 minutes` */
export function todayAsks(asked: string | undefined, today: Day, amounts: Amounts): string {
  return asked === undefined
    ? "Nothing to do today"
    : `Today, ${shortDay(today, amounts)}: ${asked}`;
}

/** Where the reader's day is not known: `Next: Mon 10 May, crush 16 g of shell, stir into the acid` */
export function nextAsks({ day, asks }: AskedDay, amounts: Amounts, near?: Day): string {
  return `Next: ${shortDay(day, amounts, near)}, ${asks}`;
}

/** After the season, where something is left all the same. */
export function stillAsks(asks: string): string {
  return `Still to do: ${asks}`;
}

/** Where no round is to come. */
export function noRound({ rounds, today, garden }: Plan): string {
  const { amounts, season } = garden;
  const last = rounds.at(-1);
  if (today > season.to)
    return `The season is over: it ended ${shortDay(season.to, amounts, today)}`;
  if (last === undefined) return "No round is planned in this season";
  return `No round is left in this season: the last is that of ${shortDay(last.day, amounts, today)}`;
}

/**
 * In front of warnings that are to be opened: `Warning: toms go unfed`, or how many and whom they concern.
 *
 * @param until the last day that they speak of
 */
export function warningsUntil(
  warnings: readonly PlanWarning[],
  until: Day,
  { plantings, garden, today }: Plan,
): string {
  const [only] = warnings;
  if (only !== undefined && warnings.length === 1) return `Warning: ${only.message}`;
  const names = new Map(plantings.map(({ id, name }) => [id, nameInText(name)]));
  const who = new Set(warnings.flatMap(({ planting = "" }) => names.get(planting) ?? []));
  const count = counted(warnings.length, "warning");
  const head = `${count} until ${shortDay(until, garden.amounts, today)}`;
  return who.size === 0 ? head : `${head}: ${[...who].join(", ")}`;
}

/** `Page written Mon 3 May` */
export function pageWritten(on: Day, amounts: Amounts): string {
  return `Page written ${shortDay(on, amounts)}`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLocaleLowerCase("en") + text.slice(1);
}
