/** Slips in the two numbers of `location:` that the garden's time zone gives away. */
import type { PlaceWarning } from "../climate/index.js";
import { yearOf } from "../dates.js";
import type { Garden } from "./garden.js";
import { hemisphereFromZone, type ZoneHalves } from "./hemisphere.js";
import { offsetMinAt } from "./zones.js";

/** The widest zone, China's, reaches 46 degrees from its meridian (from memory). */
const farthestDeg = 60;
/** Zones of a country that the equator comes near reach so far into the other half. */
const nearEquatorDeg = 10;
/** Swapped numbers seldom lie so near to the meridian, places near the equator nearly always do. */
const nearMeridianDeg = 20;
const degPerHour = 15;

/** A minus that was lost, or numbers that were swapped. */
export function placeAndZone(
  { location, timezone, season }: Pick<Garden, "location" | "timezone" | "season">,
  halves: ZoneHalves,
): PlaceWarning[] {
  if (location === undefined) return [];
  const { latitudeDeg, longitudeDeg } = location;
  const meridianDeg = meridianOf(timezone, yearOf(season.from));
  const offDeg =
    longitudeDeg === undefined || meridianDeg === undefined
      ? 0
      : aroundTheEarth(longitudeDeg - meridianDeg);
  const half = latitudeDeg < 0 ? "south" : "north";
  const isOtherHalf = (hemisphereFromZone(timezone, halves) ?? half) !== half;
  const isFarSouthOrNorth = Math.abs(latitudeDeg) > nearEquatorDeg;
  const isOff =
    offDeg > farthestDeg || (isOtherHalf && (isFarSouthOrNorth || offDeg > nearMeridianDeg));
  if (!isOff) return [];
  const at = [
    `${Math.abs(latitudeDeg)} ${half}`,
    ...(longitudeDeg === undefined
      ? []
      : [`${Math.abs(longitudeDeg)} ${longitudeDeg < 0 ? "west" : "east"}`]),
  ];
  return [
    {
      code: "place-and-zone",
      message: `the garden lies at ${at.join(", ")}, and the time zone ${timezone} does not`,
      mend:
        longitudeDeg === undefined
          ? "check the latitude in `location:` and its sign"
          : "check the two numbers of `location:` and their signs",
    },
  ];
}

/** In the middle of a zone, degrees east, by its standard time; UTC is the time of no place. */
function meridianOf(timezone: string, year: number): number | undefined {
  if (/^(?:etc\/)?(?:utc|uct|gmt[+-]?0?|zulu|universal|greenwich)$/i.test(timezone))
    return undefined;
  // Summer time is that of one of them, if the zone has any.
  const offsetsMin = [0, 6].map((month) => offsetMinAt(Date.UTC(year, month, 1), timezone));
  return (Math.min(...offsetsMin) / 60) * degPerHour;
}

/** How far apart two meridians lie, the short way round. */
function aroundTheEarth(deg: number): number {
  const round = Math.abs(deg) % 360;
  return Math.min(round, 360 - round);
}
