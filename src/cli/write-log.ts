/** Writes down what was given, done or seen: a garden file is changed whole or not at all. */
import type { GardenFile } from "../compiled/garden-file.js";
import {
  decodeText,
  type Garden,
  editGarden,
  type GardenEdit,
  type NewLogEntry,
} from "../garden/index.js";
import { gardenOfText } from "../plan-garden.js";
import type { Problem, Result } from "../problem.js";
import { loadTables } from "../tables.js";
import { byteOrderMarkOf, readBytes, whileLocked, writeText } from "./files.js";
import { type LoadedGarden, loadGardenText, type LoadOptions } from "./load.js";
import type { Shell } from "./shell.js";

/** A garden file as it is now, sound. */
export interface GardenNow {
  readonly file: string;
  readonly text: string;
  readonly garden: Garden;
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
  const { garden, source } = read.value;
  // The file has been validated.
  const written = source.value as GardenFile;
  const wish = await wishOf({ file, text: text.value, garden, written });
  if (!wish.ok) return refused(wish.problems);
  const { edits } = wish.value;
  if (edits.length === 0) return { kind: "nothing", wish: wish.value };
  const edited = editGarden(source, edits);
  if (!edited.ok) return refused(edited.problems);
  const after = await loadGardenText(edited.value.text, file, shell, plan);
  if (!after.ok) return refused(after.problems, true);
  if (!isDryRun) await writeText(file, byteOrderMarkOf(bytes) + edited.value.text, shell, bytes);
  return { kind: "written", wish: wish.value, after: after.value, undo: edited.value.undo };
}
