/**
 * A process of its own to be measured: a large garden planned, or many events written, by our writer or
 * by `ical-generator` alone. Bundled and started by large.bench.ts; prints processor time and memory.
 */
import { readFileSync } from "node:fs";
import { ICalAlarmType, ICalCalendar, ICalEventTransparency } from "ical-generator";
import { calendarMeta, type CalendarEvent } from "../../src/calendar/calendar-event.js";
import { calendarFile } from "../../src/calendar/calendar-file.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import { startOfDay } from "../../src/calendar/stamp.js";
import { writeEvent } from "../../src/calendar/vevent.js";
import { momentOf } from "../../src/calendar/zone-time.js";
import { addDays, day } from "../../src/dates.js";
import type { Bed } from "../../src/garden/index.js";
import { gardenOfText, planOfGarden, type ReadGarden } from "../../src/plan-garden.js";
import type { Plan } from "../../src/season/index.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import { writeWhole } from "../../src/write-whole.js";

export interface Measured {
  readonly ms: number;
  readonly mostMb: number;
}

const [, , what = "", size = "", example = "", out = ""] = process.argv;
const count = Number(size);
const tables = loadTables();
const normals = await loadNormals();
const today = day("2027-03-01");

const read = gardenOfText(readFileSync(example, "utf8"), "garden.yaml", tables);
if (!read.ok) throw new Error(read.problems[0]?.message);

if (what === "plan") {
  const large = ofBeds(read.value, count);
  await measured(() => planned(large));
} else {
  const plan = planned(read.value);
  const events = manyEvents(planEvents(plan), count);
  await measured(() => (what === "ours" ? written(plan, events) : writeWhole(out, alone(events))));
}

function planned(garden: ReadGarden): Plan {
  const plan = planOfGarden(garden, { normals }, tables, { today });
  if (!plan.ok) throw new Error(plan.problems[0]?.message);
  return plan.value;
}

/** The example's beds again and again, each with names of its own and five plantings. */
function ofBeds({ source, garden }: ReadGarden, beds: number): ReadGarden {
  const all = garden.beds.flatMap(({ plantings }) => plantings);
  const pattern = garden.beds[0] as Bed;
  const made = Array.from({ length: beds }, (_, b): Bed => {
    const id = `bed${b}`;
    const plantings = Array.from({ length: 5 }, (_, p) => {
      const like = all[(b * 5 + p) % all.length] as Bed["plantings"][number];
      return { ...like, id: `p${b}-${p}`, name: `p${b}-${p}`, bed: id };
    });
    return { ...pattern, id, name: id, plantings };
  });
  // As much as is asked for may be made at once: the making plan is measured elsewhere.
  const stock = { ...garden.stock, largestBatchMl: 1e6 };
  return { source, garden: { ...garden, stock, beds: made } };
}

function manyEvents(some: readonly CalendarEvent[], many: number): CalendarEvent[] {
  return Array.from({ length: many }, (_, i) => {
    const event = some[i % some.length] as CalendarEvent;
    const n = Math.floor(i / some.length);
    return {
      ...event,
      key: `${event.key}-${n}`,
      uid: `${event.uid}-${n}`,
      day: addDays(event.day, n % 100),
    };
  });
}

function written(plan: Plan, events: readonly CalendarEvent[]): Promise<void> {
  const stamp = startOfDay(today);
  const revised = events.map((event) =>
    writeEvent(event, { uid: event.uid, sequence: 0, created: stamp, modified: stamp }),
  );
  return writeWhole(out, calendarFile(calendarMeta(plan), revised));
}

function alone(events: readonly CalendarEvent[]): string {
  const calendar = new ICalCalendar({ name: "garden" });
  const stamp = `${today}T00:00:00Z`;
  for (const event of events) {
    const { uid: id, summary, description, categories, remindersMinBefore } = event;
    const made = calendar.createEvent({
      ...{ id, sequence: 0, stamp, created: stamp, lastModified: stamp, summary },
      ...timesOf(event),
      description: description.join("\n"),
      categories: categories.map((name) => ({ name })),
      transparency: ICalEventTransparency.TRANSPARENT,
      x: [["X-FEEDROUND-KEY", event.key]],
    });
    for (const minutes of remindersMinBefore)
      made.createAlarm({ type: ICalAlarmType.display, trigger: minutes * 60 }).relatesTo("START");
  }
  return calendar.toString();
}

function timesOf({ day: on, time }: CalendarEvent) {
  if (time === undefined)
    return { allDay: true, start: `${on}T00:00:00Z`, end: `${addDays(on, 1)}T00:00:00Z` };
  const start = momentOf(on, time.timeOfDay, time.timezone);
  return { start: new Date(start), end: new Date(start + time.durationMin * 60_000) };
}

async function measured(work: () => unknown): Promise<void> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  const mostMb = process.resourceUsage().maxRSS / 1024;
  console.log(JSON.stringify({ ms: (user + system) / 1000, mostMb } satisfies Measured));
}
