/** Water and spray liquid of the plantings of a bed, L in one feeding. */
import type { Bed as BedFile } from "../compiled/garden-file.js";
import { findCrop } from "../crops/index.js";
import type { FilePath } from "../problem.js";
import { given } from "../values.js";
import { volumeText } from "./amounts.js";
import type { Entry } from "./fields.js";
import type { Amounts, Planting } from "./garden.js";
import type { WaterAmount } from "./quantity.js";
import { mlPerCup } from "./us-measures.js";
import type { PlantingDraft } from "./validate-planting.js";
import type { Validation } from "./validation.js";

interface BedWater {
  readonly entry: Entry<BedFile>;
  readonly water: WaterAmount | undefined;
  readonly areaM2: number | undefined;
  /** Of the bed's water, 0 to 1. */
  readonly share: number;
}

/** A thousand cans: no grower carries more to one planting. */
const mostL = 10_000;

/** A default is told as an assumption. */
export function watered(
  drafts: readonly PlantingDraft[],
  entry: Entry<BedFile>,
  areaM2: number | undefined,
  validation: Validation,
): Planting[] {
  const water = entry.water("water");
  const shares = sharesOf(drafts);
  if (water !== undefined && drafts.length > 1 && shares.by !== "area")
    validation.assume(
      `bed ${entry.text("id") ?? ""}: its water is shared out ${shares.by === "plants" ? "by the number of plants" : "in equal parts"}`,
    );
  return drafts.map((draft, i) =>
    plantingWater(
      { ...draft, areaM2: draft.areaM2 ?? (drafts.length === 1 ? areaM2 : undefined) },
      { entry, water, areaM2, share: shares.parts[i] ?? 1 },
      validation,
    ),
  );
}

function plantingWater(
  { waterGiven, sprayGiven, areaM2, ...planting }: PlantingDraft,
  bed: BedWater,
  { tables, amounts, assume }: Validation,
): Planting {
  const crop = findCrop(planting.crop, tables.catalogue);
  const bedPath = bed.entry.at("water");
  const inAll = (amount: WaterAmount, path: FilePath): number => {
    if (amount.per === "whole") return amount.liters;
    const count = amount.per === "plant" ? planting.plants : areaM2;
    if (count !== undefined) return amount.liters * count;
    bed.entry.report({
      code: "water",
      path,
      message: `the water is ${amount.per === "depth" ? "a depth" : `per ${amount.per}`}, but ${amount.per === "plant" ? "the number of plants" : "the area"} of ${planting.id} is not given`,
      mend:
        amount.per === "plant"
          ? "add `plants: 6` to it"
          : path === bedPath
            ? "add `area: 2 m2` to it or to its bed"
            : "add `area: 2 m2` to it",
    });
    return amount.liters;
  };
  const shareOfBed = (amount: WaterAmount): number => {
    if (amount.per === "whole") return amount.liters * bed.share;
    return amount.per !== "plant" && areaM2 === undefined && bed.areaM2 !== undefined
      ? amount.liters * bed.areaM2 * bed.share
      : inAll(amount, bedPath);
  };
  const assumedWater = (): number => {
    // A planting of no known crop is not fed: nothing need be assumed of it.
    if (crop === undefined) return 0;
    const { water_l_per_m2, water_us_l_per_m2 } = tables.usual;
    const perPlantL = handyL(crop.waterLPerPlant, amounts);
    const perPlant = `${volumeText(perPlantL, amounts)} of water`;
    const [perM2, perArea] =
      amounts === "us"
        ? [water_us_l_per_m2, "0.1 gal of water per ft2"]
        : [water_l_per_m2, `${volumeText(water_l_per_m2, amounts)} of water per m2`];
    const [liters, words] =
      planting.plants !== undefined
        ? [perPlantL * planting.plants, `${perPlant} a plant, usual for ${crop.name}`]
        : areaM2 !== undefined
          ? [perM2 * areaM2, `${perArea}, as none is given`]
          : [perPlantL, `${perPlant} for one plant, as neither water, plants nor area is given`];
    assume(`${planting.id}: ${words}`);
    return liters;
  };

  const waterL = waterGiven
    ? inAll(waterGiven, [...planting.path, "water"])
    : bed.water
      ? shareOfBed(bed.water)
      : assumedWater();
  const sprayL = sprayGiven
    ? inAll(sprayGiven, [...planting.path, "spray"])
    : handyL(crop?.sprayLPerPlant ?? 0, amounts) * (planting.plants ?? 1);
  for (const [key, liters] of Object.entries({ water: waterL, spray: sprayL }))
    if (liters > mostL)
      bed.entry.report({
        code: "absurd-size",
        path: key === "water" && !waterGiven && bed.water ? bedPath : planting.path,
        message: `${planting.id} would get ${liters < 1e9 ? Math.round(liters) : "endless"} L of ${key} in one feeding`,
        mend: `check the water, the plants and the area; up to ${mostL} L is understood`,
      });
  return {
    ...planting,
    ...given({ areaM2 }),
    waterL,
    sprayL,
    sprayIsUsual: sprayGiven === undefined,
  };
}

/** The usual water of a crop as it is measured: in US measures by the quarter cup, the cup, the pint. */
function handyL(liters: number, amounts: Amounts): number {
  if (amounts !== "us") return liters;
  const cupL = mlPerCup / 1000;
  const stepL = liters < cupL ? cupL / 4 : liters < 4 * cupL ? cupL / 2 : 2 * cupL;
  return Math.round(liters / stepL) * stepL;
}

/** How plantings share the water of their bed: by area or plants where all give them. */
function sharesOf(drafts: readonly PlantingDraft[]): {
  by: "area" | "plants" | "equal";
  parts: number[];
} {
  const partsBy = (key: "areaM2" | "plants"): number[] | undefined => {
    const sizes = drafts.flatMap((draft) => draft[key] ?? []);
    const all = sizes.reduce((sum, size) => sum + size, 0);
    return sizes.length === drafts.length && all > 0 ? sizes.map((size) => size / all) : undefined;
  };
  const byArea = partsBy("areaM2");
  if (byArea !== undefined) return { by: "area", parts: byArea };
  const byPlants = partsBy("plants");
  return byPlants !== undefined
    ? { by: "plants", parts: byPlants }
    : { by: "equal", parts: drafts.map(() => 1 / drafts.length) };
}
