import { type Amounts, eggSize, mlPerCup } from "../garden/index.js";
import { type BatchReport, daysFrom, daysOf, makingReport, recipeReport } from "../notes/index.js";
import {
  type BatchSize,
  recipe,
  type Recipe,
  recipeMeans,
  type RecipeMeans,
} from "../stock/index.js";
import { loadTables, type Tables } from "../tables.js";
import { given } from "../values.js";
import { acidNames } from "../words/index.js";
import { batchMeans, batchSize, type BatchSizes, type BatchWays } from "./batch-options.js";
import { batchText } from "./batch-text.js";
import { type LoadedGarden, loadGarden } from "./load.js";
import { answer, type AnswerOptions, reportProblems } from "./report.js";
import { type Shell, wrongUsage } from "./shell.js";

interface BatchOptions extends BatchSizes, BatchWays, AnswerOptions {
  readonly amounts?: string;
}

/** A litre, or a quart. */
function sizeWithoutWish(amounts: Amounts): BatchSize {
  return { by: "volume", makeMl: amounts === "us" ? 4 * mlPerCup : 1000 };
}

/** With a garden and no size: the batches of its season, and the recipe of the next one. */
export async function batchCommand(
  file: string | undefined,
  options: BatchOptions,
  shell: Shell,
): Promise<number> {
  const amounts = amountsOption(options.amounts);
  const tables = loadTables();
  const loaded = file === undefined ? undefined : await loadGarden(file, shell, options);
  if (loaded?.ok === false) return reportProblems(loaded.problems, options, shell);
  const known = loaded?.value;
  const report = known
    ? gardenReport(known, options, amounts ?? known.garden.amounts, tables)
    : plainReport(options, amounts ?? "metric", tables, shell);
  return answer(report, batchText, options, shell);
}

function plainReport(
  options: BatchOptions,
  amounts: Amounts,
  tables: Tables,
  shell: Shell,
): BatchReport {
  const { usual } = tables;
  const stock = {
    acid: "citric" as const,
    citricForm: "anhydrous" as const,
    vinegarPercent: usual.vinegar_percent,
    shellPurity: usual.shell_purity_percent / 100,
    bottleMl: amounts === "us" ? usual.bottle_us_ml : usual.bottle_ml,
    eggs: eggSize(tables.eggSizes, amounts),
  };
  const means = batchMeans(options, recipeMeans(tables.chemistry, stock), amounts, tables);
  const size = batchSize(options, means.acid, amounts, tables) ?? sizeWithoutWish(amounts);
  const today = options.today ?? shell.today(shell.localTimezone());
  const made = recipeOrThrow(size, means, tables);
  const recipeToday = recipeReport(made, daysFrom(today, made));
  return { batchVersion: 1, today, amounts, recipe: recipeToday };
}

function gardenReport(
  { garden, plan }: LoadedGarden,
  options: BatchOptions,
  amounts: Amounts,
  tables: Tables,
): BatchReport {
  const usual = recipeMeans(tables.chemistry, garden.stock);
  const means = batchMeans(options, usual, amounts, tables);
  const size = batchSize(options, means.acid, amounts, tables);
  const { today } = plan;
  const { id, name } = garden;
  const head = { batchVersion: 1 as const, today, amounts, garden: { id, name } };
  if (size !== undefined) {
    const made = recipeOrThrow(size, means, tables);
    return { ...head, recipe: recipeReport(made, daysFrom(today, made)) };
  }
  if (means.acid !== usual.acid)
    throw wrongUsage(
      `the batches of ${name} are planned with ${acidNames[usual.acid]}: give a size for a batch with the other acid, or change \`stock: { acid: ... }\``,
    );
  const making = makingReport(plan);
  const next = plan.stock?.making.batches[0];
  if (making === undefined || next === undefined) return { ...head, ...given({ making }) };
  const made = recipeOrThrow({ by: "volume", makeMl: next.volumeMl }, means, tables);
  return { ...head, making, recipe: recipeReport(made, daysOf(next), next.id) };
}

function recipeOrThrow(size: BatchSize, means: RecipeMeans, tables: Tables): Recipe {
  const made = recipe(tables.chemistry, tables.making, size, means);
  if (made.ok) return made.value;
  const [first] = made.problems;
  throw wrongUsage(
    `${first?.message ?? "no such batch can be made"}: ${first?.mend ?? "change the size"}`,
  );
}

function amountsOption(text: string | undefined): Amounts | undefined {
  if (text === undefined || text === "metric" || text === "us" || text === "imperial") return text;
  throw wrongUsage(`--amounts: \`${text}\` is not known: write metric, us or imperial`);
}
