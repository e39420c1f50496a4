/** Which rule feeds a planting in which of its stages. */
import type { Crop } from "../crops/index.js";
import { addDays, type Day, daysBetween, type DaySpan, earlier, later } from "../dates.js";
import {
  type Amounts,
  type Planting,
  type Route,
  routes,
  shortDate,
  vesselOf,
} from "../garden/index.js";
import type { LastDay, StageSpan } from "../stages/index.js";
import type { FeedRule } from "./rule.js";

/** One route of feeding over time: spans in order, each under one rule; a hole begins a new course. */
export interface FedSpan extends DaySpan {
  readonly route: Route;
  readonly rule: FeedRule;
}

export interface RuleMatch {
  readonly spans: readonly FedSpan[];
  /** Why it is fed, or why not, in words for the grower. */
  readonly reason: string;
}

export interface LifeToFeed {
  readonly spans: readonly StageSpan[];
  readonly harvestFrom: Day;
  /** Its last day in the bed; the end of its spans where absent. */
  readonly last?: LastDay;
}

/** The most specific rule wins, the grower's own before a built-in one, then the order of the table. */
export function matchRules(
  planting: Planting,
  crop: Crop,
  life: LifeToFeed,
  rules: readonly FeedRule[],
  amounts: Amounts = "metric",
): RuleMatch {
  const habit = planting.habit ?? crop.usualHabit;
  const candidates = rules.filter(
    (rule) => specificity(rule, crop) > 0 && (rule.habit === undefined || rule.habit === habit),
  );
  if (planting.feed === "no")
    return { spans: [], reason: "not fed, as the garden file says (`feed: false`)" };
  if (candidates.length === 0) {
    const asked =
      planting.feed === "by-rule"
        ? ""
        : `\`feed:\` asks for it, but no rule feeds ${crop.name}: write one of your own (\`rules:\`). `;
    return { spans: [], reason: `${asked}${crop.reason}` };
  }
  const best = candidates.reduce((a, b) => (rank(b) < rank(a) ? b : a));
  const active = candidates.filter((rule) => isAsked(rule, planting, best));
  const asked = routes.find((route) => route === planting.feed);
  if (active.length === 0 && asked !== undefined)
    return {
      spans: [],
      reason: `not fed: no rule gives ${crop.name} a ${asked} feed, only a ${best.route} one`,
    };
  if (active.length === 0)
    return {
      spans: [],
      reason: `not fed unless asked for (\`feed: true\`), as ${evidenceWords[best.evidence]}: ${best.reason}`,
    };
  const spans = routes.flatMap((route) => fedSpans(planting, crop, life, active, route));
  const fedBy = [...new Set(spans.map((span) => span.rule))];
  if (fedBy.length === 0) return { spans, reason: whyNever(planting, life, best, amounts) };
  return {
    spans: joined(spans),
    reason: fedBy.map((rule) => `against ${rule.disorder}: ${rule.reason}`).join(" "),
  };
}

function whyNever(
  { transplanted }: Planting,
  life: LifeToFeed,
  rule: FeedRule,
  amounts: Amounts,
): string {
  const inStage = life.spans.some(
    ({ stage, to }) => rule.stages.includes(stage) && (transplanted ?? to) <= to,
  );
  if (!inStage) return `not fed: it is not in a stage that is fed (${rule.stages.join(", ")})`;
  const { stopBeforeHarvestDays: harvestDays } = rule;
  const pickDays = stopBeforePickDays(rule, life);
  return pickDays > harvestDays
    ? `not fed: its last day is ${shortDate(lastPick(life), amounts)}, and a feeding in the ${pickDays} days before it helps no fruit that is still picked`
    : `not fed: harvest begins on ${shortDate(life.harvestFrom, amounts)}, and nothing is given in the ${harvestDays} days before it`;
}

/** Of one route, each stage by itself. */
function fedSpans(
  planting: Planting,
  crop: Crop,
  life: LifeToFeed,
  active: readonly FeedRule[],
  route: Route,
): FedSpan[] {
  let before: FeedRule | undefined;
  return life.spans.flatMap((span): FedSpan[] => {
    const own = winner(active, route, span, crop);
    // Through the harvest, the rule that has begun goes on where none is for the stage.
    const isHeldThrough = span.stage !== "after-harvest" && !wetsFlowers(route, span);
    const rule = own ?? (planting.through && isHeldThrough ? before : undefined);
    before = rule ?? before;
    if (rule === undefined) return [];
    if (own === undefined && rule.stopBeforeHarvestDays > 0 && span.from >= life.harvestFrom)
      return [];
    // Young plants in their trays are not in the bed yet.
    const from = later(span.from, planting.transplanted ?? span.from);
    const to = stopDay(span, rule, life, planting.through !== undefined);
    return to < from ? [] : [{ route, rule, from, to }];
  });
}

