import { dayFromNumber } from "../dates.js";
import { given, list, number, record, text } from "./fields.js";
import type { BatchInHand, StockSettings } from "./garden.js";
import type { Batch, Stock } from "./garden-file.js";
import type { Validation } from "./validate.js";

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
    acid: raw.acid === "vinegar" ? ("vinegar" as const) : ("citric" as const),
    keep: raw.keep === "fridge" ? ("fridge" as const) : ("shelf" as const),
  };
  return {
    ...settings,
    citricForm: raw.acid_form === "monohydrate" ? "monohydrate" : "anhydrous",
    vinegarPercent: vinegar === undefined ? usual.vinegar_percent : vinegar * 100,
    pour: raw.pour === "clear" ? "clear" : "shaken",
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
    batches: list(raw.batches).map((batch, i) => validateBatch(batch, i, settings)),
  };

  function validateBatch(
    item: unknown,
    index: number,
    garden: Pick<StockSettings, "acid" | "keep">,
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
    return {
      id: text(batch.id) ?? "",
      // A file with a wrong date is refused as a whole: this stand-in is never seen.
      made: made ?? dayFromNumber(0),
      volumeMl: (volumeL ?? 0) * 1000,
      leftMl: (leftL ?? volumeL ?? 0) * 1000,
      acid: batch.acid === "vinegar" || batch.acid === "citric" ? batch.acid : garden.acid,
      keep: batch.keep === "fridge" || batch.keep === "shelf" ? batch.keep : garden.keep,
      ...given({
        useBy,
        leftOn: fields.day(batch.left_on, [...path, "left_on"]),
        strengthGPerL: strengthMgPerL === undefined ? undefined : strengthMgPerL / 1000,
        ph: number(batch.ph),
      }),
      path,
    };
  }
}
