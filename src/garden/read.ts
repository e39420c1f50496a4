import {
  isAlias,
  isMap,
  isNode,
  isScalar,
  Lexer,
  LineCounter,
  parseAllDocuments,
  visit,
  type Document,
  type Node,
  type Scalar,
  type YAMLMap,
} from "yaml";
import { legibleMessage } from "../legible.js";
import type { FilePath, Finding, Position, Problem, Result } from "../problem.js";
import { hiddenLetters } from "./hidden-letters.js";
import { lineFeeds } from "./line-ends.js";
import { textsOnOneLine } from "./one-line-texts.js";
import { inOurWords, isOpenQuote, openQuote, toldOf, tooDeep } from "./yaml-words.js";

/** A YAML file as plain values that remember where they stood. */
export interface SourceFile {
  readonly file: string;
  readonly text: string;
  readonly value: unknown;
  /** Where a finding's value (or key) stands; for what is missing, the nearest place that exists. */
  readonly locate: (finding: Pick<Finding, "path" | "atKey">) => Position;
  /** Behind the last letter of that value or key, where it is one word of the file. */
  readonly endOf?: (finding: Pick<Finding, "path" | "atKey">) => Position | undefined;
}

const options = {
  // YAML 1.2 core only: dates and "yes" stay text, and no tag turns text into something else.
  schema: "core",
  resolveKnownTags: false,
  merge: false,
  // The library's own check compares every key with every other: hours for a large hostile file.
  uniqueKeys: false,
  stringKeys: true,
  prettyErrors: false,
} as const;

/** A finding with its place in the file: a problem. */
export function located(finding: Finding, source: SourceFile): Problem {
  const { code, message, mend, fix: text } = finding;
  const to = text === undefined ? undefined : source.endOf?.(finding);
  return {
    code,
    file: source.file,
    at: source.locate(finding),
    message: legibleMessage(message),
    mend: legibleMessage(mend),
    ...(text !== undefined && to !== undefined && { fix: { to, text } }),
  };
}

/** One slip often breaks every line after it: beyond these nobody reads on. */
const mostSyntaxErrors = 50;

/**
 * YAML text -> plain values with positions. Problems: all that keeps it from being read.
 *
 * @param file names it in problems
 */
export function readYaml(text: string, file: string): Result<SourceFile> {
  // The library knows no line end of a carriage return alone.
  const plain = lineFeeds(text);
  const lines = lineCounter(plain);
  const at = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const refuse = (code: string, offset: number, message: string, mend: string): Problem => ({
    code,
    file,
    at: at(offset),
    message: legibleMessage(message),
    mend,
  });
  const fail = (...problems: Problem[]): Result<SourceFile> => ({ ok: false, problems });
  const refuseWhole = (code: string, message: string, mend: string): Result<SourceFile> =>
    fail(refuse(code, 0, message, mend));

  if (/^\s*BEGIN:VCALENDAR/i.test(text))
    return refuseWhole("calendar", "this is a calendar, not a garden file", "give the garden file");
  if (isTooMuch(plain))
    return refuseWhole(
      "too-much",
      "the file holds more than any garden",
      "check that it is the garden file; split a very large garden into several files",
    );
  const documents = unlessTooDeep(() => parseAllDocuments(plain, options));
  if (documents === undefined) return refuseWhole("yaml", ...tooDeep);
  const errors = documents.flatMap((doc) => [...doc.errors, ...doc.warnings]);
  const [doc, second] = documents;
  const found = [
    ...toldOf(errors).map((e) => {
      const offset = (isOpenQuote(e) ? openQuote(documents) : undefined) ?? e.pos[0];
      return refuse("yaml", offset, ...inOurWords(e));
    }),
    ...(errors.length === 0 && doc ? repeatedKeys(doc) : []).map(([offset, message]) =>
      refuse("yaml-key-twice", offset, message, "keep one of the two"),
    ),
  ];
  if (found.length > 0) return fail(...found.slice(0, mostSyntaxErrors));
  if (doc === undefined || (holdsNothing(doc) && second === undefined))
    return refuseWhole("empty", "the file is empty", "run `feedround new` for a first garden file");
  if (second !== undefined)
    return fail(
      refuse(
        "several-documents",
        second.range[0],
        "a second YAML document begins here",
        "keep one document in the file: remove the `---` line and what follows it, or make two files",
      ),
    );
  try {
    const value: unknown = unlessTooDeep<unknown>(() => doc.toJS({ maxAliasCount: 100 }));
    if (value === undefined) return refuseWhole("yaml", ...tooDeep);
    JSON.stringify(value); // throws where an alias holds itself
    const hidden = hiddenLetters(doc, plain).map(({ offset, length, message, mend }) => ({
      ...refuse("hidden-letter", offset, message, mend),
      ...(length > 0 && { fix: { to: at(offset + length), text: "" } }),
    }));
    if (hidden.length > 0) return fail(...hidden.slice(0, mostSyntaxErrors));
    textsOnOneLine(value);
    return {
      ok: true,
      value: {
        ...{ file, text, value },
        locate: (finding) => at(placeOf(doc, finding).from),
        endOf: (finding) => {
          const { to } = placeOf(doc, finding);
          return to === undefined ? undefined : at(to);
        },
      },
    };
  } catch (error) {
    // A ReferenceError from unfolding, a TypeError from a value that holds itself.
    if (!(error instanceof ReferenceError || error instanceof TypeError)) throw error;
    return fail(refuse("yaml-alias", ...aliasTrouble(text, error.message)));
  }
}

