/** `feed_when: might-help`: the verdict decides which of the rules' feedings stay. */
// @ts-nocheck

import { earlier, later } from "../dates.js";
import type { Garden } from "../garden/index.js";
import type { FedSpan, RuleMatch } from "../rules/index.js";
import type { FedPlanting, FeedingVerdict, Verdicts } from "./verdicts.js";

/**
 * What feeds a planting when, as the garden's `feed_when` has it. A planting that asks for feed itself
 * (`feed: true`, a route, or both) is fed whatever the verdict: its grower has decided.
 *
 * @param words the verdict as a sentence
 */
export function feedWhen(
  { feedWhen: wish }: Pick<Garden, "feedWhen">,
  need: FedPlanting,
  verdicts: Verdicts,
  words: (verdict: FeedingVerdict) => string,
): RuleMatch {
  const { match, planting } = need;
  if (wish === "always" || match.spans.length === 0) return match;
  const feeding = (verdicts.get(planting.id) ?? []).filter(({ feeds }) => feeds);
  const told = [...new Set(feeding.map(words))].join(" ");
  if (planting.feed !== "by-rule")
    return { ...match, reason: `${match.reason} Fed because its \`feed:\` asks for it: ${told}` };
  const spans = match.spans.flatMap((span) => keptOf(span, need, feeding));
  return spans.length > 0
    ? { spans, reason: `${match.reason} ${told}` }
    : { spans, reason: `not fed, as \`feed_when: might-help\` asks: ${told}` };
}

/** The days of its stages in which the feed might help. */
function keptOf(
  span: FedSpan,
  { life }: FedPlanting,
  feeding: readonly FeedingVerdict[],
): FedSpan[] {
  const judgement = feeding.find(({ rule }) => rule === span.rule.id)?.judgement;
  if (judgement?.kind !== "might-help") return [];
  const inStages = life.spans.filter(({ stage }) => judgement.stages.includes(stage));
  const from = inStages[0] && later(span.from, inStages[0].from);
  const last = inStages.at(-1);
  const to = last && earlier(span.to, last.to);
  return from === undefined || to === undefined || to < from ? [] : [{ ...span, from, to }];
}
