// @ts-nocheck
import type { PlantingCalcium } from "../calcium/index.js";
import type { Day } from "../dates.js";
import {
  type Amounts,
  calciumIn,
  decimal,
  rateMeasures,
  rateText,
  shortDate,
  shortDay,
} from "../garden/index.js";
import type { FeedingReason, PlantingReasons } from "../notes/index.js";
import type { Plan } from "../season/index.js";
import type { StageSpan } from "../stages/index.js";
import { batchName } from "../stock/index.js";
import { grouped } from "../values.js";
import {
  calciumAndCan,
  fedFromTo,
  heatLimit,
  stageWords,
  stockInShort,
  sumInFull,
  warmthSources,
  warmthWords,
  whiteComesThrough,
  whyFedSo,
} from "../words/index.js";
import { bullet, type Rows, table, type TextStyle } from "./terminal-text.js";

export function reasonsText(
  reasons: readonly PlantingReasons[],
  plan: Plan,
  on: Day | undefined,
  style: TextStyle,
): string {
  if (reasons.length === 0)
    return `Nothing is fed on ${shortDay(on ?? plan.garden.season.from, plan.garden.amounts, plan.today)}.\n`;
  return reasons.map((r) => plantingText(r, on, plan, style)).join("\n\n") + "\n";
}

function plantingText(
  { planting, calcium, feedings }: PlantingReasons,
  on: Day | undefined,
  { garden: { amounts }, today }: Plan,
  style: TextStyle,
): string {
  const { id, name, bedName, feeding } = planting;
  const title = style.heading(`${id}${name === id ? "" : `: ${name}`} in ${bedName}`);
  const fedSo = feeding && inset(`${fedFromTo(feeding, amounts)} ${whyFedSo(feeding)}`, style);
  // A day is asked about its feedings; the sum is of a season.
  const sum = calcium && on === undefined ? [calciumText(calcium, amounts, style)] : [];
  if (feedings.length > 0) {
    const shared = sharedCalcium(feedings, amounts);
    return [
      ...[title, fedSo ?? []].flat(),
      ...rulesText(feedings, shared, amounts, style),
      stagesText([...new Set(feedings.map(({ stage }) => stage))], amounts, style),
      ...feedings.map((f) => feedingText(f, shared, amounts, today, style)),
      ...sum,
    ].join("\n");
  }
  const none = planting.fed
    ? `  not fed ${on === undefined ? "in this season" : `on ${shortDay(on, amounts, today)}`}`
    : [];
  const stages = stagesText(planting.stages, amounts, style);
  return [title, inset(planting.reason, style), fedSo ?? [], none, stages, ...sum]
    .flat()
    .filter((part) => part !== "")
    .join("\n");
}

function inset(text: string, { width }: TextStyle): string {
  return bullet(text, width, "  ");
}

function calciumText(sum: PlantingCalcium, amounts: Amounts, style: TextStyle): string {
  return tabledWithin("Where its calcium comes from in the season", sumInFull(sum, amounts), style);
}

function tabledWithin(title: string, rows: Rows, style: TextStyle): string {
  return `${style.heading(`  ${title}`)}\n${table(rows, "    ", style.width)}`;
}

/** Days, and where each comes from; the sources of what warmth says below them, each once. */
function stagesText(stages: readonly StageSpan[], amounts: Amounts, style: TextStyle): string {
  if (stages.length === 0) return "";
  const origins = stages.map((stage) => originWords(stage, amounts));
  const rows = stages.map((stage, i) => [
    `${stageWords(stage.stage)} (BBCH ${stage.bbch})`,
    `${shortDate(stage.from, amounts)} to ${shortDate(stage.to, amounts)}`,
    origins[i] === origins[i - 1] ? "as above" : (origins[i] ?? ""),
  ]);
  const sources = warmthSources(stages).map((source) =>
    bullet(`warmth: ${source}`, style.width, "    "),
  );
  return [tabledWithin("Stages", rows, style), ...sources].join("\n");
}

function originWords(stage: StageSpan, amounts: Amounts): string {
  return [stage.origin, warmthWords(stage, amounts) ?? []]
    .flat()
    .join(stage.warmth?.isFollowed ? ": " : "; ");
}

/** What holds for all feedings by a rule. */
function rulesText(
  feedings: readonly FeedingReason[],
  shared: string | undefined,
  amounts: Amounts,
  style: TextStyle,
): string[] {
  return [...grouped(feedings, ({ rule }) => rule.id).values()].map((those) => {
    const [{ rule }] = those;
    const { shortestDays, targetDays, longestDays } = rule.interval;
    const heat = heatLimit(rule, amounts);
    const whites = [...new Set(those.flatMap((one) => one.whites.map(whiteComesThrough)))];
    const rows = [
      ["against", `${rule.disorder}, ${rule.route}; ${rule.evidence.replaceAll("-", " ")}`],
      ...(heat === undefined ? [] : [["heat", heat]]),
      ["reason", rule.reason],
      ["source", rule.source],
      [
        "interval",
        `${shortestDays} to ${longestDays} days, best ${targetDays}; the first within ${rule.firstWithinDays} days of the stage`,
      ],
      ...whites.map((line) => ["strength", line]),
      ...(shared === undefined ? [] : [["calcium", shared]]),
    ];
    return tabledWithin(`Rule ${rule.id}`, rows, style);
  });
}

