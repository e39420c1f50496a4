import type { Day } from "../dates.js";
import { planBetween } from "../plan-between.js";
import { loadGarden } from "./load.js";
import { planText } from "./plan-text.js";
import { printJson, reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";

export interface PlanWishes {
  readonly json?: true;
  readonly from?: Day;
  readonly to?: Day;
  readonly today?: Day;
}

export async function planCommand(
  file: string,
  options: PlanWishes,
  shell: Shell,
): Promise<number> {
  if (options.from !== undefined && options.to !== undefined && options.to < options.from)
    throw new CommandError(exitCodes.usage, "--to is before --from: swap the two days");
  const { today } = options;
  const loaded = await loadGarden(file, shell, today === undefined ? {} : { today });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const plan = planBetween(loaded.value.plan, options.from, options.to);
  if (options.json) printJson(plan, shell);
  else shell.stdout(planText(plan, textStyle(shell)));
  return exitCodes.fine;
}
