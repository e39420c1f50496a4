// @ts-nocheck
import { v5 } from "uuid";
import type { Plan } from "../season/index.js";
import { byText } from "../values.js";
import { type CalendarEvent, gardenUid } from "./calendar-event.js";
import { cleanText } from "./content-line.js";
import { feedingEvents, type Grouping } from "./feeding-events.js";
import { makingEvents } from "./making-events.js";
import { noticeEvents, toldOf } from "./told.js";
import { wateringEvents } from "./watering-events.js";

/**
 * The calendar of a plan: its feedings, one event a round or one a bed as
 * `plan.garden.calendar.group` says; the steps of making stock, and days to use it up; watering days
 * where the garden wishes for them; and what has to be told on a day on which no feeding could tell it. Sorted by day.
 *
 * @param groupOf for rounds that have been published in another grouping
 */
export function planEvents(
  plan: Plan,
  groupOf: Grouping = () => plan.garden.calendar.group,
): CalendarEvent[] {
  const namespace = gardenUid(plan.garden.id);
  const { events, untold } = feedingEvents(plan, toldOf(plan), groupOf);
  return [
    ...events,
    ...makingEvents(plan),
    ...wateringEvents(plan),
    ...noticeEvents(plan.garden, untold),
  ]
    .map(({ line, ...event }) => {
      const key = cleanText(`${event.kind}/${line}/${event.day}`);
      return { ...event, key, uid: v5(key, namespace) };
    })
    .sort((a, b) => byText(a.day, b.day) || byText(a.key, b.key));
}
