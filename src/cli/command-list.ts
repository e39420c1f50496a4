/** All commands as data, in the order of the help: from it come program, help and completion. */
import { Option } from "commander";
import { stageNames } from "../crops/index.js";
import { stepWords } from "./log-steps.js";
import {
  dayOption,
  millimetresOption,
  partOption,
  portOption,
  stampOption,
  urlOption,
  wholeNumberOption,
} from "./option-values.js";

export interface CommandSpec {
  /** Name and arguments, as `plan <garden>`. */
  readonly usage: string;
  readonly description: string;
  /** Without the program's name. */
  readonly examples: readonly string[];
  readonly options?: readonly Option[];
  /** The program that it is given has all commands, not itself alone. */
  readonly tellsOfAll?: true;
  /**
   * Imports the command when it is to run: a function of the arguments and options, which `usage`
   * and `options` must say too, the shell and the program. It gives the exit code.
   */
  readonly load: () => Promise<(...call: never[]) => number | Promise<number>>;
}

/** @param read turns the text into a value; throws commander's InvalidArgumentError */
function option(flags: string, description: string, read?: (text: string) => unknown): Option {
  const made = new Option(flags, description);
  return read === undefined ? made : made.argParser(read);
}

const todayOption = option("--today <day>", "plan from this day instead of today", dayOption);

const extraRoundsOption = option(
  "--extra-rounds <count>",
  "rounds that keeping published days may cost; without it, as the garden has it, else none",
  wholeNumberOption,
);

