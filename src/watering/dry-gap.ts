/** Evenness: the longest time that a bed is without water. */
import type { PlaceWeather } from "../climate/index.js";
import { type Day, type DaySpan, eachDay, weekdayOf, within } from "../dates.js";
import type { Bed, Garden } from "../garden/index.js";
import type { WateringFactors } from "./factors.js";
import { roofOn } from "./surroundings.js";
import type { DryGap } from "./watering.js";

/** When a bed gets water. */
export interface Waterings {
  readonly garden: Pick<Garden, "watering" | "feeding">;
  readonly bed: Pick<Bed, "cover">;
  /** Days of the rounds that pour into the bed. */
  readonly rounds: readonly Day[];
  /** Only days of weather files tell when it rained. */
  readonly place: PlaceWeather | undefined;
  readonly factors: Pick<WateringFactors, "wetting_rain_mm">;
}

/**
 * The longest run of days without water while something grows, the first of equal ones. The grower
 * waters on each watering day on which they are there; undefined where there is no dry day.
 *
 * @param growing spans in which something grows in the bed
 */
export function longestDryGap(
  growing: readonly DaySpan[],
  { garden, bed, rounds, place, factors }: Waterings,
): DryGap | undefined {
  const isWatering = (d: Day): boolean => garden.watering.days.includes(weekdayOf(d));
  const isAway = (d: Day): boolean => garden.feeding.away.some((span) => within(d, span));
  const isWetByRain = (d: Day): boolean =>
    roofOn(bed, d) === undefined &&
    (place?.days.get(d)?.rainMm ?? 0) >= factors.wetting_rain_mm.value;
  const isWet = (d: Day): boolean =>
    (isWatering(d) && !isAway(d)) || rounds.includes(d) || isWetByRain(d);

  let longest: DryGap | undefined;
  for (const span of joined(growing)) {
    let run: DryGap | undefined;
    for (const d of eachDay(span)) {
      if (isWet(d)) run = undefined;
      else {
        const missed = isWatering(d) && isAway(d);
        run = {
          from: run?.from ?? d,
          to: d,
          days: (run?.days ?? 0) + 1,
          isAway: missed || (run?.isAway ?? false),
        };
        if (run.days > (longest?.days ?? 0)) longest = run;
      }
    }
  }
  return longest;
}

/** Spans that overlap as one. */
function joined(spans: readonly DaySpan[]): DaySpan[] {
  const whole: DaySpan[] = [];
  for (const span of [...spans].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    const last = whole.at(-1);
    if (last === undefined || span.from > last.to) whole.push(span);
    else if (span.to > last.to) whole[whole.length - 1] = { ...last, to: span.to };
  }
  return whole;
}
