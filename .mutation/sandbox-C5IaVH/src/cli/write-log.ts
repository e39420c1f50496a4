/** Writes down what was given, done or seen: a garden file is changed whole or not at all. */
// @ts-nocheck

import type { GardenFile } from "../compiled/garden-file.js";
import { decodeText, editGarden, type GardenEdit, type NewLogEntry } from "../garden/index.js";
import { gardenOfSource, gardenOfText, type ReadGarden } from "../plan-garden.js";
import type { Problem, Result } from "../problem.js";
import { loadTables } from "../tables.js";
import { byteOrderMarkOf, readBytes, whileLocked, writeText } from "./files.js";
import { type LoadedGarden, type LoadOptions, planRead } from "./load.js";
import { withMend } from "./report.js";
import type { Shell } from "./shell.js";

/** A garden file as it is now, sound. */
export interface GardenNow extends ReadGarden {
  readonly file: string;
  /** As the file has it. */
  readonly written: GardenFile;
}

/** What is to be changed in the file. */
export interface LogWish {
  /** Empty where there is nothing to write. */
  readonly edits: readonly GardenEdit[];
  readonly entries?: readonly NewLogEntry[];
  /** Said beside it. */
  readonly remarks?: readonly string[];
}

export interface LogAsk<W extends LogWish> {
  /** What to write into the file as it is now. */
  readonly wish: (now: GardenNow) => Promise<Result<W>>;
  /** How the garden is planned with it. */
  readonly plan: LoadOptions;
  readonly isDryRun?: boolean;
}

export type LogOutcome<W extends LogWish> =
  | {
      readonly kind: "written";
      readonly wish: W;
      /** The garden with it. */
      readonly after: LoadedGarden;
      readonly undo: readonly GardenEdit[];
    }
  | { readonly kind: "nothing"; readonly wish: W }
  | {
      readonly kind: "refused";
      readonly problems: readonly Problem[];
      /** The file is in order without it: the places are those of the text that was to be written. */
      readonly isOfNewText: boolean;
    };

/** Bottles of the entries written that nobody has listed, a line each. */
export function unknownBatches<W extends LogWish>({
  wish: { entries = [] },
  after,
}: LogOutcome<W> & { readonly kind: "written" }): string[] {
  return after.plan.warnings
    .filter(
      ({ code, day }) => code === "batch-unknown" && entries.some((e) => e.on === day && e.batch),
    )
    .map(withMend);
}

/**
 * Asks what to write under the lock of the garden file, and writes it where the garden with it has no
 * problems. Throws CommandError with exit code 3 where the file can't be read, written or locked.
 */
export async function writeLog<W extends LogWish>(
  file: string,
  ask: LogAsk<W>,
  shell: Shell,
): Promise<LogOutcome<W>> {
  const work = (): Promise<LogOutcome<W>> => writeLocked(file, ask, shell);
  return ask.isDryRun ? work() : whileLocked(file, shell, work);
}

async function writeLocked<W extends LogWish>(
  file: string,
  { wish: wishOf, plan, isDryRun }: LogAsk<W>,
  shell: Shell,
): Promise<LogOutcome<W>> {
  const refused = (problems: readonly Problem[], isOfNewText = false): LogOutcome<W> => ({
    ...{ kind: "refused", problems, isOfNewText },
  });
  const bytes = await readBytes(file, shell);
  const text = decodeText(bytes, file);
  if (!text.ok) return refused(text.problems);
  const read = gardenOfText(text.value, file, loadTables());
  if (!read.ok) return refused(read.problems);
  const { source } = read.value;
  // The file has been validated.
  const written = source.value as GardenFile;
  const wish = await wishOf({ ...read.value, file, written });
  if (!wish.ok) return refused(wish.problems);
  const { edits } = wish.value;
  if (edits.length === 0) return { kind: "nothing", wish: wish.value };
  const edited = editGarden(source, edits);
  if (!edited.ok) return refused(edited.problems);
  const { undo } = edited.value;
  const next = gardenOfSource(edited.value.source, loadTables());
  const after = next.ok ? await planRead(next.value, file, shell, plan) : next;
  if (!after.ok) return refused(after.problems, true);
  const newText = byteOrderMarkOf(bytes) + edited.value.source.text;
  if (!isDryRun) await writeText(file, newText, shell, bytes);
  return { kind: "written", wish: wish.value, after: after.value, undo };
}
