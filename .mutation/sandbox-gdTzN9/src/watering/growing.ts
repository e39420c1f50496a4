/** What grows in a bed, and from when to when. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { addDays, type Day, type DaySpan, earlier, later } from "../dates.js";
import type { Bed, Planting } from "../garden/index.js";
import { lifeSpan, type PlantingLife } from "../stages/index.js";

/** A planting and its life. */
export interface Grown {
  readonly planting: Planting;
  /** Absent where the planting is only listed. */
  readonly crop: Crop | undefined;
  readonly life: PlantingLife;
}

/**
 * While it stands in the bed, from sowing there or planting out on, within the season; undefined for
 * never. A perennial drinks on after its last pick, until frost, removal or the season's end.
 */
export function growingSpan(
  { planting, crop, life }: Pick<Grown, "planting" | "crop" | "life">,
  season: DaySpan,
): DaySpan | undefined {
  const span = lifeSpan(life.spans);
  if (span === undefined || crop === undefined || span.to < season.from) return undefined;
  const { sown, transplanted, removed } = planting;
  const plantedOut =
    transplanted ??
    (crop.countedFrom === "transplanting" && sown !== undefined
      ? addDays(sown, crop.transplantAgeDays)
      : span.from);
  const from = [span.from, plantedOut, season.from].reduce(later);
  const standsOn = crop.perennial && life.last.by !== "frost";
  const standsTo = removed === undefined ? season.to : addDays(removed, -1);
  const to = earlier(standsOn ? standsTo : span.to, season.to);
  return from <= to ? { from, to } : undefined;
}

/** Ground that a planting has, and whether it was reckoned from usual spacing. */
export interface Ground {
  readonly areaM2: number;
  readonly isBySpacing: boolean;
}

/** A planting while it grows, with what is known of its ground. */
export interface Standing extends Grown {
  readonly crop: Crop;
  readonly span: DaySpan;
  readonly ground: Ground | undefined;
}

/** Of a bed's plantings, by their ids; without those of which it is not known. */
export function groundsOf(
  bed: Pick<Bed, "areaM2">,
  grown: readonly Pick<Grown, "planting" | "crop" | "life">[],
  season: DaySpan,
): ReadonlyMap<string, Ground> {
  const all = grown.flatMap((one) => {
    const span = growingSpan(one, season);
    return span === undefined ? [] : [{ ...one, span }];
  });
  return new Map(
    all.flatMap((one) => {
      const ground = groundOf(one, all, bed);
      return ground === undefined ? [] : [[one.planting.id, ground] as const];
    }),
  );
}

interface OnGround extends Pick<Grown, "planting" | "crop"> {
  readonly span: DaySpan;
}

/**
 * A planting's own ground, else that of its plants at usual spacing; less where all that grows at one
 * time would have more than the bed. Nothing where neither is known.
 */
export function groundOf(
  one: OnGround,
  all: readonly OnGround[],
  { areaM2 }: Pick<Bed, "areaM2">,
): Ground | undefined {
  const own = ownGround(one);
  if (own === undefined || areaM2 === undefined) return own;
  const most = Math.max(
    ...all
      .map(({ span }) => span.from)
      .filter((day) => one.span.from <= day && day <= one.span.to)
      .map((day) => groundOn(day, all)),
    groundOn(one.span.from, all),
  );
  return { ...own, areaM2: own.areaM2 * Math.min(1, areaM2 / most) };
}

function groundOn(day: Day, all: readonly OnGround[]): number {
  return all
    .filter(({ span }) => span.from <= day && day <= span.to)
    .reduce((sum, one) => sum + (ownGround(one)?.areaM2 ?? 0), 0);
}

function ownGround({ planting, crop }: Pick<OnGround, "planting" | "crop">): Ground | undefined {
  const { areaM2, plants } = planting;
  if (areaM2 !== undefined) return { areaM2, isBySpacing: false };
  const each = crop?.areaM2PerPlant?.usual;
  return plants === undefined || each === undefined
    ? undefined
    : { areaM2: plants * each, isBySpacing: true };
}
