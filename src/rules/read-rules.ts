/** Rule files -> feed rules: the built-in ones, and the grower's own in the same form. */
import {
  type CropCatalogue,
  cropSuggestion,
  findCrop,
  type Habit,
  type StageName,
  stageNames,
} from "../crops/index.js";
import {
  absurdSize,
  type Bounds,
  located,
  type Parsed,
  parseQuantity,
  parseRate,
  parseTemperature,
  rateBounds,
  type SourceFile,
  type UnitContext,
} from "../garden/index.js";
import { type FilePath, type Finding, inFileOrder, type Result } from "../problem.js";
import type { SchemaCheck } from "../schema-check.js";
import { didYouMean } from "../suggest.js";
import { given } from "../values.js";
import type { Evidence, FeedRule } from "./rule.js";

/** A rule as `schemas/rules.schema.json` has it. */
interface RuleRow {
  readonly id: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly stages: readonly string[];
  readonly route?: FeedRule["route"];
  readonly disorder?: string;
  readonly rate: string;
  readonly calcium?: string;
  readonly interval: {
    readonly shortest: string;
    readonly target: string;
    readonly longest: string;
  };
  readonly first_within?: string;
  readonly highest_rate?: string;
  readonly stop_before_harvest?: string;
  readonly stop_before_last_pick?: string;
  readonly highest_temperature?: string;
  readonly feedings?: number;
  readonly habit?: Habit;
  readonly limits_reason?: string;
  readonly evidence?: Evidence;
  readonly by_default?: boolean;
  readonly reason?: string;
  readonly source?: string;
}

export interface RuleTables {
  /** Check against `schemas/rules.schema.json`. */
  readonly rulesCheck: SchemaCheck;
  readonly catalogue: CropCatalogue;
  /** Calcium in the stock for which rates are written, g/L. */
  readonly referenceStockGPerL: number;
}

/**
 * A rule file's values -> rules. All problems come with their place in the file.
 *
 * @param own of the grower: the built-in ones may say more
 */
export function readRules(
  source: SourceFile,
  tables: RuleTables,
  context: UnitContext,
  own: boolean,
): Result<FeedRule[]> {
  const findings = tables.rulesCheck(source.value);
  const fail = (): Result<FeedRule[]> => ({
    ok: false,
    problems: inFileOrder(findings.map((f) => located(f, source))),
  });
  if (findings.length > 0) return fail();
  const rows = (source.value as { rules: readonly RuleRow[] }).rules;
  const ids = new Set<string>();
  const rules = rows.map((row, i) => {
    const path: FilePath = ["rules", i];
    if (ids.has(row.id))
      findings.push({
        code: "duplicate-id",
        path: [...path, "id"],
        message: `the rule id \`${row.id}\` is used twice`,
        mend: "give each rule an id of its own",
      });
    ids.add(row.id);
    return ruleOf(row, path, tables, context, own, (finding) => findings.push(finding));
  });
  return findings.length > 0 ? fail() : { ok: true, value: rules };
}

type Refuse = (key: FilePath, message: string, mend: string) => void;

/** Amounts of a rule; what is refused has a stand-in. */
function amountReaders(context: UnitContext, refuse: Refuse) {
  const accept = (parsed: Parsed<number>, standIn: number, key: FilePath): number => {
    if (parsed.ok) return parsed.value;
    refuse(key, parsed.message, parsed.mend);
    return standIn;
  };
  const inBounds = (value: number, text: string, bounds: Bounds, key: FilePath): number => {
    const absurd = absurdSize(text, value, bounds);
    if (absurd !== undefined) refuse(key, absurd.message, absurd.mend);
    return value;
  };
  return {
    rate: (text: string, ...key: string[]) =>
      inBounds(accept(parseRate(text, context), rateBounds.least, key), text, rateBounds, key),
    /** No bound finds fault with the stand-in. */
    days: (text: string, ...key: string[]) => {
      const days = accept(parseQuantity(text, "time", context), NaN, key);
      return Math.round(inBounds(days, text, key[0] === "interval" ? gapBounds : dayBounds, key));
    },
    calcium: (text: string, standIn: number) =>
      accept(parseQuantity(text, "concentration", context), standIn, ["calcium"]),
    temperatureC: (text: string, key: string) =>
      inBounds(accept(parseTemperature(text), NaN, [key]), text, sprayBounds, [key]),
  };
}

