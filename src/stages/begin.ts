/** Day 0 of a planting's stage lengths. */
import type { Crop } from "../crops/index.js";
import { addDays, type Day, dayNumber, later, parseDay } from "../dates.js";
import type { Planting } from "../garden/index.js";
import { given } from "../values.js";
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
      how: `; counted from ${inTime}, ${age} days before transplanting, the usual age of young ${crop.name} plants`,
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
  const byWarmth = warmBloom(planting, crop, place);
  const usual = byWarmth?.day ?? usualBloom(crop, place);
  const planted = sown ?? transplanted;
  // Planted after bloom, a strawberry makes leaves first and then flowers; a tree has missed it.
  if (planted !== undefined && planted > usual && crop.course.stages[0]?.stage !== "flowering")
    return { day: planted, how: `; begun by planting on ${planted}` };
  return {
    day: usual,
    isBloom: true,
    isByWarmth: byWarmth !== undefined,
    assumption:
      byWarmth?.assumption ??
      `${planting.id}: full bloom on ${usual}, usual for ${crop.name} in temperate gardens, as no \`bloom\` of this season is given`,
  };
}

/** Full bloom by the published sum from New Year (in the south, mid-year), near the usual day. */
function warmBloom(
  { id, warmth }: Planting,
  crop: Crop,
  { here, ...place }: Place,
): { day: Day; assumption: string } | undefined {
  const sum = crop.warmth?.sums.find(({ from }) => from === "new-year");
  const wish = warmth ?? here?.wish;
  if (here === undefined || crop.warmth === undefined || sum === undefined || wish === "off")
    return undefined;
  const calendar = usualBloom(crop, place);
  const newYear = place.hemisphere === "south" ? "07-01" : "01-01";
  const from = parseDay(`${calendar.slice(0, 4)}-${newYear}`);
  if (from === undefined) return undefined;
  const until = addDays(calendar, here.mostShiftDays);
  const reached = here.warmth.reached(sum.degreeDays, { from, until }, crop.warmth, here.cover);
  const day = later(reached ?? until, addDays(calendar, -here.mostShiftDays));
  return {
    day,
    assumption: `${id}: full bloom about ${day} by warmth (${sum.degreeDays} degree days above ${crop.warmth.baseC} degrees C since ${from}: ${sum.source}); ${calendar} is usual for ${crop.name} in temperate gardens: write the real day (\`bloom:\`) when you see it`,
  };
}

/** Roughly, by the default lengths: what was seen moves the stages to their days afterwards. */
function beginFromSighting(seen: Planting["seen"][number], crop: Crop): Day {
  const stage = crop.course.stages.find((s) => s.stage === seen.stage);
  const [lengths] = crop.lengths;
  return addDays(seen.on, stage && lengths ? -Math.round(offsetDays(stage, lengths)) : 0);
}

/** The usual bloom that falls in the season or, failing that, is nearest to its beginning. */
function usualBloom(crop: Crop, { hemisphere, season }: Place): Day {
  const [month, dayOfMonth] = (crop.usualBloomNorth ?? "05-01").split("-").map(Number);
  const shifted = hemisphere === "south" ? (((month ?? 5) + 5) % 12) + 1 : (month ?? 5);
  const year = Number(season.from.slice(0, 4));
  const pad = (n: number): string => String(n).padStart(2, "0");
  const candidates = [year - 1, year, year + 1, year + 2].flatMap(
    (y) => parseDay(`${y}-${pad(shifted)}-${pad(Math.min(dayOfMonth ?? 1, 28))}`) ?? [],
  );
  const middle = Math.round((dayNumber(season.from) + dayNumber(season.to)) / 2);
  const inSeason = candidates.find((d) => d >= addDays(season.from, -60) && d <= season.to);
  const byDistance = [...candidates].sort(
    (a, b) => Math.abs(dayNumber(a) - middle) - Math.abs(dayNumber(b) - middle),
  );
  return inSeason ?? byDistance[0] ?? season.from;
}
