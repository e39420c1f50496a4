/** Putting items into a list of a garden file, or a key into a map, in the layout they have. */
import { isMap, isScalar, isSeq, Parser } from "yaml";
import type { FilePath } from "../problem.js";
import { newlineOf } from "./line-ends.js";
import { isJson, jsonFlow } from "./write-json.js";
import {
  blockLines,
  columnOf,
  commaAfter,
  contentEnd,
  endOfLine,
  type FileList,
  type FileMap,
  flowText as yamlFlow,
  isEmpty,
  lineEndBehind,
  lineStart,
  nodeAt,
  pairOf,
  pairText,
  type TextEdit,
} from "./write-text.js";

/** What goes where: `rest` are the keys that are not there yet, in `map`. */
interface Addition {
  readonly text: string;
  readonly map: FileMap;
  readonly rest: readonly string[];
  readonly items: readonly object[];
}

/**
 * Items at the end of the list at a path; it and the keys behind the last index of the path are made
 * where they are absent.
 *
 * @returns undefined where something else stands there (an alias, a text)
 */
export function itemsAdded(
  text: string,
  path: FilePath,
  items: readonly object[],
): TextEdit[] | undefined {
  const isKey = (part: string | number): part is string => typeof part === "string";
  const fixed = path.findLastIndex((part) => !isKey(part)) + 1;
  const keys = path.slice(fixed).filter(isKey);
  const outermost = nodeAt(text, path.slice(0, fixed));
  let map = isMap(outermost) ? outermost : undefined;
  for (const [i, key] of keys.entries()) {
    if (map === undefined) return undefined;
    const pair = pairOf(map, key);
    const addition = { text, map, rest: keys.slice(i), items };
    if (pair === undefined) return keyAdded(addition, fixed === 0 && i === 0);
    const { value } = pair;
    if (isEmpty(value)) {
      if (map.flow) return undefined;
      return [{ at: endOfLine(text, pair.key.range[1]), text: linesUnderKey(addition) }];
    }
    if (isScalar(value) && value.value === null && i === keys.length - 1) {
      const [at, to] = value.range;
      return [{ at, cut: to - at, text: `[${items.map(flowIn(text)).join(", ")}]` }];
    }
    if (isSeq(value) && i === keys.length - 1)
      return value.flow ? inFlowList(addition, value) : inBlockList(addition, value);
    map = isMap(value) ? value : undefined;
  }
  return undefined;
}

/** Items as they stand between braces. */
function flowIn(text: string): (item: object) => string {
  return isJson(text) ? jsonFlow : yamlFlow;
}

function keyAdded({ text, map, rest, items }: Addition, isRoot: boolean): TextEdit[] {
  const newline = newlineOf(text);
  if (map.flow) {
    const list = `[${items.map(flowIn(text)).join(", ")}]`;
    const [last = "", ...outer] = isJson(text)
      ? rest.map((key) => JSON.stringify(key)).reverse()
      : [...rest].reverse();
    const piece = outer.reduce((inner, key) => `${key}: { ${inner} }`, `${last}: ${list}`);
    return inFlow(text, map, piece);
  }
  const indent = " ".repeat(columnOf(map));
  const piece = `${indent}${rest[0]}:${linesUnderKey({ text, map, rest, items })}`;
  const last = map.items.at(-1);
  if (!isRoot && last !== undefined)
    return [{ at: lineEndBehind(text, last), text: newline + piece }];
  // At the end of the file, before a `...` if one ends it.
  const end = [...new Parser().parse(text)].find((token) => token.type === "doc-end");
  const at = end?.type === "doc-end" ? end.offset : text.length;
  return at === 0 || text[at - 1] === "\n"
    ? [{ at, text: piece + newline }]
    : [{ at, text: newline + piece }];
}