/** What the cans carry, where all feedings of it are alike. */
function sharedCalcium(feedings: readonly FeedingReason[], amounts: Amounts): string | undefined {
  const [first, ...others] = new Set(feedings.map(({ mix }) => calciumAndCan(mix, amounts)));
  return feedings.length > 1 && others.length === 0 ? first : undefined;
}

function feedingText(
  r: FeedingReason,
  shared: string | undefined,
  amounts: Amounts,
  today: Day,
  style: TextStyle,
): string {
  const { feeding, stage } = r;
  const window = `${shortDate(feeding.window.earliest, amounts)} to ${shortDate(feeding.window.latest, amounts)}`;
  const gap =
    r.gapDays === undefined ? "the first feeding" : `${r.gapDays} days after the feeding before`;
  const rows = [
    ["stage", stageWords(stage.stage)],
    ["interval", gap],
    ["window", feeding.inWindow ? window : `${window}: no allowed day in it, so late`],
    ...arithmetic(r, amounts).map((line, i) => [i === 0 ? "amount" : "", line]),
    ...(shared === undefined ? [["calcium", calciumAndCan(r.mix, amounts)]] : []),
  ];
  return tabledWithin(shortDay(r.day, amounts, today), rows, style);
}

/** Where the rate comes from: the rule's calcium and the bottle's strength, or the grower's own mL. */
function rateLines({ feeding, mix, rule }: FeedingReason, amounts: Amounts): string[] {
  const { targetMgPerL, level } = feeding;
  const times = level === 1 ? "" : ` x level ${decimal(level, 2)}`;
  if (targetMgPerL === undefined)
    return [`${rateText(feeding.baseRateMlPerL, amounts)}${times}, fixed in the garden file`];
  const { water, stock } = rateMeasures[amounts];
  const rate = rateText(mix.rateMlPerL, amounts);
  const strengthGPerL = mix.calciumMgPerL / mix.rateMlPerL;
  const batches = (mix.pours ?? []).map((pour) => batchName(pour.batch));
  const bottles =
    batches.length > 1
      ? `${batches.join(" and ")} together hold`
      : `${batches[0] ?? "a new batch"} holds`;
  const wantedMlPerL = targetMgPerL / strengthGPerL;
  const isCapped = wantedMlPerL > mix.rateMlPerL * 1.001;
  const mg = (mgPerL: number): string => decimal(calciumIn(amounts, mgPerL), 1);
  const target = mg(targetMgPerL);
  // g/L of stock is mg per mL of it.
  const holds = decimal(strengthGPerL * rateMeasures[amounts].stockMl, 2);
  return [
    `target ${mg(rule.calciumMgPerL)} mg of calcium per ${water}${times}${level === 1 ? "" : ` = ${target} mg per ${water}`}`,
    `${bottles} ${holds} mg of calcium per ${stock}`,
    isCapped
      ? `${target} / ${holds} = ${rateText(wantedMlPerL, amounts)}, kept to the rule's highest rate, ${rate}`
      : `${target} / ${holds} = ${rate}`,
  ];
}

/** From calcium to what is measured out, one step a line. */
function arithmetic(reason: FeedingReason, amounts: Amounts): string[] {
  const { feeding, mix } = reason;
  const { stock, stockMl, water: unit, waterL } = rateMeasures[amounts];
  const ml = (value: number): string => `${decimal(value / stockMl, 2)} ${stock}`;
  const liters = (value: number): string => `${decimal(value / waterL, 2)} ${unit}`;
  const rate = rateText(mix.rateMlPerL, amounts);
  const others = mix.feedings.length - 1;
  const water =
    others === 0
      ? `${liters(mix.waterL)} of water`
      : `${liters(feeding.waterL)} of water, ${liters(mix.waterL)} with ${others} other planting${others === 1 ? "" : "s"} in the same cans`;
  if (mix.given)
    return [
      `${mix.asPublished ? "taken as given, as published" : "given, as the log holds it"}: ${ml(mix.stockMl)} of stock`,
      water,
      `${ml(mix.stockMl)} / ${liters(mix.waterL)} = ${rate}`,
    ];
  return [
    ...rateLines(reason, amounts),
    water,
    `${rate} x ${liters(mix.waterL)} = ${ml(mix.exactStockMl)} of stock`,
    ...mix.fills.map(
      (fill) =>
        `${fill.count} x ${fill.waterText}: ${rate} x ${liters(fill.waterL)} = ${ml(mix.rateMlPerL * fill.waterL)}, measured as ${stockInShort(fill)}`,
    ),
    `in all ${ml(mix.stockMl)}, ${decimal(Math.abs(mix.stockMl / mix.exactStockMl - 1) * 100, 1)} % off the exact figure`,
  ];
}
