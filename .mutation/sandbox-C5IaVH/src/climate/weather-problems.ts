/** What is wrong in a text, found by offsets -> problems with their places. */
// @ts-nocheck

import type { Position, Problem } from "../problem.js";

/** A text, and the name that problems have for its file. */
export interface WeatherText {
  readonly file: string;
  readonly text: string;
}

export type Report = (code: string, offset: number, message: string, mend: string) => void;

/** Problems of one text, told down the file by offsets. */
export interface ProblemList {
  readonly report: Report;
  /** With their places; of very many only the first, and how many more there are. */
  readonly problems: () => Problem[];
}

/** Beyond these nobody reads on. */
const mostProblems = 50;

export function problemList({ file, text }: WeatherText): ProblemList {
  const first: Problem[] = [];
  let count = 0;
  let nextOffset = 0;
  return {
    report: (code, offset, message, mend) => {
      count++;
      if (count <= mostProblems)
        first.push({ code, file, at: positionAt(text, offset), message, mend });
      else if (count === mostProblems + 1) nextOffset = offset;
    },
    problems: () => {
      if (count <= mostProblems) return first;
      const at = positionAt(text, nextOffset);
      const message = `${count - mostProblems} more problems from here on`;
      return [
        ...first,
        { code: "more-problems", file, at, message, mend: "mend those above first" },
      ];
    },
  };
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
