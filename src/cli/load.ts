/** A garden file on disk -> garden, rules and plan, or problems with their places. */
import { dirname, resolve } from "node:path";
import {
  decodeText,
  located,
  readYaml,
  validateGarden,
  type Garden,
  type SourceFile,
} from "../garden/index.js";
import { planSeason, type PlanOptions } from "../plan.js";
import { type Problem, type Result } from "../problem.js";
import { dayOfFile, keepsLog } from "../rounds/index.js";
import { mergeRules, readRules, type FeedRule } from "../rules/index.js";
import type { Plan } from "../season-plan.js";
import { loadTables } from "../tables.js";
import { readBytes } from "./files.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export interface LoadedGarden {
  readonly source: SourceFile;
  readonly garden: Garden;
  readonly plan: Plan;
}

export interface LoadOptions extends Partial<PlanOptions> {
  /** Without a log, plan as of the day that the file speaks of, so that the clock changes nothing. */
  readonly isTimeless?: boolean;
}

/** Throws CommandError (exit code 3) only for what cannot be read at all. */
export async function loadGarden(
  path: string,
  shell: Shell,
  options: LoadOptions = {},
): Promise<Result<LoadedGarden>> {
  const tables = loadTables();
  const name = path === "-" ? "<stdin>" : path;
  const source = readSource(await readBytes(path, shell), name);
  if (!source.ok) return source;
  const garden = validateGarden(source.value, tables);
  if (!garden.ok) return garden;
  const rules = await loadRules(garden.value, source.value, path, shell);
  if (!rules.ok) return rules;
  const { today: todayGiven, isTimeless, ...planOptions } = options;
  const today =
    todayGiven ??
    (isTimeless && !keepsLog(garden.value)
      ? dayOfFile(garden.value)
      : shell.today(garden.value.timezone));
  const plan = planSeason(
    garden.value,
    { ...tables, rules: rules.value },
    { ...planOptions, today },
  );
  if (!plan.ok)
    return { ok: false, problems: plan.problems.map((finding) => located(finding, source.value)) };
  return { ok: true, value: { source: source.value, garden: garden.value, plan: plan.value } };
}

function readSource(bytes: Uint8Array, name: string): Result<SourceFile> {
  const text = decodeText(bytes, name);
  return text.ok ? readYaml(text.value, name) : text;
}

/** Built-in rules with the grower's own, whose file lies beside the garden file. */
async function loadRules(
  garden: Garden,
  source: SourceFile,
  gardenPath: string,
  shell: Shell,
): Promise<Result<readonly FeedRule[]>> {
  const tables = loadTables();
  if (garden.rulesFile === undefined) return { ok: true, value: tables.builtInRules };
  const folder = gardenPath === "-" ? "." : dirname(gardenPath);
  const path = resolve(folder, garden.rulesFile);
  let bytes: Uint8Array;
  try {
    bytes = await readBytes(path, shell);
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
  const rules = readSource(bytes, garden.rulesFile);
  if (!rules.ok) return rules;
  const context = { units: tables.units, amounts: garden.amounts };
  const own = readRules(rules.value, tables, context, true);
  return own.ok ? { ok: true, value: mergeRules(tables.builtInRules, own.value) } : own;
}
