/** Where in a garden file the cursor stands, also while the text around it is not YAML yet. */
// @ts-nocheck


/** Keys from the root; `[]` is an item of a list. */
export type KeyPath = readonly string[];

export interface PlaceInText {
  /** To the group of a key, or to the key of a value. */
  readonly path: KeyPath;
  readonly at: "key" | "value";
  /** Where the word at the cursor begins. */
  readonly from: number;
  /** Keys that the group has already. */
  readonly taken: ReadonlySet<string>;
  /** Between braces or brackets. */
  readonly isFlow: boolean;
  /** At the start of a line or behind dashes alone: a whole item could stand here. */
  readonly isLineStart: boolean;
}

export function placeInText(text: string, offset: number): PlaceInText {
  const open = openBrackets(text, offset);
  const outer = open[0];
  if (outer === undefined) return inBlock(text, offset);
  const before = inBlock(text, outer.at);
  return inFlow(text, offset, open, before.path);
}

/** `  - id: toms`: dashes and a key, each with its column. */
interface Line {
  readonly dashes: readonly number[];
  /** Where what comes behind the dashes stands. */
  readonly column: number;
  readonly key?: string;
  readonly isBlank: boolean;
}

function readLine(line: string): Line {
  const [lead = ""] = /^\s*(?:-(?:\s+|$))*/.exec(line) ?? [];
  const dashes = [...lead.matchAll(/-/g)].map(({ index }) => index);
  const rest = line.slice(lead.length);
  const key = /^(?:"([^"]*)"|'([^']*)'|([^\s#'"[\]{},][^:#]*?))\s*:(?:\s|$)/.exec(rest);
  const name = key?.[1] ?? key?.[2] ?? key?.[3];
  return {
    dashes,
    column: lead.length,
    ...(name === undefined ? {} : { key: name }),
    isBlank: rest === "" || rest.startsWith("#"),
  };
}

function inBlock(text: string, offset: number): PlaceInText {
  const lineStart = text.lastIndexOf("\n", offset - 1) + 1;
  const lines = text.split("\n");
  const number = text.slice(0, lineStart).split("\n").length - 1;
  const typed = text.slice(lineStart, offset);
  const line = readLine(typed);
  const parents = parentsOf(lines, number, line);
  if (line.key !== undefined) {
    const colon = typed.indexOf(":", line.column + line.key.length);
    const [gap = ""] = /^\s*/.exec(typed.slice(colon + 1)) ?? [];
    const from = lineStart + colon + 1 + gap.length;
    return {
      path: [...parents, line.key],
      ...{ at: "value", from, taken: new Set(), isFlow: false, isLineStart: false },
    };
  }
  // Of a list of words, as days, an item is a value: who asks looks at both.
  return {
    path: parents,
    at: "key",
    from: lineStart + line.column,
    taken: keysBeside(lines, number, line),
    isFlow: false,
    isLineStart: true,
  };
}

/** Keys and lists that hold a line, from the root. */
function parentsOf(lines: readonly string[], number: number, line: Line): string[] {
  const path: string[] = [];
  let { column } = line;
  const pass = (dashes: readonly number[]): void => {
    for (const dash of [...dashes].reverse())
      if (dash < column) {
        path.unshift("[]");
        column = dash;
      }
  };
  pass(line.dashes);
  let isInList = path[0] === "[]";
  for (let i = number - 1; i >= 0 && (column > 0 || isInList); i--) {
    const above = readLine(lines[i] ?? "");
    if (above.isBlank && above.dashes.length === 0) continue;
    // A list may stand right under its key.
    const holds = above.column < column || (isInList && above.column === column);
    if (above.key !== undefined && holds) {
      path.unshift(above.key);
      column = above.column;
      isInList = false;
    }
    const length = path.length;
    if (above.column <= column || above.key === undefined) pass(above.dashes);
    if (path.length > length) isInList = true;
  }
  return path;
}

