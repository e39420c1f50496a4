/** From a planting's first feeding to its last, and why these are the first and the last. */
import { addDays, type Day, within } from "../dates.js";
import type { FeedingCourse } from "../days/index.js";
import type { Garden, Planting } from "../garden/index.js";
import type { Sighting } from "../rules/index.js";
import { type FeedingSpan, feedingDaysOf, type Round } from "../season/index.js";
import { type PlantingLife, stageNearest, stageOn, type StageSpan } from "../stages/index.js";
import {
  type FeedingBegin,
  type FeedingEnd,
  keyThatChanges,
  whyItBegins,
  whyItEnds,
} from "../words/index.js";

interface FedPlanting {
  readonly planting: Planting;
  readonly life: PlantingLife;
  readonly sightings: readonly Sighting[];
  /** Key of the garden file that has stopped its feeding; absent where none has. */
  readonly stoppedBy?: "feed" | "feed_when";
}

/**
 * @param courses as they are from the garden, with those that signs opened
 * @param ahead the same, with what they still owe
 * @param rounds of the plan
 */
export function feedingSpan(
  need: FedPlanting,
  courses: readonly FeedingCourse[],
  ahead: readonly FeedingCourse[],
  rounds: readonly Round[],
  { season, amounts }: Pick<Garden, "season" | "amounts">,
): FeedingSpan | undefined {
  const days = feedingDaysOf(rounds, need.planting.id);
  const [first, last] = [days[0], days.at(-1)];
  const own = courses.filter(({ planting }) => planting.id === need.planting.id);
  const isOf = ({ course }: FeedingCourse): boolean =>
    last !== undefined && within(last, { from: course.first.earliest, to: course.coverTo });
  const of = own.findLast(isOf) ?? own.at(-1);
  if (first === undefined || last === undefined || of === undefined) return undefined;
  const end = byNumber(need, of, ahead, rounds) ?? byKey(need) ?? byDay(need, of, season.to);
  const begins = whyItBegins(beginOf(need, own, first), amounts);
  return { first, last, begins, why: whyItEnds(end, amounts), key: keyThatChanges(end) };
}

/** Where the course of the first feeding has its first day. */
function beginOf(
  { planting, life }: FedPlanting,
  own: readonly FeedingCourse[],
  first: Day,
): FeedingBegin {
  const course = own.find(({ course: { coverTo } }) => first <= coverTo) ?? own[0];
  const on = course?.spans[0]?.from;
  const span = on === undefined ? undefined : stageOn(life.spans, on);
  if (on === undefined || span === undefined) return { kind: "season" };
  if (span.from === on) return { kind: "stage", stage: span.stage, on, how: howItCame(span) };
  return on === planting.transplanted ? { kind: "planted-out", on } : { kind: "season" };
}

function howItCame({ origin, warmth }: StageSpan): string {
  if (warmth?.isFollowed) return "by warmth";
  if (origin.startsWith("seen on")) return "as you saw it";
  return origin.startsWith("no sooner") ? origin : "by the calendar";
}

/** It has as many feedings as it was to have. */
function byNumber(
  { planting, sightings }: FedPlanting,
  { course, route, openedBySignOn }: FeedingCourse,
  ahead: readonly FeedingCourse[],
  rounds: readonly Round[],
): FeedingEnd | undefined {
  const { id, first, coverTo, feedings } = course;
  if (feedings === undefined) return undefined;
  const inCourse = (day: Day): boolean => within(day, { from: first.earliest, to: coverTo });
  const fed = feedingDaysOf(rounds, planting.id, route).filter(inCourse).length;
  const toCome = feedingDaysOf(rounds, planting.id, route, "to-come").filter(inCourse).length;
  const owed = ahead.find((one) => one.course.id === id)?.course.feedings ?? 0;
  const sighting = sightings.find(({ seen }) => seen.on === openedBySignOn);
  if (sighting !== undefined)
    return { kind: "sign", feedings: fed, name: sighting.sign.name, on: sighting.seen.on };
  return toCome < owed
    ? undefined
    : { kind: "feedings", feedings, missed: Math.max(0, feedings - fed) };
}

/** The garden file has stopped it. */
function byKey({ stoppedBy: key }: FedPlanting): FeedingEnd | undefined {
  return key === undefined ? undefined : { kind: "no-more", key };
}

/** There are no days left in which it could be fed. */
function byDay(
  { life }: FedPlanting,
  { course: { coverTo }, spans }: FeedingCourse,
  seasonEnd: Day,
): FeedingEnd {
  const rule = spans.at(-1)?.rule;
  const { stopBeforeHarvestDays = 0, stopBeforeLastPickDays = 0 } = rule ?? {};
  const { day: lastDay, by } = life.last;
  const isStop = (on: Day, days: number): boolean => days > 0 && coverTo === addDays(on, -days - 1);
  if (isStop(life.harvestFrom, stopBeforeHarvestDays))
    return { kind: "before-harvest", on: life.harvestFrom, days: stopBeforeHarvestDays };
  const pick =
    by === "removed"
      ? ({ kind: by, on: addDays(lastDay, 1) } as const)
      : ({ kind: by === "lengths" ? "harvest" : by, on: lastDay } as const);
  if (by !== "removed" && isStop(lastDay, stopBeforeLastPickDays))
    return { kind: "before-last-pick", pick, days: stopBeforeLastPickDays };
  if (coverTo === lastDay && (by !== "lengths" || coverTo < seasonEnd)) return pick;
  if (coverTo === seasonEnd) return { kind: "season", on: seasonEnd };
  const stage = stageNearest(life.spans, coverTo)?.stage;
  return stage === undefined
    ? { kind: "season", on: seasonEnd }
    : { kind: "stage", stage, on: coverTo };
}
