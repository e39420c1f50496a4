/** What is known of the climate and the weather of a garden's place. */
// @ts-nocheck

import {
  type ClimateConstants,
  type Normals,
  type PlaceClimate,
  placeClimate,
  type PlaceMeasures,
  type PlaceWarning,
  type PlaceWeather,
  toldOfSeason,
  turnedYear,
  unlikeMeans,
  weatherDays,
  type WeatherDays,
} from "./climate/index.js";
import { addDays, type Day, type DaySpan } from "./dates.js";
import { type Garden, placeAndZone, type ZoneHalves } from "./garden/index.js";
import type { Result } from "./problem.js";
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
  /** Texts of the weather files, when the garden file names them. */
  readonly weather?: { readonly seen?: string; readonly forecast?: string };
}

export interface PlaceTables {
  readonly climate: ClimateConstants;
  readonly zoneHalves: ZoneHalves;
}

/** The garden's climate is to be looked up in the table: the only reason to load it. */
export function asksForNormals({ location, climate }: Garden): boolean {
  return climate === undefined && location?.longitudeDeg !== undefined;
}

/** Problems where a weather file has some, with their places in it. */
export function placeOf(
  garden: Garden,
  { normals, weather }: PlaceSources,
  tables: PlaceTables,
  today: Day,
): Result<GardenPlace> {
  const read = weatherOf(garden, weather, today);
  if (!read.ok) return read;
  const { days, files, assumptions } = read.value;
  const measures = garden.amounts === "us" ? "us" : "metric";
  const { climate, ...told } = climateOf(garden, normals, measures);
  const place = climate && { climate: { ...climate, daySdC: tables.climate.day_sd_c }, days };
  return {
    ok: true,
    value: {
      ...given({ place }),
      assumptions: [...told.assumptions, ...assumptions, ...unusedFiles(files, garden.season)],
      warnings: [
        ...placeAndZone(garden, tables.zoneHalves),
        ...told.warnings,
        ...(place ? unlikeMeans(files, place.climate, measures) : []),
      ],
    },
  };
}

/** Sowings and beds of the year before may count on the weather of then. */
const weatherBeforeSeasonDays = 366;

function weatherOf(
  { season, weather: files }: Garden,
  texts: PlaceSources["weather"],
  today: Day,
): Result<WeatherDays> {
  const named = (key: "seen" | "forecast") => {
    const text = texts?.[key];
    return text === undefined ? undefined : { file: files?.[key] ?? "weather.csv", text };
  };
  const since = addDays(season.from, -weatherBeforeSeasonDays);
  return weatherDays(given({ seen: named("seen"), forecast: named("forecast") }), {
    today,
    since,
    season: season.from,
  });
}

/** Left over from a year before, or still without a row. */
function unusedFiles(files: WeatherDays["files"], season: DaySpan): string[] {
  return files
    .filter(
      ({ rows }) =>
        toldOfSeason(
          rows.map(({ day }) => day),
          season,
        ) === undefined,
    )
    .map(({ file }) => `the weather file ${file} tells no day of this season`);
}

interface ClimateTold extends Omit<GardenPlace, "place"> {
  readonly climate?: Omit<PlaceClimate, "daySdC">;
}

function climateOf(
  garden: Garden,
  normals: Normals | undefined,
  measures: PlaceMeasures,
): ClimateTold {
  const { location, climate: own } = garden;
  const nothing = { assumptions: [], warnings: [] };
  if (own === "off" || location === undefined)
    return { ...nothing, assumptions: warmthInVain(garden) };
  const { latitudeDeg, longitudeDeg } = location;
  if (own !== undefined) {
    const { means, source: origin } = own;
    // Measured by the grower or for the place: nobody tells an error of theirs.
    const climate = { means, origin, errorC: 0, latitudeDeg, ...given({ longitudeDeg }) };
    return { climate, assumptions: [], warnings: turnedYear(climate) };
  }
  if (longitudeDeg === undefined) {
    const [inVain = onTheCalendar] = warmthInVain(garden);
    return { ...nothing, assumptions: [inVain] };
  }
  if (normals === undefined) return nothing;
  return placeClimate(normals, { ...location, longitudeDeg }, measures);
}

const onTheCalendar =
  "dates by the calendar, not by the place's warmth: `location:` has no longitude (`longitude:`)";

/** Where no climate is known; nothing where nobody wished to follow it. */
function warmthInVain({ warmth, beds, climate, location }: Garden): string[] {
  const wishes = [warmth, ...beds.flatMap(({ plantings }) => plantings.map((p) => p.warmth))];
  if (!wishes.includes("on")) return [];
  const mend =
    climate === "off"
      ? "leave out `climate: off`"
      : location === undefined
        ? "add `location:` with a latitude and a longitude"
        : "add a longitude to `location:`";
  return [`\`warmth: on\` needs the climate of the place: ${mend}`];
}
