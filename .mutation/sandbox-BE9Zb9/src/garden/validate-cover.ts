// @ts-nocheck
import type { BedCover as CoverFile } from "../compiled/garden-file.js";
import type { DaySpan } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import { type Cover, covers } from "./garden.js";
import { inReach } from "./planting-dates.js";
import type { Bounds } from "./quantity.js";

const warmerBounds: Bounds = { least: 0.5, most: 15, words: "0.5 to 15 C warmer" };

/** Of a bed: one word, or with its days and how much warmer it is. */
export function validateCover(
  word: unknown,
  entry: Entry<CoverFile>,
  season: DaySpan | undefined,
): Cover | undefined {
  const kind = covers.find((one) => one === word) ?? entry.among(covers, "kind");
  const { from, to } = entry.span("cover");
  const warmerC = entry.temperatureDifference("warmer", warmerBounds);
  if (season !== undefined) {
    if (from !== undefined)
      inReach(entry, ["from"], "covered from", from, { season, anyYear: true });
    if (to !== undefined) inReach(entry, ["to"], "covered until", to, { season, anyLater: true });
  }
  return kind && { kind, ...given({ from, to, warmerC }) };
}
