/** Days into weeks, weeks of several plantings into those of a bed, and what rounds take off. */
import { addDays, type Day, dayFromNumber, dayNumber, type DaySpan } from "../dates.js";
import { byText, given, grouped } from "../values.js";
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

/**
 * Rain of a week comes off its need, and none of it is carried over.
 *
 * @param days one after the other
 */
export function balancedWeeks(days: readonly DayBalance[], areaM2: number): WateringWeek[] {
  const weeks: WateringWeek[] = [];
  for (let at = 0; at < days.length;) {
    const week = weekOf((days[at] as DayBalance).day);
    let needMm = 0;
    let rainMm: number | undefined = 0;
    for (; at < days.length && (days[at] as DayBalance).day <= week.to; at++) {
      const { needMm: need, rainMm: rain } = days[at] as DayBalance;
      needMm += need;
      rainMm = rainMm === undefined || rain === undefined ? undefined : rainMm + rain;
    }
    const waterL = areaM2 * Math.max(0, needMm - (rainMm ?? 0));
    weeks.push({ ...week, needMm, ...given({ rainMm }), waterL });
  }
  return weeks;
}

/** A planting's part of a bed. */
export interface PartWeeks {
  readonly areaM2: number;
  readonly weeks: readonly WateringWeek[];
}

/** Litres add up; mm are over the ground of what grows that week. */
export function joinedWeeks(parts: readonly PartWeeks[]): WateringWeek[] {
  const all = parts.flatMap(({ areaM2, weeks }) => weeks.map((week) => ({ ...week, areaM2 })));
  return [...grouped(all, ({ from }) => from).values()]
    .sort(([a], [b]) => byText(a.from, b.from))
    .map((those) => {
      const [{ from, to }] = those;
      const areaM2 = those.reduce((sum, week) => sum + week.areaM2, 0);
      const mean = (key: "needMm" | "rainMm"): number | undefined =>
        those.reduce<number | undefined>((sum, week) => {
          const mm = week[key];
          return sum === undefined || mm === undefined
            ? undefined
            : sum + (mm * week.areaM2) / areaM2;
        }, 0);
      return {
        ...{ from, to },
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
  const roundLByWeek = new Map<Day, number>();
  for (const [day, liters] of roundLByDay) {
    const { from } = weekOf(day);
    roundLByWeek.set(from, (roundLByWeek.get(from) ?? 0) + liters);
  }
  return weeks.map((week) => {
    const roundL = roundLByWeek.get(week.from) ?? 0;
    return { ...week, roundL, leftL: Math.max(0, week.waterL - roundL) };
  });
}
