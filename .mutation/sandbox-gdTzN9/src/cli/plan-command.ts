// @ts-nocheck
import type { Day } from "../dates.js";
import { planBetween } from "../season/index.js";
import { given } from "../values.js";
import { loadGarden, tellIfBehind } from "./load.js";
import { planText } from "./plan-text.js";
import { answer, type AnswerOptions, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";

interface PlanWishes extends AnswerOptions {
  readonly from?: Day;
  readonly to?: Day;
  /** An earlier plan or calendar. */
  readonly keep?: string;
  readonly extraRounds?: number;
  readonly past?: true;
}

export async function planCommand(
  file: string,
  options: PlanWishes,
  shell: Shell,
): Promise<number> {
  const { from, to, past, today, keep, extraRounds } = options;
  if (from !== undefined && to !== undefined && to < from)
    throw wrongUsage("--to is before --from: swap the two days");
  if (keep === "-" && file === "-")
    throw wrongUsage(
      "the garden and what is to be kept cannot both come from standard input: name one of the files",
    );
  const loaded = await loadGarden(file, shell, given({ today, keep, extraRounds }));
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  tellIfBehind(file, loaded.value, shell);
  const { plan } = loaded.value;
  const view = given({ from, to, past });
  return answer(
    planBetween(plan, from, to),
    (asked, style) => planText(asked, plan, view, style),
    options,
    shell,
  );
}
