import type { Batch, Stock } from "../compiled/garden-file.js";
import { dayFromNumber } from "../dates.js";
import { given } from "../values.js";
import { among, type Fields, list, number, record, text } from "./fields.js";
import { acids, type BatchInHand, keptIn, pourStyles, type StockSettings } from "./garden.js";
import type { Validation } from "./validation.js";

const volumeBounds = { least: 0.01, most: 1000, words: "10 mL to 1,000 L" };
const leftBounds = { least: 0, most: 1000, words: "0 to 1,000 L" };

export function validateStock(
  value: unknown,
  { fields, tables: { usual } }: Validation,
): StockSettings {
  const raw = record<Stock>(value);
  const ml = (amount: unknown, key: string, bounds = volumeBounds): number | undefined => {
    const liters = fields.quantity(amount, ["stock", key], "volume", bounds);
    return liters === undefined ? undefined : liters * 1000;
  };
  const vinegar = fields.share(raw.vinegar, ["stock", "vinegar"], {
    least: 0.01,
    most: 0.25,
    words: "1 % to 25 %",
  });
  const settings = {
    acid: among(acids, raw.acid) ?? ("citric" as const),
    keep: among(keptIn, raw.keep) ?? ("shelf" as const),
  };
  const ids = new Set<string>();
  return {
    ...settings,
    citricForm: raw.acid_form === "monohydrate" ? "monohydrate" : "anhydrous",
    vinegarPercent: vinegar === undefined ? usual.vinegar_percent : vinegar * 100,
    pour: among(pourStyles, raw.pour) ?? "shaken",
    bottleMl: ml(raw.bottles, "bottles") ?? usual.bottle_ml,
    largestBatchMl: ml(raw.largest_batch, "largest_batch") ?? usual.largest_batch_ml,
    ...given({
      shellsPerWeek: number(raw.shells_per_week),
      shellsInHand: number(raw.shells_in_hand),
    }),
    shellPurity:
      fields.share(raw.shell_purity, ["stock", "shell_purity"], {
        least: 0.5,
        most: 1,
        words: "50 % to 100 %",
      }) ?? usual.shell_purity_percent / 100,
    batches: list(raw.batches).map((batch, i) => {
      const valid = validateBatch(batch, i, settings, fields);
      if (valid.id !== "" && ids.has(valid.id))
        fields.report({
          code: "duplicate-batch",
          path: [...valid.path, "id"],
          message: `a second batch named ${valid.id}`,
          mend: "give every batch a name of its own, as on its bottles",
        });
      ids.add(valid.id);
      return valid;
    }),
  };
}

function validateBatch(
  item: unknown,
  index: number,
  garden: Pick<StockSettings, "acid" | "keep">,
  fields: Fields,
): BatchInHand {
  const path = ["stock", "batches", index];
  const batch = record<Batch>(item);
  const made = fields.day(batch.made, [...path, "made"]);
  const useBy = fields.day(batch.use_by, [...path, "use_by"]);
  const volumeL = fields.quantity(batch.volume, [...path, "volume"], "volume", volumeBounds);
  const leftL = fields.quantity(batch.left, [...path, "left"], "volume", leftBounds);
  const strengthMgPerL = fields.quantity(batch.strength, [...path, "strength"], "concentration", {
    least: 10,
    most: 100_000,
    words: "0.01 to 100 g/L",
  });
  if (leftL !== undefined && volumeL !== undefined && leftL > volumeL)
    fields.report({
      code: "batch-left-over-volume",
      path: [...path, "left"],
      message: `${text(batch.left)} left of a batch of ${text(batch.volume)}`,
      mend: "correct `left` or `volume`",
    });
  if (useBy !== undefined && made !== undefined && useBy < made)
    fields.report({
      code: "batch-use-by-before-made",
      path: [...path, "use_by"],
      message: `use by ${useBy}, but made on ${made}`,
      mend: "correct `use_by` or `made`",
    });
  return {
    id: text(batch.id) ?? "",
    // A file with a wrong date is refused as a whole: this stand-in is never seen.
    made: made ?? dayFromNumber(0),
    volumeMl: (volumeL ?? 0) * 1000,
    leftMl: (leftL ?? volumeL ?? 0) * 1000,
    acid: among(acids, batch.acid) ?? garden.acid,
    keep: among(keptIn, batch.keep) ?? garden.keep,
    ...given({
      useBy,
      leftOn: fields.day(batch.left_on, [...path, "left_on"]),
      strengthGPerL: strengthMgPerL === undefined ? undefined : strengthMgPerL / 1000,
      ph: number(batch.ph),
    }),
    path,
  };
}
