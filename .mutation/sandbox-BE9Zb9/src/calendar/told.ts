/** What a plan has to tell on a day beside what is to be done. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Plan, type PlanGarden, type PlanWarning, toldOn } from "../season/index.js";
import { given, grouped } from "../values.js";
import { lookTitle, noteTitle, warningTitle } from "../words/index.js";
import { allDayReminders, type UnnamedEvent } from "./calendar-event.js";

/** A warning, or a note of what the log or a sign changed. */
export interface Told {
  readonly code: string;
  readonly day: Day;
  /** Absent where it concerns the whole garden. */
  readonly bed?: string;
  /** What it is about: a planting or bed, or nothing. */
  readonly subject: string;
  /** In a title. */
  readonly title: string;
  /** Message and what helps, plain text lines. */
  readonly lines: readonly string[];
}

/** Warnings without a day are left to the plan. */
export function toldOf({ warnings, notes, plantings }: Plan): Told[] {
  const byId = new Map(plantings.map((planting) => [planting.id, planting]));
  const bedNames = new Map(plantings.map(({ bed, bedName }) => [bed, bedName]));
  const placed = (
    item: Pick<PlanWarning, "code" | "bed" | "planting" | "message">,
    day: Day,
    titleFor: (who: readonly string[]) => string,
    lines: readonly string[],
  ): Told => {
    const { code, planting } = item;
    const named = byId.get(planting ?? "");
    const bed = item.bed ?? named?.bed;
    const who = named?.name ?? planting ?? bedNames.get(bed ?? "") ?? bed;
    const title = titleFor(who === undefined ? [] : [who]);
    return { code, day, subject: planting ?? bed ?? "", title, lines, ...given({ bed }) };
  };
  return [
    ...warnings.flatMap((warning) => {
      const day = toldOn(warning);
      return day === undefined
        ? []
        : [placed(warning, day, (who) => warningTitle(warning.code, who), warningLines(warning))];
    }),
    ...notes.map((note) => {
      const advice = note.advice.map((line) => `First: ${line}`);
      const { code, sign } = note;
      const title = (who: readonly string[]): string =>
        code === "sign" ? lookTitle(sign ?? "a sign", who) : noteTitle(code, who);
      return placed(note, note.day, title, [`Note: ${note.message}`, ...advice]);
    }),
  ];
}

export function warningLines({ message, mend }: Pick<PlanWarning, "message" | "mend">): string[] {
  return [`Warning: ${message}`, ...(mend === "" ? [] : [`What helps: ${mend}`])];
}

/** One event for each day, code and subject. */
export function noticeEvents(garden: PlanGarden, told: readonly Told[]): UnnamedEvent[] {
  const notices = grouped(told, ({ code, subject, day }) => `${code}/${subject}/${day}`);
  return [...notices.values()].map((all): UnnamedEvent => ({
    kind: "notice",
    line: `${all[0].code}/${all[0].subject}`,
    day: all[0].day,
    summary: all[0].title,
    description: all.flatMap(({ lines }) => lines),
    categories: ["Garden notice"],
    color: "goldenrod",
    remindersMinBefore: allDayReminders(garden),
  }));
}
