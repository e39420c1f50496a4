// @ts-nocheck
import { parseDay } from "../dates.js";
import { reasonsFor } from "../notes/index.js";
import { didYouMean } from "../suggest.js";
import { loadGarden } from "./load.js";
import { answer, type AnswerOptions, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";
import { reasonsText } from "./why-text.js";

export async function whyCommand(
  file: string,
  planting: string | undefined,
  dayText: string | undefined,
  options: AnswerOptions,
  shell: Shell,
): Promise<number> {
  // `why garden.yaml 2027-06-26`: all that is fed on that day.
  const firstIsDay =
    planting !== undefined && dayText === undefined && parseDay(planting) !== undefined;
  const [id, onText] = firstIsDay ? [undefined, planting] : [planting, dayText];
  const on = onText === undefined ? undefined : parseDay(onText);
  if (onText !== undefined && on === undefined)
    throw wrongUsage(`\`${onText}\` is no date: write it like 2027-06-26`);
  const loaded = await loadGarden(file, shell, options);
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { plan } = loaded.value;
  const ids = plan.plantings.map((p) => p.id);
  if (id !== undefined && !ids.includes(id))
    throw wrongUsage(
      `there is no planting \`${id}\`: ${didYouMean(id, ids, `it is one of ${ids.join(", ")}`)}`,
    );
  return answer(
    reasonsFor(plan, id, on),
    (reasons, style) => reasonsText(reasons, plan, on, style),
    options,
    shell,
  );
}
