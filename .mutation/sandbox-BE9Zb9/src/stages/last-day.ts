/** The last day of a planting's life in the bed, and what sets it. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { addDays, type Day, later } from "../dates.js";
import type { Planting } from "../garden/index.js";
import type { Place } from "./place.js";

export interface LastDay {
  readonly day: Day;
  readonly by: "lengths" | "picked-until" | "frost" | "removed" | "season";
}

/**
 * What is picked again and again is picked until the grower says, or frost, removal or the season's
 * end; other crops live as long as their stage lengths, tender ones at most until frost.
 *
 * @param byLengths where the stage lengths end
 */
export function lastDay(
  planting: Planting,
  crop: Crop,
  place: Pick<Place, "season" | "firstFrostAfter">,
  begin: Day,
  byLengths: Day,
): LastDay {
  const { pickedUntil, removed, seen, transplanted } = planting;
  // What was seen on a day was alive then, and did not freeze before.
  const alive = [transplanted ?? begin, ...seen.map(({ on }) => on)].reduce(later);
  const ends: LastDay[] = [];
  if (removed !== undefined) ends.push({ day: addDays(removed, -1), by: "removed" });
  if (!crop.course.pickedRepeatedly) ends.push({ day: byLengths, by: "lengths" });
  else if (pickedUntil !== undefined) ends.push({ day: pickedUntil, by: "picked-until" });
  // What was over before the season began is of an earlier year.
  else if (later(byLengths, alive) < place.season.from)
    ends.push({ day: byLengths, by: "lengths" });
  else ends.push({ day: later(place.season.to, alive), by: "season" });
  const frost =
    pickedUntil === undefined && crop.tender ? place.firstFrostAfter?.(alive) : undefined;
  if (frost !== undefined) ends.push({ day: frost, by: "frost" });
  return ends.reduce((first, end) => (end.day < first.day ? end : first));
}
