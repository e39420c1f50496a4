import { calendarChanges, planEvents } from "../calendar/index.js";
import type { Day } from "../dates.js";
import { given } from "../values.js";
import { earlierCalendar, readCalendarFile } from "./calendar-on-disk.js";
import { changeFacts, changesText } from "./changes-text.js";
import { loadGarden } from "./load.js";
import { printJson, reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";

export interface ChangesOptions {
  readonly json?: true;
  readonly today?: Day;
}

/** What a calendar file would become if it were written anew; it is left as it is. */
export async function changesCommand(
  calendarFile: string,
  gardenFile: string,
  options: ChangesOptions,
  shell: Shell,
): Promise<number> {
  if (calendarFile === "-" && gardenFile === "-")
    throw new CommandError(
      exitCodes.usage,
      "error: the calendar and the garden cannot both come from standard input: name one of the files",
    );
  const { today } = options;
  const before = await readCalendarFile(calendarFile, shell);
  const loaded = await loadGarden(gardenFile, shell, {
    ...given({ today }),
    keep: before.published,
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { plan } = loaded.value;
  const earlier = earlierCalendar(before, plan.garden.id);
  if (!earlier.ok) return reportProblems(earlier.problems, options, shell);
  const changes = calendarChanges(earlier.value.calendar, planEvents(plan));
  if (options.json) printJson({ changes: changes.map(changeFacts) }, shell);
  else shell.stdout(changesText(changes, textStyle(shell)));
  return exitCodes.fine;
}
