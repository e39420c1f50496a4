/** Which published day an entry of the log stands for. */
// @ts-nocheck

import { type Day, daysBetween } from "../dates.js";

/** Entries of one day that speak of one planting and route. */
export interface Claimant {
  readonly on: Day;
  /** The published day that the entry names. */
  readonly round?: Day;
}

/**
 * An entry stands for the published day it names, else for the nearest that no other entry claims,
 * at most so many days away; nearer pairs come first, then earlier ones.
 *
 * @param published sorted
 * @returns the published day of each claimant that has one
 */
export function claimedDays<C extends Claimant>(
  claimants: readonly C[],
  published: readonly Day[],
  withinDays: number,
): Map<C, Day> {
  const claimed = new Map<C, Day>();
  const taken = new Set<Day>();
  const claim = (claimant: C, day: Day): void => {
    if (claimed.has(claimant) || taken.has(day)) return;
    claimed.set(claimant, day);
    taken.add(day);
  };
  for (const claimant of claimants)
    if (claimant.round !== undefined && published.includes(claimant.round))
      claim(claimant, claimant.round);
  const pairs = claimants.flatMap((claimant) =>
    claimant.round !== undefined
      ? []
      : published.map((day) => ({
          claimant,
          day,
          distance: Math.abs(daysBetween(claimant.on, day)),
        })),
  );
  pairs.sort((a, b) => a.distance - b.distance);
  for (const { claimant, day, distance } of pairs) if (distance <= withinDays) claim(claimant, day);
  return claimed;
}