/** The other keys and a line for each item, under the first key, which is there. */
function linesUnderKey({ text, map, rest, items }: Addition): string {
  const column = columnOf(map);
  const keys = rest.slice(1).map((key, i) => `${" ".repeat(column + 2 * (i + 1))}${key}:`);
  const lines = blockLines(items, column + 2 * rest.length, "flow");
  return [...keys, ...lines].map((line) => newlineOf(text) + line).join("");
}

function inBlockList({ text, items }: Addition, list: FileList): TextEdit[] | undefined {
  const last = list.items.at(-1);
  if (last === undefined) return undefined;
  const style = isMap(last) && !last.flow ? "block" : "flow";
  const newline = newlineOf(text);
  const lines = blockLines(items, columnOf(list), style);
  return [{ at: lineEndBehind(text, last), text: newline + lines.join(newline) }];
}

function inFlowList(addition: Addition, list: FileList): TextEdit[] {
  const { text, map, items } = addition;
  const newline = newlineOf(text);
  const [from, to] = list.range;
  const first = list.items[0];
  if (first === undefined && !map.flow && text.slice(from, to) === "[]") {
    // An empty list becomes one with a line for each item.
    const blanks = /[ \t]*$/.exec(text.slice(0, from))?.[0].length ?? 0;
    return [
      { at: from - blanks, cut: blanks + 2, text: "" },
      { at: endOfLine(text, to), text: linesUnderKey(addition) },
    ];
  }
  const last = list.items.at(-1);
  const hasLines = first !== undefined && lineStart(text, first.range[0]) > from;
  if (last === undefined || !hasLines)
    return inFlow(text, list, items.map(flowIn(text)).join(", "));
  const indent = /^[ \t]*/.exec(text.slice(lineStart(text, last.range[0])))?.[0] ?? "";
  const lines = items.map((item) => indent + flowIn(text)(item));
  const end = contentEnd(last);
  const comma = commaAfter(text, end, to - 1);
  const from2 = comma === undefined ? end : comma + 1;
  // A bracket on the line of the last item stays behind the new ones.
  const lineEnd = endOfLine(text, from2);
  const at = lineEnd < to - 1 ? lineEnd : from2;
  const piece = newline + lines.join(`,${newline}`);
  if (comma !== undefined) return [{ at, text: `${piece},` }];
  return at === end
    ? [{ at, text: `,${piece}` }]
    : [
        { at: end, text: "," },
        { at, text: piece },
      ];
}

/** Behind the last item of a flow map or list, or between its empty brackets. */
function inFlow(text: string, collection: FileMap | FileList, piece: string): TextEdit[] {
  const last = collection.items.at(-1);
  if (last === undefined) return [{ at: collection.range[1] - 1, text: piece }];
  const end = contentEnd(last);
  const comma = commaAfter(text, end, collection.range[1] - 1);
  return comma === undefined
    ? [{ at: end, text: `, ${piece}` }]
    : [{ at: comma + 1, text: ` ${piece},` }];
}

/**
 * A key of a map with its value; the value alone where the key is there.
 *
 * @param behind keys after the last of which a new one goes
 */
export function keySet(
  text: string,
  map: FileMap,
  key: string,
  value: string,
  behind: readonly string[],
): TextEdit[] | undefined {
  const valueText = isJson(text)
    ? JSON.stringify(value)
    : pairText(key, value).slice(`${key}: `.length);
  const there = pairOf(map, key);
  if (there !== undefined) {
    if (!isScalar(there.value) || isEmpty(there.value)) return undefined;
    const [from, to] = there.value.range;
    return [{ at: from, cut: to - from, text: valueText }];
  }
  const piece = `${isJson(text) ? JSON.stringify(key) : key}: ${valueText}`;
  const before = behind.flatMap((name) => pairOf(map, name) ?? []).at(-1);
  if (before === undefined) return undefined;
  if (map.flow) return [{ at: contentEnd(before), text: `, ${piece}` }];
  const line = newlineOf(text) + " ".repeat(columnOf(map)) + piece;
  return [{ at: lineEndBehind(text, before), text: line }];
}
