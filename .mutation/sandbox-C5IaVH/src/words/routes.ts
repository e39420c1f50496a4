/** The ways of feeding, and what is carried. */
// @ts-nocheck

import { type Amounts, counted, type Route, type Vessel } from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { degreesText } from "./figures.js";

/** As a title, and within a line. */
export const routeNames: Readonly<Record<Route, { title: string; inLine: string }>> = {
  drench: { title: "Soil drench", inLine: "soil drench" },
  foliar: { title: "Leaf spray", inLine: "leaf spray" },
};

export function vesselWords(vessel: Vessel, count: number): string {
  return count === 1 ? vessel : `${vessel}s`;
}

/** `3 cans` */
export function vesselCount(count: number, vessel: Vessel): string {
  return counted(count, vessel);
}

/** `9 L can` */
export function sizedVessel(size: string, vessel: Vessel): string {
  return `${size} ${vessel}`;
}

/** Undefined where no limit is known. */
export function heatLimit(
  { highestTemperatureC }: Pick<FeedRule, "highestTemperatureC">,
  amounts: Amounts,
): string | undefined {
  return highestTemperatureC === undefined
    ? undefined
    : `not in air above ${degreesText(highestTemperatureC, amounts)}, in which sprayed leaves may burn`;
}
