import { type Problem, problemLine } from "../problem.js";
import { exitCodes, type Shell } from "./shell.js";

/** Problems to standard error, a line each; as JSON to standard output where JSON was asked for. */
export function reportProblems(
  problems: readonly Problem[],
  options: { readonly json?: true },
  shell: Shell,
): number {
  if (options.json) printJson({ problems }, shell);
  else shell.stderr(problems.map((problem) => `${problemLine(problem)}\n`).join(""));
  return exitCodes.problems;
}

export function printJson(value: unknown, shell: Shell): void {
  shell.stdout(`${JSON.stringify(value, null, 2)}\n`);
}
