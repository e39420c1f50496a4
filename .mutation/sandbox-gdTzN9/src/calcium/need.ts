/** What a planting takes up in a season, by published figures of whole plants. */
// @ts-nocheck

import { type Crop, type CropCatalogue, findCrop } from "../crops/index.js";
import { given } from "../values.js";
import { type CalciumAmount, type Extent, spread } from "./extent.js";
import { type Range, scaled, widest } from "./range.js";
import type { CalciumTables, UptakeRow } from "./tables.js";

export interface PublishedNeed extends CalciumAmount {
  /** Name of the crop whose figures stand in, as no figure of this one was found. */
  readonly borrowedFrom?: string;
  /** No figure is of a source that carries it. */
  readonly isWeak?: true;
  readonly sources: readonly string[];
}

/** Undefined where no figure of the crop, or of a near kin, was found. */
export function publishedNeed(
  crop: Crop,
  extent: Extent,
  { uptake: { uptake, borrowed } }: Pick<CalciumTables, "uptake">,
  catalogue: CropCatalogue,
): PublishedNeed | undefined {
  const lender = borrowed.find((row) => row.crop === crop.key)?.from;
  const rows = uptake.filter((row) => row.crop === (lender ?? crop.key));
  if (rows.length === 0) return undefined;
  const wholeG = widest(rows.flatMap((row) => ofPlanting(row, extent)));
  return {
    ...(wholeG === undefined ? asPublished(rows) : spread(wholeG, extent)),
    ...given({ borrowedFrom: lender && (findCrop(lender, catalogue)?.name ?? lender) }),
    ...(rows.some((row) => row.source_status === "read") ? {} : { isWeak: true as const }),
    sources: rows.map((row) => row.source),
  };
}

/** By plants and by area, which differ where it is planted wider or closer than in the publication. */
function ofPlanting(row: UptakeRow, { plants, areaM2 }: Extent): Range[] {
  return [
    ...(row.per_plant_g && plants !== undefined ? [scaled(row.per_plant_g, plants)] : []),
    ...(row.per_m2_g && areaM2 !== undefined ? [scaled(row.per_m2_g, areaM2)] : []),
  ];
}

function asPublished(rows: readonly UptakeRow[]): CalciumAmount {
  return given({
    perPlantG: widest(rows.flatMap((row) => row.per_plant_g ?? [])),
    perM2G: widest(rows.flatMap((row) => row.per_m2_g ?? [])),
  });
}
