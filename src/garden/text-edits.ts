/** Edits of a YAML text by the places of its nodes, so that every other byte stays. */
import {
  isMap,
  isScalar,
  isSeq,
  type Pair,
  type ParsedNode,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";

/** A piece of text and the offset before which it goes in; `cut` characters there give way to it. */
export interface Edit {
  readonly at: number;
  readonly cut?: number;
  readonly text: string;
}

export type RootMap = YAMLMap.Parsed;
export type RootPair = Pair<ParsedNode, ParsedNode | null>;

/** The text with all edits made; one that lies within what another cuts is left out. */
export function applied(text: string, edits: readonly Edit[]): string {
  const isCut = ({ at, cut = 0 }: Edit): boolean =>
    edits.some((other) => {
      const { at: from, cut: length = 0 } = other;
      return from <= at && at + Math.max(cut, 1) <= from + length && length > cut;
    });
  let changed = text;
  // From the end on; of those at one place the last goes in first, so that they keep their order.
  const inOrder = edits
    .filter((edit) => !isCut(edit))
    .reverse()
    .sort((a, b) => b.at - a.at);
  for (const { at, cut = 0, text: piece } of inOrder)
    changed = changed.slice(0, at) + piece + changed.slice(at + cut);
  return changed;
}

/** The column of a block collection, from its token; 0 for one that has none. */
export function columnOf({ srcToken }: RootMap | YAMLSeq.Parsed): number {
  return srcToken !== undefined && "indent" in srcToken ? srcToken.indent : 0;
}

/** Where the text of a node ends, comments behind it left aside. */
export function contentEnd(node: ParsedNode | RootPair): number {
  if ("key" in node) {
    const { key, value } = node;
    const isEmpty = value === null || (isScalar(value) && (value as Scalar).source === "");
    return isEmpty ? key.range[1] + 1 : contentEnd(value);
  }
  const isBlock = (isMap(node) || isSeq(node)) && !node.flow;
  const last = isBlock ? (node.items as (ParsedNode | RootPair)[]).at(-1) : undefined;
  return last === undefined ? node.range[1] : contentEnd(last);
}

/** The comma between an item and the closing bracket; comments may stand between. */
export function commaAfter(text: string, from: number, to: number): number | undefined {
  for (let i = from; i < to; i++) {
    if (text[i] === ",") return i;
    if (text[i] === "#") i = endOfLine(text, i);
  }
  return undefined;
}

export function lineStart(text: string, at: number): number {
  return text.lastIndexOf("\n", at - 1) + 1;
}

/** The offset of the line break that ends a line, or of the end of the text. */
export function endOfLine(text: string, from: number): number {
  const feed = text.indexOf("\n", from);
  return feed === -1 ? text.length : lineBreakBefore(text, feed + 1);
}

/** @param next the offset just behind a line break */
export function lineBreakBefore(text: string, next: number): number {
  return text[next - 2] === "\r" ? next - 2 : next - 1;
}

/** The end of the last line of a node. A block of text ends with its own line. */
export function lineEndOf(text: string, node: ParsedNode | RootPair): number {
  const end = contentEnd(node);
  return text[end - 1] === "\n" ? lineBreakBefore(text, end) : endOfLine(text, end);
}

/** The pair of a key, if the map has it. */
export function pairOf(map: RootMap, key: string): RootPair | undefined {
  return (map.items as RootPair[]).find((pair) => isScalar(pair.key) && pair.key.value === key);
}

/** Nothing but blanks stands before it in its line. */
export function beginsLine(text: string, at: number): boolean {
  return text.slice(lineStart(text, at), at).trim() === "";
}

/** The lines from one place to another, made comments at a column; blank ones stay. */
export function commentedLines(text: string, from: number, to: number, column: number): Edit[] {
  const edits: Edit[] = [];
  for (let start = lineStart(text, from); start < to; start = text.indexOf("\n", start) + 1) {
    const line = text.slice(start, endOfLine(text, start));
    const blanks = line.length - line.trimStart().length;
    if (line.trim() !== "") edits.push({ at: start + Math.min(column, blanks), text: "# " });
    if (!text.includes("\n", start)) break;
  }
  return edits;
}

/** Takes whole lines away, with the break that ends them. */
export function cutLines(text: string, from: number, to: number): Edit {
  const start = lineStart(text, from);
  const feed = text.indexOf("\n", to);
  return { at: start, cut: (feed === -1 ? text.length : feed + 1) - start, text: "" };
}

/** Takes items out of a flow map or list with their commas; whole lines where they stand alone there. */
export function cutFromFlow(
  text: string,
  collection: RootMap | YAMLSeq.Parsed,
  isGone: (item: ParsedNode | RootPair) => boolean,
): Edit[] {
  const spans = (collection.items as (ParsedNode | RootPair)[]).map((item) => ({
    from: "key" in item ? item.key.range[0] : item.range[0],
    to: contentEnd(item),
    isGone: isGone(item),
  }));
  const gone = spans.filter((span) => span.isGone);
  const lastKept = spans.findLastIndex((span) => !span.isGone);
  if (lastKept === -1 && isSeq(collection)) {
    const [at, end] = collection.range;
    return [{ at, cut: end - at, text: "[]" }];
  }
  const isAlone = ({ from, to }: { from: number; to: number }): boolean =>
    beginsLine(text, from) && /^\s*,?\s*(?:#.*)?$/.test(text.slice(to, endOfLine(text, to)));
  if (gone.every(isAlone)) return gone.map(({ from, to }) => cutLines(text, from, to));
  const behind = spans.slice(lastKept + 1).at(-1);
  return [
    ...spans.slice(0, Math.max(lastKept, 0)).flatMap(({ from, isGone: goes }, i) => {
      const next = spans[i + 1];
      return goes && next !== undefined ? [{ at: from, cut: next.from - from, text: "" }] : [];
    }),
    ...(behind === undefined ? [] : [cutBehind(spans[lastKept], spans[lastKept + 1], behind)]),
  ];
}

type Place = { readonly from: number; readonly to: number } | undefined;

function cutBehind(kept: Place, first: Place, last: { readonly to: number }): Edit {
  const at = kept?.to ?? first?.from ?? last.to;
  return { at, cut: last.to - at, text: "" };
}
