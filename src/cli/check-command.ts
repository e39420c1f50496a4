import type { Day } from "../dates.js";
import { counted } from "../garden/index.js";
import { gardenAdvice } from "../notes/index.js";
import { loadTables } from "../tables.js";
import { loadGarden } from "./load.js";
import { printJson, reportProblems } from "./report.js";
import { exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";
import { bullet } from "./table.js";

export interface CheckOptions {
  readonly json?: true;
  readonly today?: Day;
}

/** Problems end with exit code 1; advice and warnings alone are fine. */
export async function checkCommand(
  file: string,
  options: CheckOptions,
  shell: Shell,
): Promise<number> {
  const { today } = options;
  const loaded = await loadGarden(file, shell, today === undefined ? {} : { today });
  if (!loaded.ok) return reportProblems(loaded.problems, options, shell);
  const { garden, plan } = loaded.value;
  const advice = gardenAdvice(garden, plan, loadTables().catalogue);
  const { warnings, assumptions } = plan;
  if (options.json) {
    printJson({ problems: [], warnings, advice, assumptions }, shell);
    return exitCodes.fine;
  }
  const { width, heading } = textStyle(shell);
  const section = (title: string, lines: readonly string[]): string =>
    lines.length === 0
      ? ""
      : `\n${heading(title)}\n${lines.map((line) => bullet(line, width)).join("\n")}\n`;
  shell.stdout(
    `${garden.name}: no problems, ${counted(plan.totals.rounds, "round")} planned\n` +
      section(
        "Warnings",
        warnings.map((w) => `${w.message}: ${w.mend}`),
      ) +
      section(
        "Advice",
        advice.map((a) => a.message),
      ) +
      section("Taken as usual, since the file does not say", assumptions),
  );
  return exitCodes.fine;
}
