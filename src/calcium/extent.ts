/** How much ground a planting has, and what an amount comes to on it. */
import type { Crop } from "../crops/index.js";
import type { Bed, Planting } from "../garden/index.js";
import { given } from "../values.js";
import { type Range, scaled } from "./range.js";

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

/**
 * A bed's area is never shared out by the number of plants, which may stand wide or close; but none has
 * more than the bed.
 */
export function extentOf({ plants, areaM2 }: Planting, bed: Bed, crop: Crop): Extent {
  const perPlant = crop.areaM2PerPlant?.usual;
  if (areaM2 !== undefined || plants === undefined || perPlant === undefined)
    return given({ plants, areaM2 });
  const usualM2 = Math.min(plants * perPlant, bed.areaM2 ?? Infinity);
  return { plants, areaM2: usualM2, areaIsUsual: true };
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
