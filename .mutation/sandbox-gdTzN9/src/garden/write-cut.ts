/** Taking items out of lists and maps of a garden file; comments stay where they are. */
// @ts-nocheck

import { isSeq } from "yaml";
import {
  commaAfter,
  commentsOf,
  contentEnd,
  contentStart,
  endOfLine,
  type FileItem,
  type FileList,
  type FileMap,
  type FilePair,
  lineStart,
  nextLine,
  pairOf,
  pairsOf,
  type TextEdit,
} from "./write-text.js";

/** @param list the value of `pair`, with a line for each item or in brackets */
export function itemsCut(
  text: string,
  { key, value: list }: FilePair,
  from: number,
  to: number,
): TextEdit[] | undefined {
  if (!isSeq(list)) return undefined;
  const items = list.items.slice(from, to);
  const [first, last] = [items[0], items.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  if (list.flow) return fromFlow(text, list, from, to);
  // What is left of an emptied list would be no list.
  const empty = { at: key.range[1] + 1, text: " []" };
  const dash = text.lastIndexOf("-", contentStart(first) - 1);
  return [
    ...(items.length === list.items.length ? [empty] : []),
    ...linesCut(text, dash, contentEnd(last)),
  ];
}

export function keyCut(text: string, map: FileMap, key: string): TextEdit[] | undefined {
  const pair = pairOf(map, key);
  if (pair === undefined) return undefined;
  const index = pairsOf(map).indexOf(pair);
  if (map.flow) return fromFlow(text, map, index, index + 1);
  const start = contentStart(pair);
  const next = pairsOf(map)[index + 1];
  if (isBlank(text.slice(lineStart(text, start), start)))
    return linesCut(text, start, contentEnd(pair));
  // The first behind a dash: the next one takes its place.
  return next === undefined || commentsIn(text, start, contentStart(next)).length > 0
    ? undefined
    : [{ at: start, cut: contentStart(next) - start, text: "" }];
}

/** Whole lines, but for their comments. */
function linesCut(text: string, start: number, end: number): TextEdit[] {
  const from = lineStart(text, start);
  // A block of text ends with its own line.
  const to = text[end - 1] === "\n" ? end : nextLine(text, end);
  const indent = /^[ \t]*/.exec(text.slice(from))?.[0] ?? "";
  const kept = commentsIn(text, from, to).map(
    ({ at }) => indent + text.slice(at, nextLine(text, at)),
  );
  // A file without a last line break stays one.
  const isOpenEnd = to === text.length && !text.endsWith("\n") && kept.length === 0;
  const at = isOpenEnd ? endOfLine(text, lineStart(text, from - 1)) : from;
  return [{ at, cut: to - at, text: kept.join("") }];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Items of a map or list in brackets, with the commas that part them from the others. */
function fromFlow(text: string, whole: FileMap | FileList, from: number, to: number): TextEdit[] {
  const items = whole.items as FileItem[];
  const close = whole.range[1] - 1;
  const commaBehind = (index: number): Stretch[] => {
    const [item, next] = [items[index], items[index + 1]];
    if (item === undefined) return [];
    const comma = commaAfter(text, contentEnd(item), next ? contentStart(next) : close);
    return comma === undefined ? [] : [{ from: comma, to: comma + 1 }];
  };
  const cut = items
    .slice(from, to)
    .flatMap((item, i) => [
      { from: contentStart(item), to: contentEnd(item) },
      ...commaBehind(from + i),
    ]);
  const isTail = to === items.length && commaBehind(to - 1).length === 0;
  return joined(text, [...(isTail ? commaBehind(from - 1) : []), ...cut]).map((stretch) =>
    withItsBlanks(text, stretch),
  );
}

/** Stretches with nothing but blanks between them become one. */
function joined(text: string, stretches: readonly Stretch[]): Stretch[] {
  const whole: Stretch[] = [];
  for (const next of stretches) {
    const last = whole.at(-1);
    if (last !== undefined && isBlank(text.slice(last.to, next.from)))
      whole[whole.length - 1] = { from: last.from, to: next.to };
    else whole.push(next);
  }
  return whole;
}

/** A line that has nothing else goes as a whole; else the blanks go that stood before the next item. */
function withItsBlanks(text: string, { from, to }: Stretch): TextEdit {
  const start = lineStart(text, from);
  const isWholeLine =
    isBlank(text.slice(start, from)) && isBlank(text.slice(to, endOfLine(text, to)));
  if (isWholeLine) return { at: start, cut: nextLine(text, to) - start, text: "" };
  const blanks = text[from] === "," ? 0 : (/^[ \t]*/.exec(text.slice(to))?.[0].length ?? 0);
  return { at: from, cut: to + blanks - from, text: "" };
}

function commentsIn(text: string, from: number, to: number): { readonly at: number }[] {
  return commentsOf(text).filter(({ at }) => at >= from && at < to);
}

function isBlank(text: string): boolean {
  return text.trim() === "";
}
