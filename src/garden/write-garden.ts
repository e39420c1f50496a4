/** Writing into a garden file while everything else in it stays as the grower wrote it. */
import { isMap, isSeq } from "yaml";
import type { FilePath, Result } from "../problem.js";
import { editRefused } from "./edit-refused.js";
import { batchStepKeys, type GardenEdit, type PutBack, type SetInBatch } from "./garden-edit.js";
import { lineFeeds, withLineEndsOf } from "./line-ends.js";
import { readYaml, type SourceFile } from "./read.js";
import {
  indexOfBatch,
  isSame,
  listOf,
  saidAfter,
  saysTheSame,
  undoing,
  whereOut,
} from "./said-after.js";
import { itemsCut, keyCut } from "./write-cut.js";
import { itemsAdded, keySet } from "./write-into.js";
import { jsonText } from "./write-json.js";
import { applied, nodeAt, pairAt, type TextEdit } from "./write-text.js";

export interface EditedGarden {
  /** The new text, as it was read again. */
  readonly source: SourceFile;
  /** In the order in which they take the edits back; each refused where what it takes has changed. */
  readonly undo: readonly GardenEdit[];
}

/**
 * A garden file with some edits, one after the other, in the layout that it has. Every other byte
 * stays, comments too.
 *
 * @returns the new text, or a problem with what to do by hand: `log-layout`, `batch-layout`,
 *   `sign-layout`, `seen-layout` where the file is laid out so that an edit would change more (an
 *   alias, a tag), `changed-since` where what an edit takes back has changed
 */
export function editGarden(source: SourceFile, edits: readonly GardenEdit[]): Result<EditedGarden> {
  let now = source;
  const undo: GardenEdit[] = [];
  for (const edit of edits) {
    const wanted = saidAfter(now.value, edit);
    const next =
      wanted === undefined || wanted === "changed" ? undefined : proven(now, edit, wanted.said);
    if (next === undefined)
      return { ok: false, problems: [editRefused(edit, wanted === "changed", source)] };
    undo.unshift(withPutBack(undoing(edit, now.value), now.text, next.text));
    now = next;
  }
  return { ok: true, value: { source: now, undo } };
}

/** The text with an edit, read again: it says what it said before, and what is new. */
function proven(
  { file, text, value }: SourceFile,
  edit: GardenEdit,
  wanted: unknown,
): SourceFile | undefined {
  const before = "back" in edit ? putBack(text, edit.back) : undefined;
  const asBefore = before === undefined ? undefined : readYaml(before, file);
  if (asBefore?.ok && saysTheSame(asBefore.value.value, wanted)) return asBefore.value;
  const next = jsonText(text, value, wanted) ?? edited(text, value, edit);
  const read = next === undefined ? undefined : readYaml(next, file);
  return read?.ok && isSame(read.value.value, wanted) ? read.value : undefined;
}

function edited(text: string, said: unknown, edit: GardenEdit): string | undefined {
  const edits = textEdits(lineFeeds(text), said, edit);
  return edits && applied(text, withLineEndsOf(text, edits));
}

function putBack(text: string, { at, cut, text: stood }: PutBack): string | undefined {
  return text.startsWith(cut, at)
    ? text.slice(0, at) + stood + text.slice(at + cut.length)
    : undefined;
}

/** What differs between two texts goes from their first difference to their last. */
function withPutBack(edit: GardenEdit, before: string, after: string): GardenEdit {
  if (edit.kind !== "take-out" && edit.kind !== "set-in-batch") return edit;
  const most = Math.min(before.length, after.length);
  let at = 0;
  while (at < most && before[at] === after[at]) at++;
  let same = 0;
  while (same < most - at && before.at(-1 - same) === after.at(-1 - same)) same++;
  const cut = after.slice(at, after.length - same);
  return { ...edit, back: { at, cut, text: before.slice(at, before.length - same) } };
}

function textEdits(text: string, said: unknown, edit: GardenEdit): TextEdit[] | undefined {
  switch (edit.kind) {
    case "take-from-log": {
      const pair = pairAt(text, ["log"]);
      const length = isSeq(pair?.value) ? pair.value.items.length : 0;
      return pair && itemsCut(text, pair, length - edit.count, length);
    }
    case "unlist-batch": {
      const pair = pairAt(text, ["stock", "batches"]);
      const index = indexOfBatch(said, edit.id);
      return pair && itemsCut(text, pair, index, index + 1);
    }
    case "set-in-batch":
      return setInBatch(text, indexOfBatch(said, edit.id), edit);
    case "take-out": {
      const there = whereOut(said, edit.added);
      if (there === undefined || there === "changed") return undefined;
      return takenOut(text, there.path, there.indexes);
    }
    default: {
      const place = listOf(edit, said);
      if (place === undefined) return undefined;
      return place.items.length === 0 ? [] : itemsAdded(text, place.path, place.items);
    }
  }
}

/** Items that stand behind each other go together. */
function takenOut(
  text: string,
  path: FilePath,
  indexes: readonly number[],
): TextEdit[] | undefined {
  const pair = pairAt(text, path);
  if (pair === undefined) return undefined;
  const runs: [from: number, to: number][] = [];
  for (const index of indexes) {
    const last = runs.at(-1);
    if (last?.[1] === index) last[1]++;
    else runs.push([index, index + 1]);
  }
  const cuts = runs.map(([from, to]) => itemsCut(text, pair, from, to));
  return cuts.includes(undefined) ? undefined : cuts.flatMap((cut) => cut ?? []);
}

function setInBatch(
  text: string,
  index: number,
  { key, value }: SetInBatch,
): TextEdit[] | undefined {
  const batch = nodeAt(text, ["stock", "batches", index]);
  if (!isMap(batch)) return undefined;
  if (value === undefined) return keyCut(text, batch, key);
  const steps: readonly string[] = batchStepKeys;
  const behind = ["id", "planned", ...steps.slice(0, Math.max(0, steps.indexOf(key)))];
  return keySet(text, batch, key, value, behind);
}
