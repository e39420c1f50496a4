/** The ways a feed reaches a plant, and what it is carried in. */
// @ts-nocheck

import type { Garden, Planting, Route } from "./garden.js";

export const vessels = ["can", "sprayer"] as const;
export type Vessel = (typeof vessels)[number];

export function vesselOf(route: Route): Vessel {
  return ({ drench: "can", foliar: "sprayer" } as const)[route];
}

/** A full one, L. */
export function vesselL(
  { canL, sprayerL }: Pick<Garden, "canL" | "sprayerL">,
  route: Route,
): number {
  return { can: canL, sprayer: sprayerL }[vesselOf(route)];
}

/** Liquid in one feeding of the whole planting, L. */
export function feedingL(
  { waterL, sprayL }: Pick<Planting, "waterL" | "sprayL">,
  route: Route,
): number {
  return { drench: waterL, foliar: sprayL }[route];
}
