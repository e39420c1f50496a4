/** Writing into the log of a garden file while everything else in it stays as the grower wrote it. */
import { Document, isMap, isScalar, isSeq, parseDocument, Parser, type YAMLSeq } from "yaml";
import type { Day } from "../dates.js";
import type { Problem, Result } from "../problem.js";
import type { Route } from "./garden.js";
import { readYaml } from "./read.js";
import {
  applied,
  columnOf,
  commaAfter,
  contentEnd,
  type Edit,
  endOfLine,
  lineBreakBefore,
  lineStart,
  type RootMap,
  type RootPair,
} from "./text-edits.js";

/** One entry of `log` as it is to stand in the file, keys in this order. */
export interface NewLogEntry {
  readonly on: Day;
  readonly planting?: string;
  readonly bed?: string;
  /** With its unit. */
  readonly stock?: string;
  readonly batch?: string;
  readonly route?: Route;
  readonly feed?: string;
}

/** What goes into which file. */
interface Addition {
  readonly text: string;
  readonly root: RootMap;
  readonly entries: readonly NewLogEntry[];
  readonly newline: string;
}

/**
 * Adds entries at the end of the `log` of a garden file, in the layout that the log has, or as a new
 * `log:` at the end. Every other byte stays.
 *
 * @param text a garden file without a byte order mark
 * @returns the new text, or what keeps the file from being read, or `log-layout` where the log is
 *   laid out so that nothing can be added without changing more (an alias, a tag)
 */
export function addToLog(
  text: string,
  file: string,
  entries: readonly NewLogEntry[],
): Result<string> {
  const before = readYaml(text, file);
  if (!before.ok) return before;
  if (entries.length === 0) return { ok: true, value: text };
  const edits = editsFor(text, entries);
  const changed = edits && applied(text, edits);
  if (changed !== undefined && holdsJust(changed, before.value.value, entries))
    return { ok: true, value: changed };
  const problem: Problem = {
    code: "log-layout",
    file,
    at: before.value.locate({ path: ["log"], atKey: true }),
    message: "the log is written in a way that nothing can be added to without changing more",
    mend: `write it yourself: ${entries.map((entry) => `- ${flowText(entry)}`).join("; ")}`,
  };
  return { ok: false, problems: [problem] };
}

/** The proof of the edit: read again, the file says what it said before, and the entries. */
function holdsJust(text: string, before: unknown, entries: readonly NewLogEntry[]): boolean {
  const after = readYaml(text, "");
  if (!after.ok || typeof before !== "object" || before === null) return false;
  const { log } = before as { log?: unknown };
  if (log !== undefined && log !== null && !Array.isArray(log)) return false;
  const expected = { ...before, log: [...((log ?? []) as unknown[]), ...entries] };
  return JSON.stringify(after.value.value) === JSON.stringify(expected);
}

function editsFor(text: string, entries: readonly NewLogEntry[]): Edit[] | undefined {
  const doc = parseDocument(text, { keepSourceTokens: true, schema: "core" });
  const root = doc.contents;
  if (!isMap(root)) return undefined;
  const addition = { text, root, entries, newline: /\r?\n/.exec(text)?.[0] ?? "\n" };
  const pair = (root.items as RootPair[]).find(
    ({ key }) => isScalar(key) && String(key.value) === "log",
  );
  if (pair === undefined)
    return root.flow
      ? inFlow(text, root, `log: [${entries.map(flowText).join(", ")}]`)
      : [atEnd(addition)];
  const { value } = pair;
  if (isSeq(value) && value.flow) return inFlowList(addition, value);
  if (isSeq(value)) return inBlockList(addition, value);
  if (!isScalar(value) || value.source !== "" || root.flow) return undefined;
  // `log:` with nothing behind it.
  return [{ at: endOfLine(text, pair.key.range[1]), text: newLines(addition) }];
}

/** A new key at the end of the file, before a `...` if one ends it. */
function atEnd({ text, root, entries, newline }: Addition): Edit {
  const end = [...new Parser().parse(text)].find((token) => token.type === "doc-end");
  const at = end?.type === "doc-end" ? end.offset : text.length;
  const indent = " ".repeat(columnOf(root));
  const lines = [`${indent}log:`, ...blockLines(entries, columnOf(root) + 2, "flow")];
  const piece = lines.join(newline);
  return at === 0 || text[at - 1] === "\n"
    ? { at, text: piece + newline }
    : { at, text: newline + piece };
}

/** A line for each entry, under the key `log`. */
function newLines({ root, entries, newline }: Addition): string {
  return newline + blockLines(entries, columnOf(root) + 2, "flow").join(newline);
}

function inBlockList(
  { text, entries, newline }: Addition,
  list: YAMLSeq.Parsed,
): Edit[] | undefined {
  const last = list.items.at(-1);
  if (last === undefined) return undefined;
  const style = isMap(last) && !last.flow ? "block" : "flow";
  const lines = blockLines(entries, columnOf(list), style);
  const end = contentEnd(last);
  // A block of text ends with its own line.
  const at = text[end - 1] === "\n" ? lineBreakBefore(text, end) : endOfLine(text, end);
  return [{ at, text: newline + lines.join(newline) }];
}

function inFlowList(addition: Addition, list: YAMLSeq.Parsed): Edit[] {
  const { text, root, entries, newline } = addition;
  const [from, to] = list.range;
  const first = list.items[0];
  if (first === undefined && !root.flow && text.slice(from, to) === "[]") {
    // An empty list becomes one with a line for each entry.
    const blanks = /[ \t]*$/.exec(text.slice(0, from))?.[0].length ?? 0;
    return [
      { at: from - blanks, cut: blanks + 2, text: "" },
      { at: endOfLine(text, to), text: newLines(addition) },
    ];
  }
  const last = list.items.at(-1);
  const hasLines = first !== undefined && lineStart(text, first.range[0]) > from;
  if (last === undefined || !hasLines) return inFlow(text, list, entries.map(flowText).join(", "));
  const indent = /^[ \t]*/.exec(text.slice(lineStart(text, last.range[0])))?.[0] ?? "";
  const lines = entries.map((entry) => indent + flowText(entry));
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
function inFlow(text: string, collection: RootMap | YAMLSeq.Parsed, piece: string): Edit[] {
  const last = collection.items.at(-1);
  if (last === undefined) return [{ at: collection.range[1] - 1, text: piece }];
  const end = contentEnd(last);
  const comma = commaAfter(text, end, collection.range[1] - 1);
  return comma === undefined
    ? [{ at: end, text: `, ${piece}` }]
    : [{ at: comma + 1, text: ` ${piece},` }];
}

function blockLines(
  entries: readonly NewLogEntry[],
  column: number,
  style: "flow" | "block",
): string[] {
  const indent = " ".repeat(column);
  return entries.flatMap((entry) => {
    if (style === "flow") return [`${indent}- ${flowText(entry)}`];
    return yamlText(entry, false)
      .split("\n")
      .map((line, i) => `${indent}${i === 0 ? "- " : "  "}${line}`);
  });
}

function flowText(entry: NewLogEntry): string {
  return yamlText(entry, true);
}

function yamlText(entry: NewLogEntry, isFlow: boolean): string {
  const doc = new Document({ ...entry }, { schema: "core" });
  if (isMap(doc.contents)) doc.contents.flow = isFlow;
  return doc.toString({ lineWidth: 0, flowCollectionPadding: true }).trimEnd();
}
