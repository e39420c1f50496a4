/** The amount that the grower gave, in each week in which something grows. */
// @ts-nocheck

import type { DaySpan } from "../dates.js";
import type { Bed, WateringWish } from "../garden/index.js";
import { byText, given } from "../values.js";
import type { Standing } from "./growing.js";
import type { BedWatering, WateringWeek } from "./watering.js";
import { weeksOf } from "./weeks.js";

/** What is poured on a bed is shared by the ground of what grows there that week. */
export function byAmount(
  bed: Pick<Bed, "areaM2">,
  wish: Exclude<WateringWish, "auto">,
  standing: readonly Standing[],
): Omit<BedWatering, "bed" | "bedName"> {
  const growing = weeksOfAll(standing);
  const weeks = growing.flatMap(({ week, those }): WateringWeek[] => {
    const waterL = pouredL(bed, wish, those);
    return waterL === undefined ? [] : [{ ...week, waterL }];
  });
  const plantings = standing.flatMap((one) => {
    const own = growing
      .filter(({ those }) => those.includes(one))
      .map(({ week, those }): WateringWeek | undefined => {
        const poured = weeks.find(({ from }) => from === week.from);
        const share = shareOf(one, those);
        return poured && share !== undefined
          ? { ...week, waterL: poured.waterL * share }
          : undefined;
      });
    const known = own.filter((week) => week !== undefined);
    if (known.length < own.length) return [];
    const areaM2 = one.ground?.areaM2;
    return [{ planting: one.planting.id, ...given({ areaM2 }), weeks: known, usualWeeks: known }];
  });
  const told = plantings.map(({ planting }) => planting);
  return {
    by: "amount",
    plantings,
    unknown: standing
      .filter(({ planting }) => !told.includes(planting.id))
      .map(({ planting }) => ({
        planting: planting.id,
        why: "its share of the bed's water is not known, as not all ground is (`area:`)",
      })),
    assumptions: [],
    weeks,
    usualWeeks: weeks,
  };
}

interface GrowingWeek {
  readonly week: DaySpan;
  readonly those: readonly Standing[];
}

function weeksOfAll(standing: readonly Standing[]): GrowingWeek[] {
  const byStart = new Map(
    standing.flatMap(({ span }) => weeksOf(span).map((week) => [week.from, week])),
  );
  return [...byStart.values()]
    .sort((a, b) => byText(a.from, b.from))
    .map((week) => ({
      week,
      those: standing.filter(({ span }) => span.from <= week.to && week.from <= span.to),
    }));
}

function pouredL(
  { areaM2 }: Pick<Bed, "areaM2">,
  wish: Exclude<WateringWish, "auto">,
  those: readonly Standing[],
): number | undefined {
  if ("weeklyL" in wish) return wish.weeklyL;
  const ground = areaM2 ?? groundOfAll(those);
  return ground === undefined ? undefined : wish.weeklyMm * ground;
}

function shareOf({ ground }: Standing, those: readonly Standing[]): number | undefined {
  if (those.length === 1) return 1;
  const all = groundOfAll(those);
  return ground === undefined || all === undefined ? undefined : ground.areaM2 / all;
}

function groundOfAll(those: readonly Standing[]): number | undefined {
  const areas = those.flatMap(({ ground }) => ground?.areaM2 ?? []);
  return areas.length < those.length ? undefined : areas.reduce((sum, area) => sum + area, 0);
}
