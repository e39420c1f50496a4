export { calendarEvent, calendarMeta, gardenUid } from "./calendar-event.js";
export type { CalendarEvent, CalendarMeta, EventTime } from "./calendar-event.js";
export { planEvents } from "./plan-events.js";
export { writeCalendar, type WriteOptions } from "./write-calendar.js";
