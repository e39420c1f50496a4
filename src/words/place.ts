import type { PlanClimate } from "../season/index.js";

/** One line for the garden's facts. */
export function climateOfPlace({ origin }: PlanClimate): string {
  return `Climate: ${origin}`;
}
