import { calendarText } from "../calendar/index.js";
import { writeWhole } from "./files.js";
import { loadGarden } from "./load.js";
import { reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export interface CalendarOptions {
  readonly out?: string;
  readonly stamp?: string;
}

export async function calendarCommand(
  file: string,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const loaded = await loadGarden(file, shell);
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  const out = options.out === "-" ? undefined : options.out;
  const stamp = options.stamp === undefined ? {} : { stamp: options.stamp };
  const calendar = calendarText(plan, stamp);
  if (!calendar.ok) throw new CommandError(exitCodes.problems, calendar.problems[0]?.message ?? "");
  if (out === undefined) shell.stdout(calendar.value);
  else {
    const outcome = await writeWhole(out, calendar.value);
    shell.stderr(`${out}: ${outcome}, ${plan.totals.rounds} rounds\n`);
  }
  return exitCodes.fine;
}
