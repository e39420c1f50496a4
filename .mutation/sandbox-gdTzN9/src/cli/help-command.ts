/** `help`: what is told of commands and files. */
// @ts-nocheck

import type { Command } from "commander";
import { didYouMean } from "../suggest.js";
import { loadNormalsCitation } from "../tables.js";
import { readSchema, schemaHelp } from "./schema-help.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";
import { textStyle, wrap } from "./terminal-text.js";

/** Topics of `help` beside the commands, with the schema that each is made from. */
const topics: Readonly<Record<string, string>> = { "garden-file": "garden", "rule-file": "rules" };

export function helpTopics(program: Command): string[] {
  return [...Object.keys(topics), ...program.commands.map((command) => command.name())];
}

export async function helpCommand(
  topic: string | undefined,
  _options: unknown,
  shell: Shell,
  program: Command,
): Promise<number> {
  const schema = topics[topic ?? ""];
  const command = topic === undefined ? program : program.commands.find((c) => c.name() === topic);
  if (schema !== undefined) shell.stdout(`${schemaHelp(readSchema(schema), textStyle(shell))}\n`);
  else if (command !== undefined) command.outputHelp();
  else {
    const names = helpTopics(program);
    const near = didYouMean(topic ?? "", names, `it is one of ${names.join(", ")}`);
    throw wrongUsage(`there is no help on \`${topic ?? ""}\`: ${near}`);
  }
  if (topic === undefined || topic === "garden-file")
    shell.stdout(`\n${wrap(await loadNormalsCitation(), textStyle(shell).width).join("\n")}\n`);
  return exitCodes.fine;
}
