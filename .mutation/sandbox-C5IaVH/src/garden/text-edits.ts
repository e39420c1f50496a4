/** Edits of a YAML text that take pieces out, or make them comments. */
// @ts-nocheck

import { isSeq } from "yaml";
import {
  applied,
  contentEnd,
  contentStart,
  endOfLine,
  type FileItem,
  type FileList,
  type FileMap,
  lineStart,
  nextLine,
  type TextEdit,
} from "./write-text.js";

/** The text with all edits made; one that lies within what another cuts is left out. */
export function appliedOutermost(text: string, edits: readonly TextEdit[]): string {
  const isCut = ({ at, cut = 0 }: TextEdit): boolean =>
    edits.some((other) => {
      const { at: from, cut: length = 0 } = other;
      return from <= at && at + Math.max(cut, 1) <= from + length && length > cut;
    });
  // Of those at one place the last goes in first, so that they keep their order.
  return applied(text, edits.filter((edit) => !isCut(edit)).reverse());
}

/** Nothing but blanks stands before it in its line. */
export function beginsLine(text: string, at: number): boolean {
  return text.slice(lineStart(text, at), at).trim() === "";
}

/** The lines from one place to another, made comments at a column; blank ones stay. */
export function commentedLines(text: string, from: number, to: number, column: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (let start = lineStart(text, from); start < to; start = text.indexOf("\n", start) + 1) {
    const line = text.slice(start, endOfLine(text, start));
    const blanks = line.length - line.trimStart().length;
    if (line.trim() !== "") edits.push({ at: start + Math.min(column, blanks), text: "# " });
    if (!text.includes("\n", start)) break;
  }
  return edits;
}

/** Takes whole lines away, with the break that ends them. */
export function cutLines(text: string, from: number, to: number): TextEdit {
  const start = lineStart(text, from);
  return { at: start, cut: nextLine(text, to) - start, text: "" };
}

/** Takes items out of a flow map or list with their commas; whole lines where they stand alone there. */
export function cutFromFlow(
  text: string,
  collection: FileMap | FileList,
  isGone: (item: FileItem) => boolean,
): TextEdit[] {
  const spans = (collection.items as FileItem[]).map((item) => ({
    from: contentStart(item),
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

function cutBehind(kept: Place, first: Place, last: { readonly to: number }): TextEdit {
  const at = kept?.to ?? first?.from ?? last.to;
  return { at, cut: last.to - at, text: "" };
}
