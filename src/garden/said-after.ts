/** What a garden file says after an edit, as plain values: what its new text is compared with. */
import type { FilePath } from "../problem.js";
import { inOneOrder } from "../values.js";
import type { Adding, GardenEdit, NewBatch, NewLogEntry, SetInBatch } from "./garden-edit.js";

/** The list that something is added to, and what. */
export interface ListAndItems {
  /** Keys and indexes from the root. */
  readonly path: FilePath;
  readonly items: readonly object[];
}

/** Undefined where the planting is not in the file. */
export function listOf(added: Adding, file: unknown): ListAndItems | undefined {
  switch (added.kind) {
    case "add-to-log":
      return { path: ["log"], items: added.entries };
    case "add-to-signs":
      return { path: ["signs"], items: added.signs };
    case "list-batch":
      return { path: ["stock", "batches"], items: [added.batch] };
    case "add-to-seen": {
      const path = pathOfPlanting(file, added.planting);
      return path && { path: [...path, "seen"], items: [added.seen] };
    }
  }
}

function pathOfPlanting(file: unknown, id: string): FilePath | undefined {
  for (const [i] of itemsAt(file, ["beds"]).entries()) {
    const path = ["beds", i, "plantings"];
    const j = itemsAt(file, path).findIndex((planting) => idOf(planting) === id);
    if (j >= 0) return [...path, j];
  }
  return undefined;
}

/**
 * @returns undefined where the file is otherwise than a garden file, `changed` where what is to be
 *   taken back does not stand there as it was written
 */
export function saidAfter(
  file: unknown,
  edit: GardenEdit,
): { readonly said: unknown } | "changed" | undefined {
  switch (edit.kind) {
    case "take-from-log":
      return replaced(file, ["log"], (log) => log.slice(0, -edit.count));
    case "unlist-batch":
      return replaced(file, ["stock", "batches"], (all) =>
        all.filter((one) => idOf(one) !== edit.id),
      );
    case "set-in-batch":
      return setInBatch(file, edit);
    case "take-out": {
      const there = whereOut(file, edit.added);
      if (there === undefined || there === "changed") return there;
      const gone = new Set(there.indexes);
      return replaced(file, there.path, (list) => list.filter((_, i) => !gone.has(i)));
    }
    default: {
      const place = listOf(edit, file);
      return place && replaced(file, place.path, (list) => [...list, ...place.items]);
    }
  }
}

function setInBatch(
  file: unknown,
  { id, key, value, was }: SetInBatch,
): ReturnType<typeof saidAfter> {
  const path = ["stock", "batches"];
  const batch = itemsAt(file, path).find((one) => idOf(one) === id);
  const there = batch === undefined ? undefined : (batch as Record<string, unknown>)[key];
  if (was !== undefined && (there ?? null) !== was) return "changed";
  return replaced(file, path, (all) =>
    all.map((one) => (idOf(one) === id ? { ...(one as object), [key]: value } : one)),
  );
}

/** Where the items that were added stand now: of several that are alike, the last. */
export function whereOut(
  file: unknown,
  added: Adding,
): { readonly path: FilePath; readonly indexes: readonly number[] } | "changed" | undefined {
  const place = listOf(added, file);
  const list = place && listAt(file, place.path);
  if (place === undefined || list === undefined) return place === undefined ? "changed" : undefined;
  const texts = list.map((one) => inOneOrder(one));
  const indexes: number[] = [];
  for (const item of [...place.items].reverse()) {
    const text = inOneOrder(item);
    const index = texts.lastIndexOf(text);
    if (index === -1) return "changed";
    indexes.push(index);
    texts[index] = "";
  }
  return { path: place.path, indexes: indexes.sort((a, b) => a - b) };
}

/** The edit that takes another back; what the file said before is known. */
export function undoing(edit: GardenEdit, before: unknown): GardenEdit {
  switch (edit.kind) {
    case "take-from-log": {
      const log = itemsAt(before, ["log"]);
      return { kind: "add-to-log", entries: log.slice(-edit.count) as NewLogEntry[] };
    }
    case "unlist-batch": {
      const batches = itemsAt(before, ["stock", "batches"]);
      return { kind: "list-batch", batch: batches.find((b) => idOf(b) === edit.id) as NewBatch };
    }
    case "set-in-batch": {
      const { kind, id, key, value } = edit;
      const batch = itemsAt(before, ["stock", "batches"]).find((one) => idOf(one) === id);
      const had = (batch as Partial<Record<string, string>>)[key];
      return { kind, id, key, was: value ?? null, ...(had === undefined ? {} : { value: had }) };
    }
    case "take-out":
      return edit.added;
    default:
      return { kind: "take-out", added: edit };
  }
}

/** Among the listed batches; -1 where it is not. */
export function indexOfBatch(file: unknown, id: string): number {
  return itemsAt(file, ["stock", "batches"]).findIndex((batch) => idOf(batch) === id);
}

function idOf(item: unknown): unknown {
  return (item as { readonly id?: unknown } | null)?.id;
}

/** As {@link listAt}, of a file that is sound. */
function itemsAt(file: unknown, path: FilePath): readonly unknown[] {
  return listAt(file, path) ?? [];
}

/** The list there; an empty one where there is none, undefined where something else stands. */
function listAt(file: unknown, path: FilePath): readonly unknown[] | undefined {
  let value = file;
  for (const key of path) {
    if (value === undefined || value === null) return [];
    if (typeof value !== "object") return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[key];
  }
  return value === undefined || value === null ? [] : Array.isArray(value) ? value : undefined;
}

function replaced(
  file: unknown,
  path: FilePath,
  change: (list: readonly unknown[]) => readonly unknown[],
): { readonly said: unknown } | undefined {
  const list = listAt(file, path);
  return list && { said: withAt(file, path, change(list)) };
}

function withAt(value: unknown, [key, ...rest]: FilePath, list: readonly unknown[]): unknown {
  if (key === undefined) return list;
  if (Array.isArray(value))
    return value.map((item: unknown, i) => (i === key ? withAt(item, rest, list) : item));
  const map = value as Readonly<Record<string, unknown>> | null | undefined;
  return { ...map, [key]: withAt(map?.[key], rest, list) };
}

/** Whatever the order of keys; a key without a value is none. */
export function isSame(a: unknown, b: unknown): boolean {
  return inOneOrder(a) === inOneOrder(b);
}

/** Likewise, and what is empty says nothing. */
export function saysTheSame(a: unknown, b: unknown): boolean {
  return isSame(withoutEmpty(a), withoutEmpty(b));
}

function withoutEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutEmpty);
  if (typeof value !== "object" || value === null) return value;
  const full = Object.entries(value)
    .map(([key, part]) => [key, withoutEmpty(part)] as const)
    .filter(([, part]) => part !== null && !(typeof part === "object" && isEmptied(part)));
  return Object.fromEntries(full);
}

function isEmptied(part: object): boolean {
  return Object.keys(part).length === 0;
}
