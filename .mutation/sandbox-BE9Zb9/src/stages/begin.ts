/** Day 0 of a planting's stage lengths. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { addDays, type Day } from "../dates.js";
import { type Planting, shortDate } from "../garden/index.js";
import { given } from "../values.js";
import { bloomOfYear } from "./bloom.js";
import { offsetDays } from "./lengths.js";
import type { Place } from "./place.js";

export interface Begin {
  /** Day 0 of the stage lengths. */
  readonly day: Day;
  readonly isBloom?: boolean;
  /** Full bloom that warmth brought. */
  readonly isByWarmth?: boolean;
  /** What was derived, as a tail of the origin. */
  readonly how?: string;
  readonly sownInNursery?: Day;
  readonly assumption?: string;
}

export function beginOfCount(planting: Planting, crop: Crop, place: Place): Begin {
  const { sown, transplanted, seen } = planting;
  const age = crop.transplantAgeDays;
  if (crop.countedFrom === "bloom") return bloomBegin(planting, crop, place);
  if (crop.countedFrom !== "transplanting" && sown !== undefined) {
    // A young plant that waits in its tray grows no further than one planted out in time.
    const inTime = transplanted === undefined ? sown : addDays(transplanted, -age);
    if (inTime <= sown) return { day: sown };
    return {
      day: inTime,
      ...given({ sownInNursery: seen.some((s) => s.stage === "seedling") ? undefined : sown }),
      how: `; counted from ${shortDate(inTime, place.amounts ?? "metric")}, ${age} days before transplanting, the usual age of young ${crop.name} plants`,
    };
  }
  if (crop.countedFrom === "transplanting" && transplanted !== undefined)
    return { day: transplanted, ...given({ sownInNursery: sown }) };
  if (transplanted !== undefined)
    return {
      day: addDays(transplanted, -age),
      how: `; sown about ${age} days before transplanting, usual for ${crop.name}`,
    };
  if (sown !== undefined)
    return {
      day: addDays(sown, age),
      sownInNursery: sown,
      how: `; transplanted about ${age} days after sowing, usual for ${crop.name}`,
    };
  const [sighting] = seen;
  if (sighting === undefined) throw new Error(`${planting.id} has no beginning: was it validated?`);
  return { day: beginFromSighting(sighting, crop) };
}

function bloomBegin(planting: Planting, crop: Crop, place: Place): Begin {
  const { sown, transplanted, bloom } = planting;
  if (bloom !== undefined) return { day: bloom, isBloom: true };
  const [seen] = planting.seen;
  if (seen !== undefined) return { day: beginFromSighting(seen, crop) };
  const { day, isByWarmth, how } = bloomOfYear(planting, crop, place);
  const planted = sown ?? transplanted;
  // Planted after bloom, a strawberry makes leaves first and then flowers; a tree has missed it.
  if (planted !== undefined && planted > day && crop.course.stages[0]?.stage !== "flowering")
    return {
      day: planted,
      how: `; begun by planting on ${shortDate(planted, place.amounts ?? "metric")}`,
    };
  const toDo = isByWarmth
    ? "; write the real day (`bloom:`) when you see it"
    : ", as no `bloom` of this season is given";
  return {
    day,
    isBloom: true,
    isByWarmth,
    how: `; ${how}`,
    assumption: `${planting.id}: ${how}${toDo}`,
  };
}

/** Roughly, by the default lengths: what was seen moves the stages to their days afterwards. */
function beginFromSighting(seen: Planting["seen"][number], crop: Crop): Day {
  const stage = crop.course.stages.find((s) => s.stage === seen.stage);
  const [lengths] = crop.lengths;
  return addDays(seen.on, stage && lengths ? -Math.round(offsetDays(stage, lengths)) : 0);
}
