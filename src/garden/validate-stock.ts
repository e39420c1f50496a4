import type { Batch, Stock } from "../compiled/garden-file.js";
import { dayFromNumber } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import {
  acids,
  type BatchInHand,
  keptIn,
  pourStyles,
  type StockSettings,
  strainers,
} from "./garden.js";
import type { Bounds } from "./quantity.js";
import type { Validation } from "./validation.js";

const volumeBounds: Bounds = { least: 0.01, most: 1000, words: "10 mL to 1,000 L" };
const leftBounds: Bounds = { least: 0, most: 1000, words: "0 to 1,000 L" };

const vinegarBounds: Bounds = { least: 0.01, most: 0.25, words: "1 % to 25 %" };
const purityBounds: Bounds = { least: 0.5, most: 1, words: "50 % to 100 %" };
const strengthBounds: Bounds = { least: 10, most: 100_000, words: "0.01 to 100 g/L" };

export function validateStock(
  entry: Entry<Stock>,
  { tables: { usual } }: Validation,
): StockSettings {
  const ml = (key: "bottles" | "largest_batch"): number | undefined => {
    const liters = entry.quantity(key, "volume", volumeBounds);
    return liters === undefined ? undefined : liters * 1000;
  };
  const vinegar = entry.share("vinegar", vinegarBounds);
  const settings = {
    acid: entry.among(acids, "acid") ?? ("citric" as const),
    keep: entry.among(keptIn, "keep") ?? ("shelf" as const),
  };
  const ids = new Set<string>();
  return {
    ...settings,
    citricForm: entry.raw.acid_form === "monohydrate" ? "monohydrate" : "anhydrous",
    vinegarPercent: vinegar === undefined ? usual.vinegar_percent : vinegar * 100,
    pour: entry.among(pourStyles, "pour") ?? "shaken",
    bottleMl: ml("bottles") ?? usual.bottle_ml,
    largestBatchMl: ml("largest_batch") ?? usual.largest_batch_ml,
    ...given({
      shellsPerWeek: entry.number("shells_per_week"),
      shellsInHand: entry.number("shells_in_hand"),
    }),
    shellPurity: entry.share("shell_purity", purityBounds) ?? usual.shell_purity_percent / 100,
    batches: entry.entries("batches").map((batch) => {
      const valid = validateBatch(batch, settings);
      if (valid.id !== "" && ids.has(valid.id))
        batch.report({
          code: "duplicate-batch",
          path: batch.at("id"),
          message: `a second batch named ${valid.id}`,
          mend: "give every batch a name of its own, as on its bottles",
        });
      ids.add(valid.id);
      return valid;
    }),
  };
}

function validateBatch(
  batch: Entry<Batch>,
  garden: Pick<StockSettings, "acid" | "keep">,
): BatchInHand {
  const [made, useBy] = [batch.day("made"), batch.day("use_by")];
  const volumeL = batch.quantity("volume", "volume", volumeBounds);
  const leftL = batch.quantity("left", "volume", leftBounds);
  const strengthMgPerL = batch.quantity("strength", "concentration", strengthBounds);
  if (leftL !== undefined && volumeL !== undefined && leftL > volumeL)
    batch.report({
      code: "batch-left-over-volume",
      path: batch.at("left"),
      message: `${batch.text("left")} left of a batch of ${batch.text("volume")}`,
      mend: "correct `left` or `volume`",
    });
  if (useBy !== undefined && made !== undefined && useBy < made)
    batch.report({
      code: "batch-use-by-before-made",
      path: batch.at("use_by"),
      message: `use by ${useBy}, but made on ${made}`,
      mend: "correct `use_by` or `made`",
    });
  return {
    id: batch.text("id") ?? "",
    // A file with a wrong date is refused as a whole: this stand-in is never seen.
    made: made ?? dayFromNumber(0),
    volumeMl: (volumeL ?? 0) * 1000,
    leftMl: (leftL ?? volumeL ?? 0) * 1000,
    acid: batch.among(acids, "acid") ?? garden.acid,
    keep: batch.among(keptIn, "keep") ?? garden.keep,
    ...given({
      useBy,
      leftOn: batch.day("left_on"),
      strengthGPerL: strengthMgPerL === undefined ? undefined : strengthMgPerL / 1000,
      ph: batch.number("ph"),
      strained: batch.among(strainers, "strained"),
    }),
    path: batch.path,
  };
}
