/** One layout for all labels of a sheet: the largest letters in which the fullest text fits. */
// @ts-nocheck

import { widthEm } from "../text-width.js";
import type { BottleLabel } from "./label-rows.js";
import {
  blocks,
  type Detail,
  details,
  type LabelText,
  labelText,
  type Paragraph,
} from "./label-text.js";

/** Blocks one below the other, or how much beside the rest of them. */
const shapes = ["tall", "wide"] as const;

export interface LabelFit {
  readonly detail: Detail;
  readonly shape: (typeof shapes)[number];
  readonly largePt: number;
  readonly smallPt: number;
  /** As tall as the label needs them that needs most, so that they lie alike on each. */
  readonly rowsMm: readonly number[];
  readonly gapMm: number;
}

const mmPerPt = 25.4 / 72;
export const lineHeight = 1.18;
/** Between two columns. */
export const columnGapMm = 2;
/** The rule of the box at the foot, and what lies between it and the words. */
export const boxMm = { rule: 0.25, above: 0.35, beside: 0.8 };

const largestPt = 28;
/**
 * Capitals of 2.3 mm: 8 minutes of arc from a metre away, where an eye in order needs 5 (Snellen,
 * from memory). Less is told rather than told smaller than this.
 */
const fromAMetrePt = 9;
/** Common practice, no source. */
const smallestLargePt = 6.5;
/** Nothing on a label is smaller. Common practice, no source. */
const smallestPt = 6;
const stepPt = 0.25;

/** Undefined when even the barest text in the smallest letters does not fit all labels. */
export function fitLabels(
  labels: readonly BottleLabel[],
  widthMm: number,
  heightMm: number,
): LabelFit | undefined {
  const [roomiest, found] = [differing(labels), [] as LabelFit[]];
  for (const detail of details) {
    const texts = roomiest.map((label) => labelText(label, detail));
    found.push(
      ...shapes.flatMap((shape) => largestFit(texts, detail, shape, widthMm, heightMm) ?? []),
    );
    found.sort((a, b) => b.largePt - a.largePt);
    if (found[0] !== undefined && found[0].largePt >= fromAMetrePt) break;
  }
  return found[0];
}

/** One of those that differ in the number of the bottle alone: the highest, as the longest. */
function differing(labels: readonly BottleLabel[]): readonly BottleLabel[] {
  const inOrder = [...labels].sort((a, b) => a.bottle - b.bottle);
  return [
    ...new Map(
      inOrder.map((label) => [JSON.stringify({ ...label, bottle: undefined }), label]),
    ).values(),
  ];
}

function largestFit(
  texts: readonly LabelText[],
  detail: Detail,
  shape: LabelFit["shape"],
  widthMm: number,
  heightMm: number,
): LabelFit | undefined {
  const fitIn = (steps: number): LabelFit | undefined => {
    const largePt = smallestLargePt + steps * stepPt;
    const laid = laidOut(texts, shape, widthMm, largePt);
    const spareMm = heightMm - sum(laid.rowsMm) - laid.gaps * laid.leastGapMm;
    if (!(spareMm >= 0)) return undefined;
    const gapMm = Math.min(laid.leastGapMm + spareMm / laid.gaps, largePt * mmPerPt * 0.7);
    return { detail, shape, largePt, smallPt: smallPt(largePt), rowsMm: laid.rowsMm, gapMm };
  };
  let best = fitIn(0);
  // Halving: what fits in large letters fits in small ones.
  let [most, tooMany] = [0, (largestPt - smallestLargePt) / stepPt + 1];
  while (best !== undefined && tooMany - most > 1) {
    const middle = Math.floor((most + tooMany) / 2);
    const fit = fitIn(middle);
    if (fit === undefined) tooMany = middle;
    else [most, best] = [middle, fit];
  }
  return best;
}

function laidOut(
  texts: readonly LabelText[],
  shape: LabelFit["shape"],
  widthMm: number,
  largePt: number,
): { rowsMm: readonly number[]; gaps: number; leastGapMm: number } {
  const sizes = { largeMm: largePt * mmPerPt, smallMm: smallPt(largePt) * mmPerPt };
  const columnMm = shape === "tall" ? widthMm : (widthMm - columnGapMm) / 2;
  const boxedMm = widthMm - 2 * (boxMm.rule + boxMm.beside);
  const [what = 0, much = 0, rest = 0, foot = 0] = blocks.map((block) =>
    Math.max(
      0,
      ...texts.map((text) =>
        sum(text[block].map((p) => heightOfMm(p, block === "foot" ? boxedMm : columnMm, sizes))),
      ),
    ),
  );
  const leastGapMm = 0.25 * sizes.smallMm;
  const box = foot + 2 * (boxMm.rule + boxMm.above);
  return shape === "tall"
    ? { rowsMm: [what, much, rest, box].filter((mm) => mm > 0), gaps: rest > 0 ? 3 : 2, leastGapMm }
    : { rowsMm: [what, Math.max(rest, much - what - leastGapMm), box], gaps: 2, leastGapMm };
}

/** In large labels the rest need not be as large as what is read from afar. */
function smallPt(largePt: number): number {
  return Math.max(smallestPt, 0.6 * largePt);
}

/** At most so tall; never ends where words that are held together are wider than a line. */
function heightOfMm(
  paragraph: Paragraph,
  widthMm: number,
  { largeMm, smallMm }: { readonly largeMm: number; readonly smallMm: number },
): number {
  let [doneMm, lineMm, usedMm] = [0, smallMm, 0];
  for (const run of paragraph) {
    const letterMm = run.large ? largeMm : smallMm;
    for (const word of run.text.split(/[^\S\u00a0]+/).filter((text) => text !== "")) {
      const wordMm = widthEm(word, "print") * letterMm;
      const gapMm = usedMm === 0 ? 0 : widthEm(" ", "print") * letterMm;
      if (usedMm + gapMm + wordMm <= widthMm) {
        usedMm += gapMm + wordMm;
        lineMm = Math.max(lineMm, letterMm);
        continue;
      }
      if (usedMm > 0) doneMm += lineMm;
      [lineMm, usedMm] = [Math.max(smallMm, letterMm), wordMm];
      if (wordMm <= widthMm) continue;
      if (word.includes("\u00a0")) return Infinity;
      // Broken anywhere; the widest letter may not fit at the end of each line.
      const rows = Math.ceil(wordMm / Math.max(widthMm - 1.45 * letterMm, 0.5 * letterMm));
      doneMm += (rows - 1) * lineMm;
      usedMm = widthMm;
    }
  }
  return (doneMm + lineMm) * lineHeight;
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
