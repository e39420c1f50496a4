/**
 * Rounds in the hour that a change of the clock leaves out or repeats, as other programs read them;
 * the system's table of zones is the judge. The changes are history, so that no table is too old or
 * too new to know them.
 */
import { describe, expect, it } from "vitest";
import { type CalendarEvent, calendarMeta } from "../../src/calendar/calendar-event.js";
import { calendarFile } from "../../src/calendar/calendar-file.js";
import { writeEvent } from "../../src/calendar/vevent.js";
import { startOfDay } from "../../src/calendar/stamp.js";
import { day } from "../../src/dates.js";
import { aPlan } from "../support/a-plan.js";
import { inOrder, moments, readers, zonesThere } from "./readers.js";

/** Zone, day, and local times about the change. */
const changes: readonly [string, string, readonly string[]][] = [
  // An hour at two or three in the night.
  ["Europe/Berlin", "2024-03-31", ["01:30", "02:00", "02:30", "02:59", "03:00"]],
  ["Europe/Berlin", "2024-10-27", ["01:30", "02:00", "02:30", "02:59", "03:00"]],
  ["America/New_York", "2024-03-10", ["01:30", "02:00", "02:30", "02:59", "03:00"]],
  ["America/New_York", "2024-11-03", ["00:30", "01:00", "01:30", "01:59", "02:00"]],
  // Half an hour.
  ["Australia/Lord_Howe", "2024-10-06", ["01:45", "02:00", "02:15", "02:29", "02:30"]],
  ["Australia/Lord_Howe", "2024-04-07", ["01:15", "01:30", "01:45", "01:59", "02:00"]],
  // At midnight: a day that begins at one o'clock, and one whose last hour comes twice.
  ["America/Santiago", "2024-09-08", ["00:00", "00:30", "00:59", "01:00"]],
  ["America/Santiago", "2024-04-06", ["22:30", "23:00", "23:30", "23:59"]],
  // Off standard time for a month, forward again in spring, and an offset that never was a rule.
  ["Africa/Casablanca", "2024-03-10", ["01:30", "02:00", "02:30", "02:59", "03:00"]],
  ["Africa/Casablanca", "2024-04-14", ["01:30", "02:00", "02:30", "02:59", "03:00"]],
  // Quarters of an hour from UTC.
  ["Pacific/Chatham", "2024-09-29", ["02:30", "02:45", "03:15", "03:44", "03:45"]],
  ["Pacific/Chatham", "2024-04-07", ["02:30", "02:45", "03:15", "03:44", "03:45"]],
];

const durationsMin = [30, 60, 90];

const rounds = changes.flatMap(([zone, on, times]) =>
  times.flatMap((time) => durationsMin.map((durationMin) => ({ zone, on, time, durationMin }))),
);

const uidOf = (i: number): string => `00000000-0000-5000-8000-${String(i).padStart(12, "0")}`;

const events = rounds.map(({ zone, on, time, durationMin }, i): CalendarEvent => {
  const summary = `Feed at ${time} for ${durationMin} min: ${zone} on ${on}`;
  return {
    kind: "feeding",
    key: `feeding/${zone} ${time} ${durationMin}/${on}`,
    uid: uidOf(i),
    day: day(on),
    time: { timeOfDay: time, timezone: zone, durationMin },
    summary,
    description: ["toms: 12 mL in 4 L"],
    categories: [],
    color: "seagreen",
    remindersMinBefore: [],
  };
});

const stamp = startOfDay(day("2024-01-01"));
const calendar = [
  ...calendarFile(
    calendarMeta(aPlan()),
    events.map((event) =>
      writeEvent(event, { uid: event.uid, sequence: 0, created: stamp, modified: stamp }),
    ),
  ),
].join("");

describe.each(readers)("$name", ({ there, read }) => {
  it.skipIf(!there || !zonesThere)("agrees with the system's table of zones", () => {
    const starts = moments(rounds.map(({ zone, on, time }) => ({ zone, local: `${on}T${time}` })));
    expect(inOrder(read(calendar))).toEqual(
      rounds.map(({ durationMin }, i) => {
        const start = starts[i] ?? NaN;
        return { uid: uidOf(i), start, end: start + durationMin * 60, title: events[i]?.summary };
      }),
    );
  });
});
