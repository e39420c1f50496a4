/** What a schema cannot say about batches in hand. */
import type { Day } from "../dates.js";
import type { BatchInHand } from "../garden/index.js";
import type { Finding } from "../problem.js";

type BatchCheck = (
  batch: BatchInHand,
  today: Day,
) => (Omit<Finding, "path"> & { key: string }) | undefined;

const checks: readonly BatchCheck[] = [
  ({ made }, today) =>
    made > today
      ? {
          key: "made",
          code: "batch-in-future",
          message: `made on ${made}, which is after today, ${today}`,
          mend: "give the day it was strained and bottled; batches to come are planned, not listed",
        }
      : undefined,
  ({ volumeMl }) =>
    volumeMl > 0
      ? undefined
      : {
          key: "volume",
          code: "batch-volume",
          message: `a batch of ${volumeMl} mL`,
          mend: "give what was made, more than 0 mL",
        },
  ({ leftMl }) =>
    leftMl >= 0
      ? undefined
      : {
          key: "left",
          code: "batch-left-negative",
          message: `${leftMl} mL left`,
          mend: "give what is left, 0 mL or more",
        },
  ({ leftMl, volumeMl }) =>
    leftMl > volumeMl
      ? {
          key: "left",
          code: "batch-left-over-volume",
          message: `${leftMl} mL left of a batch of ${volumeMl} mL`,
          mend: "correct `left` or `volume`",
        }
      : undefined,
  ({ made, useBy }) =>
    useBy !== undefined && useBy < made
      ? {
          key: "use_by",
          code: "batch-use-by-before-made",
          message: `use by ${useBy}, but made on ${made}`,
          mend: "correct `use_by` or `made`",
        }
      : undefined,
  ({ made, leftOn }, today) =>
    leftOn !== undefined && (leftOn < made || leftOn > today)
      ? {
          key: "left_on",
          code: "batch-left-on",
          message: `left measured on ${leftOn}, which is not between its making on ${made} and today, ${today}`,
          mend: "give the day on which you looked how much was left",
        }
      : undefined,
  ({ strengthGPerL }) =>
    strengthGPerL !== undefined && !(strengthGPerL > 0)
      ? {
          key: "strength",
          code: "batch-strength",
          message: `a strength of ${strengthGPerL} g/L`,
          mend: "give the calcium measured, more than 0 g/L, or leave it out to have it computed",
        }
      : undefined,
];

/** Everything wrong with the batches in hand, in their order; paths point into the garden file. */
export function checkBatches(batches: readonly BatchInHand[], today: Day): Finding[] {
  const seen = new Set<string>();
  return batches.flatMap((batch) => {
    const findings = checks.flatMap((check): Finding[] => {
      const found = check(batch, today);
      if (found === undefined) return [];
      const { key, ...words } = found;
      return [{ ...words, path: [...batch.path, key] }];
    });
    if (seen.has(batch.id))
      findings.push({
        code: "duplicate-batch",
        path: [...batch.path, "id"],
        message: `a second batch named ${batch.id}`,
        mend: "give every batch a name of its own, as on its bottles",
      });
    seen.add(batch.id);
    return findings;
  });
}
