import type { CalendarEvent, CalendarMeta } from "./calendar-event.js";
import { calendarFile } from "./calendar-file.js";
import { stampOf, startOfDay } from "./stamp.js";
import { writeEvent } from "./vevent.js";

export interface WriteOptions {
  /** ISO 8601, UTC: when the events were made. Without it the season's first day at midnight, so that the same plan gives the same bytes. */
  readonly stamp?: string;
}

/**
 * The iCalendar text (RFC 5545, RFC 7986) of events that no earlier file knows.
 * Throws RangeError for a bad stamp or two events with one UID.
 */
export function writeCalendar(
  events: readonly CalendarEvent[],
  meta: CalendarMeta,
  options: WriteOptions = {},
): string {
  const stamp = options.stamp === undefined ? startOfDay(meta.season.from) : stampOf(options.stamp);
  return calendarFile(
    meta,
    events.map((event) =>
      writeEvent(event, { uid: event.uid, sequence: 0, created: stamp, modified: stamp }),
    ),
  );
}
