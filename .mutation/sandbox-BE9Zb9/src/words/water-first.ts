/** Water before calcium, and what to do first, in plain words. */
// @ts-nocheck

import type { DecidingFact, Range } from "../calcium/index.js";
import type { Amounts } from "../garden/index.js";
import type { DryGap } from "../watering/index.js";
import type { Say } from "./say.js";
import { decides, percentBetween } from "./verdicts.js";
import { dryGapWords } from "./watering.js";

export const waterFirst =
  "Water before calcium: these disorders follow dry and wet spells more than calcium in the soil.";

export const waterEvenly =
  "Water evenly, and keep the soil covered. No feed makes up for a dry spell.";

/** Where no bed has `watering:`. */
export const waterNotTold =
  "How much is watered is not in the garden file: with `watering: auto` on a bed its litres a week are planned, and their calcium is counted.";

export function longestDry<T>(say: Say<T>, gap: DryGap, beds: T, amounts: Amounts): T {
  return say`${beds}: ${dryGapWords(gap, amounts)}.`;
}

export function limeFirst<T>(say: Say<T>, names: T): T {
  return say`Lime first, as the soil test asks: ${names}.`;
}

/** Limed since the test, or beside what is never limed. */
export function limeWithCare<T>(say: Say<T>, names: T): T {
  return say`Too sour by the soil test, but read below before you lime: ${names}.`;
}

/** `For toms a soil test would decide it (...).` */
export function wouldDecide<T>(say: Say<T>, fact: DecidingFact, names: T): T {
  const words = decides[fact];
  return say`For ${names} ${words}.`;
}

export function fedThoughUnlikely<T>(say: Say<T>, names: T): T {
  return say`Fed, though it is unlikely to help: ${names}. With \`feed: false\` on a planting, or \`feed_when: might-help\`, it is left out.`;
}

export function feedMightHelp<T>(say: Say<T>, names: T): T {
  return say`The feed might help ${names}, after even watering.`;
}

/** Of the plantings that are fed, in per cent. */
export function feedIsSmall(share: Range): string {
  return `The season's feed is ${percentBetween(share)} of what a fed planting takes up.`;
}
