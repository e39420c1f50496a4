/** A calendar file against the one before it and against the plan. */
// @ts-nocheck

import type { Day } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import { entriesIn, type Entry } from "./calendar-file.js";
import type { Grower } from "./grower.js";
import { daysApart } from "./truth.js";

/** SEQUENCE never falls, past entries stand unless the log spoke of them, unchanged ones keep their stamp. */
export function badRevisions(
  grower: Grower,
  before: string,
  after: string,
  now: string,
  today: Day,
): string[] {
  const [old, fresh] = [entriesIn(before), entriesIn(after)];
  const stamp = now.replace(/[-:]/g, "");
  const isSpokenOf = (day: Day): boolean =>
    [...grower.spokenOf].some((spoken) => daysApart(spoken, day) <= 10);
  const isPast = ({ day, isCancelled }: Entry): boolean => day < today && !isCancelled;
  // What nobody told, but the log: the plan of today has its words.
  const told = new Set(grower.told.map(({ day }) => day));
  const isUntold = ({ text, day }: Entry): boolean =>
    text.includes("\nSUMMARY:Given: ") && !told.has(day);
  const changed = [...fresh.values()].flatMap((entry): string[] => {
    const { uid, key, sequence, day } = entry;
    const was = old.get(uid);
    const known = grower.clients.get(uid);
    if (known !== undefined && sequence < known)
      return [`${key}: SEQUENCE ${known} to ${sequence}`];
    if (was === undefined) {
      // What was seen, or is odd in the log, is told on the day it is about.
      const isInvented =
        before !== "" && day < today && !isSpokenOf(day) && !key.startsWith("notice/");
      return isInvented ? [`a past entry is new: ${key}`] : [];
    }
    if (was.text === entry.text) return [];
    return [
      ...(sequence <= was.sequence ? [`${key} changed with SEQUENCE ${sequence}`] : []),
      ...(entry.stamp !== stamp ? [`${key} changed and is stamped ${entry.stamp}`] : []),
      ...(withoutStamps(was) === withoutStamps(entry) ? [`${key} is stamped anew, unchanged`] : []),
      ...(isPast(was) && !isSpokenOf(was.day) && !isUntold(was)
        ? [`a past entry changed: ${key}`]
        : []),
    ];
  });
  const lost = [...old.values()]
    .filter((was) => isPast(was) && !fresh.has(was.uid) && !isSpokenOf(was.day))
    .map(({ key }) => `a past entry is gone: ${key}`);
  return [...changed, ...lost];
}

function withoutStamps({ text }: Entry): string {
  return text.replace(/^(DTSTAMP|LAST-MODIFIED|SEQUENCE):.*\r\n/gm, "");
}

export function rememberEntries({ clients }: Grower, calendar: string): void {
  for (const { uid, sequence } of entriesIn(calendar).values()) clients.set(uid, sequence);
}

/** The rounds of today and later stand in the calendar, each can in its words, and nothing else does. */
export function unlikePlan(calendar: string, plan: Plan, today: Day): string[] {
  const isBed = plan.garden.calendar.group === "bed";
  const entries = [...entriesIn(calendar).values()].filter(
    ({ key, isCancelled, day }) => key.startsWith("feeding/") && !isCancelled && day >= today,
  );
  const texts = new Map(entries.map(({ key, description }) => [key, description]));
  // What stands for a day before is grouped as that day was.
  const rounds = plan.rounds.filter(
    ({ day, standsFor }) => day >= today && standsFor === undefined,
  );
  const others = new Set(plan.rounds.filter((round) => round.standsFor).map(({ day }) => day));
  const wanted = rounds.flatMap(({ day, beds }) =>
    (isBed ? beds : beds.slice(0, 1)).map(({ bed }) => ({
      key: `feeding/${isBed ? bed : ""}/${day}`,
      cans: (isBed ? beds.filter((one) => one.bed === bed) : beds).flatMap(({ mixes }) =>
        mixes.filter(({ given }) => !given).flatMap(({ fills }) => fills),
      ),
    })),
  );
  const keys = new Set(wanted.map(({ key }) => key));
  return [
    ...wanted.flatMap(({ key, cans }) => {
      const text = texts.get(key);
      if (text === undefined) return [`planned, and not in the calendar: ${key}`];
      return (
        cans
          // What is too thin to measure is told by the jug that it comes from.
          .map(({ jug, stockText }) => jug?.stockText ?? stockText)
          .filter((stockText) => !text.includes(stockText))
          .map((stockText) => `${key} does not say ${stockText}`)
      );
    }),
    ...[...texts.keys()]
      .filter((key) => !keys.has(key) && !others.has(key.slice(-10) as Day))
      .map((key) => `not planned: ${key}`),
  ];
}
