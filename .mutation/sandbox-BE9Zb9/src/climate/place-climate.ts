/** The climate of a place from the nearest point of the table. */
// @ts-nocheck

import type { PlaceClimate } from "./climate.js";
import { type Column, nearestPoint, type Normals } from "./normals.js";
import {
  heightInOrigin,
  heightWords,
  type MeasureWords,
  measuresInWords,
  type PlaceMeasures,
} from "./place-words.js";

export interface Place {
  /** South is negative. */
  readonly latitudeDeg: number;
  /** West is negative. */
  readonly longitudeDeg: number;
  readonly elevationM?: number;
}

export interface ToldClimate {
  readonly climate: Omit<PlaceClimate, "daySdC">;
  /** What was taken as usual, in words. */
  readonly assumptions: readonly string[];
  readonly warnings: readonly PlaceWarning[];
}

export interface PlaceWarning {
  readonly code: string;
  readonly message: string;
  readonly mend: string;
}

/** Means of the nearest point, moved to the warmth of the later years and to the place's height. */
export function placeClimate(normals: Normals, place: Place, measures: PlaceMeasures): ToldClimate {
  const { latitudeDeg, longitudeDeg, elevationM } = place;
  const { means, values } = normals.about;
  const { index, distanceKm } = nearestPoint(normals, latitudeDeg, longitudeDeg, elevationM);
  const at = (column: Column): number => column[index] ?? 0;
  const name = normals.names[index] ?? "";
  const pointM = at(normals.heightsM);
  const higherM = pointM - (elevationM ?? pointM);
  const lapseC = higherM * values.lapse_c_per_m.value;
  const temperature = (column: Column): number => (at(column) + at(normals.warmings)) / 10 + lapseC;
  const words = measuresInWords[measures];
  const height = elevationM === undefined ? "" : ` ${heightInOrigin(higherM, words)}`;
  return {
    climate: {
      means: {
        maxC: normals.maxima.map(temperature),
        minC: normals.minima.map(temperature),
        rainMm: normals.rains.map(at),
      },
      origin: `${name}, ${words.distance(distanceKm)} away${height}; ${means}`,
      point: { name, distanceKm, higherM },
      errorC: values.error_c.value,
      latitudeDeg,
      longitudeDeg,
    },
    assumptions:
      elevationM === undefined
        ? [
            `a height of ${words.height(pointM)} above the sea, that of ${name}, as none is given (\`elevation:\` of \`location:\`)`,
          ]
        : [],
    warnings: [
      ...(distanceKm > values.far_km.value ? [farAway(name, distanceKm, words)] : []),
      ...(Math.abs(higherM) > values.far_height_m.value
        ? [farInHeight(name, higherM, lapseC, values.lapse_c_per_m.value, words)]
        : []),
    ],
  };
}

const ownMeans = "check `location:`, or write twelve means of your own (`climate:`)";

function farAway(name: string, distanceKm: number, { distance }: MeasureWords): PlaceWarning {
  return {
    code: "far-climate",
    message: `the nearest place whose climate is known, ${name}, is ${distance(distanceKm)} away`,
    mend: ownMeans,
  };
}

function farInHeight(
  name: string,
  higherM: number,
  lapseC: number,
  lapseCPerM: number,
  words: MeasureWords,
): PlaceWarning {
  const warmer = `${words.degrees(Math.abs(lapseC))} ${higherM > 0 ? "warmer" : "colder"}`;
  return {
    code: "far-climate",
    message: `the nearest place whose climate is known, ${name}, lies ${heightWords(higherM, words)}: the garden is taken as ${warmer}, ${words.lapse(lapseCPerM)}`,
    mend: ownMeans,
  };
}
