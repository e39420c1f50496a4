import { IANAZone } from "luxon";
import { monthOf } from "../dates.js";
import type { Garden } from "./garden.js";

/** Which half of the earth, and where that is known from (undefined when the grower said it). */
export function hemisphereOf(
  stated: Garden["hemisphere"] | undefined,
  latitudeDeg: number | undefined,
  { timezone, season }: Pick<Garden, "timezone" | "season">,
): { hemisphere: Garden["hemisphere"]; assumption?: string } {
  if (stated !== undefined) return { hemisphere: stated };
  if (latitudeDeg !== undefined) return { hemisphere: latitudeDeg < 0 ? "south" : "north" };
  const summerTime = hemisphereFromZone(timezone, Number(season.from.slice(0, 4)));
  if (summerTime !== undefined)
    return {
      hemisphere: summerTime,
      assumption: `${summerTime}ern hemisphere, from the summer time of ${timezone}`,
    };
  const spansNewYear = season.from.slice(0, 4) !== season.to.slice(0, 4);
  const hemisphere = spansNewYear && monthOf(season.from) > 6 ? "south" : "north";
  return {
    hemisphere,
    assumption: `${hemisphere}ern hemisphere, as neither hemisphere nor latitude is given`,
  };
}

/** Clocks go forward in summer: the half of the year with the larger offset is summer. */
export function hemisphereFromZone(
  timezone: string,
  year: number,
): Garden["hemisphere"] | undefined {
  const zone = IANAZone.create(timezone);
  const january = zone.offset(Date.UTC(year, 0, 15));
  const july = zone.offset(Date.UTC(year, 6, 15));
  if (january === july) return undefined;
  return july > january ? "north" : "south";
}
