/** Completion scripts for shells, made from the commands themselves. */
// @ts-nocheck

import type { Command } from "commander";
import { loadTables } from "../tables.js";
import { helpTopics } from "./help-command.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";

const shells = ["bash", "zsh", "fish"] as const;

interface CompletionWords {
  readonly topics: readonly string[];
  readonly crops: readonly string[];
}

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

function completionScript(
  shell: (typeof shells)[number],
  program: Command,
  words: CompletionWords,
): string {
  switch (shell) {
    case "bash":
      return bashScript(program, words);
    case "zsh":
      return `#compdef feedround\nautoload -U +X bashcompinit && bashcompinit\n${bashScript(program, words)}`;
    case "fish":
      return fishScript(program, words);
  }
}

function longOptions(command: Command): string[] {
  return [...command.options.flatMap((option) => option.long ?? []), "--help"];
}

/** What a command's first argument can be, beside a file. */
function argumentWords(command: Command, words: CompletionWords): readonly string[] {
  switch (command.name()) {
    case "crops":
      return words.crops;
    case "help":
      return words.topics;
    case "completion":
      return shells;
    default:
      return [];
  }
}

function bashScript(program: Command, words: CompletionWords): string {
  const names = program.commands.map((command) => command.name());
  const cases = program.commands.map((command) => {
    const own = argumentWords(command, words);
    const files = own.length > 0 ? "" : ` $(compgen -f -- "$word")`;
    return `    ${command.name()}) COMPREPLY=($(compgen -W "${[...longOptions(command), ...own].join(" ")}" -- "$word")${files}) ;;`;
  });
  return `# Completion of feedround for bash: source it, or put it with the others.
_feedround() {
  local word="\${COMP_WORDS[COMP_CWORD]}"
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${names.join(" ")} --help --version" -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join("\n")}
  esac
}
complete -o filenames -F _feedround feedround
`;
}

function fishScript(program: Command, words: CompletionWords): string {
  const quoted = (text: string): string =>
    `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
  const lines = program.commands.flatMap((command) => {
    const name = command.name();
    const only = `-n ${quoted(`__fish_seen_subcommand_from ${name}`)}`;
    const own = argumentWords(command, words);
    return [
      `complete -c feedround -n __fish_use_subcommand -f -a ${name} -d ${quoted(command.description())}`,
      ...command.options.map(
        (option) =>
          `complete -c feedround ${only} -l ${(option.long ?? "").replace(/^--/, "")}${option.required ? " -r" : ""} -d ${quoted(option.description)}`,
      ),
      ...(own.length > 0 ? [`complete -c feedround ${only} -f -a ${quoted(own.join(" "))}`] : []),
    ];
  });
  return `# Completion of feedround for fish.\n${lines.join("\n")}\n`;
}
