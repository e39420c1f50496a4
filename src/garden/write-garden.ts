/** Writing into a garden file while everything else in it stays as the grower wrote it. */
import { isMap, isSeq } from "yaml";
import type { Day } from "../dates.js";
import type { FilePath, Problem, Result } from "../problem.js";
import type { Route } from "./garden.js";
import { readYaml } from "./read.js";
import { itemsCut, keyCut } from "./write-cut.js";
import { itemsAdded, keySet } from "./write-into.js";
import {
  applied,
  type FilePair,
  flowText,
  pairOf,
  pairText,
  rootOf,
  type TextEdit,
} from "./write-text.js";

/** One entry of `log` as it is to stand in the file, keys in this order. */
export interface NewLogEntry {
  readonly on: Day;
  readonly round?: Day;
  readonly planting?: string;
  readonly bed?: string;
  readonly missed?: true;
  /** With its unit. */
  readonly stock?: string;
  readonly batch?: string;
  readonly route?: Route;
  readonly feed?: string;
}

/** Keys of a listed batch that hold the day of a step, in the order of the work. */
export const batchStepKeys = ["shells_out", "acid_in", "made", "thrown_away", "missed"] as const;
export type BatchStepKey = (typeof batchStepKeys)[number];

/** A batch as it is to be listed, keys in this order. */
export interface NewBatch extends Partial<Record<BatchStepKey, Day>> {
  readonly id: string;
  readonly planned?: string;
  /** With its unit. */
  readonly volume: string;
}

export type GardenEdit =
  | { readonly kind: "add-to-log"; readonly entries: readonly NewLogEntry[] }
  /** So many from the end. */
  | { readonly kind: "take-from-log"; readonly count: number }
  | { readonly kind: "list-batch"; readonly batch: NewBatch }
  /** Without a value the key is taken out. */
  | {
      readonly kind: "set-in-batch";
      readonly id: string;
      readonly key: BatchStepKey | "volume";
      readonly value?: string;
    }
  | { readonly kind: "unlist-batch"; readonly id: string };

/**
 * A garden file with some edits, one after the other, in the layout that it has. Every other byte
 * stays, comments too.
 *
 * @param text a garden file without a byte order mark
 * @returns the new text, or what keeps the file from being read, or `log-layout` or `batch-layout`
 *   with the line to write by hand, where the file is laid out so that an edit would change more
 *   (an alias, a tag)
 */
export function editGarden(
  text: string,
  file: string,
  edits: readonly GardenEdit[],
): Result<string> {
  const source = readYaml(text, file);
  if (!source.ok) return source;
  let [now, said] = [text, source.value.value];
  for (const edit of edits) {
    const wanted = after(said as Written, edit);
    const changes = textEdits(now, said as Written, edit);
    const changed = changes === undefined ? undefined : applied(now, changes);
    const read = changed === undefined ? undefined : readYaml(changed, file);
    // The proof of the edit: read again, the file says what it said before, and what is new.
    if (changed === undefined || !read?.ok || !isSame(read.value.value, wanted)) {
      const { code, path, ...told } = refusal(edit);
      const at = source.value.locate({ path, atKey: true });
      return { ok: false, problems: [{ code, file, at, ...told }] };
    }
    [now, said] = [changed, read.value.value];
  }
  return { ok: true, value: now };
}

/** As much of a file as edits look at; it may be otherwise, and then they are refused. */
interface Written {
  readonly log?: readonly unknown[] | null;
  readonly stock?: { readonly batches?: readonly WrittenBatch[] | null } | null;
}
type WrittenBatch = Readonly<Record<string, unknown>> & { readonly id?: unknown };

/** What the file is to say with the edit; undefined where it cannot. */
function after(file: Written, edit: GardenEdit): unknown {
  const { log, stock } = file;
  const batches = stock?.batches ?? [];
  if (![log ?? [], batches].every(isList)) return undefined;
  const withBatches = (changed: readonly object[]): object => ({
    ...file,
    stock: { ...stock, batches: changed },
  });
  switch (edit.kind) {
    case "add-to-log":
      return { ...file, log: [...(log ?? []), ...edit.entries] };
    case "take-from-log":
      return { ...file, log: (log ?? []).slice(0, -edit.count) };
    case "list-batch":
      return withBatches([...batches, edit.batch]);
    case "set-in-batch":
      return withBatches(
        batches.map((b) => (b.id === edit.id ? { ...b, [edit.key]: edit.value } : b)),
      );
    case "unlist-batch":
      return withBatches(batches.filter(({ id }) => id !== edit.id));
  }
}

