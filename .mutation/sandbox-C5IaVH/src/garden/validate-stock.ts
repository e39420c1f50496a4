// @ts-nocheck
import type { Stock } from "../compiled/garden-file.js";
import { given } from "../values.js";
import { eggSize } from "./egg-sizes.js";
import type { Entry } from "./fields.js";
import { acids, eggSizes, keptIn, pourStyles, type StockSettings } from "./garden.js";
import type { Bounds } from "./quantity.js";
import { validateBatches, volumeBounds } from "./validate-batches.js";
import type { Validation } from "./validation.js";

const readyBeforeBounds: Bounds = { least: 0, most: 30, words: "0 to 30 days" };

const vinegarBounds: Bounds = { least: 0.01, most: 0.25, words: "1 % to 25 %" };
const purityBounds: Bounds = { least: 0.5, most: 1, words: "50 % to 100 %" };

export function validateStock(
  entry: Entry<Stock>,
  { tables: { usual, eggSizes: sizes }, amounts }: Validation,
): StockSettings {
  const ml = (key: "bottles" | "largest_batch"): number | undefined => {
    const liters = entry.quantity(key, "volume", volumeBounds);
    return liters === undefined ? undefined : liters * 1000;
  };
  const [usualBottleMl, usualBatchMl] =
    amounts === "us"
      ? [usual.bottle_us_ml, usual.largest_batch_us_ml]
      : [usual.bottle_ml, usual.largest_batch_ml];
  const vinegar = entry.share("vinegar", vinegarBounds);
  const settings = {
    acid: entry.among(acids, "acid") ?? ("citric" as const),
    keep: entry.among(keptIn, "keep") ?? ("shelf" as const),
  };
  return {
    ...settings,
    citricForm: entry.raw.acid_form === "monohydrate" ? "monohydrate" : "anhydrous",
    vinegarPercent: vinegar === undefined ? usual.vinegar_percent : vinegar * 100,
    pour: entry.among(pourStyles, "pour") ?? "shaken",
    bottleMl: ml("bottles") ?? usualBottleMl,
    largestBatchMl: ml("largest_batch") ?? usualBatchMl,
    eggs: eggSize(sizes, amounts, entry.among(eggSizes, "eggs")),
    ...given({
      readyBeforeDays: entry.days("ready_before", readyBeforeBounds),
      shellsPerWeek: entry.number("shells_per_week"),
      shellsInHand: entry.number("shells_in_hand"),
    }),
    shellPurity: entry.share("shell_purity", purityBounds) ?? usual.shell_purity_percent / 100,
    ...validateBatches(entry.entries("batches"), settings),
  };
}