/** Of the same group, above and below. */
function keysBeside(lines: readonly string[], number: number, { dashes, column }: Line) {
  const keys = new Set<string>();
  const walk = (step: 1 | -1): void => {
    for (let i = number + step; i >= 0 && i < lines.length; i += step) {
      const line = readLine(lines[i] ?? "");
      if (line.isBlank && line.dashes.length === 0) continue;
      if (line.column < column) return;
      if (step === 1 && line.dashes.some((dash) => dash < column)) return;
      if (line.column === column && line.key !== undefined) keys.add(line.key);
      if (step === -1 && line.dashes.some((dash) => dash < column)) return;
    }
  };
  if (dashes.length === 0) walk(-1);
  walk(1);
  return keys;
}

interface Bracket {
  readonly kind: "{" | "[";
  readonly at: number;
}

/** Brackets that are open at a place; one that is never closed ends where a key of the file begins. */
function openBrackets(text: string, offset: number): Bracket[] {
  let open: Bracket[] = [];
  for (let i = 0; i < offset; i++) {
    const letter = text[i] ?? "";
    const isLineStart = i === 0 || text[i - 1] === "\n";
    if (isLineStart && open.length > 0 && /^[a-z_]+:/.test(text.slice(i, i + 40))) open = [];
    const isStart =
      open.length > 0 || /(?:^|[:,[{-]\s+|[[{,]|\n\s*)$/.test(text.slice(Math.max(0, i - 80), i));
    if (letter === "#" && (isLineStart || /\s/.test(text[i - 1] ?? ""))) {
      const end = text.indexOf("\n", i);
      i = end === -1 ? offset : end - 1;
    } else if ((letter === '"' || letter === "'") && /[\s[{,:]/.test(text[i - 1] ?? " ")) {
      const end = text.slice(0, text.indexOf("\n", i) >>> 0).indexOf(letter, i + 1);
      if (end === -1) continue;
      i = end;
    } else if ((letter === "{" || letter === "[") && isStart) open.push({ kind: letter, at: i });
    else if (letter === "}" || letter === "]") open.pop();
  }
  return open;
}

function inFlow(
  text: string,
  offset: number,
  open: readonly Bracket[],
  outer: KeyPath,
): PlaceInText {
  const path = [...outer];
  for (const [i, { kind, at }] of open.entries()) {
    const end = open[i + 1]?.at ?? offset;
    const inside = text.slice(at + 1, end);
    const last = inside.slice(flat(inside).lastIndexOf(",") + 1);
    const [, key] = /^\s*["']?([^\s:"']+)["']?\s*:(?:\s|$)/.exec(last) ?? [];
    if (kind === "[") path.push("[]");
    else if (key !== undefined && (i < open.length - 1 || key !== "")) path.push(key);
    if (i < open.length - 1) continue;
    const isValue = kind === "[" || key !== undefined;
    const word = isValue && kind === "{" ? last.slice(last.indexOf(":") + 1) : last;
    const [gap = ""] = /^\s*/.exec(word) ?? [];
    const whole = text.slice(at + 1, closingAt(text, at));
    return {
      path,
      at: isValue ? "value" : "key",
      from: offset - word.length + gap.length,
      taken: new Set([...flat(whole).matchAll(/(?:^|,)\s*([\w-]+)\s*:/g)].map(([, k = ""]) => k)),
      isFlow: true,
      isLineStart: false,
    };
  }
  throw new Error("no open bracket");
}

/** With what stands in brackets within it blotted out. */
function flat(text: string): string {
  let depth = 0;
  return text.replace(/[^]/g, (letter) => {
    if (letter === "}" || letter === "]") depth--;
    const shown = depth > 0 ? " " : letter;
    if (letter === "{" || letter === "[") depth++;
    return shown;
  });
}

function closingAt(text: string, at: number): number {
  let depth = 0;
  for (let i = at; i < text.length; i++) {
    if (text[i] === "{" || text[i] === "[") depth++;
    if ((text[i] === "}" || text[i] === "]") && --depth === 0) return i;
  }
  return text.length;
}
