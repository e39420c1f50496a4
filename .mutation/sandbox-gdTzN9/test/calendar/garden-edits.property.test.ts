/** Calendars of a whole garden file, made again and again while the grower edits it. */
// @ts-nocheck

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { calendarChanges } from "../../src/calendar/calendar-changes.js";
import { planEvents } from "../../src/calendar/plan-events.js";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { addDays, day, type Day, later } from "../../src/dates.js";
import { dayOfFile, keepsLog } from "../../src/log/records.js";
import type { Plan } from "../../src/season/season-plan.js";
import { planFile, readGarden } from "../support/a-garden.js";
import { earlierOf, textOf } from "../support/calendars.js";
import { eventsIn, valueOf } from "../support/ics.js";

type Bed = GardenFile["beds"][number];

const begun: GardenFile = {
  version: 1,
  id: "weir-cottage",
  garden: "Weir Cottage",
  timezone: "Europe/Dublin",
  season: { from: "2027-03-01", to: "2027-10-31" },
  can: "9 L",
  feeding: { days: ["wed", "sat"] },
  beds: [
    {
      id: "south",
      plantings: [
        { id: "toms", crop: "tomato", transplanted: "2027-05-20", water: "12 L" },
        { id: "peppers", crop: "sweet pepper", transplanted: "2027-06-01", water: "6 L" },
      ],
    },
    { id: "long", plantings: [{ id: "celery", crop: "celery", transplanted: "2027-05-25" }] },
  ],
};

const dayFrom = (first: string, days: number) =>
  fc.nat(days).map((n): string => addDays(day(first), n));

function inFirstBed(change: (bed: Bed) => Bed): Edit {
  return (garden) => ({
    ...garden,
    beds: garden.beds.map((bed, i) => (i === 0 ? change(bed) : bed)),
  });
}

type Edit = (garden: GardenFile) => GardenFile;
type Part<K extends keyof GardenFile> = fc.Arbitrary<GardenFile[K]>;

const set = <K extends keyof GardenFile>(key: K, values: Part<K>): fc.Arbitrary<Edit> =>
  values.map((value) => (garden) => ({ ...garden, [key]: value }));

/** What a grower does to a file in the course of a year. */
const anEdit: fc.Arbitrary<Edit> = fc.oneof(
  set(
    "feeding",
    fc.record(
      {
        days: fc.constantFrom(["wed", "sat"], ["sun"], ["mon", "thu"]),
        time: fc.constantFrom("18:30", "07:00"),
        away: dayFrom("2027-06-10", 60).map((from) => [{ from, to: addDays(day(from), 12) }]),
      },
      { requiredKeys: ["days"] },
    ) as Part<"feeding">,
  ),
  set(
    "calendar",
    fc.record(
      { group: fc.constantFrom("round", "bed"), color: fc.constantFrom("teal", "peru") },
      { requiredKeys: [] },
    ) as Part<"calendar">,
  ),
  set(
    "stock",
    fc.record(
      {
        acid: fc.constantFrom("citric", "vinegar"),
        keep: fc.constantFrom("fridge", "shelf"),
        pour: fc.constantFrom("shaken", "clear"),
        largest_batch: fc.constantFrom("300 mL", "1 L"),
        shells_per_week: fc.constantFrom(0, 1, 10),
        batches: dayFrom("2027-05-01", 60).map((made) => [
          { id: "B1", made, volume: "500 mL", strength: "12 g/L" },
        ]),
      },
      { requiredKeys: [] },
    ) as Part<"stock">,
  ),
  set(
    "feeds",
    fc.constantFrom(
      [{ name: "nettle", rate: "1 L per 10 L", days: ["wed"] }],
      [{ name: "salts", rate: "2 mL per L", days: ["sat"], holds: ["sulfate"], gap: "3 days" }],
    ) as Part<"feeds">,
  ),
  set(
    "signs",
    dayFrom("2027-06-15", 60).map((on) => [{ on, planting: "toms", sign: "blossom-end-rot" }]),
  ),
  set(
    "log",
    dayFrom("2027-06-15", 40).map((on) => [{ on, planting: "toms", stock: "30 mL" }]),
  ),
  set("garden", fc.constantFrom("Weir Cottage", "Mill, House; 2")),
  set("can", fc.constantFrom("9 L", "5 L")),
  dayFrom("2027-05-10", 30).map((transplanted) =>
    inFirstBed((bed) => ({
      ...bed,
      plantings: bed.plantings.map((p, i) => (i === 0 ? { ...p, transplanted } : p)),
    })),
  ),
  dayFrom("2027-05-10", 60).map((sown) =>
    inFirstBed((bed) => ({
      ...bed,
      plantings: [
        ...bed.plantings.filter(({ id }) => id !== "more"),
        { id: "more", crop: "courgette", sown, water: "9 L" },
      ],
    })),
  ),
  fc.constant(inFirstBed((bed) => ({ ...bed, plantings: bed.plantings.slice(0, 1) }))),
);

