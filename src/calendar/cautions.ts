import type { CanMix } from "../season-plan.js";

// Common practice, no source, except where marked.
const drench = [
  "Shake the bottle, unless you pour off the clear part only. Measure, add to the full can, stir, use it the same day.",
  "Water dry soil first. Even watering matters more than feeding.",
];
const foliar = [
  "Shake the bottle, unless you pour off the clear part only. Measure, add to the full sprayer, shake again, use it the same day.",
  "Spray in the cool of the morning or evening when there is no wind and no rain is near; never in full sun, and not on open flowers.",
  "Keep the spray off eyes and skin.",
];
const produce = "Wash produce before you eat it.";
const always = [
  "Put no other feed in the same can.",
  "Keep the bottle labelled, away from food and children. Local rules, your certifier and a soil test come first.",
];

/** The cautions that matter on a day with these mixes, each a line. */
export function cautionsFor(mixes: readonly CanMix[]): string[] {
  const has = (route: CanMix["route"]) => mixes.some((mix) => mix.route === route);
  const eatenSoon = mixes.some(({ feedings }) =>
    feedings.some(({ stage }) => stage === "ripening" || stage === "harvest"),
  );
  return [
    ...(has("drench") ? drench : []),
    ...(has("foliar") ? foliar : []),
    ...(has("foliar") || eatenSoon ? [produce] : []),
    ...always,
  ];
}
