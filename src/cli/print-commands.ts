/** `sheet` and `labels`: what is printed on paper. */
import type { Command } from "commander";
import type { AddCommand, SetExit } from "./program.js";
import { millimetresOption, todayOption, wholeNumberOption } from "./option-values.js";
import type { LabelWishes } from "./labels-command.js";
import type { SheetWishes } from "./sheet-command.js";
import type { Shell } from "./shell.js";

export function addPrintCommands(add: AddCommand, setExit: SetExit, shell: Shell): void {
  const common = (command: Command): Command =>
    command
      .option("--out <file>", "write this file instead of standard output")
      .addOption(todayOption());

  common(
    add("sheet <garden>", "make a season sheet to print (HTML), with boxes to tick", [
      "sheet garden.yaml --out sheet.html",
      "sheet garden.yaml --paper letter > sheet.html",
      "sheet garden.yaml --svg > season.svg",
    ]),
  )
    .option("--paper <paper>", "a4 or letter; without it, as the garden's amounts suggest")
    .option("--svg", "only the picture of the season, as SVG")
    .action(async (file: string, options: SheetWishes) => {
      const { sheetCommand } = await import("./sheet-command.js");
      setExit(await sheetCommand(file, options, shell));
    });

  common(
    add("labels <garden>", "make bottle labels to print (HTML)", [
      "labels garden.yaml --out labels.html",
      "labels garden.yaml --size 99.1x67.7 --batch B1",
      "labels garden.yaml --size 80x40 --columns 2 --rows 6 --paper a4",
    ]),
  )
    .option("--size <mm>", "width by height of a label: a known sheet or your own", "63.5x72")
    .option("--paper <paper>", "a4 or letter, for a size of your own")
    .option("--columns <n>", "labels across", wholeNumberOption)
    .option("--rows <n>", "labels down", wholeNumberOption)
    .option("--margin-left <mm>", "from the edge to the first label", millimetresOption)
    .option("--margin-top <mm>", "from the edge to the first label", millimetresOption)
    .option("--gap-across <mm>", "between labels of a row", millimetresOption)
    .option("--gap-down <mm>", "between labels of a column", millimetresOption)
    .option("--skip <n>", "labels of the first sheet that are used up", wholeNumberOption)
    .option("--batch <id>", "only the bottles of this batch")
    .option("--sizes", "list the sheets that are known")
    .action(async (file: string, options: LabelWishes) => {
      const { labelsCommand } = await import("./labels-command.js");
      setExit(await labelsCommand(file, options, shell));
    });
}
