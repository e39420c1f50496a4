import type { Bed as BedFile } from "../compiled/garden-file.js";
import type { DaySpan } from "../dates.js";
import type { FilePath } from "../problem.js";
import { given } from "../values.js";
import { list, type Loose, record, text } from "./fields.js";
import type { Bed, Planting } from "./garden.js";
import { areaBounds, type PlantingDraft, validatePlanting } from "./validate-planting.js";
import type { Validation } from "./validation.js";
import { plantingWater } from "./water.js";

/** Beds with their plantings; what a wrong part leaves out is reported, never guessed. */
export function validateBeds(
  beds: readonly unknown[],
  season: DaySpan | undefined,
  validation: Validation,
): Bed[] {
  const { fields } = validation;
  const bedIds = new Map<string, FilePath>();
  const plantingIds = new Map<string, FilePath>();
  const unique = (known: Map<string, FilePath>, kind: string, id: string, path: FilePath): void => {
    if (id !== "" && known.has(id))
      fields.report({
        code: "duplicate-id",
        path: [...path, "id"],
        message: `the ${kind} id \`${id}\` is used twice`,
        mend: `give this ${kind} an id of its own, like \`${id}-2\``,
      });
    known.set(id, path);
  };
  return beds.map((value, index) => {
    const path: FilePath = ["beds", index];
    const raw = record<BedFile>(value);
    const id = text(raw.id) ?? "";
    unique(bedIds, "bed", id, path);
    const plantings = list(raw.plantings).map((planting, i) => {
      const plantingPath = [...path, "plantings", i];
      const valid = validatePlanting(planting, plantingPath, id, season, validation);
      unique(plantingIds, "planting", valid.id, plantingPath);
      return valid;
    });
    return bedOf(raw, id, plantings, path, validation);
  });
}

function bedOf(
  raw: Loose<BedFile>,
  id: string,
  drafts: readonly PlantingDraft[],
  path: FilePath,
  validation: Validation,
): Bed {
  const { fields } = validation;
  const areaM2 = fields.quantity(raw.area, [...path, "area"], "area", areaBounds);
  const bedWater = fields.water(raw.water, [...path, "water"]);
  const name = text(raw.name) ?? id;
  const shares = sharesOf(drafts);
  if (bedWater !== undefined && drafts.length > 1 && shares.by !== "area")
    validation.assume(
      `bed ${id}: its water is shared out ${shares.by === "plants" ? "by the number of plants" : "in equal parts"}`,
    );
  const plantings = drafts.map(
    ({ waterGiven, sprayGiven, areaM2: ownAreaM2, ...planting }, i): Planting => {
      const amounts = plantingWater(
        {
          planting,
          waterGiven,
          sprayGiven,
          areaM2: ownAreaM2 ?? (drafts.length === 1 ? areaM2 : undefined),
        },
        {
          water: bedWater,
          waterPath: [...path, "water"],
          areaM2,
          share: shares.parts[i] ?? 1,
        },
        validation,
      );
      return { ...planting, ...amounts };
    },
  );
  return { id, name, ...given({ areaM2 }), plantings };
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
