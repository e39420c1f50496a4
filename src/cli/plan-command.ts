import type { Day } from "../dates.js";
import { planBetween } from "../season/index.js";
import { given } from "../values.js";
import { keptOfOtherGarden, loadKept } from "./earlier-files.js";
import { loadGarden } from "./load.js";
import { planText } from "./plan-text.js";
import { answer, type AnswerOptions, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";

interface PlanWishes extends AnswerOptions {
  readonly from?: Day;
  readonly to?: Day;
  /** An earlier plan or calendar. */
  readonly keep?: string;
  readonly extraRounds?: number;
}

export async function planCommand(
  file: string,
  options: PlanWishes,
  shell: Shell,
): Promise<number> {
  const { from, to, today, keep, extraRounds } = options;
  if (from !== undefined && to !== undefined && to < from)
    throw wrongUsage("--to is before --from: swap the two days");
  if (keep === undefined && extraRounds !== undefined)
    throw wrongUsage("--extra-rounds is for --keep: name what is to be kept");
  if (keep === "-" && file === "-")
    throw wrongUsage(
      "the garden and what is to be kept cannot both come from standard input: name one of the files",
    );
  const kept = keep === undefined ? undefined : await loadKept(keep, extraRounds, shell);
  if (kept?.ok === false) return reportProblems(kept.problems, options, shell);
  const loaded = await loadGarden(file, shell, {
    ...given({ today, keep: kept?.value.published }),
  });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { id } = loaded.value.garden;
  if (keep !== undefined && kept !== undefined && kept.value.gardenId !== id)
    return reportProblems([keptOfOtherGarden(keep, kept.value.gardenId, id)], options, shell);
  return answer(planBetween(loaded.value.plan, from, to), planText, options, shell);
}
