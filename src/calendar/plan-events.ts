import type { Plan } from "../season/index.js";
import { byText } from "../values.js";
import {
  calendarEvent,
  type CalendarEvent,
  gardenUid,
  type UnnamedEvent,
} from "./calendar-event.js";
import { feedingEvents } from "./feeding-events.js";
import { makingEvents } from "./making-events.js";
import { noticeEvents } from "./notice-events.js";
import { toldOf } from "./told.js";

/**
 * The calendar of a plan: its feedings, one event a round or one a bed as
 * `plan.garden.calendar.group` says; the steps of making stock, and days to use it up; and what has
 * to be told on a day on which no feeding could tell it. Sorted by day.
 */
export function planEvents(plan: Plan): CalendarEvent[] {
  const namespace = gardenUid(plan.garden.id);
  const named = ({ line, ...event }: UnnamedEvent) => calendarEvent(namespace, line, event);
  const { events, untold } = feedingEvents(plan, toldOf(plan));
  return [...events, ...makingEvents(plan), ...noticeEvents(plan.garden, untold)]
    .map(named)
    .sort((a, b) => byText(a.day, b.day) || byText(a.key, b.key));
}
