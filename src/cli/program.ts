/** The commands and their options; each command's work is in a file of its own. */
import { Command, CommanderError } from "commander";
import { commandList, type CommandSpec } from "./command-list.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { legibleShell } from "./legible-shell.js";
import { version } from "./version.js";

/** Runs one command line; gives the exit code. Throws only for bugs of ours. */
export async function run(argv: readonly string[], world: Shell): Promise<number> {
  const shell = legibleShell(world);
  const exit = { code: exitCodes.fine as number };
  const program = commands(commandsFor(argv[0]), shell, (code) => (exit.code = code));
  try {
    if (argv.length === 0) program.outputHelp();
    else await program.parseAsync([...argv], { from: "user" });
    return exit.code;
  } catch (error) {
    // Commander has said what is wrong; its own code for a wrong usage is 1.
    if (error instanceof CommanderError)
      return error.exitCode === 0 ? exitCodes.fine : exitCodes.usage;
    if (!(error instanceof CommandError)) throw error;
    shell.stderr(`${error.message}\n`);
    return error.exitCode;
  }
}

/** To make them all takes longer than many a command: that is for help, and for what is no command. */
function commandsFor(name: string | undefined): readonly CommandSpec[] {
  const asked = commandList.find(({ usage }) => usage.split(" ")[0] === name);
  return asked === undefined || asked.tellsOfAll ? commandList : [asked];
}

function commands(
  specs: readonly CommandSpec[],
  shell: Shell,
  setExit: (code: number) => void,
): Command {
  const program = new Command("feedround")
    .description(
      "Plans calcium feedings for a garden: which crop, which day, how many millilitres in each can.",
    )
    .version(version(), "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .showSuggestionAfterError()
    .showHelpAfterError("(`feedround --help` lists the commands)")
    .exitOverride()
    .configureOutput({ writeOut: shell.stdout, writeErr: shell.stderr });
  for (const spec of specs) addCommand(program, spec, shell, setExit);
  return program;
}

/** Help begins with examples. */
function addCommand(
  program: Command,
  { usage, description, examples, options = [], load }: CommandSpec,
  shell: Shell,
  setExit: (code: number) => void,
): void {
  // Settings such as exitOverride pass to each command made from the program.
  const command = program
    .command(usage)
    .description(description)
    .showHelpAfterError(`(\`feedround ${usage.split(" ")[0]} --help\` shows how it is used)`)
    .addHelpText(
      "before",
      `${["Examples:", ...examples.map((e) => `  feedround ${e}`)].join("\n")}\n`,
    );
  for (const option of options) command.addOption(option);
  command.action(async () => {
    const run = await load();
    const args = command.processedArgs as unknown[];
    // Checked by usage and options alone.
    setExit(await run(...([...args, command.opts(), shell, program] as never[])));
  });
}
