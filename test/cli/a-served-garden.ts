/** A garden file as a server keeps it: its pages, and what is ticked on them. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { calendarText } from "../../src/calendar/index.js";
import { gardenWriter } from "../../src/cli/garden-writer.js";
import { loadGarden } from "../../src/cli/load.js";
import { problemLine } from "../../src/problem.js";
import type { Plan } from "../../src/season/season-plan.js";
import type { Outcome } from "../../src/serve/garden-writer.js";
import { loadTables } from "../../src/tables.js";
import type { TickSheet } from "../../src/ticks/sheet.js";
import type { Standing, Tick, Ticked } from "../../src/ticks/tick.js";
import { tickSheet } from "../../src/ticks/tick-sheet.js";
import { given } from "../../src/values.js";
import { aShell, scratchFolder } from "../support/run-cli.js";

export interface Page {
  readonly sheet: TickSheet;
  readonly plan: Plan;
}

export interface Served {
  readonly file: string;
  readonly text: () => string;
  readonly edit: (from: string | RegExp, to: string) => void;
  readonly put: (text: string) => void;
  /** Plans the garden as of a day, serves that, and gives the page. */
  readonly page: (today: string) => Promise<Page>;
  readonly tick: (
    now: string,
    what: Ticked,
    seen: Standing,
    more?: Partial<Pick<Tick, "on" | "tappedMs">>,
  ) => Promise<Outcome>;
  readonly takeBack: (now: string, outcome: Outcome) => Promise<Outcome>;
  readonly writer: ReturnType<typeof gardenWriter>;
}

/** An instant; where only the day is given, one that is that day from Ireland to New Zealand. */
function msOf(now: string): number {
  return Date.parse(now.includes("T") ? now : `${now}T09:00:00Z`);
}

export function servedGarden(text: string): Served {
  const file = join(scratchFolder(), "plot.yaml");
  writeFileSync(file, text);
  const writer = gardenWriter(aShell().shell);
  let previous: string | undefined;
  const textNow = (): string => readFileSync(file, "utf8");
  const asOf = (now: string): { nowMs: number; previous?: string } => ({
    ...{ nowMs: msOf(now), ...given({ previous }) },
  });
  return {
    file,
    writer,
    text: textNow,
    put: (next) => {
      writeFileSync(file, next);
    },
    edit: (from, to) => {
      const after = textNow().replace(from, to);
      if (after === textNow()) throw new Error(`nothing to edit: ${String(from)}`);
      writeFileSync(file, after);
    },
    page: async (today) => {
      const { shell } = aShell({ today });
      const loaded = await loadGarden(file, shell, { isForWriting: true, served: previous ?? "" });
      if (!loaded.ok) throw new Error(loaded.problems.map(problemLine).join("\n"));
      const { garden, plan, earlier } = loaded.value;
      const calendar = calendarText(plan, {
        ...{ stamp: `${today}T06:00:00Z`, today: plan.today, for: "subscription" },
        ...given({ previous: earlier?.text }),
      });
      if (!calendar.ok) throw new Error("no calendar");
      // One that the garden names is kept in its own file.
      if (garden.calendarFile === undefined) previous = calendar.value;
      else writeFileSync(join(file, "..", garden.calendarFile), calendar.value);
      return { plan, sheet: tickSheet(garden, plan, loadTables()) };
    },
    tick: (now, what, { seen }, more = {}) =>
      writer.tick(file, { id: "A".repeat(22), seen, what, ...more }, asOf(now)),
    takeBack: (now, outcome) => {
      if (outcome.kind !== "written") throw new Error(JSON.stringify(outcome));
      return writer.takeBack(file, outcome.undo, asOf(now));
    },
  };
}

/** A round of a page as planned; only some of its beds where they are named. */
export function asPlanned(
  { sheet }: Page,
  day: string,
  ...beds: string[]
): { what: Ticked & { kind: "round" }; seen: Standing } {
  const round = sheet.rounds.find((one) => one.day === day);
  if (round === undefined)
    throw new Error(`no round on ${day}: ${sheet.rounds.map((one) => one.day).join(", ")}`);
  const shown = round.beds.filter(({ bed }) => beds.length === 0 || beds.includes(bed));
  const what = {
    ...{ kind: "round" as const, day: round.day },
    beds: shown.map(({ bed }) => bed),
    entries: round.beds.flatMap(({ entries }) => entries),
  };
  return { what, seen: round };
}

export function missedIn(
  page: Page,
  day: string,
  ...beds: string[]
): { what: Ticked; seen: Standing } {
  const { what, seen } = asPlanned(page, day, ...beds);
  return { what: { ...what, missed: true, entries: [] }, seen };
}
