import type { Command } from "commander";
import { loadTables } from "../tables.js";
import { completionScript, shells } from "./completion.js";
import { helpTopics } from "./help-command.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";

export function completionCommand(
  name: string,
  _options: unknown,
  shell: Shell,
  program: Command,
): number {
  const known = shells.find((one) => one === name);
  if (known === undefined)
    throw wrongUsage(`the shell \`${name}\` is not known: it is one of ${shells.join(", ")}`);
  const crops = loadTables().catalogue.crops.map((crop) => crop.key);
  shell.stdout(completionScript(known, program, { topics: helpTopics(program), crops }));
  return exitCodes.fine;
}
