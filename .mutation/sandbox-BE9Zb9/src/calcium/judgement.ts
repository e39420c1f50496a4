/**
 * Whether feeding by a rule can be expected to help, judged on what is known of soil and water before
 * anything is fed. The share of the need that the feed brings is no condition, nor is any ratio of
 * calcium to other nutrients: none is known to matter (Kopittke and Menzies, Soil Science Society of
 * America Journal 71(2):259, 2007).
 */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { Day } from "../dates.js";
import {
  type Extract,
  type Soil,
  type SoilKind,
  type SoilTest,
  type SourceWater,
  withoutDust,
} from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { given } from "../values.js";
import { type Range, scaled } from "./range.js";
import { extractOf } from "./soil.js";
import type { CalciumTables } from "./tables.js";
import { calciumInSource, isSoft } from "./water.js";

export type Judgement =
  /** Trials or extension found no effect, or advise against it. */
  | { readonly kind: "unlikely-whatever-the-soil"; readonly reason: string }
  | {
      readonly kind: "lime-first";
      readonly ph: number;
      /** What raises the pH has been given since the soil was tested. */
      readonly limedOn?: Day;
      /** Crops beside it in the bed that are never limed. */
      readonly besideSour?: readonly string[];
    }
  | ({ readonly kind: "unlikely-soil-has-enough"; readonly ph: number } & MuchCalcium)
  /** At the least as much as the planting takes up at the most, in a usual year. */
  | { readonly kind: "unlikely-water-covers-it"; readonly waterG: Range; readonly needG: Range }
  | {
      readonly kind: "might-help";
      readonly soil: SoilKind;
      readonly waterMgPerL: Range;
      /** Only in these. */
      readonly stages: readonly StageName[];
    }
  | {
      readonly kind: "cannot-tell";
      readonly why: CannotTell;
      /** The one fact that would decide it, of those that are not known. */
      readonly decidedBy?: DecidingFact;
    };

/** As much as the limit of the extract, or more. */
export interface MuchCalcium {
  readonly calciumPpm: number;
  readonly extract: Extract;
  /** As a report has it. */
  readonly extractName: string;
  readonly enoughPpm: number;
  /** Nobody read the limit in its source again. */
  readonly enoughIsFromMemory?: true;
}

export type CannotTell =
  | "spray-goes-past-the-soil"
  | "trials-disagree"
  | "cause-unclear"
  | "no-class-of-extract"
  | "ph-in-cacl2"
  | "ph-not-known"
  | "much-calcium-but-sour"
  | "dug-in-covers-it"
  | "no-trial"
  | "soil-not-known"
  | "soil-not-poor"
  | "water-not-known"
  | "water-not-soft";

/** What a grower can find out. */
export type DecidingFact =
  "water-hardness" | "ph-in-water" | "watering" | "soil-kind" | "soil-test";

/** What a verdict rests on; each part absent where it is not known. */
export interface CalciumFacts {
  /** Never limed. */
  readonly acidSoil: boolean;
  readonly soil: Soil;
  readonly water: SourceWater;
  readonly areaM2?: number;
  /** L on the planting in the season of a usual year. */
  readonly usualWaterL?: number;
  /** What the planting takes up in the season, g. */
  readonly needG?: Range;
  /** Of amendments that acts in this season, g; absent where it is not known. */
  readonly dugInG?: Range;
  readonly limedOn?: Day;
  readonly besideSour?: readonly string[];
}

type Tables = Pick<CalciumTables, "extracts" | "limits">;

/** In this order: what holds first is the verdict. Here `cannot-tell` names no deciding fact yet. */
export function judged(rule: FeedRule, facts: CalciumFacts, tables: Tables): Judgement {
  if (rule.evidence === "advised-against")
    return { kind: "unlikely-whatever-the-soil", reason: rule.reason };
  const { limits } = tables;
  const { limedOn, besideSour } = facts;
  const { test } = facts.soil;
  const ph = test?.phIn === "water" ? test.ph : undefined;
  if (ph !== undefined && ph <= limits.lime_first_ph.value && !facts.acidSoil)
    return { kind: "lime-first", ph, ...given({ limedOn, besideSour }) };
  if (rule.route === "foliar" && !isAmong(rule, limits.soil_decides.disorders))
    return { kind: "cannot-tell", why: "spray-goes-past-the-soil" };
  return (
    (test && soilHasEnough(test, ph, tables)) ??
    waterCoversIt(facts, tables) ??
    mightHelp(rule, facts, tables)
  );
}

