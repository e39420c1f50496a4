/** Earlier calendars: read strictly, and written over so that the next writing changes nothing. */
import { readdirSync, readFileSync } from "node:fs";
import { readEarlierCalendar } from "../../src/calendar/index.js";
import { addDays, type Day } from "../../src/dates.js";
import { dayOfFile } from "../../src/log/index.js";
import { gardenOfText, planOfGarden, type ReadGarden } from "../../src/plan-garden.js";
import type { Plan } from "../../src/season/index.js";
import { loadNormals, loadTables, type Tables } from "../../src/tables.js";
import { textOf } from "../support/calendars.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeRightProblems, mustHold } from "./must-hold.js";
import { mustSettle } from "./season-holds.js";
import { smallGardens } from "./small-gardens.js";
import { spoilText } from "./spoil-text.js";

/** A garden with a calendar that was written of it. */
export interface Kept {
  readonly read: ReadGarden;
  readonly plan: Plan;
  /** As of which it was written. */
  readonly today: Day;
  readonly calendar: string;
}

interface CalendarInput {
  readonly kept: Kept;
  readonly text: string;
  /** Days after the calendar's. */
  readonly later: number;
  readonly isWritten: boolean;
  readonly isPlanned: boolean;
}

const golden = new URL("../golden/", import.meta.url);

const words = [
  ...["BEGIN:VCALENDAR", "END:VCALENDAR", "BEGIN:VEVENT", "END:VEVENT", "BEGIN:VALARM", "TZID"],
  ...["UID", "DTSTART", "DTEND", "DTSTAMP", "SUMMARY", "SEQUENCE", "STATUS:CANCELLED", "CREATED"],
  ...["X-FEEDROUND-KEY", "X-FEEDROUND-ROUND", "X-FEEDROUND-RETIRED", "20270601T183000", "Z", "99"],
  ...["PRODID", "VERSION:2.0", "LAST-MODIFIED", "VALUE=DATE", "\\n", "\\,", "\r\n", "\r\n "],
];

export function keptGardens(most: number, tables: Tables, normals: Normals): Kept[] {
  return smallGardens()
    .slice(0, most)
    .flatMap((text) => {
      const read = gardenOfText(text, "garden.yaml", tables);
      mustHold(read.ok, "a garden to be spoilt is not good", read);
      const today = dayOfFile(read.value.garden);
      const plan = planOfGarden(read.value, { normals }, tables, { today });
      mustHold(plan.ok, "a garden to be spoilt has no plan", plan);
      return [{ read: read.value, plan: plan.value, today, calendar: textOf(plan.value) }];
    });
}

type Normals = Awaited<ReturnType<typeof loadNormals>>;

async function begin(): Promise<Hunting<CalendarInput>> {
  const tables = loadTables();
  const normals = await loadNormals();
  const kept = keptGardens(25, tables, normals);
  const others = [
    ...kept.map(({ calendar }) => calendar),
    ...readdirSync(golden)
      .filter((name) => name.endsWith(".ics"))
      .map((name) => readFileSync(new URL(name, golden), "utf8")),
  ];
  return {
    make: (dice) => {
      const one = dice.pick(kept);
      return {
        kept: one,
        text: spoilText(one.calendar, dice, { words, others }),
        later: dice.between(0, 120),
        isWritten: dice.chance(0.15),
        isPlanned: dice.chance(0.3),
      };
    },
    shown: ({ text }) => text,
    check: ({ kept: { read, plan, today }, text, later, isWritten, isPlanned }) => {
      const { garden } = read;
      const earlier = readEarlierCalendar(text, garden.id);
      if (!earlier.ok) {
        const problems = earlier.problems.map((one) => ({ ...one, file: "garden.ics" }));
        mustBeRightProblems(problems, { "garden.ics": text });
        return "refused";
      }
      if (!isWritten) return "accepted";
      const { published } = earlier.value;
      const day = addDays(today, later);
      const next =
        isPlanned && published !== undefined
          ? planOfGarden(read, { normals }, tables, { today: day, published })
          : { ok: true as const, value: plan };
      if (next.ok) mustSettle({ ...next.value, today: day }, text, `${day}T08:00:00Z`);
      else mustBeRightProblems(next.problems, { "garden.yaml": read.source.text });
      return "accepted";
    },
  };
}

export const calendars = aKind({ name: "calendars", share: 90, begin });