export const commandList: readonly CommandSpec[] = [
  {
    usage: "plan <garden>",
    description: "print the plan of the season: rounds, beds, cans, stock",
    examples: [
      "plan garden.yaml",
      "plan garden.yaml --from 2027-06-01 --to 2027-06-30",
      "plan - --json < garden.yaml",
      "plan garden.yaml --keep garden.ics",
    ],
    options: [
      option("--json", "print the plan as JSON (schemas/plan.schema.json)"),
      option("--from <day>", "only rounds and jobs from this day on", dayOption),
      option("--to <day>", "only rounds and jobs up to this day", dayOption),
      option("--past", "with what lies before today, day by day"),
      option("--keep <plan>", "keep days of this earlier plan (JSON) or calendar"),
      extraRoundsOption,
      todayOption,
    ],
    load: async () => (await import("./plan-command.js")).planCommand,
  },
  {
    usage: "check <garden>",
    description: "look for problems in a garden file, and give advice",
    examples: ["check garden.yaml", "check - --json < garden.yaml"],
    options: [option("--json", "print problems and advice as JSON"), todayOption],
    load: async () => (await import("./check-command.js")).checkCommand,
  },
  {
    usage: "why <garden> [planting] [day]",
    description: "show the reasons and the arithmetic behind a feeding",
    examples: ["why garden.yaml", "why garden.yaml toms", "why garden.yaml toms 2027-06-26"],
    options: [option("--json", "print the reasons as JSON"), todayOption],
    load: async () => (await import("./why-command.js")).whyCommand,
  },
  {
    usage: "crops [crop]",
    description: "list the crops that are known, or tell all about one",
    examples: ["crops", "crops courgette"],
    options: [option("--json", "print them as JSON")],
    load: async () => (await import("./crops-command.js")).cropsCommand,
  },
  {
    usage: "new [file]",
    description: "write a commented first garden file, or that of the next year",
    examples: ["new garden.yaml", "new > garden.yaml", "new garden-2028.yaml --from garden.yaml"],
    options: [
      option("--name <name>", "name of the garden; without it, My garden"),
      option("--timezone <zone>", "IANA time zone; without it, this computer's"),
      option("--from <garden>", "this garden a year later, with what is left in its bottles"),
      option("--today <day>", "take this day for today", dayOption),
    ],
    load: async () => (await import("./new-command.js")).newCommand,
  },
  {
    usage: "calendar <garden>",
    description: "write the calendar (iCalendar, .ics)",
    examples: [
      "calendar garden.yaml --out garden.ics",
      "calendar garden.yaml --out feed.ics --for subscription",
      "calendar garden.yaml > garden.ics",
    ],
    options: [
      option(
        "--out <file>",
        "write this file instead of standard output; an earlier one is kept up",
      ),
      option(
        "--for <use>",
        "what an earlier file holds and the plan no longer does is cancelled (import) or left out (subscription)",
      )
        .choices(["import", "subscription"])
        .default("import"),
      extraRoundsOption,
      todayOption,
      option(
        "--stamp <instant>",
        "when it is made, such as 2027-03-01T08:00:00Z, instead of now",
        stampOption,
      ),
    ],
    load: async () => (await import("./calendar-command.js")).calendarCommand,
  },
  {
    usage: "changes <calendar> <garden>",
    description: "tell what would change in a calendar written before",
    examples: ["changes garden.ics garden.yaml", "changes garden.ics garden.yaml --json"],
    options: [option("--json", "print the changes as JSON"), todayOption],
    load: async () => (await import("./changes-command.js")).changesCommand,
  },
  {
    usage: "batch [garden]",
    description: "print the recipe of a batch, and for a garden which batches to make when",
    examples: [
      "batch garden.yaml",
      "batch --make 1L",
      "batch --shells 30 --vinegar 5%",
      'batch garden.yaml --acid "50 g" --json',
    ],
    options: [
      option("--make <volume>", "as much stock as this, such as 1L"),
      option("--shells <eggs>", "from the shells of so many eggs"),
      option("--acid <weight>", "from so much acid, such as 50g; vinegar also by volume"),
      option("--vinegar <acidity>", "with vinegar of this acidity, such as 5%"),
      option("--citric", "with citric acid (anhydrous)"),
      option("--monohydrate", "with citric acid sold as monohydrate"),
      option("--purity <percent>", "calcium carbonate in the dry shell, such as 94%"),
      option("--temperature <degrees>", "of the room, such as 20C or 68F"),
      option("--bottles <volume>", "size of the bottles, such as 500mL"),
      option("--amounts <measures>", "metric, us or imperial; without it, as the garden has them"),
      option("--today <day>", "count from this day instead of today", dayOption),
      option("--json", "print it as JSON (schemas/batch.schema.json)"),
    ],
    load: async () => (await import("./batch-command.js")).batchCommand,
  },
  {
    usage: "log <garden>",
    description: "write down in the garden file what was given, done for a batch, or seen",
    examples: [
      "log garden.yaml",
      "log garden.yaml --on 2027-06-12 --dry-run",
      "log garden.yaml --planting toms --stock 30mL --batch B1",
      "log garden.yaml --bed south --feed seaweed",
      "log garden.yaml --missed --on 2027-06-12",
      "log garden.yaml --batch batch-2 --step acid-in",
      "log garden.yaml --planting toms --stage flowering",
      "log garden.yaml --planting toms --sign blossom-end-rot",
      "log garden.yaml --undo",
    ],
    options: [
      option("--on <day>", "the day it was given, done or seen; today without it", dayOption),
      option("--planting <id>", "only this planting; without it and --bed, the round of that day"),
      option("--bed <id>", "only this bed"),
      option("--stock <volume>", "how much stock in all; without it, as planned"),
      option("--so-much", "with --stock: it was so much, far beyond the plan"),
      option("--batch <id>", "id or number of the batch it came from; without it, as planned"),
      option("--feed <name>", "it was this other feed"),
      option("--missed", "it was not given"),
      option("--again", "it was a second feeding of that day"),
      option("--step <step>", "what was done for --batch, instead of a feeding").choices(stepWords),
      option("--volume <volume>", "with --step: what the batch really makes"),
      option("--stage <stage>", "the stage that --planting was seen to enter").choices(stageNames),
      option("--sign <sign>", "the sign that was seen on --planting"),
      option("--undo", "take back the last day of the log, or the last step of --batch"),
      option("--dry-run", "show it, and write nothing"),
      option("--today <day>", "take this day for today", dayOption),
    ],
    load: async () => (await import("./log-command.js")).logCommand,
  },
  {
    usage: "sheet <garden>",
    description: "make a season sheet to print (HTML), with boxes to tick",
    examples: [
      "sheet garden.yaml --out sheet.html",
      "sheet garden.yaml --paper letter > sheet.html",
      "sheet garden.yaml --short --out days.html",
      "sheet garden.yaml --svg > season.svg",
      "sheet garden.yaml --calcium --out calcium.html",
    ],
    options: [
      option("--out <file>", "write this file instead of standard output"),
      todayOption,
      option("--paper <paper>", "a4 or letter; without it, as the garden's amounts suggest"),
      option("--short", "only the days of feeding and how much, 25 to a page").conflicts([
        "calcium",
        "svg",
      ]),
      option("--svg", "only the picture of the season, as SVG").conflicts("calcium"),
      option("--calcium", "a page of its own: where this garden's calcium comes from"),
    ],
    load: async () => (await import("./sheet-command.js")).sheetCommand,
  },
  {
    usage: "labels <garden>",
    description: "make bottle labels to print (HTML)",
    examples: [
      "labels garden.yaml --out labels.html",
      "labels garden.yaml --size 99.1x67.7 --batch B1",
      "labels garden.yaml --size 80x40 --columns 2 --rows 6 --paper a4",
    ],
    options: [
      option("--out <file>", "write this file instead of standard output"),
      todayOption,
      option(
        "--size <size>",
        "width by height of a label, in mm or like 4x2in: a known sheet or your own; without it, 63.5x72 on A4 and 4x2in on letter paper",
      ),
      option("--paper <paper>", "a4 or letter; without it, as the garden's amounts suggest"),
      option("--columns <n>", "labels across", wholeNumberOption),
      option("--rows <n>", "labels down", wholeNumberOption),
      option("--margin-left <mm>", "from the edge to the first label", millimetresOption),
      option("--margin-top <mm>", "from the edge to the first label", millimetresOption),
      option("--gap-across <mm>", "between labels of a row", millimetresOption),
      option("--gap-down <mm>", "between labels of a column", millimetresOption),
      option("--skip <n>", "labels of the first sheet that are used up", wholeNumberOption),
      option("--batch <id>", "only the bottles of this batch"),
      option("--sizes", "list the sheets that are known"),
    ],
    load: async () => (await import("./labels-command.js")).labelsCommand,
  },
  {
    usage: "serve <gardens...>",
    description: "serve calendar and page of gardens while it runs",
    examples: [
      "serve garden.yaml",
      "serve gardens/ --port 8080",
      "serve garden.yaml --host 0.0.0.0",
      "serve garden.yaml --host 0.0.0.0 --write",
    ],
    options: [
      option("--host <address>", "answer on this address too; only this computer without it"),
      option("--port <number>", "port; any free one without it", portOption),
      option(
        "--write",
        "print a second link too: who has it marks what was done, and writes the files",
      ),
      option(
        "--url <address>",
        "where a proxy in front answers, as https://garden.example.org, for links",
        urlOption,
      ),
      option("--cert <file>", "certificate (PEM): the server then speaks https"),
      option("--key <file>", "key of that certificate (PEM)"),
      option("--state <folder>", "where secrets and the last calendars are kept"),
      extraRoundsOption,
      option(
        "--today <day>",
        "plan from this day instead of today, all the time; a calendar that a garden file names is then left as it is",
        dayOption,
      ),
    ],
    load: async () => (await import("./serve-command.js")).serveCommand,
  },
  {
    usage: "publish <folder> [gardens...]",
    description: "write calendar and page of gardens for any web host",
    examples: [
      "publish public garden.yaml",
      "publish public gardens/ --index --url https://example.org/gardens/",
      "publish public gardens/ --part 3/16",
      "publish public --join --index",
    ],
    options: [
      option("--index", "write an index of the gardens too"),
      option(
        "--writing",
        "put the page on which a garden is written there too, into the folder `writing`",
      ),
      option(
        "--url <address>",
        "where the folder will be found, for links on the pages",
        urlOption,
      ),
      option(
        "--part <part>",
        "only a part of the gardens, as 3/16; `--join` follows when all are done",
        partOption,
      ),
      option("--join", "make one published folder of all its parts"),
      extraRoundsOption,
      option(
        "--today <day>",
        "plan from this day instead of today; a calendar that a garden file names is then left as it is",
        dayOption,
      ),
    ],
    load: async () => (await import("./publish-command.js")).publishCommand,
  },
  {
    usage: "help [topic]",
    description: "print the help of a command, or of the garden-file or the rule-file",
    examples: ["help", "help garden-file", "help calendar"],
    tellsOfAll: true,
    load: async () => (await import("./help-command.js")).helpCommand,
  },
  {
    usage: "completion <shell>",
    description: "print a completion script for bash, zsh or fish",
    examples: ["completion bash > ~/.local/share/bash-completion/completions/feedround"],
    tellsOfAll: true,
    load: async () => (await import("./completion-command.js")).completionCommand,
  },
];
