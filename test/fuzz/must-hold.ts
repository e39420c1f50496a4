/** What must hold of everything that the program says, whatever it was given. */
import { type Position, type Problem, problemLine } from "../../src/problem.js";

/** Something that must hold does not. */
export class Broken extends Error {
  /** The same words for all that break the same thing. */
  readonly what: string;
  constructor(what: string, value: unknown) {
    const shown = typeof value === "string" ? value : JSON.stringify(value);
    super(value === undefined ? what : `${what}: ${shown.slice(0, 600)}`);
    this.what = what;
  }
}

export function mustHold(holds: boolean, what: string, value?: unknown): asserts holds {
  if (!holds) throw new Broken(what, value);
}

// C0, C1, line and paragraph separators, and what turns the direction of text.
const control = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/;
/** The program's insides. */
const insides = /undefined|NaN|\[object |\bInfinity\b|Error:|\n\s+at \S+ \(|node:internal/;

/** Text that people read; `given` are the texts that it may quote. */
export function mustBeFit(text: string, ...given: readonly string[]): void {
  const sign = control.exec(text);
  if (sign !== null) {
    const around = text.slice(Math.max(0, sign.index - 60), sign.index + 60);
    mustHold(false, "a control character is printed", JSON.stringify(around));
  }
  const word = insides.exec(text)?.[0];
  if (word !== undefined && !given.some((one) => one.includes(word.trim())))
    mustHold(false, `\`${word}\` is printed`, text);
}

/** @param texts by the name of the file */
export function mustBeRightProblems(
  problems: readonly Problem[],
  texts: Readonly<Record<string, string>>,
): void {
  mustHold(problems.length > 0, "refused without a problem");
  const all = Object.values(texts);
  for (const problem of problems) {
    const { file, at, message, mend } = problem;
    const line = problemLine(problem);
    mustHold(message !== "" && mend !== "", "a problem without words", problem);
    mustHold(!line.includes("\n"), "a problem of several lines", line);
    mustBeFit(line, ...all);
    const text = texts[file];
    mustHold(text !== undefined, "a problem of no file", problem);
    mustHold(liesIn(text, at), "a problem outside of its file", line);
  }
}

/** YAML knows no line that ends in CR alone; a table may. */
function liesIn(text: string, { line, column }: Position): boolean {
  return [/\r?\n/, /\r\n?|\n/].some((lineEnd) => {
    const length = text.split(lineEnd)[line - 1]?.length;
    return length !== undefined && line >= 1 && column >= 1 && column <= length + 1;
  });
}
