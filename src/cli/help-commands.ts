/** `help` and `completion`: what is told of the program itself. */
import type { Command } from "commander";
import { didYouMean } from "../suggest.js";
import { loadTables } from "../tables.js";
import { completionScript, shells, type ShellName } from "./completion.js";
import type { AddCommand, SetExit } from "./program.js";
import { readSchema, schemaHelp } from "./schema-help.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { textStyle } from "./style.js";

/** Topics of `help` beside the commands, with the schema that each is made from. */
const topics: Readonly<Record<string, string>> = { "garden-file": "garden", "rule-file": "rules" };

export function addHelpCommands(
  add: AddCommand,
  program: Command,
  setExit: SetExit,
  shell: Shell,
): void {
  const names = (): string[] => [
    ...Object.keys(topics),
    ...program.commands.map((command) => command.name()),
  ];

  add("help [topic]", "print the help of a command, or of the garden-file or the rule-file", [
    "help",
    "help garden-file",
    "help calendar",
  ]).action((topic: string | undefined) => {
    setExit(exitCodes.fine);
    if (topic === undefined) {
      program.outputHelp();
      return;
    }
    const schema = topics[topic];
    const command = program.commands.find((c) => c.name() === topic);
    if (schema !== undefined) shell.stdout(`${schemaHelp(readSchema(schema), textStyle(shell))}\n`);
    else if (command !== undefined) command.outputHelp();
    else
      throw new CommandError(
        exitCodes.usage,
        `there is no help on \`${topic}\`: ${didYouMean(topic, names(), `it is one of ${names().join(", ")}`)}`,
      );
  });

  add("completion <shell>", "print a completion script for bash, zsh or fish", [
    "completion bash > ~/.local/share/bash-completion/completions/feedround",
  ]).action((name: string) => {
    if (!shells.includes(name as ShellName))
      throw new CommandError(
        exitCodes.usage,
        `the shell \`${name}\` is not known: it is one of ${shells.join(", ")}`,
      );
    const crops = loadTables().catalogue.crops.map((crop) => crop.key);
    shell.stdout(completionScript(name as ShellName, program, { topics: names(), crops }));
    setExit(exitCodes.fine);
  });
}
