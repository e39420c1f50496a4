import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import {
  bottleLabels,
  labelRows,
  labelSheet,
  type LabelSheet,
  ownSheet,
} from "../outputs/index.js";
import { didYouMean } from "../suggest.js";
import { loadLabelSheets } from "../tables.js";
import { loadGarden } from "./load.js";
import { giveText } from "./output-file.js";
import { reportProblems } from "./report.js";
import { paperFor } from "./sheet-command.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";
import { table } from "./table.js";

export interface LabelWishes {
  readonly out?: string;
  readonly today?: Day;
  readonly size: string;
  readonly paper?: string;
  readonly columns?: number;
  readonly rows?: number;
  readonly marginLeft?: number;
  readonly marginTop?: number;
  readonly gapAcross?: number;
  readonly gapDown?: number;
  readonly skip?: number;
  readonly batch?: string;
  readonly sizes?: true;
}

export async function labelsCommand(
  file: string,
  wishes: LabelWishes,
  shell: Shell,
): Promise<number> {
  if (wishes.sizes) {
    shell.stdout(`${knownSizes()}\n`);
    return exitCodes.fine;
  }
  const loaded = await loadGarden(file, shell, wishes);
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  const all = labelRows(plan);
  const ids = [...new Set(all.map((label) => label.batch))];
  const { batch } = wishes;
  if (batch !== undefined && !ids.includes(batch))
    throw new CommandError(
      exitCodes.usage,
      `there is no batch \`${batch}\` in the plan: ${didYouMean(batch, ids, `it has ${ids.join(", ") || "none"}`)}`,
    );
  const wanted = all.filter((label) => batch === undefined || label.batch === batch);
  const sheet = sheetFor(wishes, plan.garden.amounts);
  const made = bottleLabels(wanted, sheet, wishes.skip === undefined ? {} : { skip: wishes.skip });
  if (!made.ok)
    throw new CommandError(
      exitCodes.usage,
      made.problems.map(({ message, mend }) => `${message}: ${mend}`).join("\n"),
    );
  return giveText(made.value, wishes.out, shell);
}

/** A known sheet by its size, unless any measure of its own is given. */
function sheetFor(wishes: LabelWishes, amounts: Amounts): LabelSheet {
  const size = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)$/i.exec(wishes.size.trim());
  if (!size)
    throw new CommandError(
      exitCodes.usage,
      `\`${wishes.size}\` is no size of a label: write width by height in mm, like 63.5x38.1`,
    );
  const { paper, columns, rows, marginLeft, marginTop, gapAcross, gapDown } = wishes;
  const own = { columns, rows, marginLeft, marginTop, gapAcross, gapDown };
  const known = loadLabelSheets().find(
    (row) => row.name === `${size[1] ?? ""}x${size[2] ?? ""}` && (paper ?? row.paper) === row.paper,
  );
  if (known !== undefined && Object.values(own).every((value) => value === undefined))
    return labelSheet(known);
  return ownSheet({
    paper: paperFor(paper, amounts),
    widthMm: Number(size[1]),
    heightMm: Number(size[2]),
    ...given("columns", columns),
    ...given("rows", rows),
    ...given("marginLeftMm", marginLeft),
    ...given("marginTopMm", marginTop),
    ...given("columnGapMm", gapAcross),
    ...given("rowGapMm", gapDown),
  });
}

function given<K extends string>(key: K, value: number | undefined): Partial<Record<K, number>> {
  return value === undefined ? {} : ({ [key]: value } as Partial<Record<K, number>>);
}

function knownSizes(): string {
  const rows = loadLabelSheets().map((row) => [
    row.name,
    row.paper,
    `${row.columns} x ${row.rows}`,
  ]);
  return table([["size in mm", "paper", "labels"], ...rows], "", 80);
}
