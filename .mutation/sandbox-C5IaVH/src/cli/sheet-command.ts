// @ts-nocheck
import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import { calciumSheet, type Paper, seasonSheet, seasonSvg, shortSheet } from "../outputs/index.js";
import type { Plan } from "../season/index.js";
import { given } from "../values.js";
import { loadGarden } from "./load.js";
import { giveText, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";

interface SheetWishes {
  readonly out?: string;
  readonly today?: Day;
  readonly paper?: string;
  readonly svg?: true;
  readonly calcium?: true;
  readonly short?: true;
}

export async function sheetCommand(
  file: string,
  options: SheetWishes,
  shell: Shell,
): Promise<number> {
  const loaded = await loadGarden(file, shell, options);
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  return giveText(sheetText(plan, options), options.out, shell);
}

function sheetText(plan: Plan, options: SheetWishes): string {
  const marked = given({ today: options.today });
  if (options.svg) return seasonSvg(plan, marked);
  const paper = paperFor(options.paper, plan.garden.amounts);
  if (options.short) return shortSheet(plan, { paper });
  return options.calcium ? calciumSheet(plan, { paper }) : seasonSheet(plan, { ...marked, paper });
}

/** Throws CommandError (exit code 2) for a paper that is not known. */
export function paperFor(wish: string | undefined, amounts: Amounts): Paper {
  const paper = (wish ?? (amounts === "us" ? "letter" : "a4")).toLowerCase();
  if (paper === "a4" || paper === "letter") return paper;
  throw wrongUsage(`the paper \`${paper}\` is not known: write a4 or letter`);
}
