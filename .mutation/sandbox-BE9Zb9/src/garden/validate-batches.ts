/** Listed batches: what is known of one is the days of its steps, and no word of its state. */
// @ts-nocheck

import type { Batch } from "../compiled/garden-file.js";
import type { Day } from "../dates.js";
import { byText, given } from "../values.js";
import type { Entry } from "./fields.js";
import {
  acids,
  type BatchBegun,
  type BatchDropped,
  type BatchInHand,
  keptIn,
  type StockSettings,
  strainers,
} from "./garden.js";
import type { Bounds } from "./quantity.js";

export const volumeBounds: Bounds = { least: 0.01, most: 1000, words: "10 mL to 1,000 L" };
const leftBounds: Bounds = { least: 0, most: 1000, words: "0 to 1,000 L" };
const strengthBounds: Bounds = { least: 10, most: 100_000, words: "0.01 to 100 g/L" };

type Usual = Pick<StockSettings, "acid" | "keep">;
type Listed = Pick<StockSettings, "batches" | "begun" | "dropped">;

export function validateBatches(entries: readonly Entry<Batch>[], usual: Usual): Listed {
  const ids = new Set<string>();
  for (const entry of entries) {
    const id = entry.text("id") ?? "";
    if (id !== "" && ids.has(id))
      entry.report({
        code: "duplicate-batch",
        path: entry.at("id"),
        message: `a second batch named ${id}`,
        mend: "give every batch a name of its own, as on its bottles",
      });
    ids.add(id);
  }
  const listed = entries.map((entry) => validateBatch(entry, usual));
  return {
    batches: listed.flatMap(({ inHand }) => inHand ?? []),
    begun: listed.flatMap(({ begun }) => begun ?? []),
    dropped: listed.flatMap(({ dropped }) => dropped ?? []),
  };
}

interface OneBatch {
  readonly inHand?: BatchInHand;
  readonly begun?: BatchBegun;
  readonly dropped?: BatchDropped;
}

function validateBatch(batch: Entry<Batch>, usual: Usual): OneBatch {
  const { shellsOut, acidIn, made, thrownAway, missed } = daysOf(batch);
  const volumeL = batch.quantity("volume", "volume", volumeBounds);
  const bottled = bottledOf(batch, volumeL, made);
  const { planned } = batch.raw;
  const named = {
    id: batch.text("id") ?? "",
    ...given({
      planned:
        typeof planned === "string" || typeof planned === "number" ? String(planned) : undefined,
    }),
    path: batch.path,
  };
  if (made === undefined && missed !== undefined)
    return { dropped: { ...named, on: missed, how: "missed" } };
  if (made === undefined && thrownAway !== undefined)
    return { dropped: { ...named, on: thrownAway, how: "thrown-away" } };
  const making = {
    ...named,
    ...given({ shellsOut, acidIn }),
    volumeMl: (volumeL ?? 0) * 1000,
    acid: batch.among(acids, "acid") ?? usual.acid,
    keep: batch.among(keptIn, "keep") ?? usual.keep,
  };
  return made === undefined
    ? { begun: making }
    : { inHand: { ...making, made, ...given({ thrownAway }), ...bottled } };
}

const stepKeys = ["shells_out", "acid_in", "made", "thrown_away", "missed"] as const;

type StepDays = Partial<Record<"shellsOut" | "acidIn" | "made" | "thrownAway" | "missed", Day>>;

/** Rising days; one is there at least. A wrong date is told of, and makes no other trouble. */
function daysOf(batch: Entry<Batch>): StepDays {
  const days = stepKeys.flatMap((key) => {
    const day = batch.day(key);
    return day === undefined ? [] : [{ key, day }];
  });
  if (stepKeys.every((key) => batch.raw[key] === undefined))
    batch.report({
      code: "batch-no-day",
      path: batch.path,
      message: "the batch has no day on which anything was done",
      mend: "give the day of what was done last: `shells_out`, `acid_in` or `made`; batches to come are planned, not listed",
    });
  for (const [i, { key, day }] of days.entries()) {
    const before = days[i - 1];
    if (before !== undefined && byText(day, before.day) < 0)
      batch.report({
        code: "batch-days",
        path: batch.at(key),
        message: `\`${key}\` on ${day}, before \`${before.key}\` on ${before.day}`,
        mend: "correct one of the two days",
      });
  }
  const bottled = (["made", "thrown_away"] as const).find((key) => batch.raw[key] !== undefined);
  if (batch.raw.missed !== undefined && bottled !== undefined)
    batch.report({
      code: "batch-days",
      path: batch.at("missed"),
      message: `the batch is both \`missed\` and \`${bottled}\``,
      mend: "keep one of the two: `missed` is of a batch that was never bottled",
    });
  const dayOf = (key: (typeof stepKeys)[number]): Day | undefined =>
    days.find((step) => step.key === key)?.day;
  return given({
    shellsOut: dayOf("shells_out"),
    acidIn: dayOf("acid_in"),
    made: dayOf("made"),
    thrownAway: dayOf("thrown_away"),
    missed: dayOf("missed"),
  });
}

/** What only a bottled batch has. */
function bottledOf(
  batch: Entry<Batch>,
  volumeL: number | undefined,
  made: Day | undefined,
): Pick<BatchInHand, "leftMl" | "leftOn" | "useBy" | "strengthGPerL" | "ph" | "strained"> {
  const useBy = batch.day("use_by");
  const leftL = batch.quantity("left", "volume", leftBounds);
  const strengthMgPerL = batch.quantity("strength", "concentration", strengthBounds);
  const early = (["left", "left_on", "use_by", "strength", "ph", "strained"] as const).find(
    (key) => batch.raw[key] !== undefined,
  );
  if (batch.raw.made === undefined && early !== undefined)
    batch.report({
      code: "batch-not-made",
      path: batch.at(early),
      message: `the batch has \`${early}\` and is not bottled`,
      mend: "give the day it was bottled with `made`, or take this out",
    });
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
    leftMl: (leftL ?? volumeL ?? 0) * 1000,
    ...given({
      useBy,
      leftOn: batch.day("left_on"),
      strengthGPerL: strengthMgPerL === undefined ? undefined : strengthMgPerL / 1000,
      ph: batch.number("ph"),
      strained: batch.among(strainers, "strained"),
    }),
  };
}
