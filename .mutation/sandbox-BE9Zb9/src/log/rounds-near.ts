/** The round that a day belongs to: people feed a day late, and write down the day they fed. */
// @ts-nocheck

import { type Day, daysBetween } from "../dates.js";
import type { CanMix, Plan } from "../season/index.js";
import { byText } from "../values.js";
import { isOpen } from "./entries.js";

export interface WhatOf {
  readonly planting?: string;
  readonly bed?: string;
}

interface FedDay {
  readonly day: Day;
  readonly mixes: readonly CanMix[];
  readonly isWritten: boolean;
}

/** The days on which a plan feeds a planting, a bed, or anything. */
export function fedDays(plan: Plan, { planting, bed }: WhatOf): FedDay[] {
  return plan.rounds.flatMap(({ day, beds }) => {
    const mixes = beds
      .filter((one) => bed === undefined || one.bed === bed)
      .flatMap((one) => one.mixes)
      .filter(
        ({ feedings }) =>
          planting === undefined || feedings.some((feeding) => feeding.planting === planting),
      );
    return mixes.length === 0 ? [] : [{ day, mixes, isWritten: !mixes.some(isOpen) }];
  });
}

/** Other feeds of a day, given or not. */
export function feedsOfDay(plan: Plan, on: Day): string[] {
  const feeds = plan.rounds.find(({ day }) => day === on)?.feeds ?? [];
  return [...new Set(feeds.map(({ feed }) => feed))];
}

/**
 * That day, where calcium is fed on it; else the nearest day of a feeding not written down yet, at most
 * half the shortest gap between its feedings away. Of two as near, the earlier.
 *
 * @param isComingMeant a feeding may also have been early, for a round that was still to come then
 */
export function roundOf(plan: Plan, on: Day, of: WhatOf, isComingMeant: boolean): Day | undefined {
  const days = fedDays(plan, of);
  if (days.some(({ day }) => day === on)) return on;
  const shortest = new Map(plan.rules.map(({ id, interval }) => [id, interval.shortestDays]));
  const near = days
    .filter(({ day, isWritten }) => !isWritten && (isComingMeant || day < on))
    .map(({ day, mixes }) => ({
      day,
      away: Math.abs(daysBetween(day, on)),
      gap: Math.min(
        ...mixes.flatMap((mix) => mix.feedings.map(({ rule }) => shortest.get(rule) ?? 0)),
      ),
    }))
    .filter(({ away, gap }) => away <= gap / 2);
  return near.sort((a, b) => a.away - b.away || byText(a.day, b.day))[0]?.day;
}

/** A day on which something is fed; of other feeds alone where it names some. */
export interface NearDay {
  readonly day: Day;
  readonly feeds: readonly string[];
}

/** The last day before and the first after; where all is meant, those of other feeds too. */
export function daysAround(plan: Plan, on: Day, of: WhatOf): NearDay[] {
  const calcium = fedDays(plan, of).map(({ day }) => ({ day, feeds: [] }));
  const isAll = of.planting === undefined && of.bed === undefined;
  const others = (isAll ? plan.rounds : [])
    .filter(({ beds }) => beds.length === 0)
    .map(({ day }) => ({ day, feeds: feedsOfDay(plan, day) }));
  return [calcium, others]
    .flatMap((days) => [days.findLast(({ day }) => day < on), days.find(({ day }) => day > on)])
    .flatMap((near) => near ?? [])
    .sort((a, b) => byText(a.day, b.day));
}
