/** Calendars that people and other programs have edited, taken up again by the next plan. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calendarText } from "../../src/calendar/calendar-text.js";
import { readEarlierCalendar } from "../../src/calendar/earlier-calendar.js";
import { day, type Day } from "../../src/dates.js";
import { planGarden } from "../../src/plan-garden.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import { growing } from "../live/a-live-garden.js";
import { gardenText } from "../support/a-garden.js";
import { textOf } from "../support/calendars.js";
import { linesOf } from "../support/ics.js";

const normals = await loadNormals();
const today = day("2027-07-20");

interface Season {
  readonly published: string;
  /** On a day in the middle of it. */
  readonly plan: Plan;
}

/** As it was published in March, and its plan once the file says `after`. */
function seasonOf(before: string, after = before): Season {
  const planOn = (text: string, when: Day, more = {}): Plan => {
    const plan = planGarden(text, loadTables(), { today: when, normals, ...more });
    if (!plan.ok) throw new Error(plan.problems[0]?.message);
    return plan.value;
  };
  const first = planOn(before, day("2027-03-01"));
  const published = textOf(first, { stamp: "2027-03-01T08:00:00Z" });
  return { published, plan: planOn(after, today, { published: first.published }) };
}

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), "utf8");

/** Rounds come and go, and one is missed. */
const twoPlantings = growing({ id: "toms" }, { id: "other", transplanted: "2027-05-10" });
const changed = seasonOf(
  gardenText(twoPlantings),
  gardenText({
    ...growing({ id: "toms" }),
    log: [{ on: "2027-07-12", planting: "toms", missed: true }],
  }),
);
const seasons = [seasonOf(example("back-garden")), seasonOf(example("shared-garden")), changed];

const harmless = [
  (line: string) => line.replace(/^[A-Z-]+(?=[:;])/, (name) => name.toLowerCase()),
  (line: string) => `${line.slice(0, 9)}\r\n ${line.slice(9)}`,
  (line: string) => `${line}\r\nX-OTHER-PROGRAM;X=1:moved`,
  (line: string) => `${line}\r\n`,
];
const losing = [
  () => undefined,
  (line: string) => `${line}!`,
  (line: string) => `${line}\r\n${line}`,
];

const edits = fc.array(
  fc.record({
    at: fc.noBias(fc.nat(9999)),
    run: fc.integer({ min: 1, max: 4 }),
    edit: fc.constantFrom<(line: string) => string | undefined>(...harmless, ...losing),
  }),
  { maxLength: 4 },
);

/** What other programs leave out of every event. */
const leftOut = fc.subarray([
  /^SUMMARY.*\r\n/gm,
  /^BEGIN:VALARM[^]*?END:VALARM\r\n/gm,
  /^TRIGGER.*\r\n/gm,
  /^DTSTAMP.*\r\n/gm,
  /^SEQUENCE.*\r\n/gm,
  /^(?:CREATED|LAST-MODIFIED).*\r\n/gm,
  /^(?:COLOR|CATEGORIES|TRANSP|X-MICROSOFT).*\r\n/gm,
]);

type Of<A> = A extends fc.Arbitrary<infer T> ? T : never;

function edited(text: string, changes: Of<typeof edits>, out: Of<typeof leftOut>): string {
  const lines: (string | undefined)[] = linesOf(
    out.reduce((left, one) => left.replace(one, ""), text),
  );
  for (const { at, run, edit } of changes) {
    const from = Math.floor((at / 10_000) * lines.length);
    for (let i = from; i < Math.min(from + run, lines.length); i++) {
      const line = lines[i];
      if (line !== undefined) lines[i] = edit(line);
    }
  }
  return `${lines.filter((line) => line !== undefined).join("\r\n")}\r\n`;
}

function next(
  plan: Plan,
  previous: string,
  use: "import" | "subscription",
  hour: number,
): string | undefined {
  const options = {
    previous,
    for: use,
    today,
    stamp: `${today}T${String(hour).padStart(2, "0")}:00:00Z`,
  };
  const made = calendarText(plan, options);
  return made.ok ? made.value : undefined;
}

/** Past entries by UID, as they stand in a text. */
function pastIn(text: string): Map<string, string> {
  const read = readEarlierCalendar(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return new Map(read.value.events.filter((e) => e.day < today).map((e) => [e.uid, e.text]));
}

describe("a calendar that was edited", () => {
  it("settles after one rewrite, or is refused; past entries that nobody touched stay to the byte", () => {
    const seen = { refused: 0, taken: 0 };
    fc.assert(
      fc.property(
        fc.nat(seasons.length - 1),
        edits,
        leftOut,
        fc.constantFrom("import" as const, "subscription" as const),
        fc.constantFrom("\r\n", "\n", "\r"),
        (which, changes, out, use, lineEnd) => {
          const season = seasons[which] ?? changed;
          const previous = edited(season.published, changes, out);
          const first = next(season.plan, previous.replaceAll("\r\n", lineEnd), use, 8);
          if (first === undefined) {
            seen.refused++;
            return;
          }
          seen.taken++;
          expect(next(season.plan, first, use, 9)).toBe(first);
          for (const [uid, text] of pastIn(season.published))
            if (previous.includes(text)) expect(pastIn(first).get(uid)).toBe(text);
        },
      ),
      { numRuns: 400 },
    );
    expect(seen.taken).toBeGreaterThan(100);
  });
});