const aVisit = fc.record({
  edits: fc.array(anEdit, { minLength: 1, maxLength: 2 }),
  use: fc.constantFrom("import" as const, "subscription" as const),
  /** Days that pass before it. */
  passing: fc.nat(40),
});

/** As the commands plan it; undefined where an edit has made the file wrong. */
function planOn(garden: GardenFile, today: Day): Plan | undefined {
  const text = stringify(garden);
  const read = readGarden(text);
  if (!read.ok) return undefined;
  const fileDay = dayOfFile(read.value);
  const plan = planFile(text, undefined, keepsLog(read.value) ? later(today, fileDay) : fileDay);
  return plan.ok ? plan.value : undefined;
}

const firstDay = day("2027-05-01");

describe("the calendar of a garden that is edited again and again", () => {
  it("never repeats a UID, never lowers a SEQUENCE, is read whole by ical.js, and stays as it is when nothing changes", () => {
    const kinds = new Set<string>();
    let visits = 0;
    const first = planOn(begun, firstDay);
    if (first === undefined) throw new Error("the garden is wrong to begin with");
    const firstText = textOf(first);
    fc.assert(
      fc.property(fc.array(aVisit, { minLength: 1, maxLength: 4 }), (all) => {
        let garden = begun;
        let today = firstDay;
        let text = firstText;
        const known = new Map<string, { sequence: number; text: string }>();
        for (const { edits, use, passing } of all) {
          const before = earlierOf(text).events;
          for (const event of before) known.set(event.uid, event);
          today = addDays(today, passing);
          const edited = edits.reduce((file, edit) => edit(file), garden);
          const plan = planOn(edited, today);
          if (plan === undefined) continue;
          garden = edited;
          visits++;

          const options = { for: use, today, stamp: `${today}T12:00:00Z` };
          text = textOf(plan, { ...options, previous: text });
          const { events } = earlierOf(text);
          for (const { key } of events) kinds.add(key.split("/")[0] ?? "");
          for (const event of events) {
            const was = known.get(event.uid);
            if (was === undefined) expect(event.sequence).toBe(0);
            else if (was.text === event.text) expect(event.sequence).toBe(was.sequence);
            else expect(event.sequence).toBeGreaterThan(was.sequence);
          }
          const past = before.filter((was) => !was.cancelled && was.day < today);
          const stands = new Set(events.map((event) => event.text));
          const rewritten = past.filter((was) => !stands.has(was.text));
          expect(rewritten.length).toBeLessThanOrEqual(garden.log?.length ?? 0);

          const live = events.filter(({ cancelled, day }) => !cancelled && day >= today);
          const planned = planEvents(plan).filter(({ day }) => day >= today);
          expect(live.map(({ key }) => key).sort()).toEqual(planned.map(({ key }) => key).sort());

          const read = eventsIn(text);
          expect(new Set(read.map(({ uid }) => uid)).size).toBe(events.length);
          const summaries = read
            .filter(({ component }) => valueOf(component, "status") !== "CANCELLED")
            .filter(({ startDate }) => startDate.toString().slice(0, 10) >= today)
            .map(({ summary }) => summary);
          expect(summaries.sort()).toEqual(planned.map(({ summary }) => summary).sort());

          const later = { ...options, stamp: `${today}T18:00:00Z` };
          expect(textOf(plan, { ...later, previous: text })).toBe(text);
          expect(calendarChanges(earlierOf(text), plan, today)).toEqual([]);
        }
      }),
      { numRuns: 25, seed: 20270501 },
    );
    expect([...kinds].sort()).toEqual(["feed", "feeding", "making", "notice", "use-up"]);
    expect(visits).toBeGreaterThan(40);
  });

  it("keeps the UIDs of a batch's steps when the batch moves by some days", () => {
    const uidsOf = (text: string) =>
      earlierOf(text)
        .events.filter(({ key, cancelled }) => key.startsWith("making/") && !cancelled)
        .map(({ key, uid }) => `${key.split("/")[1] ?? ""} ${uid}`);
    const once = {
      ...begun,
      beds: [{ id: "long", plantings: [{ id: "c", crop: "celery", transplanted: "2027-05-25" }] }],
    };
    const before = planOn(once, firstDay);
    const moved = planOn({ ...once, feeding: { days: ["mon", "thu"] } }, firstDay);
    if (before === undefined || moved === undefined) throw new Error("a garden is wrong");
    expect(moved.stock?.making.batches[0]?.readyOn).not.toBe(
      before.stock?.making.batches[0]?.readyOn,
    );
    const text = textOf(before);
    expect(uidsOf(textOf(moved, { previous: text }))).toEqual(uidsOf(text));
  });
});
