import { legibleMessage, legibleWord } from "./legible.js";
import { byText } from "./values.js";

/** Where in a parsed file: keys and indexes from the root, as in `["beds", 0, "area"]`. */
export type FilePath = readonly (string | number)[];

/** 1-based, as editors count. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** One exact change: a text in place of what stands between a problem's place and `to`. */
export interface Fix {
  /** Behind the last letter that goes. */
  readonly to: Position;
  /** YAML, as it is to stand there. */
  readonly text: string;
}

/** Something wrong in a file the user wrote, with the way to mend it. */
export interface Problem {
  /** Stable name of the kind of problem, for tests and tools. */
  readonly code: string;
  readonly file: string;
  readonly at: Position;
  /** What is wrong, with the value found. */
  readonly message: string;
  /** An edit or a command that mends it. */
  readonly mend: string;
  /** The mend itself, where it is one change and no other would do. */
  readonly fix?: Fix;
}

/** Expected trouble is a value, never an exception. */
export type Result<T, P = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly P[] };

/** A problem found in values already read, before its place in the file is looked up. */
export interface Finding {
  readonly code: string;
  readonly path: FilePath;
  /** Point at the key itself rather than at its value. */
  readonly atKey?: boolean;
  readonly message: string;
  readonly mend: string;
  /** YAML text that mends it in place of the value, or of the key. */
  readonly fix?: string;
}

/** `file:line:column: what is wrong: how to mend it` */
export function problemLine(p: Problem): string {
  const where = `${legibleWord(p.file)}:${p.at.line}:${p.at.column}`;
  return `${where}: ${legibleMessage(p.message)}: ${legibleMessage(p.mend)}`;
}

/** One slip often has hundreds: beyond these nobody reads on. */
const mostTold = 50;

/** The first problems, a line each, and how many more there are. */
export function problemLines(problems: readonly Problem[]): string[] {
  const left = problems.length - mostTold;
  const lines = problems.slice(0, mostTold).map(problemLine);
  return left > 0 ? [...lines, `and ${left} more ${left === 1 ? "problem" : "problems"}`] : lines;
}

/** In file order, so that a reader goes down the file once. */
export function inFileOrder(problems: readonly Problem[]): Problem[] {
  return [...problems].sort(
    (a, b) => byText(a.file, b.file) || a.at.line - b.at.line || a.at.column - b.at.column,
  );
}
