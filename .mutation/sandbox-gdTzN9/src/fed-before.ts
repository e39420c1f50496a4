/** What was fed stays fed, also when the garden file has stopped asking for it since. */
// @ts-nocheck

import { addDays, type Day, earlier, later } from "./dates.js";
import type { Garden } from "./garden/index.js";
import type { PlantingNeed } from "./planting-needs.js";
import type { Published } from "./published/index.js";
import { type FedSpan, type FeedRule, matchRules } from "./rules/index.js";

interface ToldBefore {
  readonly published: Published | undefined;
  /** What feeds a planting by the rules alone, by its id. */
  readonly byRule: ReadonlyMap<string, readonly FedSpan[]>;
}

/** By the rules until a planting's last feeding that is past; from then on as the file has it now. */
export function withFedBefore(
  garden: Pick<Garden, "log">,
  needs: readonly PlantingNeed[],
  { published, byRule }: ToldBefore,
  today: Day,
): PlantingNeed[] {
  return needs.map((need) => {
    const { id } = need.planting;
    const spans = byRule.get(id) ?? [];
    const last = lastFed(garden, need, published, today);
    if (last === undefined || sameSpans(spans, need.match.spans)) return need;
    const kept = [
      ...spans.map((span) => ({ ...span, to: earlier(span.to, last) })),
      ...need.match.spans.map((span) => ({ ...span, from: later(span.from, addDays(last, 1)) })),
    ].filter(({ from, to }) => from <= to);
    const rules = [...new Set(kept.map(({ rule }) => rule))];
    const key = need.planting.feed === "no" ? "feed" : "feed_when";
    const stopped = kept.every(({ to }) => to <= last) ? ({ stoppedBy: key } as const) : {};
    return { ...need, match: { ...need.match, spans: kept }, rules, ...stopped };
  });
}

/** What would feed it, had its grower not said `feed: false`. */
export function spansByRule(need: PlantingNeed, rules: readonly FeedRule[]): readonly FedSpan[] {
  const { planting, crop, life, match } = need;
  if (planting.feed !== "no" || crop === undefined) return match.spans;
  return matchRules({ ...planting, feed: "by-rule" }, crop, life, rules).spans;
}

function lastFed(
  { log }: Pick<Garden, "log">,
  { planting }: PlantingNeed,
  published: Published | undefined,
  today: Day,
): Day | undefined {
  const told = (published?.rounds ?? [])
    .filter(({ mixes }) =>
      mixes.some(({ fed }) => fed.some((feeding) => feeding.planting === planting.id)),
    )
    .map(({ day }) => day);
  const logged = log
    .filter((entry) => entry.missed !== true && entry.planting === planting.id)
    .map(({ on }) => on);
  return [...told, ...logged]
    .filter((day) => day < today)
    .sort()
    .at(-1);
}

function sameSpans(some: readonly FedSpan[], others: readonly FedSpan[]): boolean {
  return (
    some.length === others.length &&
    some.every((span, i) => span.from === others[i]?.from && span.to === others[i].to)
  );
}
