/** Published feedings that stand: given, or to come, as far as nobody has written anything else down. */
// @ts-nocheck

import { feedingsOf } from "../days/index.js";
import type { Published } from "../published/index.js";
import type { FedLine } from "../season/index.js";
import type { Past } from "./past.js";

/** @param plantings ids of those that are meant */
export function steadyFeedings(
  plantings: readonly string[],
  published: Published | undefined,
  { notGiven, early }: Pick<Past, "notGiven" | "early">,
): FedLine[] {
  if (published === undefined || plantings.length === 0) return [];
  const gone = new Set([...notGiven, ...early].map(lineDay));
  return feedingsOf(published).filter(
    (line) => plantings.includes(line.planting) && !gone.has(lineDay(line)),
  );
}

function lineDay({ planting, route, day }: FedLine): string {
  return `${planting}/${route}/${day}`;
}
