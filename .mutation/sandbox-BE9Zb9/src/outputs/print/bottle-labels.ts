/** Labels to print and stick on bottles. */
// @ts-nocheck

import { counted } from "../../garden/index.js";
import type { Result } from "../../problem.js";
import { documentOf } from "../document.js";
import { html, type Html } from "../html.js";
import { boxMm, columnGapMm, fitLabels, type LabelFit, lineHeight } from "./label-fit.js";
import type { BottleLabel } from "./label-rows.js";
import { type LabelSheet, sheetTrouble, sizeInInches } from "./label-sheets.js";
import { blocks, labelText, type Paragraph } from "./label-text.js";
import { papers } from "./paper.js";

export interface LabelOptions {
  /** Labels of the first sheet that are used up already. */
  readonly skip?: number;
}

export interface LabelTrouble {
  readonly code: "label-sheet" | "label-too-small";
  readonly message: string;
  readonly mend: string;
}

/**
 * One HTML file to print at full size, one label a bottle.
 *
 * @returns trouble when the labels do not fit the sheet, or the text does not fit the labels
 */
export function bottleLabels(
  labels: readonly BottleLabel[],
  sheet: LabelSheet,
  { skip = 0 }: LabelOptions = {},
): Result<string, LabelTrouble> {
  const trouble = sheetTrouble(sheet);
  if (trouble !== undefined)
    return failed("label-sheet", trouble, "measure the sheet again, or choose another");
  const paddingMm = labelPaddingMm(sheet);
  const fit = fitLabels(labels, sheet.widthMm - 2 * paddingMm, sheet.heightMm - 2 * paddingMm);
  if (fit === undefined)
    return failed(
      "label-too-small",
      `the text does not fit a label of ${sheet.widthMm} by ${sheet.heightMm} mm`,
      "choose larger labels",
    );
  const places = labels.map((label, i) => ({ label, at: skip + i }));
  const perSheet = sheet.columns * sheet.rows;
  const sheets = Math.max(1, Math.ceil((skip + labels.length) / perSheet));
  const pages = Array.from({ length: sheets }, (_, page) => {
    const here = places.filter(({ at }) => Math.floor(at / perSheet) === page);
    return html`<section class="sheet" aria-label="Sheet ${page + 1}">
      ${here.map(({ label, at }) => labelBody(label, fit, at % perSheet, sheet))}
    </section>`;
  });
  return {
    ok: true,
    value: documentOf({
      title: `${labels[0]?.garden ?? "Bottles"}: ${counted(labels.length, "label")}`,
      style: labelStyle(sheet, paddingMm, fit),
      body: html`<main>
        <h1 class="hint">${hint(labels.length, sheet, fit)}</h1>
        ${labels.length > 0 && pages}
      </main>`,
    }),
  };
}

function labelBody(
  label: BottleLabel,
  { detail }: LabelFit,
  place: number,
  { columns }: LabelSheet,
): Html {
  const text = labelText(label, detail);
  return html`<article class="label c${place % columns} r${Math.floor(place / columns)}">
    ${blocks
      .filter((block) => text[block].length > 0)
      .map((block) => html`<div class="${block}">${text[block].map(paragraphHtml)}</div>`)}
  </article>`;
}

function paragraphHtml(runs: Paragraph): Html {
  const parts = runs.map(({ text, large, strong }) => {
    if (large) return html`<span class="large">${text}</span>`;
    return strong ? html`<span class="strong">${text}</span>` : text;
  });
  return html`<p dir="auto">${parts}</p>`;
}

function hint(count: number, sheet: LabelSheet, { detail }: LabelFit): string {
  const { name, paper, widthMm, heightMm } = sheet;
  if (count === 0) return "There is no bottle to label.";
  const inInches = paper === "letter" ? ` (${sizeInInches(widthMm, heightMm)})` : "";
  const leftOut =
    detail === "all"
      ? ""
      : " They are too small for everything: the season sheet has all cautions, and what each bed gets.";
  return `${counted(count, "label")} of ${name} mm${inInches} on ${papers[paper].name}. Print at full size (100 %), without margins of the printer's own.${leftOut}`;
}

/** Enough that a printer's slip cuts nothing; less on small labels. */
function labelPaddingMm({ widthMm, heightMm }: LabelSheet): number {
  return Math.min(2.5, 0.05 * Math.min(widthMm, heightMm) + 0.3);
}

function labelStyle(sheet: LabelSheet, paddingMm: number, fit: LabelFit): string {
  const paper = papers[sheet.paper];
  const columns = steps(sheet.columns, "c", "left", sheet.marginLeftMm, sheet.columnPitchMm);
  const rows = steps(sheet.rows, "r", "top", sheet.marginTopMm, sheet.rowPitchMm);
  return `@page{size:${paper.widthMm}mm ${paper.heightMm}mm;margin:0}
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#fff;color:#111;font-family:"Liberation Sans",Arial,Helvetica,sans-serif}
.hint{margin:3mm;font-size:11pt;font-weight:400}
.sheet{position:relative;width:${paper.widthMm}mm;height:${paper.heightMm}mm;overflow:hidden;break-after:page}
.sheet:last-child{break-after:auto}
.label{position:absolute;width:${sheet.widthMm}mm;height:${sheet.heightMm}mm;padding:${paddingMm.toFixed(2)}mm;overflow:hidden;font-size:${fit.smallPt.toFixed(2)}pt;line-height:${lineHeight};display:grid;gap:${fit.gapMm.toFixed(2)}mm ${columnGapMm}mm;${gridStyle(fit)}}
.label p{margin:0;overflow-wrap:anywhere}
.large{font-size:${fit.largePt}pt}
.large,.strong{font-weight:700}
${blocks.map((block) => `.${block}{grid-area:${block}}`).join("\n")}
.foot{border:${boxMm.rule}mm solid;padding:${boxMm.above}mm ${boxMm.beside}mm;align-self:end}
${[...columns, ...rows].join("\n")}
@media screen{.sheet{margin:0 auto 5mm;outline:1px solid #999}.label{outline:1px dashed #aaa}}
@media print{.hint{display:none}}`;
}

/** Rows of the same height on each label; what is left over lies above the foot. */
function gridStyle({ shape, rowsMm }: LabelFit): string {
  const areas =
    shape === "wide"
      ? ["what much", "rest much", "foot foot"]
      : blocks.filter((block) => block !== "rest" || rowsMm.length === blocks.length);
  const rows = rowsMm.map((mm, i) => (i === rowsMm.length - 1 ? "1fr" : `${mm.toFixed(2)}mm`));
  const columns = shape === "tall" ? "1fr" : "1fr 1fr";
  const template = areas.map((area, i) => `"${area}" ${rows[i] ?? "auto"}`).join(" ");
  return `grid-template:${template} / ${columns}`;
}

function steps(
  count: number,
  name: string,
  edge: string,
  firstMm: number,
  pitchMm: number,
): string[] {
  return Array.from(
    { length: count },
    (_, i) => `.${name}${i}{${edge}:${(firstMm + i * pitchMm).toFixed(2)}mm}`,
  );
}

function failed(
  code: LabelTrouble["code"],
  message: string,
  mend: string,
): Result<never, LabelTrouble> {
  return { ok: false, problems: [{ code, message, mend }] };
}