function ruleOf(
  row: RuleRow,
  path: FilePath,
  tables: RuleTables,
  context: UnitContext,
  own: boolean,
  report: (finding: Finding) => void,
): FeedRule {
  const refuse: Refuse = (key, message, mend) => {
    report({ code: "rule", path: [...path, ...key], message, mend });
  };
  const { rate, days, calcium, temperatureC } = amountReaders(context, refuse);
  const crops = cropsOf(row, tables.catalogue, refuse);
  const rateMlPerL = rate(row.rate, "rate");
  const interval = {
    shortestDays: days(row.interval.shortest, "interval", "shortest"),
    targetDays: days(row.interval.target, "interval", "target"),
    longestDays: days(row.interval.longest, "interval", "longest"),
  };
  const { shortestDays, targetDays, longestDays } = interval;
  if (shortestDays > targetDays || targetDays > longestDays)
    refuse(
      ["interval"],
      `the interval is not in order: ${row.interval.shortest}, ${row.interval.target}, ${row.interval.longest}`,
      "let the shortest be no more than the target, and the target no more than the longest",
    );
  const highestRateMlPerL =
    row.highest_rate === undefined ? 2 * rateMlPerL : rate(row.highest_rate, "highest_rate");
  if (highestRateMlPerL < rateMlPerL)
    refuse(
      row.highest_rate === undefined ? ["rate"] : ["highest_rate"],
      "the highest rate is below the rate",
      "raise it or lower the rate",
    );
  const reckonedMgPerL = rateMlPerL * tables.referenceStockGPerL;
  const calciumMgPerL =
    row.calcium === undefined ? reckonedMgPerL : calcium(row.calcium, reckonedMgPerL);
  if (Math.abs(calciumMgPerL - reckonedMgPerL) > 0.01 * reckonedMgPerL)
    refuse(
      ["calcium"],
      `the rate brings ${Math.round(reckonedMgPerL)} mg/L at ${tables.referenceStockGPerL} g of calcium per litre of stock, not ${Math.round(calciumMgPerL)}`,
      "leave `calcium` out, or mend one of the two",
    );
  if (row.highest_temperature !== undefined && row.route !== "foliar")
    refuse(
      ["highest_temperature"],
      "a drench has no highest temperature",
      "leave it out, or write `route: foliar` for a spray",
    );
  const disorder = tables.catalogue.crops.find((crop) => crop.key === crops[0])?.disorder;
  return {
    id: row.id,
    crops,
    groups: row.groups ?? [],
    stages: row.stages.filter((s): s is StageName => stageNames.includes(s as StageName)),
    route: row.route ?? "drench",
    disorder: row.disorder ?? disorder ?? "a lack of calcium",
    rateMlPerL,
    calciumMgPerL: reckonedMgPerL,
    interval,
    firstWithinDays:
      row.first_within === undefined ? targetDays : days(row.first_within, "first_within"),
    highestRateMlPerL,
    limitsReason: row.limits_reason ?? "the rule sets this limit",
    stopBeforeHarvestDays:
      row.stop_before_harvest === undefined
        ? 0
        : days(row.stop_before_harvest, "stop_before_harvest"),
    stopBeforeLastPickDays:
      row.stop_before_last_pick === undefined
        ? 0
        : days(row.stop_before_last_pick, "stop_before_last_pick"),
    ...given({
      feedings: row.feedings,
      habit: habitOf(row, crops, tables.catalogue, refuse),
      highestTemperatureC:
        row.highest_temperature === undefined
          ? undefined
          : temperatureC(row.highest_temperature, "highest_temperature"),
    }),
    evidence: row.evidence ?? "common-practice",
    byDefault: row.by_default ?? true,
    reason: row.reason ?? "the grower's own rule",
    source: row.source ?? "the grower's own rule",
    own,
  };
}

const gapBounds: Bounds = { least: 1, most: 120, words: "1 to 120 days" };
/** Air in which leaves are sprayed at all. */
const sprayBounds: Bounds = { least: 5, most: 45, words: "5 to 45 C" };
const dayBounds: Bounds = { least: 0, most: 366, words: "0 to 366 days" };

function cropsOf(row: RuleRow, catalogue: CropCatalogue, refuse: Refuse): string[] {
  const groups = new Set(catalogue.crops.map((crop) => crop.group));
  for (const [i, group] of (row.groups ?? []).entries())
    if (!groups.has(group))
      refuse(
        ["groups", i],
        `the crop group \`${group}\` is not known`,
        didYouMean(group, groups, `the groups are ${[...groups].join(", ")}`),
      );
  if (row.crops === undefined && row.groups === undefined)
    refuse([], "the rule names no crop", "add `crops: [tomato]` or `groups: [solanaceous]`");
  return (row.crops ?? []).map((word, i) => {
    const crop = findCrop(word, catalogue);
    if (crop === undefined)
      refuse(["crops", i], `the crop \`${word}\` is not known`, cropSuggestion(word, catalogue));
    return crop?.key ?? word;
  });
}

function habitOf(
  { habit, groups = [] }: RuleRow,
  crops: readonly string[],
  catalogue: CropCatalogue,
  refuse: Refuse,
): Habit | undefined {
  const withHabit = catalogue.crops.filter(({ usualHabit }) => usualHabit !== undefined);
  const isOf = withHabit.some(({ key, group }) => crops.includes(key) || groups.includes(group));
  if (habit !== undefined && !isOf)
    refuse(
      ["habit"],
      `no crop of this rule grows both as a bush and as a cordon`,
      `leave \`habit\` out; it is for ${withHabit.map(({ name }) => name).join(", ")}`,
    );
  return habit;
}

/** The grower's rules stand before the built-in ones and take the place of those with their id. */
export function mergeRules(builtIn: readonly FeedRule[], own: readonly FeedRule[]): FeedRule[] {
  const ownIds = new Set(own.map((rule) => rule.id));
  return [...own, ...builtIn.filter((rule) => !ownIds.has(rule.id))];
}
