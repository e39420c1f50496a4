/** Crops that never flower before another one that was planted out on the same day. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { addDays, type Day, daysBetween, later } from "../dates.js";
import type { Planting } from "../garden/index.js";
import type { Begin } from "./begin.js";
import type { Place } from "./place.js";
import type { StageSpan } from "./stage-span.js";
import type { WarmStart } from "./warm-starts.js";

/** Nothing of it matters to the stages. */
const bare = {
  waterL: 0,
  sprayL: 0,
  sprayIsUsual: true,
  level: 1,
  feed: "by-rule",
  seen: [],
} as const;

type LifeOf = (
  planting: Planting,
  crop: Crop,
  place: Place,
) => { readonly spans: readonly StageSpan[] };

/** Flowering no sooner than the other's; what comes after it moves as far, or follows its own warmth. */
export function notBeforeOther(
  starts: readonly WarmStart[],
  planting: Planting,
  crop: Crop,
  begin: Begin,
  place: Place,
  lifeOf: LifeOf,
): readonly WarmStart[] {
  const other = crop.warmth?.flowersAfter && place.here?.cropOf(crop.warmth.flowersAfter);
  const at = crop.course.stages.findIndex(({ stage }) => stage === "flowering");
  const own = starts[at];
  const isSeen = planting.seen.some(
    ({ stage }) => crop.course.stages.findIndex((s) => s.stage === stage) >= at,
  );
  if (!other || own === undefined || isSeen || place.here?.wish === "off") return starts;
  const plantedOut = planting.transplanted ?? addDays(begin.day, crop.transplantAgeDays);
  const { id, name, bed, path } = planting;
  const twin = lifeOf(
    {
      ...bare,
      id,
      name,
      bed,
      path,
      crop: other.key,
      cropWord: other.name,
      transplanted: plantedOut,
    },
    other,
    place,
  );
  const from = twin.spans.find(({ stage }) => stage === "flowering")?.from;
  if (from === undefined || from <= own.day) return starts;
  const shiftDays = daysBetween(own.day, from);
  const moved = `no sooner than a ${other.name} planted out on the same day`;
  let before: Day = from;
  return starts.map((start, i): WarmStart => {
    if (i < at) return { ...start, day: start.day < from ? start.day : from };
    const day = start.warmth?.isFollowed && i > at ? start.day : addDays(start.day, shiftDays);
    before = later(day, before);
    return { ...start, day: before, moved, isByWarmth: true };
  });
}
