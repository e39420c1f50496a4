/** Litres a week for a bed: by the weather and what grows there, or the amount that the grower gave. */
import type { PlaceWeather } from "../climate/index.js";
import type { DaySpan } from "../dates.js";
import type { Bed, WateringWish } from "../garden/index.js";
import { byAmount } from "./by-amount.js";
import { byWeather, type WateringTables } from "./by-weather.js";
import { groundOf, type Grown, growingSpan } from "./growing.js";
import type { BedWatering, WateringWeek } from "./watering.js";
import { joinedWeeks } from "./weeks.js";

export interface WateringPlace {
  /** Absent where nothing is known of the climate: only amounts can be told then. */
  readonly weather: PlaceWeather | undefined;
  readonly season: DaySpan;
}

type WateredBed = Pick<Bed, "id" | "name" | "areaM2" | "cover" | "soil">;

/**
 * Weeks in which something grows in the bed outdoors, Monday to Sunday. With `auto` each planting gives
 * off reference evapotranspiration times its crop coefficient, over its ground, less the rain of the
 * week; nothing is carried over. A planting of which that can't be told stands in `unknown`.
 *
 * @param grown the bed's plantings with their lives
 * @source FAO-56 eqs 52, 58 and 66; what mulch and covers change has its own, in `watering-factors.yaml`
 */
export function bedWatering(
  bed: WateredBed,
  wish: WateringWish,
  grown: readonly Grown[],
  { weather, season }: WateringPlace,
  tables: WateringTables,
): BedWatering {
  const spans = grown.flatMap((one) => {
    const span = growingSpan(one, season);
    return span === undefined || one.crop === undefined ? [] : [{ ...one, crop: one.crop, span }];
  });
  const standing = spans.map((one) => ({ ...one, ground: groundOf(one, spans, bed) }));
  const listed = grown
    .filter(({ crop }) => crop === undefined)
    .map(({ planting }) => ({
      planting: planting.id,
      why: `\`${planting.cropWord}\` is no crop that is known`,
    }));
  const common = { bed: bed.id, bedName: bed.name };
  if (wish !== "auto") return { ...common, ...byAmount(bed, wish, standing) };
  const each = standing.map((one) => byWeather(one, bed, weather, tables));
  const known = each.flatMap((one) => (one.ok ? [one.value] : []));
  const areas = known.map(({ watering }) => watering);
  const weeksBy = (key: "weeks" | "usualWeeks"): WateringWeek[] =>
    joinedWeeks(areas.map(({ areaM2, [key]: weeks }) => ({ areaM2, weeks })));
  return {
    ...common,
    by: "weather",
    plantings: areas,
    unknown: [...each.flatMap((one) => (one.ok ? [] : [one.unknown])), ...listed],
    assumptions: [...new Set(known.flatMap(({ assumptions }) => assumptions))],
    weeks: weeksBy("weeks"),
    usualWeeks: weeksBy("usualWeeks"),
  };
}

/** Spans in which something that is known grows in the bed. */
export function growingSpans(grown: readonly Grown[], season: DaySpan): DaySpan[] {
  return grown.flatMap((one) => growingSpan(one, season) ?? []);
}