/** Where no rule says so itself, open flowers are never sprayed: common practice, no source. */
function wetsFlowers(route: Route, { stage }: StageSpan): boolean {
  return vesselOf(route) === "sprayer" && stage === "flowering";
}

/** The best evidence first. */
const evidenceWords: Record<FeedRule["evidence"], string> = {
  published: "published work supports it only in some cases",
  "common-practice": "it is a practice without trials",
  "cause-unclear": "what looks like the disorder may be another",
  disputed: "published work disagrees on whether it helps",
  "advised-against": "published work found no effect or advises against it",
};

/** 2 for the crop by name, 1 for its group, 0 for none. */
function specificity(rule: FeedRule, crop: Crop): number {
  return rule.crops.includes(crop.key) ? 2 : rule.groups.includes(crop.group) ? 1 : 0;
}

/** Rules apply by default, or because the grower asks for their route, or for any feed at all. */
function isAsked(rule: FeedRule, planting: Planting, best: FeedRule): boolean {
  switch (planting.feed) {
    case "no":
      return false;
    case "by-rule":
      return rule.byDefault;
    case "drench":
    case "foliar":
      return rule.route === planting.feed;
    case "both":
      return true;
    case "yes":
      return best.byDefault ? rule.byDefault : rule.route === best.route;
  }
}

function rank(rule: FeedRule): number {
  return Object.keys(evidenceWords).indexOf(rule.evidence) + (rule.byDefault ? 0 : 10);
}

function winner(
  rules: readonly FeedRule[],
  route: Route,
  span: StageSpan,
  crop: Crop,
): FeedRule | undefined {
  const fitting = rules.filter((rule) => rule.route === route && rule.stages.includes(span.stage));
  const weight = (rule: FeedRule): number =>
    specificity(rule, crop) + (rule.habit === undefined ? 0 : 0.5) + (rule.own ? 10 : 0);
  return fitting.reduce<FeedRule | undefined>(
    (best, rule) => (best === undefined || weight(rule) > weight(best) ? rule : best),
    undefined,
  );
}

/** The last day of a span that the rule's stops leave: before harvest always, before the last pick as a rule. */
function stopDay(span: StageSpan, rule: FeedRule, life: LifeToFeed, isThrough: boolean): Day {
  const { stopBeforeHarvestDays } = rule;
  const pickDays = stopBeforePickDays(rule, life);
  const stops = [
    ...(stopBeforeHarvestDays === 0 || span.from >= life.harvestFrom
      ? []
      : [addDays(life.harvestFrom, -stopBeforeHarvestDays - 1)]),
    ...(pickDays === 0 || isThrough ? [] : [addDays(lastPick(life), -pickDays - 1)]),
  ];
  return stops.reduce(earlier, span.to);
}

/** The last day on which the rule may feed at all, in whatever stage. */
export function feedableTo(rule: FeedRule, life: LifeToFeed): Day {
  const { stages, stopBeforeHarvestDays } = rule;
  const pickDays = stopBeforePickDays(rule, life);
  const stopsForPick = pickDays === 0 ? 0 : pickDays + 1;
  const last = addDays(lastPick(life), -stopsForPick);
  return stopBeforeHarvestDays === 0 || stages.includes("harvest")
    ? last
    : earlier(last, addDays(life.harvestFrom, -stopBeforeHarvestDays - 1));
}

/** What is taken out was to be picked for longer: nobody stopped feeding it for that. */
function stopBeforePickDays({ stopBeforeLastPickDays }: FeedRule, { last }: LifeToFeed): number {
  return last?.by === "removed" ? 0 : stopBeforeLastPickDays;
}

function lastPick({ spans, harvestFrom, last }: LifeToFeed): Day {
  return last?.day ?? spans.findLast(({ stage }) => stage === "harvest")?.to ?? harvestFrom;
}

/** Neighbouring spans under one rule are one span. */
function joined(spans: readonly FedSpan[]): FedSpan[] {
  const result: FedSpan[] = [];
  for (const span of spans) {
    const last = result.at(-1);
    if (
      last?.rule === span.rule &&
      last.route === span.route &&
      daysBetween(last.to, span.from) === 1
    )
      result[result.length - 1] = { ...last, to: span.to };
    else result.push(span);
  }
  return result;
}
