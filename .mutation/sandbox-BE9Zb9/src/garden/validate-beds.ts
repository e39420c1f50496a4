// @ts-nocheck
import type { Bed as BedFile, BedCover } from "../compiled/garden-file.js";
import type { DaySpan } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import type { Bed } from "./garden.js";
import { validateCover } from "./validate-cover.js";
import type { Soil } from "./soil.js";
import { areaBounds, validatePlanting } from "./validate-planting.js";
import { validateAmendments, validateSoil } from "./validate-soil.js";
import { validateWatering } from "./validate-watering.js";
import type { Validation } from "./validation.js";
import { watered } from "./water.js";

/** Beds with their plantings; what a wrong part leaves out is reported, never guessed. */
export function validateBeds(
  beds: readonly Entry<BedFile>[],
  gardensSoil: Soil,
  season: DaySpan | undefined,
  validation: Validation,
): Bed[] {
  const known = { bed: new Set<string>(), planting: new Set<string>() };
  const unique = (kind: keyof typeof known, id: string, entry: Entry<unknown>): void => {
    if (id !== "" && known[kind].has(id))
      entry.report({
        code: "duplicate-id",
        path: entry.at("id"),
        message: `the ${kind} id \`${id}\` is used twice`,
        mend: `give this ${kind} an id of its own, like \`${id}-2\``,
      });
    known[kind].add(id);
  };
  return beds.map((entry) => {
    const id = entry.text("id") ?? "";
    unique("bed", id, entry);
    const drafts = entry.entries("plantings").map((planting) => {
      const draft = validatePlanting(planting, id, season, validation);
      unique("planting", draft.id, planting);
      return draft;
    });
    const areaM2 = entry.quantity("area", "area", areaBounds);
    const cover = validateCover(entry.raw.cover, entry.inner("cover") as Entry<BedCover>, season);
    const plantings = watered(drafts, entry, areaM2, validation);
    const soil = soilOf(validateSoil(entry.inner("soil"), season), gardensSoil);
    return {
      id,
      name: entry.text("name") ?? id,
      ...given({ areaM2, cover, watering: validateWatering(entry, plantings) }),
      ...(Object.keys(soil).length > 0 ? { soil } : {}),
      amendments: validateAmendments(entry.entries("amendments"), areaM2, season),
      plantings,
    };
  });
}

/** The bed's keys go before the garden's; a test of the garden's soil says nothing of another kind. */
function soilOf(beds: Soil, { test, ...gardens }: Soil): Soil {
  const isOther =
    beds.kind !== undefined &&
    beds.kind !== gardens.kind &&
    (gardens.kind !== undefined || beds.kind === "potting-mix");
  return { ...gardens, ...(isOther ? {} : given({ test })), ...beds };
}
