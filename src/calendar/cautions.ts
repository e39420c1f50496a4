import type { CanMix, SeasonStock } from "../season-plan.js";

export type PourStyle = SeasonStock["pour"];

// Common practice, no source.
const bottle = {
  shaken: "Shake the bottle.",
  clear: "Do not shake the bottle: pour off the clear part only.",
  unknown: "Shake the bottle, unless you pour off the clear part only.",
};
const intoCan = "Measure, add to the full can, stir, use it the same day.";
const intoSprayer = "Measure, add to the full sprayer, shake again, use it the same day.";
const evenWater = "Water dry soil first. Even watering matters more than feeding.";
const spray = [
  "Spray in the cool of the morning or evening when there is no wind and no rain is near; never in full sun, and not on open flowers.",
  "Keep the spray off eyes and skin.",
];
const produce = "Wash produce before you eat it.";
const always = [
  "Put no other feed in the same can.",
  "Keep the bottle labelled, away from food and children. Local rules, your certifier and a soil test come first.",
];
export const otherFeedCaution =
  "Keep to what the label of each feed says: its dose, gloves, waiting time.";

/**
 * The cautions that matter on a day with these mixes, each a line.
 *
 * @param pour how the garden pours its stock, where it is known
 */
export function cautionsFor(mixes: readonly CanMix[], pour?: PourStyle): string[] {
  const has = (route: CanMix["route"]) => mixes.some((mix) => mix.route === route);
  const eatenSoon = mixes.some(({ feedings }) =>
    feedings.some(({ stage }) => stage === "ripening" || stage === "harvest"),
  );
  const shake = bottle[pour ?? "unknown"];
  return [
    ...(has("drench") ? [`${shake} ${intoCan}`, evenWater] : []),
    ...(has("foliar") ? [`${shake} ${intoSprayer}`, ...spray] : []),
    ...(has("foliar") || eatenSoon ? [produce] : []),
    ...always,
  ];
}
