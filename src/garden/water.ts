import { findCrop } from "../crops/index.js";
import type { FilePath } from "../problem.js";
import { volumeText } from "./amounts.js";
import type { Planting } from "./garden.js";
import type { WaterAmount } from "./quantity.js";
import type { Validation } from "./validation.js";

interface PlantingNeeds {
  readonly planting: Omit<Planting, "waterL" | "sprayL" | "sprayIsUsual">;
  readonly waterGiven: WaterAmount | undefined;
  readonly sprayGiven: WaterAmount | undefined;
  readonly areaM2: number | undefined;
}

interface BedWater {
  readonly water: WaterAmount | undefined;
  readonly waterPath: FilePath;
  readonly areaM2: number | undefined;
  /** Of the bed's water, 0 to 1. */
  readonly share: number;
}

/** A thousand cans: no grower carries more to one planting. */
const mostL = 10_000;

/** Water and spray liquid of one feeding of a planting, L; a default is told as an assumption. */
export function plantingWater(
  needs: PlantingNeeds,
  bed: BedWater,
  { fields, tables, amounts, assume }: Validation,
): Pick<Planting, "waterL" | "sprayL" | "sprayIsUsual"> {
  const { planting } = needs;
  const crop = findCrop(planting.crop, tables.catalogue);
  const inAll = (amount: WaterAmount, path: FilePath): number => {
    if (amount.per === "whole") return amount.liters;
    const count = amount.per === "plant" ? planting.plants : needs.areaM2;
    if (count !== undefined) return amount.liters * count;
    fields.report({
      code: "water",
      path,
      message: `the water is per ${amount.per}, but ${amount.per === "plant" ? "the number of plants" : "the area"} of ${planting.id} is not given`,
      mend:
        amount.per === "plant"
          ? "add `plants: 6` to it"
          : path === bed.waterPath
            ? "add `area: 2 m2` to it or to its bed"
            : "add `area: 2 m2` to it",
    });
    return amount.liters;
  };
  const shareOfBed = (amount: WaterAmount): number => {
    if (amount.per === "plant") return inAll(amount, bed.waterPath);
    if (amount.per === "whole") return amount.liters * bed.share;
    if (needs.areaM2 !== undefined) return amount.liters * needs.areaM2;
    if (bed.areaM2 !== undefined) return amount.liters * bed.areaM2 * bed.share;
    return inAll(amount, bed.waterPath);
  };

  const assumedWater = (): number => {
    if (planting.plants !== undefined && crop) {
      assume(
        `${planting.id}: ${volumeText(crop.waterLPerPlant, amounts)} of water a plant, usual for ${crop.name}`,
      );
      return crop.waterLPerPlant * planting.plants;
    }
    if (needs.areaM2 !== undefined) {
      assume(
        `${planting.id}: ${volumeText(tables.usual.water_l_per_m2, amounts)} of water per m2, as none is given`,
      );
      return tables.usual.water_l_per_m2 * needs.areaM2;
    }
    const liters = crop?.waterLPerPlant ?? tables.usual.water_l_per_m2;
    assume(
      `${planting.id}: ${volumeText(liters, amounts)} of water for one plant, as neither water, plants nor area is given`,
    );
    return liters;
  };

  const waterL = needs.waterGiven
    ? inAll(needs.waterGiven, [...planting.path, "water"])
    : bed.water
      ? shareOfBed(bed.water)
      : assumedWater();
  const sprayL = needs.sprayGiven
    ? inAll(needs.sprayGiven, [...planting.path, "spray"])
    : (crop?.sprayLPerPlant ?? 0) * (planting.plants ?? 1);
  for (const [key, liters] of Object.entries({ water: waterL, spray: sprayL }))
    if (liters > mostL)
      fields.report({
        code: "absurd-size",
        path: key === "water" && !needs.waterGiven && bed.water ? bed.waterPath : planting.path,
        message: `${planting.id} would get ${Math.round(liters)} L of ${key} in one feeding`,
        mend: `check the water, the plants and the area; up to ${mostL} L is understood`,
      });
  return { waterL, sprayL, sprayIsUsual: needs.sprayGiven === undefined };
}
