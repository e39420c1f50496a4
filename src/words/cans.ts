/** Vessels, routes and cans in words. */
import { counted, decimal, type Route } from "../garden/index.js";
import type { CanFill } from "../season/index.js";

/** Kept on one line. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

/** Three figures are enough for anything measured with a can or a spoon. */
export function figures(value: number): string {
  return value >= 100 ? decimal(value, 0) : String(Number(value.toPrecision(3)));
}

export function vesselOf(route: Route): "can" | "sprayer" {
  return route === "foliar" ? "sprayer" : "can";
}

export function routeWords(route: Route): string {
  return route === "foliar" ? "Leaf spray" : "Soil drench";
}

/** `2 full cans`, `1 part sprayer` */
export function fillWords(fill: CanFill, route: Route): string {
  return counted(fill.count, `${fill.full ? "full" : "part"} ${vesselOf(route)}`);
}