function isAmong({ disorder }: FeedRule, disorders: readonly string[]): boolean {
  return disorders.some((one) => disorder.includes(one));
}

function soilHasEnough(
  test: SoilTest,
  ph: number | undefined,
  { extracts, limits }: Tables,
): Judgement | undefined {
  const much = muchIn(test, extracts);
  if (ph === undefined || ph < limits.enough_ph.value || much === undefined) return undefined;
  return { kind: "unlikely-soil-has-enough", ph, ...much };
}

/** Undefined where it is below the limit of its own extract, or where that has none. */
function muchIn(test: SoilTest, extracts: Tables["extracts"]): MuchCalcium | undefined {
  const row = extractOf(test, extracts);
  // A limit that was written in another unit is the limit still.
  const calciumPpm = withoutDust(test.calciumPpm ?? 0);
  if (row?.enough_ppm === undefined || calciumPpm < row.enough_ppm) return undefined;
  return {
    calciumPpm,
    extract: row.extract,
    extractName: row.name,
    enoughPpm: row.enough_ppm,
    ...(row.source_status === "from memory" ? { enoughIsFromMemory: true as const } : {}),
  };
}

function waterCoversIt(
  { usualWaterL, water, needG }: CalciumFacts,
  { limits }: Tables,
): Judgement | undefined {
  const mgPerL = calciumInSource(water, limits);
  if (usualWaterL === undefined || mgPerL === undefined || needG === undefined) return undefined;
  const waterG = scaled(mgPerL, usualWaterL / 1000);
  return waterG.low >= needG.high ? { kind: "unlikely-water-covers-it", waterG, needG } : undefined;
}

function mightHelp(rule: FeedRule, facts: CalciumFacts, tables: Tables): Judgement {
  const { limits } = tables;
  const { soil, water } = facts;
  const why = whyNotToTell(rule, facts, tables);
  const waterMgPerL = calciumInSource(water, limits);
  if (why !== undefined || soil.kind === undefined || waterMgPerL === undefined)
    return { kind: "cannot-tell", why: why ?? "water-not-known" };
  const stages = stagesInNeed(rule, tables);
  return { kind: "might-help", soil: soil.kind, waterMgPerL, stages };
}

function stagesInNeed({ stages }: FeedRule, { limits }: Tables): StageName[] {
  return stages.filter((stage) => limits.might_help.stages.includes(stage));
}

function whyNotToTell(
  rule: FeedRule,
  { soil: { kind, test }, water, dugInG, needG }: CalciumFacts,
  tables: Tables,
): CannotTell | undefined {
  const { limits, extracts } = tables;
  const { disorders, soils } = limits.might_help;
  const row = test && extractOf(test, extracts);
  if (row && row.enough_ppm === undefined) return "no-class-of-extract";
  if (test?.ph !== undefined && test.phIn === "cacl2") return "ph-in-cacl2";
  if (test && muchIn(test, extracts))
    return test.ph === undefined ? "ph-not-known" : "much-calcium-but-sour";
  if (rule.evidence === "disputed") return "trials-disagree";
  if (rule.evidence === "cause-unclear") return "cause-unclear";
  if (dugInG && needG && dugInG.low >= needG.high) return "dug-in-covers-it";
  if (!isAmong(rule, disorders) || stagesInNeed(rule, tables).length === 0) return "no-trial";
  if (kind === undefined) return "soil-not-known";
  if (!soils.includes(kind)) return "soil-not-poor";
  const soft = isSoft(water, limits);
  if (soft === undefined) return "water-not-known";
  return soft ? undefined : "water-not-soft";
}
