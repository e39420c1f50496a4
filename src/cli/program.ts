/** The commands and their options; each command's work is in a file of its own. */
import { Command, CommanderError } from "commander";
import { addCalendarCommands } from "./calendar-commands.js";
import type { CheckOptions } from "./check-command.js";
import { dayOption, todayOption, wholeNumberOption } from "./option-values.js";
import { addHelpCommands } from "./help-commands.js";
import type { PlanWishes } from "./plan-command.js";
import { addPrintCommands } from "./print-commands.js";
import { addSeasonCommands } from "./season-commands.js";
import { addServeCommands } from "./serve-commands.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { version } from "./version.js";
import type { WhyOptions } from "./why-command.js";

/** Runs one command line; gives the exit code. Throws only for bugs of ours. */
export async function run(argv: readonly string[], shell: Shell): Promise<number> {
  const exit = { code: exitCodes.fine as number };
  const program = commands(shell, (code) => (exit.code = code));
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

/** Adds a command whose help begins with examples. */
export type AddCommand = (
  usage: string,
  description: string,
  examples: readonly string[],
) => Command;
export type SetExit = (code: number) => void;

/** Exported for the completion script and the manual, which are made from it. */
export function commands(shell: Shell, setExit: SetExit): Command {
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
  // Settings such as exitOverride pass to each command made from the program.
  const command: AddCommand = (usage, description, examples) =>
    program
      .command(usage)
      .description(description)
      .showHelpAfterError(`(\`feedround ${usage.split(" ")[0]} --help\` shows how it is used)`)
      .addHelpText(
        "before",
        `${["Examples:", ...examples.map((e) => `  feedround ${e}`)].join("\n")}\n`,
      );

  command("plan <garden>", "print the plan of the season: rounds, beds, cans, stock", [
    "plan garden.yaml",
    "plan garden.yaml --from 2027-06-01 --to 2027-06-30",
    "plan - --json < garden.yaml",
    "plan garden.yaml --keep garden.ics",
  ])
    .option("--json", "print the plan as JSON (schemas/plan.schema.json)")
    .option("--from <day>", "only rounds from this day on", dayOption)
    .option("--to <day>", "only rounds up to this day", dayOption)
    .option("--keep <plan>", "keep days of this earlier plan (JSON) or calendar")
    .option(
      "--extra-rounds <count>",
      "rounds that keeping may cost; without it, none",
      wholeNumberOption,
    )
    .addOption(todayOption())
    .action(async (file: string, options: PlanWishes) => {
      const { planCommand } = await import("./plan-command.js");
      setExit(await planCommand(file, options, shell));
    });

  command("check <garden>", "look for problems in a garden file, and give advice", [
    "check garden.yaml",
    "check - --json < garden.yaml",
  ])
    .option("--json", "print problems and advice as JSON")
    .addOption(todayOption())
    .action(async (file: string, options: CheckOptions) => {
      const { checkCommand } = await import("./check-command.js");
      setExit(await checkCommand(file, options, shell));
    });

  command("why <garden> [planting] [day]", "show the reasons and the arithmetic behind a feeding", [
    "why garden.yaml",
    "why garden.yaml toms",
    "why garden.yaml toms 2027-06-26",
  ])
    .option("--json", "print the reasons as JSON")
    .addOption(todayOption())
    .action(
      async (
        file: string,
        planting: string | undefined,
        day: string | undefined,
        options: WhyOptions,
      ) => {
        const { whyCommand } = await import("./why-command.js");
        setExit(await whyCommand(file, planting, day, options, shell));
      },
    );

  command("crops [crop]", "list the crops that are known, or tell all about one", [
    "crops",
    "crops courgette",
  ])
    .option("--json", "print them as JSON")
    .action(async (crop: string | undefined, options: { json?: true }) => {
      const { cropsCommand } = await import("./crops-command.js");
      setExit(cropsCommand(crop, options, shell));
    });

  command("new [file]", "write a commented first garden file", [
    "new garden.yaml",
    "new > garden.yaml",
  ])
    .option("--name <name>", "name of the garden", "My garden")
    .option("--timezone <zone>", "IANA time zone", shell.localTimezone)
    .action(async (file: string | undefined, options: { name: string; timezone: string }) => {
      const { newCommand } = await import("./new-command.js");
      setExit(await newCommand(file, options, shell));
    });

  addCalendarCommands(command, setExit, shell);
  addSeasonCommands(command, setExit, shell);
  addPrintCommands(command, setExit, shell);
  addServeCommands(command, setExit, shell);
  addHelpCommands(command, program, setExit, shell);
  return program;
}
