/** First days of stages that follow warmth, and what it says of those that don't. */
// @ts-nocheck

import type { Crop, StageLengths } from "../crops/index.js";
import { addDays, type Day, daysBetween, earlier, later, parseDay, yearOf } from "../dates.js";
import type { Planting } from "../garden/index.js";
import type { Begin } from "./begin.js";
import type { Start } from "./calendar-starts.js";
import type { Here, Place } from "./place.js";
import type { StageWarmth } from "./stage-span.js";
import { type WarmDay, warmDays } from "./warm-days.js";

/** A start with what warmth says of it. */
export interface WarmStart extends Start {
  readonly warmth?: StageWarmth;
  /** Its day follows the weather, be it through another crop's. */
  readonly isByWarmth?: true;
}

/**
 * Calendar starts, moved to where warmth has them, each within the bound. A stage that warmth
 * doesn't bring before the season's end stays on the calendar; so do crops whose sums nobody has
 * published, unless the grower asks, and crops that overwinter. What was seen wins.
 */
export function warmStarts(
  planting: Planting,
  crop: Crop,
  course: readonly [Begin, StageLengths, number],
  starts: readonly Start[],
  place: Place,
): readonly WarmStart[] {
  const { warmth } = crop;
  const { here, season } = place;
  if (here === undefined || warmth === undefined || crop.perennial) return starts;
  const wish = planting.warmth ?? here.wish;
  const isWished = wish === "on" || (wish === "auto" && warmth.auto);
  const isFollowed = isWished && !overwinters(planting, starts, here, place.hemisphere);
  const isSeen = (i: number): boolean =>
    planting.seen.some(({ stage }) => stage === crop.course.stages[i]?.stage);
  const days = warmDays(planting, { ...crop, warmth }, course, starts, { here, season });
  const own = starts.map((start, i) => {
    const by = days[i];
    return by === undefined || isSeen(i)
      ? start
      : warmStart(start, by, isFollowed, here.mostShiftDays);
  });
  return isFollowed ? inOrder(own, starts, isSeen) : own;
}

function warmStart(
  start: Start,
  by: WarmDay,
  isFollowed: boolean,
  mostShiftDays: number,
): WarmStart {
  const held = by.day && nearCalendar(by.day, start.day, mostShiftDays);
  const warmth: StageWarmth = {
    ...by,
    calendar: start.day,
    isFollowed: isFollowed && held !== undefined,
    ...(isFollowed && held !== by.day ? { isHeldBack: true } : {}),
  };
  return warmth.isFollowed && held !== undefined
    ? { day: held, moved: "by warmth", warmth, isByWarmth: true }
    : { ...start, warmth };
}

function nearCalendar(day: Day, calendar: Day, mostDays: number): Day {
  return earlier(later(day, addDays(calendar, -mostDays)), addDays(calendar, mostDays));
}

/**
 * No stage before the one it follows, nor after one that was seen, which lasts a day at least. A stage
 * that stays on the calendar keeps at least its distance there from the one before it.
 */
function inOrder(
  starts: readonly WarmStart[],
  calendar: readonly Start[],
  isSeen: (i: number) => boolean,
): WarmStart[] {
  const ordered: WarmStart[] = [];
  for (const [i, start] of starts.entries()) {
    const [before, calendarBefore] = [ordered[i - 1]?.day, calendar[i - 1]?.day];
    if (before === undefined || calendarBefore === undefined || isSeen(i)) ordered.push(start);
    else {
      const apart = start.warmth?.isFollowed ? 0 : daysBetween(calendarBefore, start.day);
      const least = addDays(before, Math.max(apart, isSeen(i - 1) ? 1 : 0));
      ordered.push({ ...start, day: later(start.day, least) });
    }
  }
  for (let i = ordered.length - 2; i >= 0; i--) {
    const [start, next] = [ordered[i] as WarmStart, ordered[i + 1] as WarmStart];
    ordered[i] = { ...start, day: earlier(start.day, next.day) };
  }
  return ordered;
}

const tropicDeg = 23.4;

/**
 * Where there is a winter, and the middle of it lies between the first stage in the bed and the last
 * one: in the tray it is warm.
 */
function overwinters(
  { transplanted }: Planting,
  starts: readonly Start[],
  { climate }: Here,
  half: Place["hemisphere"],
): boolean {
  const [begin, last] = [starts[0]?.day, starts.at(-1)?.day];
  if (begin === undefined || last === undefined || Math.abs(climate.latitudeDeg) < tropicDeg)
    return false;
  const first = transplanted === undefined ? begin : later(begin, transplanted);
  const midwinter = half === "south" ? "07-15" : "01-15";
  const years = [first, last].map(yearOf);
  return years
    .flatMap((year) => parseDay(`${year}-${midwinter}`) ?? [])
    .some((day) => first < day && day < last);
}
