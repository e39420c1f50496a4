/** What a command gives back: its answer, or the problems of a file. */
import type { Day } from "../dates.js";
import { type Problem, problemLines } from "../problem.js";
import { shownName, writeText } from "./files.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle, type TextStyle } from "./terminal-text.js";

/** Options of the commands that answer from a garden. */
export interface AnswerOptions {
  readonly json?: true;
  readonly today?: Day;
}

/** To standard output: a value as JSON where JSON was asked for, else told in words. */
export function answer<T>(
  value: T,
  inWords: (value: T, style: TextStyle) => string,
  options: AnswerOptions,
  shell: Shell,
): number {
  if (options.json) printJson(value, shell);
  else shell.stdout(inWords(value, textStyle(shell)));
  return exitCodes.fine;
}

/** A text to the file asked for, whole or not at all, or to standard output. */
export async function giveText(
  text: string,
  out: string | undefined,
  shell: Shell,
): Promise<number> {
  if (out === undefined || out === "-") shell.stdout(text, "document");
  else shell.stderr(`${shownName(out)}: ${await writeText(out, text, shell)}\n`);
  return exitCodes.fine;
}

/** The first problems to standard error, a line each; as JSON, all to standard output. */
export function reportProblems(
  problems: readonly Problem[],
  options: AnswerOptions,
  shell: Shell,
): number {
  if (options.json) printJson({ problems }, shell);
  else {
    const lines = problemLines(problems);
    shell.stderr(lines.map((line) => `${line}\n`).join(""));
  }
  return exitCodes.problems;
}

function printJson(value: unknown, shell: Shell): void {
  shell.stdout(`${JSON.stringify(value, null, 2)}\n`);
}

/** `what is wrong: how to mend it` */
export function withMend(trouble: Pick<Problem, "message" | "mend">): string {
  return `${trouble.message}: ${trouble.mend}`;
}

/** Ends a command that files, folders or the network kept from its work. */
export function ioTrouble(troubles: readonly Pick<Problem, "message" | "mend">[]): CommandError {
  return new CommandError(exitCodes.io, troubles.map(withMend).join("\n"));
}
