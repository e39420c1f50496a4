import type { Day } from "../dates.js";
import { planBetween } from "../season/index.js";
import { given } from "../values.js";
import { keptOfOtherGarden, loadKept } from "./kept-plan.js";
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
  /** An earlier plan or calendar. */
  readonly keep?: string;
  readonly extraRounds?: number;
}

export async function planCommand(
  file: string,
  options: PlanWishes,
  shell: Shell,
): Promise<number> {
  if (options.from !== undefined && options.to !== undefined && options.to < options.from)
    throw new CommandError(exitCodes.usage, "--to is before --from: swap the two days");
  const { today, keep, extraRounds } = options;
  if (keep === undefined && extraRounds !== undefined)
    throw new CommandError(
      exitCodes.usage,
      "--extra-rounds is for --keep: name what is to be kept",
    );
  if (keep === "-" && file === "-")
    throw new CommandError(
      exitCodes.usage,
      "the garden and what is to be kept cannot both come from standard input: name one of the files",
    );
  const kept = keep === undefined ? undefined : await loadKept(keep, extraRounds ?? 0, shell);
  if (kept?.ok === false) return reportProblems(kept.problems, options, shell);
  const loaded = await loadGarden(file, shell, {
    ...given({ today }),
    ...(kept === undefined ? {} : { keep: kept.value.published }),
  });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { id } = loaded.value.garden;
  if (keep !== undefined && kept !== undefined && kept.value.gardenId !== id)
    return reportProblems([keptOfOtherGarden(keep, kept.value.gardenId, id)], options, shell);
  const plan = planBetween(loaded.value.plan, options.from, options.to);
  if (options.json) printJson(plan, shell);
  else shell.stdout(planText(plan, textStyle(shell)));
  return exitCodes.fine;
}
