/** The ways of feeding, and what is carried. */
import { type Amounts, counted, type Route, type Vessel } from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { degreesText } from "./figures.js";

/** As a title, within a line, and in a picture. */
export const routeNames: Readonly<Record<Route, { title: string; inLine: string; drawn: string }>> =
  {
    drench: { title: "Soil drench", inLine: "soil drench", drawn: "drench" },
    foliar: { title: "Leaf spray", inLine: "leaf spray", drawn: "leaf spray" },
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

/** For the mark of a feeding in a picture. */
export function feedingMark(planting: string, route: Route, day: string): string {
  return `${planting}: ${routeNames[route].drawn} on ${day}`;
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
