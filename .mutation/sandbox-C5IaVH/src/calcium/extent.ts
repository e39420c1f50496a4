/** How much ground a planting has, and what an amount comes to on it. */
// @ts-nocheck

import type { Planting } from "../garden/index.js";
import { given } from "../values.js";
import type { Ground } from "../watering/index.js";
import { type Range, scaled, summed } from "./range.js";

export interface Extent {
  readonly plants?: number;
  readonly areaM2?: number;
  /** The area is not the grower's word, but plants times the usual spacing of the crop. */
  readonly areaIsUsual?: true;
}

/** Calcium in g; each only where plants or area are known. */
export interface CalciumAmount {
  readonly wholeG?: Range;
  readonly perPlantG?: Range;
  readonly perM2G?: Range;
}

/** A bed's area is never shared out by the number of plants, which may stand wide or close. */
export function extentOf({ plants }: Planting, ground: Ground | undefined): Extent {
  return given({
    plants,
    areaM2: ground?.areaM2,
    areaIsUsual: ground?.isBySpacing === true ? (true as const) : undefined,
  });
}

/** g of the whole planting -> the same for a plant and a m2. */
export function spread(wholeG: Range, { plants, areaM2 }: Extent): CalciumAmount {
  return {
    wholeG,
    ...given({
      perPlantG: plants === undefined ? undefined : scaled(wholeG, 1 / plants),
      perM2G: areaM2 === undefined ? undefined : scaled(wholeG, 1 / areaM2),
    }),
  };
}

/** g on each m2 -> the same for the whole planting and a plant. */
export function onGround(perM2G: Range, extent: Extent): CalciumAmount {
  const { areaM2 } = extent;
  return areaM2 === undefined ? { perM2G } : { ...spread(scaled(perM2G, areaM2), extent), perM2G };
}

/** g of all of them; undefined where one is not known, or there is none. */
export function togetherG(amounts: readonly (CalciumAmount | undefined)[]): Range | undefined {
  const known = amounts.flatMap((amount) => amount?.wholeG ?? []);
  return known.length === amounts.length && known.length > 0 ? summed(known) : undefined;
}
