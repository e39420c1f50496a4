/** Batches by the names people give them: those that the garden file lists, and those of a plan. */
import type { Batch, GardenFile } from "../compiled/garden-file.js";
import type { Day } from "../dates.js";
import type { Plan } from "../season/index.js";
import { dayOfStep } from "../stock/index.js";

/** A batch of a plan, as far as it can be listed. */
export interface KnownBatch {
  readonly id: string;
  /** What people call it, where it has been published. */
  readonly number?: number;
  readonly volumeMl: number;
  readonly shellsOut: Day;
  readonly acidIn: Day;
  readonly made: Day;
}

export function knownBatches({ stock }: Plan): KnownBatch[] {
  return (stock?.making.batches ?? []).map((batch) => ({
    id: batch.id,
    volumeMl: batch.volumeMl,
    shellsOut: dayOfStep(batch, "dry-shells"),
    acidIn: dayOfStep(batch, "add-acid"),
    made: dayOfStep(batch, "strain"),
  }));
}

/** What a name stands for: a batch of the file, of a plan, or one that is in both. */
export interface NamedBatch {
  readonly listed?: Batch;
  readonly known?: KnownBatch;
}

/**
 * The batch of that id or number (`2`, `Batch 2`); ids of the file come first.
 *
 * @param file sound
 */
export function batchNamed(
  name: string,
  file: GardenFile,
  known: readonly KnownBatch[],
): NamedBatch {
  const listed = file.stock?.batches ?? [];
  const number = /^(?:batch\s*)?#?(\d+)$/i.exec(name.trim())?.[1];
  const isNamed = (word: string | number | undefined): boolean =>
    word !== undefined && (String(word) === name || String(word) === number);
  const own =
    listed.find(({ id }) => id === name) ?? listed.find(({ planned }) => isNamed(planned));
  const isSame = (batch: KnownBatch, { id, planned }: Batch): boolean =>
    [id, String(planned)].some((word) => word === batch.id || word === String(batch.number));
  const planned = known.find((batch) =>
    own === undefined ? isNamed(batch.id) || isNamed(batch.number) : isSame(batch, own),
  );
  const there = own ?? (planned && listed.find((batch) => isSame(planned, batch)));
  return {
    ...(there === undefined ? {} : { listed: there }),
    ...(planned === undefined ? {} : { known: planned }),
  };
}
