import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import { type Paper, seasonSheet, seasonSvg } from "../outputs/index.js";
import { loadGarden } from "./load.js";
import { giveText } from "./output-file.js";
import { reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export interface SheetWishes {
  readonly out?: string;
  readonly today?: Day;
  readonly paper?: string;
  readonly svg?: true;
}

export async function sheetCommand(
  file: string,
  options: SheetWishes,
  shell: Shell,
): Promise<number> {
  const loaded = await loadGarden(file, shell, options);
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  const { today } = options;
  const marked = today === undefined ? {} : { today };
  const text = options.svg
    ? seasonSvg(plan, marked)
    : seasonSheet(plan, { ...marked, paper: paperFor(options.paper, plan.garden.amounts) });
  return giveText(text, options.out, shell);
}

/** Throws CommandError (exit code 2) for a paper that is not known. */
export function paperFor(wish: string | undefined, amounts: Amounts): Paper {
  const paper = (wish ?? (amounts === "us" ? "letter" : "a4")).toLowerCase();
  if (paper === "a4" || paper === "letter") return paper;
  throw new CommandError(
    exitCodes.usage,
    `the paper \`${paper}\` is not known: write a4 or letter`,
  );
}
