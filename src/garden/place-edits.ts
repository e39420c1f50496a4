/** Edits of a YAML file by the keys and items of its maps: taken out, made comments, given new values. */
import { isMap, isScalar, isSeq, type YAMLSeq } from "yaml";
import { newlineOf } from "./line-ends.js";
import {
  appliedOutermost,
  beginsLine,
  commentedLines,
  cutFromFlow,
  cutLines,
} from "./text-edits.js";
import {
  contentEnd,
  endOfLine,
  type FileMap,
  type FilePair,
  lineEndBehind,
  lineStart,
  pairOf,
  type TextEdit,
} from "./write-text.js";

/** Where the outermost collection in brackets begins that something is in: no comment fits within. */
type Brackets = number | undefined;

/** A map of the file with its value; `text` is the whole file. */
export interface Place<T> {
  readonly text: string;
  readonly map: FileMap;
  readonly value: T;
  readonly brackets: Brackets;
}

/** A key made a comment: its lines, or a line above the brackets that it stands in. */
export function commented<T>(
  place: Place<T>,
  key: keyof T & string,
  within: readonly TextEdit[],
): TextEdit[] {
  const { text, map, brackets } = place;
  const pair = pairOf(map, key);
  if (pair === undefined) return [];
  const from = pair.key.range[0];
  if (brackets === undefined)
    return [
      ...within,
      ...commentedLines(text, from, lineEndBehind(text, pair), from - lineStart(text, from)),
    ];
  return [
    commentAbove(
      text,
      brackets,
      appliedOutermost(text.slice(from, contentEnd(pair)), moved(within, -from)),
    ),
    ...cutFromFlow(text, map, (item) => item === pair),
  ];
}

const ofLastYear = "Of last year, its dates a year later";

/** Items of a list made comments, with the edits that go on within all of its items. */
export function commentedItems<T, Key extends keyof T & string>(
  place: Place<T>,
  key: Key,
  isGone: (item: ItemOf<T[Key]>) => boolean,
  within: readonly TextEdit[],
): TextEdit[] {
  const { text } = place;
  const list = listOf(place, key);
  const gone = entries(place, key).filter(({ value }) => isGone(value));
  const [first] = gone;
  if (list === undefined || first === undefined) return [...within];
  const { brackets } = first;
  if (list.flow && brackets !== undefined) {
    const slices = gone.map(({ map: { range } }) =>
      appliedOutermost(text.slice(range[0], range[1]), moved(inRange(within, range), -range[0])),
    );
    const lines = [
      `${ofLastYear}: put back into the list what you grow again.`,
      ...slices.map((slice) => `- ${slice}`),
    ].join("\n");
    return [commentAbove(text, brackets, lines), ...withoutItems(place, key, isGone), ...within];
  }
  const dash = dashOf(text, first.map);
  const column = dash - lineStart(text, dash);
  const isAll = gone.length === list.items.length;
  const how = `${ofLastYear}: take the # off what you grow again${isAll ? ", and the [] above" : ""}.`;
  return [
    { at: lineStart(text, dash), text: `${" ".repeat(column)}# ${how}${newlineOf(text)}` },
    ...gone.flatMap(({ map }) =>
      commentedLines(text, dashOf(text, map), lineEndBehind(text, map), column),
    ),
    ...(isAll ? emptyList(place, key) : []),
    ...within,
  ];
}

/** Items of a list taken away. */
export function withoutItems<T, Key extends keyof T & string>(
  place: Place<T>,
  key: Key,
  isGone: (item: ItemOf<T[Key]>) => boolean,
): TextEdit[] {
  const { text } = place;
  const list = listOf(place, key);
  const gone = entries(place, key).filter(({ value }) => isGone(value));
  if (list === undefined || gone.length === 0) return [];
  const nodes = new Set<unknown>(gone.map(({ map }) => map));
  if (list.flow) return cutFromFlow(text, list, (item) => nodes.has(item));
  return [
    ...gone.map(({ map }) => cutLines(text, dashOf(text, map), lineEndBehind(text, map))),
    ...(gone.length === list.items.length ? emptyList(place, key) : []),
  ];
}

/** A list without its items, and without the lines they take. */
export function emptied<T>(place: Place<T>, key: keyof T & string): TextEdit[] {
  const { text } = place;
  const list = listOf(place, key);
  const last = list?.items.at(-1);
  if (list === undefined || last === undefined) return [];
  const [at, end] = list.range;
  if (list.flow) return [{ at, cut: end - at, text: "[]" }];
  const [bracket] = emptyList(place, key);
  if (bracket === undefined) return [];
  // A comment behind the key stays.
  const keyEnd = endOfLine(text, bracket.at);
  const cut = lineEndBehind(text, last) - keyEnd;
  return keyEnd === bracket.at ? [{ ...bracket, cut }] : [bracket, { at: keyEnd, cut, text: "" }];
}

