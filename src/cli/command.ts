/** What a command is: data from which the program, its help, completion and manual are made. */
import { Option, type Command } from "commander";
import type { Shell } from "./shell.js";

export interface CommandSpec {
  /** Name and arguments, as `plan <garden>`. */
  readonly usage: string;
  readonly description: string;
  /** Without the program's name. */
  readonly examples: readonly string[];
  readonly options: readonly Option[];
  /** Gives the exit code. What it needs is imported when it runs. */
  readonly run: (call: CommandCall) => Promise<number>;
}

/** Arguments and options as commander gives them, checked by usage and options alone. */
export interface CommandCall {
  readonly args: readonly unknown[];
  readonly options: unknown;
  readonly shell: Shell;
  readonly program: Command;
}

/**
 * A command with the types of its arguments and options, which its usage and options must say too.
 *
 * @param run from arguments, options and the world to an exit code
 */
// eslint-disable-next-line @typescript-eslint/no-unnecessary-type-parameters -- they are what a caller promises
export function command<Args extends readonly unknown[], Options>(
  spec: Omit<CommandSpec, "run" | "options"> & { readonly options?: readonly Option[] },
  run: (args: Args, options: Options, shell: Shell, program: Command) => number | Promise<number>,
): CommandSpec {
  return {
    options: [],
    ...spec,
    run: async ({ args, options, shell, program }) =>
      run(args as unknown as Args, options as Options, shell, program),
  };
}

/** @param read turns the text into a value; throws commander's InvalidArgumentError */
export function option(
  flags: string,
  description: string,
  read?: (text: string) => unknown,
): Option {
  const made = new Option(flags, description);
  return read === undefined ? made : made.argParser(read);
}
