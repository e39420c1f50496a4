/** Evenness: the longest time that a bed is without water. */
import { type Day, type DaySpan, eachDay, within } from "../dates.js";
import type { DryGap } from "./watering.js";
import {
  isAwayOn,
  isWateredOn,
  isWateringDay,
  isWetByRain,
  type WaterSources,
} from "./watering-days.js";

/** When a bed gets water. */
export interface Waterings extends WaterSources {
  /** Days of the rounds that pour into the bed. */
  readonly rounds: ReadonlySet<Day>;
  /** In which the bed asks for no water: rain covers it. */
  readonly rained: readonly DaySpan[];
}

/** Fruit and heads suffer from a dry spell longer than this: common practice, no source. */
const longestUsualDays = 7;

/** Longer than the time between two waterings may be: worth a warning. */
export function isLongDry({ days }: Pick<DryGap, "days">): boolean {
  return days > longestUsualDays;
}

/**
 * The longest run of days without water while something grows, the first of equal ones. The grower
 * waters on each watering day on which they are there; undefined where there is no dry day.
 *
 * @param growing spans in which something grows in the bed
 */
export function longestDryGap(
  growing: readonly DaySpan[],
  waterings: Waterings,
): DryGap | undefined {
  const { garden, rounds, rained } = waterings;
  const isWet = (d: Day): boolean =>
    isWateredOn(d, garden) ||
    rounds.has(d) ||
    isWetByRain(d, waterings) ||
    rained.some((span) => within(d, span));

  let longest: DryGap | undefined;
  for (const span of joined(growing)) {
    let run: DryGap | undefined;
    for (const d of eachDay(span)) {
      if (isWet(d)) run = undefined;
      else {
        const missed = isWateringDay(d, garden) && isAwayOn(d, garden);
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
