/** The whole way from the text of a garden file to its plan, for the library and the shell. */
import { earlier, parseDay } from "./dates.js";
import { type GardenPlace, placeOf, type PlaceSources } from "./garden-place.js";
import { type Garden, located, readYaml, type SourceFile, validateGarden } from "./garden/index.js";
import { dayBefore, gardenOn } from "./log/index.js";
import { type PlanOptions, planSeason } from "./plan.js";
import type { Result } from "./problem.js";
import type { Published, PublishedRound } from "./published/index.js";
import { type FeedRule, mergeRules, readRules } from "./rules/index.js";
import type { Plan } from "./season/index.js";
import type { Tables } from "./tables.js";
import { given } from "./values.js";

type GardenOptions = Omit<PlanOptions, "place"> & PlaceSources;

export interface PlanGardenOptions extends Omit<GardenOptions, "today"> {
  /** `YYYY-MM-DD`, in the garden's time zone. */
  readonly today: string;
  /** Names the garden file in problems; `garden.yaml` unless given. */
  readonly file?: string;
  /** Text of the grower's own rule file, when the garden file names one. */
  readonly ownRules?: string;
}

/**
 * Text of a garden file -> plan of its season, or every problem of it with its place.
 * Throws RangeError when `today` is no day.
 *
 * @param tables from `loadTables`
 */
export function planGarden(text: string, tables: Tables, options: PlanGardenOptions): Result<Plan> {
  const { file = "garden.yaml", ownRules, today: todayText, ...rest } = options;
  const today = parseDay(todayText);
  if (today === undefined) throw new RangeError(`not a calendar day: ${todayText}`);
  const read = gardenOfText(text, file, tables);
  return read.ok ? planOfGarden(read.value, ownRules, tables, { ...rest, today }) : read;
}

export interface ReadGarden {
  readonly source: SourceFile;
  readonly garden: Garden;
}

/** Text -> valid garden, with its source for the places of later problems. */
export function gardenOfText(text: string, file: string, tables: Tables): Result<ReadGarden> {
  const source = readYaml(text, file);
  if (!source.ok) return source;
  const garden = validateGarden(source.value, tables);
  return garden.ok ? { ok: true, value: { source: source.value, garden: garden.value } } : garden;
}

/** Valid garden and the text of the grower's own rules, if any -> plan. */
export function planOfGarden(
  { source, garden }: ReadGarden,
  ownRules: string | undefined,
  tables: Tables,
  { normals, days, ...options }: GardenOptions,
): Result<Plan> {
  const rules = rulesFor(garden, ownRules, tables);
  if (!rules.ok) return rules;
  const { place, ...told } = placeOf(garden, given({ normals, days }), tables.climate);
  const plan = planSeason(
    garden,
    { ...tables, rules: rules.value },
    { ...options, ...given({ place }) },
  );
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
  ownRules: string | undefined,
  tables: Tables,
  told: Published,
  sources: PlaceSources,
): Published {
  const [first] = told.rounds;
  if (first === undefined) return told;
  const from = earlier(first.day, dayBefore(garden.season));
  const then = { source, garden: gardenOn(garden, from) };
  const plan = planOfGarden(then, ownRules, tables, {
    ...sources,
    today: from,
    published: told,
  });
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
