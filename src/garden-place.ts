/** What is known of the climate and the weather of a garden's place. */
import {
  type DayWeather,
  type Normals,
  placeClimate,
  type PlaceWarning,
  type PlaceWeather,
} from "./climate/index.js";
import type { Day } from "./dates.js";
import type { Garden } from "./garden/index.js";
import { given } from "./values.js";

export interface GardenPlace {
  /** Absent where nothing is known: stages stay on the calendar. */
  readonly place?: PlaceWeather;
  /** What was taken as usual, in words. */
  readonly assumptions: readonly string[];
  readonly warnings: readonly PlaceWarning[];
}

/** What a place is made of that the garden file does not hold itself. */
export interface PlaceSources {
  /** The table of monthly means, from `loadNormals`; without it only the grower's own means are known. */
  readonly normals?: Normals;
  /** Days of the weather files, gaps filled. */
  readonly days?: ReadonlyMap<Day, DayWeather>;
}

/** The garden's climate is to be looked up in the table: the only reason to load it. */
export function asksForNormals({ location, climate }: Garden): boolean {
  return climate === undefined && location?.longitudeDeg !== undefined;
}

export function placeOf(
  { location, climate: own, amounts }: Garden,
  { normals, days = new Map<Day, DayWeather>() }: PlaceSources,
): GardenPlace {
  const nothing = { assumptions: [], warnings: [] };
  if (own === "off" || location === undefined) return nothing;
  const { latitudeDeg, longitudeDeg } = location;
  if (own !== undefined) {
    // Measured by the grower or for the place: nobody tells an error of theirs.
    const climate = { means: own.means, origin: own.source, errorC: 0, latitudeDeg };
    return { place: { climate: { ...climate, ...given({ longitudeDeg }) }, days }, ...nothing };
  }
  if (longitudeDeg === undefined)
    return {
      ...nothing,
      assumptions: [
        "dates of the calendar, not of the place's warmth, as `location:` has no longitude (`longitude:`)",
      ],
    };
  if (normals === undefined) return nothing;
  const measures = amounts === "us" ? "us" : "metric";
  const { climate, ...told } = placeClimate(normals, { ...location, longitudeDeg }, measures);
  return { place: { climate, days }, ...told };
}
