import { type Day, parseDay } from "../dates.js";
import { reasonsFor } from "../notes/index.js";
import { didYouMean } from "../suggest.js";
import { loadGarden } from "./load.js";
import { printJson, reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";
import { reasonsText } from "./why-text.js";

export interface WhyOptions {
  readonly json?: true;
  readonly today?: Day;
}

export async function whyCommand(
  file: string,
  planting: string | undefined,
  dayText: string | undefined,
  options: WhyOptions,
  shell: Shell,
): Promise<number> {
  // `why garden.yaml 2027-06-26`: all that is fed on that day.
  const firstIsDay =
    planting !== undefined && dayText === undefined && parseDay(planting) !== undefined;
  const [id, onText] = firstIsDay ? [undefined, planting] : [planting, dayText];
  const on = onText === undefined ? undefined : parseDay(onText);
  if (onText !== undefined && on === undefined)
    throw new CommandError(exitCodes.usage, `\`${onText}\` is no date: write it like 2027-06-26`);
  const { today } = options;
  const loaded = await loadGarden(file, shell, today === undefined ? {} : { today });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { plan } = loaded.value;
  const ids = plan.plantings.map((p) => p.id);
  if (id !== undefined && !ids.includes(id))
    throw new CommandError(
      exitCodes.usage,
      `there is no planting \`${id}\`: ${didYouMean(id, ids, `it is one of ${ids.join(", ")}`)}`,
    );
  const reasons = reasonsFor(plan, id, on);
  if (options.json) printJson(reasons, shell);
  else shell.stdout(reasonsText(reasons, plan, { id, on }, textStyle(shell)));
  return exitCodes.fine;
}
