import { IANAZone } from "luxon";
import { type DaySpan, monthOf } from "../dates.js";
import type { Garden } from "./garden.js";

interface HemisphereSigns {
  readonly hemisphere: Garden["hemisphere"] | undefined;
  readonly latitudeDeg: number | undefined;
  readonly timezone: string;
  readonly season: DaySpan;
}

/** Which half of the earth, and where that is known from (undefined when the grower said it). */
export function hemisphereOf(signs: HemisphereSigns): {
  hemisphere: Garden["hemisphere"];
  assumption?: string;
} {
  if (signs.hemisphere !== undefined) return { hemisphere: signs.hemisphere };
  if (signs.latitudeDeg !== undefined)
    return { hemisphere: signs.latitudeDeg < 0 ? "south" : "north" };
  const summerTime = hemisphereFromZone(signs.timezone, Number(signs.season.from.slice(0, 4)));
  if (summerTime !== undefined)
    return {
      hemisphere: summerTime,
      assumption: `${summerTime}ern hemisphere, from the summer time of ${signs.timezone}`,
    };
  const spansNewYear = signs.season.from.slice(0, 4) !== signs.season.to.slice(0, 4);
  const hemisphere = spansNewYear && monthOf(signs.season.from) > 6 ? "south" : "north";
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
