/** What is wrong in a text, found by offsets -> problems with their places. */
import type { Position, Problem } from "../problem.js";

/** A text, and the name that problems have for its file. */
export interface WeatherText {
  readonly file: string;
  readonly text: string;
}

/** A problem before its place is looked up. */
export interface WeatherFinding extends Pick<Problem, "code" | "message" | "mend"> {
  readonly offset: number;
}

export type Report = (code: string, offset: number, message: string, mend: string) => void;

/** Beyond these nobody reads on. */
const mostProblems = 50;

/** With their places; of very many only the first, and how many more there are. */
export function placed(findings: readonly WeatherFinding[], source: WeatherText): Problem[] {
  const shown = findings.slice(0, mostProblems).map(({ code, offset, message, mend }) => {
    return { code, file: source.file, at: positionAt(source.text, offset), message, mend };
  });
  const next = findings[mostProblems];
  if (next === undefined) return shown;
  const more: Problem = {
    code: "more-problems",
    file: source.file,
    at: positionAt(source.text, next.offset),
    message: `${findings.length - mostProblems} more problems from here on`,
    mend: "mend those above first",
  };
  return [...shown, more];
}

function positionAt(text: string, offset: number): Position {
  const begin = text.startsWith("\ufeff") ? 1 : 0;
  let [line, lineStart] = [1, begin];
  for (let at = text.indexOf("\n"); at !== -1 && at < offset; at = text.indexOf("\n", at + 1)) {
    line++;
    lineStart = at + 1;
  }
  return { line, column: Math.max(offset - lineStart, 0) + 1 };
}

/** Of what a file holds, as much as a message needs. */
export function shortened(text: string): string {
  const line = text.replace(/\s+/g, " ");
  return line.length > 60 ? `${line.slice(0, 60)}...` : line;
}
