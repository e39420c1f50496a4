/** A garden file on disk -> garden and plan, or problems with their places. */
import { dirname, resolve } from "node:path";
import type { Day } from "../dates.js";
import { decodeText, type Garden, type SourceFile } from "../garden/index.js";
import { dayOfFile, gardenOn, keepsLog } from "../log/index.js";
import { gardenOfText, planOfGarden, type ReadGarden } from "../plan-garden.js";
import type { PlanOptions } from "../plan.js";
import type { Problem, Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import { loadTables } from "../tables.js";
import { readBytes, shownName } from "./files.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export interface LoadedGarden {
  readonly source: SourceFile;
  readonly garden: Garden;
  readonly plan: Plan;
}

export interface LoadOptions extends Partial<PlanOptions> {
  /** Without a log, plan as of the day that the file speaks of, so that the clock changes nothing. */
  readonly isTimeless?: boolean;
  /** Plan from this day as the file would have stood then, without what was written down since. */
  readonly asOf?: Day;
}

/** Throws CommandError (exit code 3) only for what cannot be read at all. */
export async function loadGarden(
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const text = decodeText(await readBytes(path, shell), shownName(path));
  return text.ok ? loadGardenText(text.value, path, shell, options) : text;
}

/** As {@link loadGarden}, of a text that is to stand in that file. */
export async function loadGardenText(
  text: string,
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const tables = loadTables();
  const read = gardenOfText(text, shownName(path), tables);
  if (!read.ok) return read;
  const ownRules = await ownRulesOf(read.value, path, shell);
  if (!ownRules.ok) return ownRules;
  const { today, isTimeless, asOf, ...planOptions } = options;
  const { source, garden: whole } = read.value;
  const garden = asOf === undefined ? whole : gardenOn(whole, asOf);
  const plan = planOfGarden({ source, garden }, ownRules.value, tables, {
    ...planOptions,
    today: asOf ?? today ?? planningDay(garden, isTimeless ?? false, shell),
  });
  return plan.ok ? { ok: true, value: { source, garden, plan: plan.value } } : plan;
}

function planningDay(garden: Garden, isTimeless: boolean, shell: Shell): PlanOptions["today"] {
  return isTimeless && !keepsLog(garden) ? dayOfFile(garden) : shell.today(garden.timezone);
}

/** Text of the grower's own rule file, which lies beside the garden file. */
async function ownRulesOf(
  { garden, source }: ReadGarden,
  gardenPath: string,
  shell: Shell,
): Promise<Result<string | undefined>> {
  if (garden.rulesFile === undefined) return { ok: true, value: undefined };
  const path = resolve(gardenPath === "-" ? "." : dirname(gardenPath), garden.rulesFile);
  try {
    return decodeText(await readBytes(path, shell), garden.rulesFile);
  } catch (error) {
    if (!(error instanceof CommandError && error.exitCode === exitCodes.io)) throw error;
    const problem: Problem = {
      code: "rules-file",
      file: source.file,
      at: source.locate({ path: ["rules"] }),
      message: `the rule file \`${garden.rulesFile}\` cannot be read`,
      mend: "check its name; it is looked for beside the garden file",
    };
    return { ok: false, problems: [problem] };
  }
}