function isList(value: unknown): boolean {
  return Array.isArray(value);
}

/** Whatever the order of keys; a key without a value is none. */
function isSame(a: unknown, b: unknown): boolean {
  const text = (value: unknown): string | undefined =>
    JSON.stringify(value, (_, part: unknown) =>
      typeof part === "object" && part !== null && !Array.isArray(part)
        ? Object.fromEntries(Object.entries(part).sort(([x], [y]) => (x < y ? -1 : 1)))
        : part,
    );
  return text(a) === text(b);
}

function textEdits(text: string, file: Written, edit: GardenEdit): TextEdit[] | undefined {
  switch (edit.kind) {
    case "add-to-log":
      return edit.entries.length === 0 ? [] : itemsAdded(text, ["log"], edit.entries);
    case "take-from-log": {
      const pair = pairAt(text, ["log"]);
      const length = file.log?.length ?? 0;
      return pair && itemsCut(text, pair, length - edit.count, length);
    }
    case "list-batch":
      return itemsAdded(text, ["stock", "batches"], [edit.batch]);
    case "set-in-batch":
    case "unlist-batch":
      return inBatches(text, file, edit);
  }
}

type BatchEdit = Extract<GardenEdit, { id: string }>;

function inBatches(text: string, file: Written, edit: BatchEdit): TextEdit[] | undefined {
  const pair = pairAt(text, ["stock", "batches"]);
  const index = (file.stock?.batches ?? []).findIndex(({ id }) => id === edit.id);
  if (pair === undefined || !isSeq(pair.value)) return undefined;
  if (edit.kind === "unlist-batch") return itemsCut(text, pair, index, index + 1);
  const batch = pair.value.items[index];
  if (!isMap(batch)) return undefined;
  const { key, value } = edit;
  if (value === undefined) return keyCut(text, batch, key);
  const steps: readonly string[] = batchStepKeys;
  const behind = ["id", "planned", ...steps.slice(0, Math.max(0, steps.indexOf(key)))];
  return keySet(text, batch, key, value, behind);
}

function pairAt(text: string, path: readonly string[]): FilePair | undefined {
  let map = rootOf(text);
  let pair: FilePair | undefined;
  for (const key of path) {
    pair = map && pairOf(map, key);
    map = isMap(pair?.value) ? pair.value : undefined;
  }
  return pair;
}

function refusal(
  edit: GardenEdit,
): Pick<Problem, "code" | "message" | "mend"> & { readonly path: FilePath } {
  const isLog = edit.kind === "add-to-log" || edit.kind === "take-from-log";
  const [what, path] = isLog ? ["the log is", ["log"]] : ["the batches are", ["stock", "batches"]];
  const isTaken = edit.kind === "take-from-log" || edit.kind === "unlist-batch";
  return {
    code: isLog ? "log-layout" : "batch-layout",
    path,
    message: `${what} written in a way that nothing can be ${isTaken ? "taken from" : "added to"} without changing more`,
    mend: byHand(edit),
  };
}

function byHand(edit: GardenEdit): string {
  switch (edit.kind) {
    case "add-to-log":
      return `write it yourself: ${edit.entries.map((entry) => `- ${flowText(entry)}`).join("; ")}`;
    case "take-from-log":
      return `take it out yourself: the last ${edit.count} of its entries`;
    case "list-batch":
      return `write it yourself under \`stock: { batches: ... }\`: - ${flowText(edit.batch)}`;
    case "set-in-batch":
      return edit.value === undefined
        ? `take \`${edit.key}\` out of batch ${edit.id} yourself`
        : `write it yourself into batch ${edit.id}: \`${pairText(edit.key, edit.value)}\``;
    case "unlist-batch":
      return `take batch ${edit.id} out yourself`;
  }
}
