export { type CalendarChange, calendarChanges } from "./calendar-changes.js";
export { calendarPieces, calendarText, type CalendarTextOptions } from "./calendar-text.js";
export {
  type CalendarProblem,
  daysTold,
  type EarlierCalendar,
  readEarlierCalendar,
  readersMend,
} from "./earlier-calendar.js";
export type { CalendarUse } from "./merge-calendar.js";
export { midnightIn } from "./zone-time.js";
