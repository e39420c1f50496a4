/** Orders of `log`, right and wrong, on garden files that are kept on disk. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { addDays, type Day } from "../../src/dates.js";
import { dayOfFile } from "../../src/log/index.js";
import { gardenOfText } from "../../src/plan-garden.js";
import { loadTables } from "../../src/tables.js";
import type { Dice } from "../live/player/dice.js";
import { cli, type CliResult } from "../support/run-cli.js";
import { fastFolder } from "./fast-folder.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeFit, mustHold } from "./must-hold.js";
import { firstDifference } from "./season-holds.js";
import { smallGardens } from "./small-gardens.js";

interface Order {
  readonly text: string;
  readonly argv: readonly string[];
  readonly today: string;
}

interface LogGarden {
  readonly text: string;
  readonly from: Day;
  readonly plantings: readonly string[];
  readonly beds: readonly string[];
  readonly batches: readonly string[];
}

const noise = ["", "-", "--", "toms ", "\u001b[2J", "\u202e", "é", "a\nb", "__proto__", "1e9", "x"];
const volumes = [
  "30mL",
  "30 mL",
  "0 mL",
  "-1 mL",
  "1/0 L",
  "2 tbsp",
  "1 gal",
  "9",
  "½ cup",
  "1e400 L",
];
const steps = ["shells-out", "acid-in", "made", "thrown-away", "missed"];
const stages = ["flowering", "fruit-set", "harvest", "heading", "Flowering", "end"];
const signs = ["blossom-end-rot", "Blossom end rot", "tipburn", "white-crust", "nothing"];

function logGarden(text: string): LogGarden {
  const read = gardenOfText(text, "garden.yaml", loadTables());
  mustHold(read.ok, "a garden to be logged in is not good", read);
  const { beds, stock } = read.value.garden;
  return {
    text,
    from: dayOfFile(read.value.garden),
    plantings: beds.flatMap((bed) => bed.plantings.map(({ id }) => id)),
    beds: beds.map(({ id }) => id),
    batches: [...stock.batches.map(({ id }) => id), "batch-1", "1", "2"],
  };
}

function orderOf({ from, plantings, beds, batches }: LogGarden, dice: Dice): string[] {
  const day = (): string => addDays(from, dice.between(-20, 150));
  const options: readonly (() => string[])[] = [
    () => ["--on", day()],
    () => ["--planting", dice.pick(plantings)],
    () => ["--bed", dice.pick(beds)],
    () => ["--stock", dice.pick(volumes)],
    () => ["--batch", dice.pick(batches)],
    () => ["--feed", dice.pick(["nettle", "seaweed", "salts"])],
    () => ["--missed"],
    () => ["--again"],
    () => ["--batch", dice.pick(batches), "--step", dice.pick(steps)],
    () => ["--volume", dice.pick(volumes)],
    () => ["--planting", dice.pick(plantings), "--stage", dice.pick(stages)],
    () => ["--planting", dice.pick(plantings), "--sign", dice.pick(signs)],
    () => ["--undo"],
    () => ["--dry-run"],
  ];
  const argv = Array.from({ length: dice.between(0, 3) }, () => dice.pick(options)()).flat();
  if (dice.chance(0.8) || argv.length === 0) return argv;
  argv[dice.between(0, argv.length - 1)] = dice.pick(noise);
  return argv;
}

function mustBeRightAnswer({ code, stdout, stderr }: CliResult, given: readonly string[]): void {
  mustHold([0, 1, 2, 3].includes(code), "an exit code that nobody knows", { code, stderr });
  mustBeFit(stdout, ...given);
  mustBeFit(stderr, ...given);
}

/** Nothing was written but entries of a day that is not the last in the log: `--undo` takes just them. */
function isOfNewDay(before: string, after: string): boolean {
  const [one, two] = [before, after].map((text) => parse(text) as Partial<GardenFile>);
  const lasts = [one, two].map((garden) => garden?.log?.at(-1)?.on);
  const isLogged = (two?.log?.length ?? 0) > (one?.log?.length ?? 0);
  const rest = [one, two].map((garden) => JSON.stringify({ ...garden, log: undefined }));
  return isLogged && lasts[0] !== lasts[1] && rest[0] === rest[1];
}

/** What the log says is one kind of thing; what was taken back leaves no trace of it. */
function begin(): Hunting<Order> {
  const gardens = smallGardens().slice(0, 30).map(logGarden);
  const folder = mkdtempSync(join(fastFolder, "feedround-fuzz-"));
  const file = join(folder, "garden.yaml");
  const log = (argv: readonly string[], today: string): Promise<CliResult> =>
    cli(["log", file, ...argv], { today });
  return {
    make: (dice) => {
      const garden = dice.pick(gardens);
      const today = addDays(garden.from, dice.between(0, 150));
      return { text: garden.text, argv: orderOf(garden, dice), today };
    },
    shown: ({ text, argv, today }) => `${JSON.stringify(argv)} on ${today}\n${text}`,
    end: () => {
      rmSync(folder, { recursive: true });
    },
    check: async ({ text, argv, today }) => {
      writeFileSync(file, text);
      const given = [text, ...argv];
      const answer = await log(argv, today);
      mustBeRightAnswer(answer, given);
      const after = readFileSync(file, "utf8");
      if (answer.code !== 0 || argv.includes("--dry-run") || argv.includes("--help")) {
        mustHold(after === text, "nothing was to be written", firstDifference(text, after));
        return answer.code === 0 ? "accepted" : "refused";
      }
      const read = gardenOfText(after, "garden.yaml", loadTables());
      mustHold(read.ok, "the log has spoilt a garden", read);
      if (after === text) return "accepted";
      if (isOfNewDay(text, after)) {
        await log(["--undo"], today);
        // A log that was emptied stays as an empty one.
        const undone = readFileSync(file, "utf8").replace(/^log: \[\]\n/m, "");
        mustHold(undone === text, "what was undone leaves traces", firstDifference(text, undone));
        writeFileSync(file, after);
      }
      const again = await log(argv, today);
      mustBeRightAnswer(again, given);
      if (!argv.includes("--again") && !argv.includes("--undo"))
        mustHold(readFileSync(file, "utf8") === after, "the same is logged twice", {
          answer: again.stdout + again.stderr,
        });
      return "accepted";
    },
  };
}

export const logOrders = aKind({ name: "log", share: 4, begin });
