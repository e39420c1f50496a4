/** Days into weeks, weeks of several plantings into those of a bed, and what rounds take off. */
// @ts-nocheck

import { addDays, type Day, dayFromNumber, dayNumber, type DaySpan, within } from "../dates.js";
import { given } from "../values.js";
import type { WateringWeek } from "./watering.js";

/** What a planting gives off on a day, and the rain that it can use of that day's. */
export interface DayBalance {
  readonly day: Day;
  readonly needMm: number;
  readonly rainMm?: number;
}

export function weekOf(d: Day): DaySpan {
  // Day 4 after 1970-01-01 was a Monday.
  const from = dayFromNumber(Math.floor((dayNumber(d) - 4) / 7) * 7 + 4);
  return { from, to: addDays(from, 6) };
}

/** Weeks of the span, the first and the last one whole. */
export function weeksOf({ from, to }: DaySpan): DaySpan[] {
  const weeks: DaySpan[] = [];
  for (let week = weekOf(from); week.from <= to; week = weekOf(addDays(week.to, 1)))
    weeks.push(week);
  return weeks;
}

/** Rain of a week comes off its need, and none of it is carried over. */
export function balancedWeeks(days: readonly DayBalance[], areaM2: number): WateringWeek[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  return weeksOf({ from: first.day, to: last.day }).map((week) => {
    const those = days.filter(({ day }) => within(day, week));
    const needMm = those.reduce((sum, { needMm: mm }) => sum + mm, 0);
    const rainMm = those.reduce<number | undefined>(
      (sum, { rainMm: mm }) => (sum === undefined || mm === undefined ? undefined : sum + mm),
      0,
    );
    const waterL = areaM2 * Math.max(0, needMm - (rainMm ?? 0));
    return { ...week, needMm, ...given({ rainMm }), waterL };
  });
}

/** A planting's part of a bed. */
export interface PartWeeks {
  readonly areaM2: number;
  readonly weeks: readonly WateringWeek[];
}

/** Litres add up; mm are over the ground of what grows that week. */
export function joinedWeeks(parts: readonly PartWeeks[]): WateringWeek[] {
  const starts = [...new Set(parts.flatMap(({ weeks }) => weeks.map(({ from }) => from)))].sort();
  return starts.map((from) => {
    const those = parts.flatMap(({ areaM2, weeks }) =>
      weeks.filter((week) => week.from === from).map((week) => ({ ...week, areaM2 })),
    );
    const areaM2 = those.reduce((sum, week) => sum + week.areaM2, 0);
    const mean = (key: "needMm" | "rainMm"): number | undefined =>
      those.reduce<number | undefined>((sum, week) => {
        const mm = week[key];
        return sum === undefined || mm === undefined
          ? undefined
          : sum + (mm * week.areaM2) / areaM2;
      }, 0);
    return {
      ...weekOf(from),
      ...given({ needMm: mean("needMm"), rainMm: mean("rainMm") }),
      waterL: those.reduce((sum, { waterL }) => sum + waterL, 0),
    };
  });
}

/** The water of rounds comes off that of their weeks. */
export function lessRounds(
  weeks: readonly WateringWeek[],
  roundLByDay: ReadonlyMap<Day, number>,
): WateringWeek[] {
  return weeks.map((week) => {
    let roundL = 0;
    for (const [day, liters] of roundLByDay) if (within(day, week)) roundL += liters;
    return { ...week, roundL, leftL: Math.max(0, week.waterL - roundL) };
  });
}