function emptyList<T>({ map }: Place<T>, key: keyof T & string): TextEdit[] {
  const pair = pairOf(map, key);
  return pair === undefined ? [] : [{ at: pair.key.range[1] + 1, text: " []" }];
}

export function withoutKey<T>({ text, map }: Place<T>, key: keyof T & string): TextEdit[] {
  const pair = pairOf(map, key);
  if (pair === undefined) return [];
  if (map.flow) return cutFromFlow(text, map, (item) => item === pair);
  const from = pair.key.range[0];
  if (beginsLine(text, from)) return [cutLines(text, from, lineEndBehind(text, pair))];
  // The first key behind a dash: the next one takes its place.
  const next = (map.items as FilePair[])[1];
  return next === undefined ? [] : [{ at: from, cut: next.key.range[0] - from, text: "" }];
}

/** Keys with new values; those that the map lacks go in behind its last one. */
export function withKeys<T>(
  { text, map }: Place<T>,
  keys: Readonly<Record<string, string>>,
): TextEdit[] {
  const last = (map.items as FilePair[]).at(-1);
  if (last === undefined) return [];
  const had = Object.entries(keys).flatMap(([key, value]): TextEdit[] => {
    const node = pairOf(map, key)?.value;
    return isScalar(node)
      ? [{ at: node.range[0], cut: node.range[1] - node.range[0], text: value }]
      : [];
  });
  const lacked = Object.entries(keys).filter(([key]) => pairOf(map, key) === undefined);
  if (lacked.length === 0) return had;
  const pieces = lacked.map(([key, value]) => `${key}: ${value}`);
  if (map.flow)
    return [...had, { at: contentEnd(last), text: pieces.map((p) => `, ${p}`).join("") }];
  const [first] = map.items as FilePair[];
  const column = first === undefined ? 0 : first.key.range[0] - lineStart(text, first.key.range[0]);
  const lines = pieces.map((piece) => `${newlineOf(text)}${" ".repeat(column)}${piece}`);
  return [...had, { at: lineEndBehind(text, last), text: lines.join("") }];
}

type ItemOf<List> = NonNullable<List> extends readonly (infer Item)[] ? Item : never;

export function inner<T, Key extends keyof T & string>(
  { text, map, value, brackets }: Place<T>,
  key: Key,
): Place<NonNullable<T[Key]>>[] {
  const node = pairOf(map, key)?.value;
  const within = value[key];
  if (!isMap(node) || within === undefined || within === null) return [];
  return [{ text, map: node, value: within, brackets: bracketsOf(node, brackets) }];
}

/** The maps of a list. */
export function entries<T, Key extends keyof T & string>(
  place: Place<T>,
  key: Key,
): Place<ItemOf<T[Key]>>[] {
  const list = listOf(place, key);
  const values = (place.value[key] ?? []) as readonly ItemOf<T[Key]>[];
  if (list === undefined) return [];
  const brackets = bracketsOf(list, place.brackets);
  return list.items.flatMap((map, i) => {
    const value = values[i];
    if (!isMap(map) || value === undefined) return [];
    return [{ text: place.text, map, value, brackets: bracketsOf(map, brackets) }];
  });
}

function listOf<T>({ map }: Place<T>, key: keyof T & string): YAMLSeq.Parsed | undefined {
  const node = pairOf(map, key)?.value;
  return isSeq(node) ? node : undefined;
}

export function bracketsOf(node: FileMap | YAMLSeq.Parsed, outer: Brackets): Brackets {
  return outer ?? (node.flow ? node.range[0] : undefined);
}

/** Comment lines above the line in which brackets begin, as far in as that. */
function commentAbove(text: string, brackets: number, comment: string): TextEdit {
  const at = lineStart(text, brackets);
  const indent = /^[ \t]*/.exec(text.slice(at))?.[0] ?? "";
  const lines = comment.split(/\r?\n/).map((line) => `${indent}# ${line}${newlineOf(text)}`);
  return { at, text: lines.join("") };
}

/** The dash of an item of a list in lines. */
function dashOf(text: string, item: FileMap): number {
  return text.lastIndexOf("-", item.range[0] - 1);
}

function inRange(edits: readonly TextEdit[], [from, to]: readonly number[]): TextEdit[] {
  return edits.filter(({ at }) => at >= (from ?? 0) && at < (to ?? 0));
}

function moved(edits: readonly TextEdit[], by: number): TextEdit[] {
  return edits.map((edit) => ({ ...edit, at: edit.at + by }));
}
