/** Cautions of feeding, and of making and keeping stock. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import { type PourStyle, type Route, routes } from "../garden/index.js";
import type { CanMix } from "../season/index.js";

// Common practice, no source.
const bottle: Readonly<Record<PourStyle | "unknown", string>> = {
  shaken: "Shake the bottle.",
  clear: "Do not shake the bottle: pour off the clear part only.",
  unknown: "Shake the bottle, unless you pour off the clear part only.",
};
const routeCautions: Readonly<
  Record<
    Route,
    { filling: string; mind: readonly string[]; inShort: readonly string[]; wetsProduce: boolean }
  >
> = {
  drench: {
    filling: "Measure, add to the full can, stir, use it the same day.",
    mind: ["Water dry soil first. Even watering matters more than feeding."],
    inShort: ["Stir each can, use it the same day.", "Water dry soil first."],
    wetsProduce: false,
  },
  foliar: {
    filling: "Measure, add to the full sprayer, shake again, use it the same day.",
    mind: [
      "Spray in the cool of the morning or evening when there is no wind and no rain is near; never in full sun, and not on open flowers.",
      "Keep the spray off eyes and skin.",
      "White from the bottle clogs the nozzle: stir until it has dissolved, then pour the spray through a fine cloth.",
    ],
    inShort: [
      "Strain the spray through a cloth.",
      "Spray in the cool, without wind, rain, full sun or open flowers; keep it off eyes and skin.",
    ],
    wetsProduce: true,
  },
};
const isEatenSoon: Readonly<Record<StageName, boolean>> = {
  seedling: false,
  establishment: false,
  vegetative: false,
  heading: false,
  "root-swelling": false,
  flowering: false,
  "fruit-set": false,
  "fruit-growth": false,
  ripening: true,
  harvest: true,
  "after-harvest": false,
};
const produce = "Wash produce before you eat it.";
const noOtherFeed = "Put no other feed in the same can.";
const always = [
  noOtherFeed,
  "Keep the bottle labelled, away from food and children. Local rules, your certifier and a soil test come first.",
];
const otherFeedCaution =
  "Keep to what the label of each feed says: its dose, gloves, waiting time.";

/**
 * The cautions that matter on a day with these mixes, each a line.
 *
 * @param pour how the garden pours its stock, where it is known
 */
export function cautionsFor(mixes: readonly CanMix[], pour?: PourStyle): string[] {
  return [
    ...routesOf(mixes).flatMap((route) => {
      const { filling, mind } = routeCautions[route];
      return [`${bottle[pour ?? "unknown"]} ${filling}`, ...mind];
    }),
    ...(isOnProduce(mixes) ? [produce] : []),
    ...always,
  ];
}

/**
 * The same in the few words of a calendar's entry.
 *
 * @param feeds whether other feeds are given too
 */
export function cautionsInOneLine(
  mixes: readonly CanMix[],
  feeds: boolean,
  pour?: PourStyle,
): string {
  const used = routesOf(mixes);
  return [
    ...(used.length > 0 ? [bottle[pour ?? "unknown"]] : []),
    ...used.flatMap((route) => routeCautions[route].inShort),
    ...(isOnProduce(mixes) ? [produce] : []),
    ...(feeds ? [noOtherFeed, otherFeedCaution] : []),
  ].join(" ");
}

function routesOf(mixes: readonly CanMix[]): Route[] {
  return routes.filter((route) => mixes.some((mix) => mix.route === route));
}

function isOnProduce(mixes: readonly CanMix[]): boolean {
  return (
    routesOf(mixes).some((route) => routeCautions[route].wetsProduce) ||
    mixes.some(({ feedings }) => feedings.some(({ stage }) => isEatenSoon[stage]))
  );
}

/** Salmonella, acid in eyes, carbon dioxide in closed vessels: the usual cautions of a kitchen. */
export const makingCautions: readonly string[] = [
  "Boil shells for 10 minutes before you dry them: boiling water scalds. Wash hands, sink and boards. Raw shell can carry salmonella.",
  "Wear a mask when you grind shells, and glasses when you add acid. Rinse splashes with plenty of water.",
  "The mix foams and gives off carbon dioxide: use an open vessel of several times its volume, in an airy room, not in a cellar. Never close it while it fizzes: it would burst.",
  "Vessels of glass or food plastic, not of aluminium, zinc or copper, and not for food again. Never bring acid and bleach together.",
];

export const keepingCautions: readonly string[] = [
  "Label every bottle. Keep it away from food, children and animals. It is not for drinking.",
  "Throw stock away when it is past its use-by day, mouldy, smells or gasses again.",
];

export const humilityCautions: readonly string[] = [
  "Feeding is no cure where watering is uneven or the soil already holds enough calcium: water evenly first.",
  "Your local rules, your certifier and a soil test come before this plan.",
];

/** On every label; the few words where it is too small for all, which then stand on the season sheet. */
export const labelCautions = {
  full: "Plant feed, not for drinking. Keep away from food, children and animals. Throw away when past its day or mouldy, or when it smells or gasses again.",
  short: "Plant feed. Not for drinking. Keep from children.",
};

export const savingCaution =
  "Rinse them and let them dry; a wet heap smells and draws flies. Raw shell can carry salmonella: wash your hands.";

// Common practice, no source.
export const useUpCaution =
  "Do not use it after that day. Stock that is mouldy, smells or gasses again goes at once.";
