// @ts-nocheck
import { v5 } from "uuid";
import type { Day, DaySpan } from "../dates.js";
import type { Plan } from "../season/index.js";

/** One entry of a calendar, free of file formats. */
export interface CalendarEvent {
  /** What it is: `feeding`, `feed` (another one), `making`, `use-up`, `watering`, `notice`. */
  readonly kind: string;
  /** Names the event for as long as it keeps its day: `kind/line/day`. Unique in a calendar. */
  readonly key: string;
  /** Made from the garden's id and the key: does not move when other plantings come or go. */
  readonly uid: string;
  readonly day: Day;
  /** Absent for all day. */
  readonly time?: EventTime;
  /** Says alone what to do. */
  readonly summary: string;
  /** Plain text lines. */
  readonly description: readonly string[];
  readonly categories: readonly string[];
  /** CSS3 colour name. */
  readonly color: string;
  /** What is known of it: the log tells of it, or nobody said that it was not as published. Absent: to come. */
  readonly happened?: "as-published" | "logged";
  /** Names what the log says of it: the same for as long as it says the same. */
  readonly logId?: string;
  /** The published day that it was done for, where that is another than its own. */
  readonly standsFor?: Day;
  /** Minutes before the start (all day: before the midnight that begins the day; negative is after it). */
  readonly remindersMinBefore: readonly number[];
}

/**
 * An event without its names yet, and the row of like events it stands in: a bed's id, a step of
 * making, or empty for the garden as a whole. When a day moves, its earlier event is looked for in
 * the same row.
 */
export type UnnamedEvent = Omit<CalendarEvent, "key" | "uid"> & { readonly line: string };

export interface EventTime {
  /** `HH:MM` on the wall clock of the zone. */
  readonly timeOfDay: string;
  /** IANA name. */
  readonly timezone: string;
  readonly durationMin: number;
}

/** What a calendar file says of itself. */
export interface CalendarMeta {
  readonly gardenId: string;
  readonly name: string;
  /** CSS3 colour name. */
  readonly color: string;
  readonly refreshHours: number;
  readonly season: DaySpan;
}

/** A namespace of our own, drawn once at random (RFC 9562 section 6.6 allows such). */
const feedroundNamespace = "c3985fb2-bf99-4bc8-83c9-e610c562fc4f";

export function calendarMeta({ garden }: Pick<Plan, "garden">): CalendarMeta {
  return {
    gardenId: garden.id,
    name: `${garden.name}: feedings`,
    color: garden.calendar.color,
    refreshHours: garden.calendar.refreshHours,
    season: garden.season,
  };
}

/** The UUID under which all names of one garden stand. */
export function gardenUid(gardenId: string): string {
  return uidOf(gardenId, feedroundNamespace);
}

export function uidOf(text: string, namespace: string): string {
  // As bytes, since the package throws on lone surrogates in text.
  return v5(new TextEncoder().encode(text), namespace);
}

/** 08:00 on the day. Common practice, no source. */
const usualReminderMinBefore = -8 * 60;

/** When to remind of an all-day event: never where the garden wants none. */
export function allDayReminders({ timeOfDay, calendar }: Plan["garden"]): readonly number[] {
  const own = calendar.remindersMinBefore;
  // Reminders of a garden that feeds at a time of day count from that time, which all-day events lack.
  return timeOfDay === undefined || own.length === 0 ? own : [usualReminderMinBefore];
}

/** The key without its day. */
export function lineOfKey(key: string): string {
  return key.slice(0, key.lastIndexOf("/"));
}

/** Of a feeding, with calcium or another feed: the bed it is for, empty for the whole round. */
export function bedOfFeeding(key: string): string | undefined {
  return /^feed(?:ing)?\/(.*)$/s.exec(lineOfKey(key))?.[1];
}

export function isWatering(key: string): boolean {
  return key.startsWith("watering/");
}
