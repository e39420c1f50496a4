/** The whole way from the text of a garden file to its plan, for the library and the shell. */
import { earlier, parseDay } from "./dates.js";
import { type GardenPlace, placeOf, type PlaceSources } from "./garden-place.js";
import { type Garden, located, readYaml, type SourceFile, validateGarden } from "./garden/index.js";
import { dayBefore, gardenOn } from "./log/index.js";
import { type PlanOptions, planSeason, type PlanTables } from "./plan.js";
import { inFileOrder, type Result } from "./problem.js";
import type { Published, PublishedRound } from "./published/index.js";
import { type FeedRule, mergeRules, readRules } from "./rules/index.js";
import type { Plan } from "./season/index.js";
import type { Tables } from "./tables.js";
import { given } from "./values.js";

/** What a garden is planned with beside its own file. */
export interface GardenSources extends PlaceSources {
  /** Text of the grower's own rule file, when the garden file names one. */
  readonly ownRules?: string;
}

/** What a garden is planned with beside its file: a day, and the texts of other files that it names. */
export interface PlanGardenOptions extends Omit<PlanOptions, "today" | "place">, GardenSources {
  /** `YYYY-MM-DD`, in the garden's time zone. */
  readonly today: string;
  /** Names the garden file in problems; `garden.yaml` unless given. */
  readonly file?: string;
}

/**
 * Text of a garden file -> plan of its season, or every problem of it with its place.
 * Throws RangeError when `today` is no day.
 *
 * @param tables from `loadTables`
 */
export function planGarden(text: string, tables: Tables, options: PlanGardenOptions): Result<Plan> {
  const { file = "garden.yaml", today: todayText, ownRules, weather, normals, ...rest } = options;
  const today = parseDay(todayText);
  if (today === undefined) throw new RangeError(`not a calendar day: ${todayText}`);
  const read = gardenOfText(text, file, tables);
  const sources = given({ ownRules, weather, normals });
  return read.ok ? planOfGarden(read.value, sources, tables, { ...rest, today }) : read;
}

export interface ReadGarden {
  readonly source: SourceFile;
  readonly garden: Garden;
}

/** Text -> valid garden, with its source for the places of later problems. */
export function gardenOfText(text: string, file: string, tables: Tables): Result<ReadGarden> {
  const source = readYaml(text, file);
  return source.ok ? gardenOfSource(source.value, tables) : source;
}

export function gardenOfSource(source: SourceFile, tables: Tables): Result<ReadGarden> {
  const garden = validateGarden(source, tables);
  return garden.ok ? { ok: true, value: { source, garden: garden.value } } : garden;
}

/** Valid garden and what it is planned with -> plan. */
export function planOfGarden(
  { source, garden }: ReadGarden,
  sources: GardenSources,
  tables: Tables,
  options: Omit<PlanOptions, "place">,
): Result<Plan> {
  const rules = rulesFor(garden, sources.ownRules, tables);
  const here = placeOf(garden, sources, tables, options.today);
  if (!rules.ok || !here.ok) {
    const problems = [rules, here].flatMap((one) => (one.ok ? [] : one.problems));
    return { ok: false, problems: inFileOrder(problems) };
  }
  const { place, ...told } = here.value;
  // A copy of the tables would make each of them.
  const ruled = Object.create(tables, { rules: { value: rules.value } }) as PlanTables;
  const plan = planSeason(garden, ruled, { ...options, ...given({ place }) });
  if (plan.ok) return { ok: true, value: withTold(plan.value, told) };
  return { ok: false, problems: plan.problems.map((finding) => located(finding, source)) };
}

function withTold(plan: Plan, { assumptions, warnings }: Omit<GardenPlace, "place">): Plan {
  return {
    ...plan,
    warnings: [...plan.warnings, ...warnings],
    assumptions: [...plan.assumptions, ...assumptions],
  };
}

/**
 * Rounds of which only the days are known, as the plan that told them will have had them: made anew
 * from before the season, those days kept. What was poured is told without the bottle, where the
 * garden file does not list it.
 */
export function workedOut(
  { source, garden }: ReadGarden,
  sources: GardenSources,
  tables: Tables,
  told: Published,
): Published {
  const [first] = told.rounds;
  if (first === undefined) return told;
  const from = earlier(first.day, dayBefore(garden.season));
  const then = { source, garden: gardenOn(garden, from) };
  const plan = planOfGarden(then, sources, tables, { today: from, published: told });
  if (!plan.ok) return told;
  const firstTold = new Map(told.rounds.map((round) => [round.day, round.first]));
  const listed = new Set(garden.stock.batches.map(({ id }) => id));
  const rounds = plan.value.published.rounds.flatMap((round): PublishedRound[] => {
    const day = firstTold.get(round.day);
    if (day === undefined) return [];
    const mixes = round.mixes.map((mix) => ({
      ...mix,
      // The file may have got the bottle since.
      pours: mix.pours.map(({ batch, ml }) =>
        batch !== undefined && listed.has(batch) ? { batch, ml } : { ml },
      ),
    }));
    return [{ ...round, first: day, mixes }];
  });
  return { ...told, rounds };
}

function rulesFor(
  garden: Garden,
  ownRules: string | undefined,
  tables: Tables,
): Result<readonly FeedRule[]> {
  if (ownRules === undefined) return { ok: true, value: tables.builtInRules };
  const source = readYaml(ownRules, garden.rulesFile ?? "rules.yaml");
  if (!source.ok) return source;
  const context = { units: tables.units, amounts: garden.amounts };
  const own = readRules(source.value, tables, context, true);
  return own.ok ? { ok: true, value: mergeRules(tables.builtInRules, own.value) } : own;
}
