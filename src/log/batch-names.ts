/** Batches by the names people give them: those that the garden file lists, and those of a plan. */
import type { Batch, GardenFile } from "../compiled/garden-file.js";
import { type Day, daysBetween } from "../dates.js";
import type { PublishedBatch } from "../published/index.js";
import type { Plan } from "../season/index.js";
import { grouped } from "../values.js";

/** A batch of a plan, to come or published before, as far as it can be listed. */
export type KnownBatch = Omit<PublishedBatch, "first" | "withdrawn">;

/** What was done to a batch: one of its visits, or stock was poured from it. */
export type DoneToBatch = "shellsOut" | "acidIn" | "made" | "poured";

/**
 * One batch of each id. Where nobody keeps a calendar each plan draws its ids anew, so that several may
 * have a batch of that id, on days of its own: it is then the one that fits best with what was done.
 *
 * @param plans those that may have told the grower, the likeliest first
 */
export function knownBatches(
  plans: readonly Pick<Plan, "published">[],
  done: DoneToBatch,
  on: Day,
): readonly KnownBatch[] {
  const daysOff = (batch: KnownBatch): number =>
    Math.abs(daysBetween(batch[done === "poured" ? "made" : done], on));
  const isLater = ({ made }: KnownBatch): number => Number(done === "poured" && made > on);
  const all = plans.flatMap(({ published }) => published.batches);
  return [...grouped(all, ({ id }) => id).values()].map(
    (same): KnownBatch =>
      [...same].sort((a, b) => isLater(a) - isLater(b) || daysOff(a) - daysOff(b))[0] ?? same[0],
  );
}

/** Whether what someone calls a batch (`2`, `Batch 2`, its id) is that id or number. */
export function isCalled(name: string, word: string | number): boolean {
  const number = /^(?:batch\s*)?#?(\d+)$/i.exec(name.trim())?.[1];
  return String(word) === name || String(word) === number;
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
  const isNamed = (word: string | number | undefined): boolean =>
    word !== undefined && isCalled(name, word);
  const own =
    listed.find(({ id }) => id === name) ?? listed.find(({ planned }) => isNamed(planned));
  const isSame = (batch: KnownBatch, { id, planned }: Batch): boolean =>
    id === batch.id || [batch.id, String(batch.number)].includes(String(planned));
  const planned = known.find((batch) =>
    own === undefined ? isNamed(batch.id) || isNamed(batch.number) : isSame(batch, own),
  );
  // One that was listed early may be in no plan any more; what was drawn for it tells its number.
  const there =
    own ??
    listed.find((batch) =>
      planned === undefined ? isNamed(batch.id.replace(/^batch-/, "")) : isSame(planned, batch),
    );
  return {
    ...(there === undefined ? {} : { listed: there }),
    ...(planned === undefined ? {} : { known: planned }),
  };
}
