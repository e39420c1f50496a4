// @ts-nocheck
import { calendarChanges } from "../calendar/index.js";
import { feedingChanges } from "../notes/index.js";
import { changeFacts, changesText } from "./changes-text.js";
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
  const loaded = await loadGarden(gardenFile, shell, { ...options, keep: calendarFile });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { plan, earlier } = loaded.value;
  if (earlier === undefined)
    throw wrongUsage(
      `${calendarFile} is a plan: give a calendar that \`feedround calendar\` wrote`,
    );
  const changes = calendarChanges(earlier.calendar, plan, plan.today).map(changeFacts);
  const { published } = earlier.calendar;
  const feedings = published === undefined ? [] : feedingChanges(published, plan);
  const here = { amounts: plan.garden.amounts, today: plan.today };
  return answer(
    { changes, feedings },
    (all, style) => changesText(all, here, style),
    options,
    shell,
  );
}
