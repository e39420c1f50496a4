/** Means that begin with July, as some lists of the southern half do. */
// @ts-nocheck

import type { PlaceClimate } from "./climate.js";
import type { PlaceWarning } from "./place-climate.js";

/** Between the tropics the warmest month may be any. */
const tropicDeg = 23.5;
/** December to February, and June to August. */
const winters = { north: [11, 0, 1], south: [5, 6, 7] } as const;

/** Means whose warmest month lies in the winter of their place. */
export function turnedYear({ means, latitudeDeg }: Omit<PlaceClimate, "daySdC">): PlaceWarning[] {
  if (Math.abs(latitudeDeg) <= tropicDeg) return [];
  const half = latitudeDeg < 0 ? "south" : "north";
  const winter: readonly number[] = winters[half];
  const warmth = means.maxC.map((maxC, month) => maxC + (means.minC[month] ?? maxC));
  const warmest = (isWinter: boolean): number =>
    Math.max(...warmth.filter((_, month) => winter.includes(month) === isWinter));
  if (warmest(true) <= warmest(false)) return [];
  return [
    {
      code: "turned-year",
      message: `the warmest month of the means under \`climate:\` lies in the winter of the ${half}ern half of the earth`,
      mend: "check both lists, which begin with January in both halves, and the sign of the latitude",
    },
  ];
}
