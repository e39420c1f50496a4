/** The text of a label, block by block: all of it, and less where a label is small. */
// @ts-nocheck

import {
  batchOnLabel,
  dayOnLabel,
  doseInShort,
  doseOnLabel,
  labelCautions,
  labelTitle,
  madeOnLabel,
  type Say,
  shakeInShort,
  shakeOnLabel,
  strengthOnLabel,
  unbroken,
  useByOnLabel,
} from "../../words/index.js";
import type { BottleLabel, LabelDose } from "./label-rows.js";

/** A piece of a paragraph; no-break spaces hold its words together. */
export interface Run {
  readonly text: string;
  /** To be read from a metre away; strong, too. */
  readonly large?: true;
  readonly strong?: true;
}

export type Paragraph = readonly Run[];

/** What stands in each block, in the order of reading. */
export interface LabelText {
  /** What it is, which bottle, until when. */
  readonly what: readonly Paragraph[];
  /** How much goes into a full can. */
  readonly much: readonly Paragraph[];
  readonly rest: readonly Paragraph[];
  /** Warnings, in a ruled box. */
  readonly foot: readonly Paragraph[];
}

export const blocks = ["what", "much", "rest", "foot"] as const satisfies (keyof LabelText)[];

/**
 * How much of it stands on the labels, most first. What is left out stands on the season sheet: the
 * cautions in full, each bed's amounts, the days of each batch.
 */
export const details = ["all", "few-cautions", "no-facts", "bare"] as const;
export type Detail = (typeof details)[number];

export function labelText(label: BottleLabel, detail: Detail): LabelText {
  const { amounts, batch, bottle, bottlesOfBatch, garden, madeOn, pour, useBy } = label;
  const { strengthGPerL, white } = label;
  const isBare = detail === "bare";
  const facts = [
    madeOnLabel(madeOn, amounts),
    ...(strengthGPerL === undefined ? [] : [strengthOnLabel(strengthGPerL, amounts, white)]),
  ];
  const hasFacts = detail === "all" || detail === "few-cautions";
  const caution = detail === "all" ? labelCautions.full : labelCautions.short;
  return {
    what: [
      [large(unbroken(labelTitle))],
      [large(batchOnLabel(spaced(batch), bottle, bottlesOfBatch))],
      [large(useByOnLabel(unbroken(dayOnLabel(useBy, amounts))))],
    ],
    much: [
      ...(isBare ? [] : [[{ text: shakeOnLabel[pour], strong: true as const }]]),
      ...(isBare ? label.dosesInShort : label.doses).map(doseParagraph),
    ],
    rest: hasFacts ? [[{ text: `${facts.join(". ")}.` }], [{ text: spaced(garden) }]] : [],
    foot: [[{ text: isBare ? `${shakeInShort[pour]} ${caution}` : caution, strong: true }]],
  };
}

function doseParagraph({ stock, vessel, crops }: LabelDose): Paragraph {
  const amount = [large(stock.map(unbroken).join(" to "))];
  return crops.length > 0
    ? doseOnLabel(runs, amount, unbroken(vessel), crops.map(spaced))
    : doseInShort(runs, amount, unbroken(vessel));
}

const runs: Say<Paragraph> = (parts, ...values) =>
  parts.flatMap((part, i) => {
    const value = values[i - 1];
    const before = typeof value === "object" ? value : [{ text: String(value ?? "") }];
    return [...before, { text: part }].filter(({ text }) => text !== "");
  });

function large(text: string): Run {
  return { text, large: true };
}

/** What a person wrote may hold any kind of space. */
function spaced(text: string): string {
  return text.replaceAll(/\s+/g, " ");
}
