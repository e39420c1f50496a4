/** Where pieces of a YAML text begin and end, so that some can be put in or taken out and all else stays. */
import {
  Document,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type Pair,
  parseDocument,
  type ParsedNode,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import type { FilePath } from "../problem.js";

/** A piece of text and the offset before which it goes in; `cut` characters there give way to it. */
export interface TextEdit {
  readonly at: number;
  readonly cut?: number;
  readonly text: string;
}

export type FileMap = YAMLMap.Parsed;
export type FileList = YAMLSeq.Parsed;
export type FilePair = Pair<ParsedNode, ParsedNode | null>;
export type FileItem = ParsedNode | FilePair;

/** @param edits none over another */
export function applied(text: string, edits: readonly TextEdit[]): string {
  let changed = text;
  const fromBehind = edits
    .map(({ cut = 0, ...edit }) => ({ ...edit, cut }))
    .sort((a, b) => b.at - a.at || b.cut - a.cut);
  for (const { at, cut, text: piece } of fromBehind)
    changed = changed.slice(0, at) + piece + changed.slice(at + cut);
  return changed;
}

/** The map that is the whole file. */
function rootOf(text: string): FileMap | undefined {
  const { contents } = parseDocument(text, { keepSourceTokens: true, schema: "core" });
  return isMap(contents) ? contents : undefined;
}

export function pairOf(map: FileMap, name: string): FilePair | undefined {
  return pairsOf(map).find(({ key }) => isScalar(key) && String(key.value) === name);
}

/** @returns undefined where the path leads nowhere, or through an alias */
export function nodeAt(text: string, path: FilePath): ParsedNode | undefined {
  let node: ParsedNode | null | undefined = rootOf(text);
  for (const key of path) {
    if (typeof key === "string") node = isMap(node) ? pairOf(node, key)?.value : undefined;
    else node = isSeq(node) ? node.items[key] : undefined;
  }
  return node ?? undefined;
}

/** The key at the end of a path, with its value. */
export function pairAt(text: string, path: FilePath): FilePair | undefined {
  const map = nodeAt(text, path.slice(0, -1));
  return isMap(map) ? pairOf(map, String(path.at(-1))) : undefined;
}

export function pairsOf(map: FileMap): readonly FilePair[] {
  return map.items;
}

/** `log:` with nothing behind it. */
export function isEmpty(value: ParsedNode | null): boolean {
  return value === null || (isScalar(value) && (value as Scalar).source === "");
}

/** As it stands between braces. */
export function flowText(value: object): string {
  return yamlText(value, true);
}

/** `key: value`, also fit to stand between braces. */
export function pairText(key: string, value: string): string {
  return flowText({ [key]: value }).slice("{ ".length, -" }".length);
}

/** With a line for each item, in the style asked for. */
export function blockLines(
  items: readonly object[],
  column: number,
  style: "flow" | "block",
): string[] {
  const indent = " ".repeat(column);
  return items.flatMap((item) => {
    if (style === "flow") return [`${indent}- ${flowText(item)}`];
    return yamlText(item, false)
      .split("\n")
      .map((line, i) => `${indent}${i === 0 ? "- " : "  "}${line}`);
  });
}

function yamlText(value: object, isFlow: boolean): string {
  const doc = new Document({ ...value }, { schema: "core" });
  if (isMap(doc.contents)) doc.contents.flow = isFlow;
  return doc.toString({ lineWidth: 0, flowCollectionPadding: true }).trimEnd();
}

/** The column of a block collection, from its token; 0 for one that has none. */
export function columnOf({ srcToken }: FileMap | FileList): number {
  return srcToken !== undefined && "indent" in srcToken ? srcToken.indent : 0;
}

export function contentStart(item: FileItem): number {
  return "key" in item ? item.key.range[0] : item.range[0];
}

/** Where the text of a node ends, comments behind it left aside. */
export function contentEnd(item: FileItem): number {
  if ("key" in item) {
    const { key, value } = item;
    return value === null || isEmpty(value) ? key.range[1] + 1 : contentEnd(value);
  }
  const isBlock = (isMap(item) || isSeq(item)) && !item.flow;
  const last = isBlock ? (item.items as FileItem[]).at(-1) : undefined;
  return last === undefined ? item.range[1] : contentEnd(last);
}

/** Where a new line may begin behind an item: at the end of its last line, with the comment there. */
export function lineEndBehind(text: string, item: FileItem): number {
  const end = contentEnd(item);
  // A block of text ends with its own line.
  return text[end - 1] === "\n" ? lineBreakBefore(text, end) : endOfLine(text, end);
}

/** The comma between an item and what comes next; comments may stand between. */
export function commaAfter(text: string, from: number, to: number): number | undefined {
  for (let i = from; i < to; i++) {
    if (text[i] === ",") return i;
    if (text[i] === "#") i = endOfLine(text, i);
  }
  return undefined;
}

/** Offset and text of each comment. */
export function commentsOf(text: string): { readonly at: number; readonly text: string }[] {
  const comments: { at: number; text: string }[] = [];
  let at = 0;
  for (const lexeme of new Lexer().lex(text)) {
    // Marks of the lexer that stand for no text.
    if (/^[\x02\x18\x1f]$/.test(lexeme)) continue;
    if (lexeme.startsWith("#")) comments.push({ at, text: lexeme });
    at += lexeme.length;
  }
  return comments;
}

export function lineStart(text: string, at: number): number {
  return text.lastIndexOf("\n", at - 1) + 1;
}

/** The offset of the line break that ends a line, or of the end of the text. */
export function endOfLine(text: string, from: number): number {
  const feed = text.indexOf("\n", from);
  return feed === -1 ? text.length : lineBreakBefore(text, feed + 1);
}

/** The offset just behind the line break that ends a line, or of the end of the text. */
export function nextLine(text: string, from: number): number {
  const feed = text.indexOf("\n", from);
  return feed === -1 ? text.length : feed + 1;
}

/** @param next the offset just behind a line break */
function lineBreakBefore(text: string, next: number): number {
  return text[next - 2] === "\r" ? next - 2 : next - 1;
}
