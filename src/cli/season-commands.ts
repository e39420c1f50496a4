/** `batch` and `log`: making the stock, and writing down what was given. */
import type { BatchOptions } from "./batch-command.js";
import type { LogOptions } from "./log-command.js";
import { dayOption } from "./option-values.js";
import type { AddCommand, SetExit } from "./program.js";
import type { Shell } from "./shell.js";

export function addSeasonCommands(add: AddCommand, setExit: SetExit, shell: Shell): void {
  add(
    "batch [garden]",
    "print the recipe of a batch, and for a garden which batches to make when",
    [
      "batch garden.yaml",
      "batch --make 1L",
      "batch --shells 30 --vinegar 5%",
      'batch garden.yaml --acid "50 g" --json',
    ],
  )
    .option("--make <volume>", "as much stock as this, such as 1L")
    .option("--shells <eggs>", "from the shells of so many eggs")
    .option("--acid <weight>", "from so much acid, such as 50g; vinegar also by volume")
    .option("--vinegar <acidity>", "with vinegar of this acidity, such as 5%")
    .option("--citric", "with citric acid (anhydrous)")
    .option("--monohydrate", "with citric acid sold as monohydrate")
    .option("--purity <percent>", "calcium carbonate in the dry shell, such as 94%")
    .option("--temperature <degrees>", "of the room, such as 20C or 68F")
    .option("--bottles <volume>", "size of the bottles, such as 500mL")
    .option("--amounts <measures>", "metric, us or imperial; without it, as the garden has them")
    .option("--today <day>", "count from this day instead of today", dayOption)
    .option("--json", "print it as JSON (schemas/batch.schema.json)")
    .action(async (file: string | undefined, options: BatchOptions) => {
      const { batchCommand } = await import("./batch-command.js");
      setExit(await batchCommand(file, options, shell));
    });

  add("log <garden>", "write down in the garden file what was given", [
    "log garden.yaml",
    "log garden.yaml --on 2027-06-12 --dry-run",
    "log garden.yaml --planting toms --stock 30mL --batch B1",
    "log garden.yaml --bed south --feed seaweed",
  ])
    .option("--on <day>", "the day it was given; today without it", dayOption)
    .option("--planting <id>", "only this planting; without it and --bed, the round of that day")
    .option("--bed <id>", "only this bed")
    .option("--stock <volume>", "how much stock in all; without it, as planned")
    .option("--batch <id>", "the batch it came from; without it, as planned")
    .option("--feed <name>", "it was this other feed")
    .option("--dry-run", "show it, and write nothing")
    .option("--today <day>", "take this day for today", dayOption)
    .action(async (file: string, options: LogOptions) => {
      const { logCommand } = await import("./log-command.js");
      setExit(await logCommand(file, options, shell));
    });
}
