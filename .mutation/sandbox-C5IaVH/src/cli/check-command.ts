// @ts-nocheck
import { counted } from "../garden/index.js";
import { gardenAdvice } from "../notes/index.js";
import { loadTables } from "../tables.js";
import { loadGarden, tellIfBehind } from "./load.js";
import { answer, type AnswerOptions, reportProblems, withMend } from "./report.js";
import type { Shell } from "./shell.js";
import { listed, page, type TextStyle, warned } from "./terminal-text.js";

/** Problems end with exit code 1; advice and warnings alone are fine. */
export async function checkCommand(
  file: string,
  options: AnswerOptions,
  shell: Shell,
): Promise<number> {
  const loaded = await loadGarden(file, shell, options);
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  tellIfBehind(file, loaded.value, shell);
  const { garden, plan } = loaded.value;
  const advice = gardenAdvice(garden, plan, loadTables());
  const { warnings, assumptions } = plan;
  const inWords = (_: unknown, style: TextStyle): string =>
    page([
      `${garden.name}: no problems, ${counted(plan.totals.rounds, "round")} planned`,
      warned("Warnings", warnings.map(withMend), style),
      listed(
        "Advice",
        advice.map((a) => a.message),
        style,
      ),
      listed("Taken as usual, since the file does not say", assumptions, style),
    ]);
  return answer({ problems: [], warnings, advice, assumptions }, inWords, options, shell);
}
