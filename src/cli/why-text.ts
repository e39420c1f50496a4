import type { PlantingCalcium } from "../calcium/index.js";
import type { Day } from "../dates.js";
import {
  type Amounts,
  calciumIn,
  dayText,
  decimal,
  rateMeasures,
  rateText,
} from "../garden/index.js";
import type { FeedingReason, PlantingReasons } from "../notes/index.js";
import type { Plan } from "../season/index.js";
import type { StageSpan } from "../stages/index.js";
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
import { table, type TextStyle, wrap } from "./terminal-text.js";

export function reasonsText(
  reasons: readonly PlantingReasons[],
  plan: Plan,
  on: Day | undefined,
  style: TextStyle,
): string {
  if (reasons.length === 0)
    return `Nothing is fed on ${dayText(on ?? plan.garden.season.from, plan.garden.amounts)}.\n`;
  return reasons.map((r) => plantingText(r, on, plan.garden.amounts, style)).join("\n\n") + "\n";
}

function plantingText(
  { planting, calcium, feedings }: PlantingReasons,
  on: Day | undefined,
  amounts: Amounts,
  style: TextStyle,
): string {
  const title = style.heading(`${planting.id}: ${planting.name} in ${planting.bedName}`);
  const { feeding } = planting;
  const inset = (text: string): string =>
    wrap(text, style.width - 2)
      .map((line) => `  ${line}`)
      .join("\n");
  const reason = inset(planting.reason);
  const span =
    feeding === undefined ? [] : [inset(`${fedFromTo(feeding, amounts)} ${whyFedSo(feeding)}`)];
  // A day is asked about its feedings; the sum is of a season.
  const sum = calcium && on === undefined ? [calciumText(calcium, amounts, style)] : [];
  if (feedings.length > 0)
    return [title, ...span, ...feedings.map((f) => feedingText(f, amounts, style)), ...sum].join(
      "\n",
    );
  const none = planting.fed
    ? `  not fed ${on === undefined ? "in this season" : `on ${dayText(on, amounts)}`}`
    : "";
  const stages = table(
    planting.stages.map((s) => [
      stageWords(s.stage),
      `${s.from} to ${s.to}`,
      originWords(s, amounts),
    ]),
    "  ",
    style.width,
  );
  const sources = warmthSources(planting.stages).flatMap((source) =>
    wrap(`warmth: ${source}`, style.width - 2).map((line) => `  ${line}`),
  );
  return [title, reason, none, stages, ...sources, ...sum].filter(Boolean).join("\n");
}

function calciumText(sum: PlantingCalcium, amounts: Amounts, style: TextStyle): string {
  const title = style.heading("  Where its calcium comes from in the season");
  return `${title}\n${table(sumInFull(sum, amounts), "    ", style.width)}`;
}

function originWords(stage: StageSpan, amounts: Amounts): string {
  return [stage.origin, warmthWords(stage, amounts) ?? []]
    .flat()
    .join(stage.warmth?.isFollowed ? ": " : "; ");
}

function feedingText(r: FeedingReason, amounts: Amounts, style: TextStyle): string {
  const { rule, feeding, stage } = r;
  const { shortestDays, targetDays, longestDays } = rule.interval;
  const window = `${feeding.window.earliest} to ${feeding.window.latest}`;
  const gap =
    r.gapDays === undefined
      ? `the first feeding, within ${rule.firstWithinDays} days of the stage`
      : `${r.gapDays} days after the feeding before`;
  const heat = heatLimit(rule, amounts);
  const rows = [
    ["stage", `${stageWords(stage.stage)} (BBCH ${stage.bbch}), ${stage.from} to ${stage.to}`],
    ["stage from", originWords(stage, amounts)],
    ...warmthSources([stage]).map((source) => ["", source]),
    [
      "rule",
      `${rule.id}, against ${rule.disorder}, ${rule.route}; ${rule.evidence.replaceAll("-", " ")}`,
    ],
    ...(heat === undefined ? [] : [["heat", heat]]),
    ["reason", rule.reason],
    ["source", rule.source],
    [
      "interval",
      `${gap}; the rule wants ${shortestDays} to ${longestDays} days, best ${targetDays}`,
    ],
    ["window", feeding.inWindow ? window : `${window}: no allowed day in it, so late`],
    ...arithmetic(r, amounts).map((line, i) => [i === 0 ? "amount" : "", line]),
    ["calcium", calciumAndCan(r.mix, amounts)],
  ];
  return `${style.heading(`  ${dayText(r.day, amounts)}`)}\n${table(rows, "    ", style.width)}`;
}

/** Where the rate comes from: the rule's calcium and the bottle's strength, or the grower's own mL. */
function rateLines({ feeding, mix, rule, whites }: FeedingReason, amounts: Amounts): string[] {
  const { targetMgPerL, level } = feeding;
  const times = level === 1 ? "" : ` x level ${decimal(level, 2)}`;
  if (targetMgPerL === undefined)
    return [`${rateText(feeding.baseRateMlPerL, amounts)}${times}, fixed in the garden file`];
  const { water, stock } = rateMeasures[amounts];
  const rate = rateText(mix.rateMlPerL, amounts);
  const strengthGPerL = mix.calciumMgPerL / mix.rateMlPerL;
  const batches = (mix.pours ?? []).map((pour) => pour.batch);
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
    ...whites.map(whiteComesThrough),
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
