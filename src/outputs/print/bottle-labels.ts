/** Labels to print and stick on bottles. */
import { counted } from "../../garden/index.js";
import type { Result } from "../../problem.js";
import {
  batchOnLabel,
  doseOnLabel,
  labelCaution,
  madeOnLabel,
  shakeOnLabel,
  strengthOnLabel,
  useByOnLabel,
} from "../../words/index.js";
import { documentOf } from "../document.js";
import { html, type Html } from "../html.js";
import { fitLabel, type FittedLabel, type LabelLine, lineHeight, lineSizes } from "./label-fit.js";
import type { BottleLabel } from "./label-rows.js";
import { type LabelSheet, sheetTrouble, sizeInInches } from "./label-sheets.js";
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
  const fitted = labels.map((label) => bestFit(label, sheet, paddingMm));
  const places = fitted.flatMap((fit, i) => (fit === undefined ? [] : [{ fit, at: skip + i }]));
  if (places.length < labels.length)
    return failed(
      "label-too-small",
      `the text does not fit a label of ${sheet.widthMm} by ${sheet.heightMm} mm`,
      "choose larger labels",
    );
  const perSheet = sheet.columns * sheet.rows;
  const sheets = Math.max(1, Math.ceil((skip + labels.length) / perSheet));
  const pages = Array.from({ length: sheets }, (_, page) => {
    const here = places.filter(({ at }) => Math.floor(at / perSheet) === page);
    return html`<section class="sheet" aria-label="Sheet ${page + 1}">
      ${here.map(({ fit, at }) => labelBody(fit, at % perSheet, sheet))}
    </section>`;
  });
  return {
    ok: true,
    value: documentOf({
      title: `${labels[0]?.garden ?? "Bottles"}: ${counted(labels.length, "label")}`,
      style: labelStyle(sheet, paddingMm, new Set(places.map(({ fit }) => fit.letterPt))),
      body: html`<main>
        <h1 class="hint">${hint(labels.length, sheet)}</h1>
        ${labels.length > 0 && pages}
      </main>`,
    }),
  };
}

/** Each fact on a line of its own, or several on one: whichever can be read from further away. */
function bestFit(
  label: BottleLabel,
  { widthMm, heightMm }: LabelSheet,
  paddingMm: number,
): FittedLabel | undefined {
  const fits = (["tall", "wide"] as const).map((shape) =>
    fitLabel(labelLines(label, shape), widthMm - 2 * paddingMm, heightMm - 2 * paddingMm),
  );
  const [best] = fits.filter((fit) => fit !== undefined).sort((a, b) => b.letterPt - a.letterPt);
  return best;
}

/** The text of a label from top to bottom, before it is made to fit. */
export function labelLines(label: BottleLabel, shape: "tall" | "wide"): readonly LabelLine[] {
  const { batch, bottle, bottlesOfBatch, strengthGPerL, white, doses } = label;
  const made = madeOnLabel(label.madeOn, label.amounts);
  const until = useByOnLabel(label.useBy, label.amounts);
  const strength =
    strengthGPerL === undefined ? [] : [strengthOnLabel(strengthGPerL, label.amounts, white)];
  const shake = shakeOnLabel[label.pour];
  const line = (kind: LabelLine["kind"], text: string): LabelLine => ({ kind, text });
  const facts =
    shape === "tall"
      ? [line("plain", made), line("strong", until), ...strength.map((text) => line("plain", text))]
      : [
          line("strong", `${until}. ${made}.`),
          ...strength.map((text) => line("plain", `${text}. ${shake}`)),
        ];
  const isShakeTold = shape === "wide" && strength.length > 0;
  return [
    line("title", "Calcium plant feed"),
    { kind: "name", text: label.garden, mayShorten: true },
    { kind: "batch", text: batchOnLabel(batch, bottle, bottlesOfBatch), mayShorten: true },
    ...facts,
    ...doses.map(({ vessel, stock, crops }) => ({
      ...line("plain", doseOnLabel(stock, vessel, crops)),
      mayShorten: true as const,
    })),
    line("strong", isShakeTold ? labelCaution : `${shake} ${labelCaution}`),
  ];
}

function labelBody({ letterPt, lines }: FittedLabel, place: number, sheet: LabelSheet): Html {
  const [column, row] = [place % sheet.columns, Math.floor(place / sheet.columns)];
  return html`<article class="label c${column} r${row} ${sizeClass(letterPt)}">
    ${lines.map(({ kind, text }) => html`<p class="${kind}" dir="auto">${text}</p>`)}
  </article>`;
}

function hint(count: number, { name, paper, widthMm, heightMm }: LabelSheet): string {
  const inInches = paper === "letter" ? ` (${sizeInInches(widthMm, heightMm)})` : "";
  return count === 0
    ? "There is no bottle to label."
    : `${counted(count, "label")} of ${name} mm${inInches} on ${papers[paper].name}. Print at full size (100 %), without margins of the printer's own.`;
}

/** Enough that a printer's slip cuts nothing; less on small labels. */
function labelPaddingMm({ widthMm, heightMm }: LabelSheet): number {
  return Math.min(2.5, 0.05 * Math.min(widthMm, heightMm) + 0.3);
}

function labelStyle(sheet: LabelSheet, paddingMm: number, sizesPt: ReadonlySet<number>): string {
  const paper = papers[sheet.paper];
  const columns = steps(sheet.columns, "c", "left", sheet.marginLeftMm, sheet.columnPitchMm);
  const rows = steps(sheet.rows, "r", "top", sheet.marginTopMm, sheet.rowPitchMm);
  const kinds = Object.entries(lineSizes).map(([kind, size]) => `.${kind}{font-size:${size}em}`);
  return `@page{size:${paper.widthMm}mm ${paper.heightMm}mm;margin:0}
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#fff;color:#111;font-family:"Liberation Sans",Arial,Helvetica,sans-serif}
.hint{margin:3mm;font-size:11pt;font-weight:400}
.sheet{position:relative;width:${paper.widthMm}mm;height:${paper.heightMm}mm;overflow:hidden;break-after:page}
.sheet:last-child{break-after:auto}
.label{position:absolute;width:${sheet.widthMm}mm;height:${sheet.heightMm}mm;padding:${paddingMm.toFixed(2)}mm;overflow:hidden;line-height:${lineHeight};display:flex;flex-direction:column;justify-content:space-evenly}
.label p{margin:0;overflow-wrap:anywhere}
.title,.batch,.strong{font-weight:700}
${[...kinds, ...columns, ...rows].join("\n")}
${[...sizesPt].map((pt) => `.${sizeClass(pt)}{font-size:${pt}pt}`).join("\n")}
@media screen{.sheet{margin:0 auto 5mm;outline:1px solid #999}.label{outline:1px dashed #aaa}}
@media print{.hint{display:none}}`;
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

function sizeClass(pt: number): string {
  return `s${Math.round(pt * 100)}`;
}

function failed(
  code: LabelTrouble["code"],
  message: string,
  mend: string,
): Result<never, LabelTrouble> {
  return { ok: false, problems: [{ code, message, mend }] };
}