/** Filled by hand: the parser tells its counter nothing of line ends in what it did not expect. */
function lineCounter(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (const { index } of text.matchAll(/\n/g)) lines.addNewLine(index + 1);
  return lines;
}

/** Our choice: 16 times a garden of 40 beds. More would take seconds, and gigabytes where it is hostile. */
const mostTokens = 200_000;

function isTooMuch(text: string): boolean {
  // A letter makes less than two tokens on average, marks of what begins and ends there included.
  if (4 * text.length < mostTokens) return false;
  let tokens = 0;
  const lexer = new Lexer().lex(text);
  while (tokens <= mostTokens && !lexer.next().done) tokens++;
  return tokens > mostTokens;
}

function aliasTrouble(
  text: string,
  errorMessage: string,
): [offset: number, message: string, mend: string] {
  const [, unknown] = /^Unresolved alias.*: (.*)$/.exec(errorMessage) ?? [];
  return unknown === undefined
    ? [
        firstAliasOffset(text),
        "the aliases (*name) in the file unfold to too much, or to themselves",
        "write the values out instead of using aliases",
      ]
    : [
        Math.max(text.indexOf(`*${unknown}`), 0),
        `\`*${unknown}\` stands for a value marked \`&${unknown}\` before it, and there is none`,
        "put the text in quotes if the star is part of it",
      ];
}

/** No line but comments, or only `---` or `~`. */
function holdsNothing({ contents }: Document.Parsed): boolean {
  return contents === null || (isScalar(contents) && contents.value === null);
}

function repeatedKeys(doc: Document.Parsed): [offset: number, message: string][] {
  const repeated: [offset: number, message: string][] = [];
  visit(doc, {
    Map(_, map) {
      const known = new Set<string>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        const name = String(key.value);
        if (known.has(name))
          repeated.push([key.range?.[0] ?? 0, `the key \`${name}\` is given twice here`]);
        known.add(name);
      }
    },
  });
  return repeated;
}

/** The YAML library recurses: thousands of nested brackets end in a stack overflow, a RangeError. */
function unlessTooDeep<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

function firstAliasOffset(text: string): number {
  return Math.max(text.search(/(?<=[\s[,{:-])\*[^\s,\]}]/), 0);
}

interface Place {
  readonly from: number;
  /** Of a word that stands there itself, not one that an alias names. */
  readonly to?: number;
}

function placeOf(doc: Document.Parsed, { path, atKey }: Pick<Finding, "path" | "atKey">): Place {
  let node: Node | null = doc.contents;
  let offset = node?.range?.[0] ?? 0;
  for (const [depth, step] of path.entries()) {
    const isLast = depth === path.length - 1;
    const found = childOf(resolve(node, doc), step);
    if (found === undefined) break;
    const { key, value } = found;
    if (key?.range && isLast && atKey) return { from: key.range[0], to: key.range[1] };
    // An empty value has no place of its own: its key stands for it.
    const empty = isScalar(value) && value.value === null && value.source === "";
    if (isLast && isScalar(value) && value.range && !empty && !isBlock(value))
      return { from: value.range[0], to: value.range[1] };
    offset = (empty ? key?.range?.[0] : value?.range?.[0]) ?? key?.range?.[0] ?? offset;
    node = value;
  }
  return { from: offset };
}

/** Of several lines, under a `|` or `>`. */
function isBlock({ type }: Scalar): boolean {
  return type === "BLOCK_LITERAL" || type === "BLOCK_FOLDED";
}

function resolve(node: Node | null, doc: Document.Parsed): Node | null {
  return isAlias(node) ? (node.resolve(doc) ?? null) : node;
}

type Pairs = ReadonlyMap<string, YAMLMap["items"][number]>;
const pairsOfMaps = new WeakMap<YAMLMap, Pairs>();

/** A map of thousands of wrong keys is asked for each of them. */
function pairsByKey(map: YAMLMap): Pairs {
  const known = pairsOfMaps.get(map);
  if (known !== undefined) return known;
  const pairs = new Map(
    map.items.flatMap((item) =>
      isScalar(item.key) ? [[String(item.key.value), item] as const] : [],
    ),
  );
  pairsOfMaps.set(map, pairs);
  return pairs;
}

function childOf(
  node: Node | null,
  step: FilePath[number],
): { key?: Node; value: Node | null } | undefined {
  if (isMap(node)) {
    const pair = pairsByKey(node).get(String(step));
    if (!pair) return undefined;
    return { ...(isNode(pair.key) ? { key: pair.key } : {}), value: pair.value as Node | null };
  }
  if (node !== null && "items" in node && typeof step === "number") {
    const item = node.items[step];
    return isNode(item) ? { value: item } : undefined;
  }
  return undefined;
}
