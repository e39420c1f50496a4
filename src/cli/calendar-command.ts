import { calendarChanges, calendarText, type CalendarUse } from "../calendar/index.js";
import type { Day } from "../dates.js";
import { counted } from "../garden/index.js";
import { given } from "../values.js";
import { changeCounts } from "./changes-text.js";
import { isDevice, writeText } from "./files.js";
import { type LoadedGarden, loadGarden } from "./load.js";
import { ownCalendar } from "./published-state.js";
import { reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { resolve } from "node:path";

export interface CalendarOptions {
  readonly out?: string;
  readonly for: CalendarUse;
  readonly stamp?: string;
  readonly today?: Day;
  readonly extraRounds?: number;
}

export async function calendarCommand(
  file: string,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const { today, extraRounds } = options;
  const out = options.out === "-" ? undefined : options.out;
  const isPublishing = out !== undefined && !(await isDevice(out));
  const loaded = await loadGarden(file, shell, {
    ...given({ today, extraRounds }),
    ...(isPublishing ? { calendarOut: out, isForWriting: true } : {}),
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { garden, plan, earlier } = loaded.value;
  const own = ownCalendar(file, garden);
  // Beside the calendar that the garden file names, any other is a copy that no plan goes on from.
  const isCopy = !isPublishing || (own !== undefined && own !== resolve(out));
  const text = textOver(loaded.value, isCopy, options, shell);
  if (out === undefined) {
    shell.stdout(text);
    return exitCodes.fine;
  }
  const outcome = await writeText(out, text, isCopy ? undefined : earlier?.bytes);
  const told =
    earlier === undefined || outcome === "unchanged"
      ? counted(plan.totals.rounds, "round")
      : changeCounts(calendarChanges(earlier.calendar, plan, plan.today));
  shell.stderr(`${out}: ${outcome}, ${told}\n`);
  return exitCodes.fine;
}

/** A first file bears no time of its making unless one is given; a revision bears its own. */
function textOver(
  { plan, earlier }: LoadedGarden,
  isCopy: boolean,
  options: CalendarOptions,
  shell: Shell,
): string {
  const stamp = options.stamp ?? (earlier === undefined ? undefined : shell.now());
  const calendar = calendarText(plan, {
    for: options.for,
    today: plan.today,
    isCopy,
    ...given({ stamp, previous: earlier?.text }),
  });
  // The earlier file has been read without problems.
  if (!calendar.ok) throw new CommandError(exitCodes.problems, calendar.problems[0]?.message ?? "");
  return calendar.value;
}
