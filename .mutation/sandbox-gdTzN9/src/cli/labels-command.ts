// @ts-nocheck
import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import {
  bottleLabels,
  labelRows,
  labelSheet,
  type LabelSheet,
  mmPerInch,
  ownSheet,
  type Paper,
  sizeInInches,
} from "../outputs/index.js";
import { isCalled } from "../log/index.js";
import { didYouMean } from "../suggest.js";
import { loadLabelSheets } from "../tables.js";
import { given } from "../values.js";
import { loadGarden } from "./load.js";
import { giveText, reportProblems, withMend } from "./report.js";
import { paperFor } from "./sheet-command.js";
import { exitCodes, type Shell, wrongUsage } from "./shell.js";
import { table } from "./terminal-text.js";

interface LabelWishes {
  readonly out?: string;
  readonly today?: Day;
  readonly size?: string;
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
  const name = wishes.batch;
  const isMeant = ({ id, number }: { id: string; number: number }): boolean =>
    name !== undefined && (isCalled(name, id) || isCalled(name, number));
  const batch = plan.published.batches.find(isMeant)?.id ?? name;
  if (batch !== undefined && !ids.includes(batch))
    throw wrongUsage(
      `there is no batch \`${batch}\` in the plan: ${didYouMean(batch, ids, `it has ${ids.join(", ") || "none"}`)}`,
    );
  const wanted = all.filter((label) => batch === undefined || label.batch === batch);
  const sheet = sheetFor(wishes, plan.garden.amounts);
  const made = bottleLabels(wanted, sheet, given({ skip: wishes.skip }));
  if (!made.ok) throw wrongUsage(made.problems.map(withMend).join("\n"));
  return giveText(made.value, wishes.out, shell);
}

const usualSizes: Readonly<Record<Paper, string>> = { a4: "63.5x72", letter: "4x2in" };
/** Sizes are told rounded. */
const sameMm = 0.06;

/** A known sheet by its size, unless any measure of its own is given. */
function sheetFor(wishes: LabelWishes, amounts: Amounts): LabelSheet {
  const { paper } = wishes;
  const size = wishes.size ?? usualSizes[paperFor(paper, amounts)];
  const sides = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|in)?$/i.exec(size.trim());
  if (!sides)
    throw wrongUsage(
      `\`${size}\` is no size of a label: write width by height in mm, like 63.5x38.1, or in inches, like 4x2in`,
    );
  const unitMm = sides[3]?.toLowerCase() === "in" ? mmPerInch : 1;
  const inMm = (side: string | undefined): number => Number((unitMm * Number(side)).toFixed(2));
  const [widthMm, heightMm] = [inMm(sides[1]), inMm(sides[2])];
  const own = {
    columns: wishes.columns,
    rows: wishes.rows,
    marginLeftMm: wishes.marginLeft,
    marginTopMm: wishes.marginTop,
    columnGapMm: wishes.gapAcross,
    rowGapMm: wishes.gapDown,
  };
  const known = loadLabelSheets().find(
    (row) =>
      Math.abs(row.width_mm - widthMm) < sameMm &&
      Math.abs(row.height_mm - heightMm) < sameMm &&
      (paper ?? row.paper) === row.paper,
  );
  if (known !== undefined && Object.values(own).every((value) => value === undefined))
    return labelSheet(known);
  return ownSheet({
    paper: paperFor(paper, amounts),
    widthMm,
    heightMm,
    ...given(own),
  });
}

function knownSizes(): string {
  const rows = loadLabelSheets().map((row) => [
    row.name,
    row.paper === "letter" ? sizeInInches(row.width_mm, row.height_mm) : "",
    row.paper,
    `${row.columns} x ${row.rows}`,
  ]);
  return table([["size in mm", "in inches", "paper", "labels"], ...rows], "", 80);
}
