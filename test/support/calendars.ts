import { calendarMeta } from "../../src/calendar/calendar-event.js";
import { calendarFile } from "../../src/calendar/calendar-file.js";
import { calendarText, type CalendarTextOptions } from "../../src/calendar/calendar-text.js";
import {
  daysTold,
  type EarlierCalendar,
  readEarlierCalendar,
} from "../../src/calendar/earlier-calendar.js";
import type { Day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";

/** The text of a calendar that must be right. */
export function textOf(plan: Plan, options: CalendarTextOptions = {}): string {
  const result = calendarText(plan, options);
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

export function earlierOf(text: string, gardenId = "weir-cottage"): EarlierCalendar {
  const result = readEarlierCalendar(text, gardenId);
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

/** The days of the rounds that stand in a calendar. */
export function feedingDaysIn(text: string): Day[] {
  return daysTold(earlierOf(text)).rounds.map(({ day }) => day);
}

/** What was read, written again. */
export function rewritten(plan: Plan, text: string): string {
  const { events, retired, published } = earlierOf(text);
  return [...calendarFile(calendarMeta(plan), events, retired, published)].join("");
}
