import { calendarChanges, readersMend } from "../calendar/index.js";
import type { Problem } from "../problem.js";
import { changeFacts, changesText } from "./changes-text.js";
import { earlierCalendar, readCalendarFile } from "./earlier-files.js";
import { loadGarden } from "./load.js";
import { answer, type AnswerOptions, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";

/** What a calendar file would become if it were written anew; it is left as it is. */
export async function changesCommand(
  calendarFile: string,
  gardenFile: string,
  options: AnswerOptions,
  shell: Shell,
): Promise<number> {
  if (calendarFile === "-" && gardenFile === "-")
    throw wrongUsage(
      "error: the calendar and the garden cannot both come from standard input: name one of the files",
    );
  const before = await readCalendarFile(calendarFile, shell);
  const loaded = await loadGarden(gardenFile, shell, {
    ...options,
    keep: before.published,
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { plan } = loaded.value;
  const earlier = earlierCalendar(before, plan.garden.id);
  if (!earlier.ok) return reportProblems(earlier.problems.map(forReader), options, shell);
  const today = options.today ?? shell.today(plan.garden.timezone);
  const changes = calendarChanges(earlier.value.calendar, plan, today).map(changeFacts);
  return answer({ changes }, changesText, options, shell);
}

/** The calendar is left as it is: nothing is to be written under another name. */
function forReader(problem: Problem): Problem {
  return problem.code === "other-garden" ? problem : { ...problem, mend: readersMend };
}
