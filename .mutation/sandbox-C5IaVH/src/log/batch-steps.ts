/** The edits that write a step of a batch into the garden file. */
// @ts-nocheck

import { addDays, day as dayOf, type Day } from "../dates.js";
import {
  type Amounts,
  batchStepKeys,
  type BatchStepKey,
  decimal,
  type GardenEdit,
  mlPerCup,
  type NewBatch,
} from "../garden/index.js";
import { given } from "../values.js";
import type { KnownBatch, NamedBatch } from "./batch-names.js";

export interface StepDone {
  readonly step: BatchStepKey;
  readonly on: Day;
  /** The grower named the day: a written one that differs is corrected. */
  readonly isDayNamed: boolean;
  /** With its unit. */
  readonly volume?: string;
}

/** What a batch is called in the file, with the edits; none where the file says so already. */
export interface StepEdits {
  readonly id: string;
  readonly edits: readonly GardenEdit[];
  /** The day on which it stands there already. */
  readonly writtenOn?: string;
}

/**
 * @param name of a batch that is neither listed nor known
 * @returns undefined where such a batch has no volume
 */
export function stepEdits(
  name: string,
  { listed, known }: NamedBatch,
  { step, on, isDayNamed, volume }: StepDone,
  amounts: Amounts,
): StepEdits | undefined {
  if (listed === undefined) {
    const size = volume ?? (known && writtenVolume(known, amounts));
    if (size === undefined) return undefined;
    const id = known?.id ?? name;
    const days = step === "missed" ? {} : daysBefore(step, on, known);
    const batch: NewBatch = { id, ...days, [step]: on, volume: size };
    return { id, edits: [{ kind: "list-batch", batch }] };
  }
  const { id } = listed;
  const written = listed[step];
  const isDayNew = written === undefined || (isDayNamed && written !== on);
  const isVolumeNew = volume !== undefined && volume !== listed.volume;
  return {
    id,
    edits: [
      ...(isDayNew ? [setIn(id, step, on)] : []),
      ...(isVolumeNew ? [setIn(id, "volume", volume)] : []),
    ],
    ...given({ writtenOn: written }),
  };
}

/** The edits that make a bottle of a batch, or the day before which it cannot be one. */
export interface Bottling {
  readonly edits: readonly GardenEdit[];
  readonly notBefore?: Day;
}

/**
 * What makes a bottle of a batch from which stock was poured; no edits where it is one.
 *
 * @param reactionDays from its acid going in to straining, at the least
 */
export function bottling(
  { listed, known }: NamedBatch,
  pouredOn: Day,
  reactionDays: number,
  amounts: Amounts,
): Bottling {
  if ((listed?.made ?? listed?.missed ?? listed?.thrown_away) !== undefined) return { edits: [] };
  const acidIn = listed?.acid_in === undefined ? known?.acidIn : dayOf(listed.acid_in);
  const notBefore = acidIn && addDays(acidIn, reactionDays);
  if (notBefore !== undefined && pouredOn < notBefore) return { edits: [], notBefore };
  const made = known === undefined || known.made > pouredOn ? pouredOn : known.made;
  if (listed !== undefined) return { edits: [setIn(listed.id, "made", made)] };
  if (known === undefined) return { edits: [] };
  const batch: NewBatch = { id: known.id, made, volume: writtenVolume(known, amounts) };
  return { edits: [{ kind: "list-batch", batch }] };
}

/** Takes the last day of a listed batch back, and the batch with its only one. */
export function undoEdit(listed: NonNullable<NamedBatch["listed"]>): {
  readonly edit: GardenEdit;
  readonly step?: BatchStepKey;
} {
  const { id } = listed;
  const done = batchStepKeys.filter((key) => listed[key] !== undefined);
  const last = done.at(-1);
  return last === undefined || done.length === 1
    ? { edit: { kind: "unlist-batch", id }, ...given({ step: last }) }
    : { edit: { kind: "set-in-batch", id, key: last }, step: last };
}

function setIn(id: string, key: BatchStepKey | "volume", value: string): GardenEdit {
  return { kind: "set-in-batch", id, key, value };
}

/** Steps before it, on the days planned for them. */
function daysBefore(
  step: BatchStepKey,
  on: Day,
  known: KnownBatch | undefined,
): Partial<Record<BatchStepKey, Day>> {
  if (known === undefined) return {};
  const planned = { shells_out: known.shellsOut, acid_in: known.acidIn, made: known.made };
  const steps = (["shells_out", "acid_in", "made"] as const).filter(
    (key) => batchStepKeys.indexOf(key) < batchStepKeys.indexOf(step) && planned[key] <= on,
  );
  return Object.fromEntries(steps.map((key) => [key, planned[key]]));
}

/** In the garden's own measures, in as few figures as tell the same tenth of a mL. */
export function writtenVolume(
  { volumeMl }: Pick<KnownBatch, "volumeMl">,
  amounts: Amounts,
): string {
  const inMl = decimal(volumeMl, 1);
  if (amounts !== "us") return `${inMl} mL`;
  const [short = "", exact] = [2, 3].map((places) => decimal(volumeMl / mlPerCup, places));
  return `${decimal(Number(short) * mlPerCup, 1) === inMl ? short : exact} cups`;
}
