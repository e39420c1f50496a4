/** Bars of what plantings take up and of what brings it, on one scale, each with its figures. */
// @ts-nocheck

import type { CalciumAmount, PlantingCalcium, PublishedNeed, Range } from "../calcium/index.js";
import type { Amounts } from "../garden/index.js";
import {
  amountOfCalcium,
  broughtByAmendment,
  broughtByWater,
  cropWords,
  heldBySoil,
  percentBetween,
  verdictInShort,
  verdictWords,
} from "../words/index.js";
import { type Basis, type CalciumGroup, calciumGroups } from "./calcium-groups.js";
import { html, type Html, joined, nameHtml } from "./html.js";

export interface CardOptions {
  readonly amounts: Amounts;
  /** Where the figures are from, as a mark beside them. */
  readonly footnotes?: (need: PublishedNeed) => Html;
  /** How the figures of a planting come about is told too. */
  readonly withArithmetic?: true;
}

/** One card for all plantings of which the same is to be said. */
export function calciumCards(sums: readonly PlantingCalcium[], options: CardOptions): Html {
  const groups = calciumGroups(sums);
  const told = new Set(groups.flatMap(({ plantings }) => plantings));
  const untold = sums.filter((sum) => !told.has(sum)).map(({ cropName }) => cropWords(cropName));
  const untoldCrops = [...new Set(untold)];
  const isOnScale = groups.some(({ basis }) => basis !== undefined);
  return html`${isOnScale && html`<p class="scale">${scaleWords}</p>`}
    <ul class="origins">
      ${groups.map((group) => html`<li class="origin">${cardBody(group, mostOf(groups, group.basis), options)}</li>`)}
    </ul>
    ${
      untoldCrops.length > 0 &&
      html`<p class="note">No figure is known of ${untoldCrops.join(", ")}.</p>`
    }`;
}

const scaleWords =
  "All bars are on one scale: filled is the least, open the most. Between the dashed lines lies what the plants take up.";

const noScale =
  "Without bars, since how many plants there are, or on how much ground, is not in the garden file (`plants:`, `area:`).";

/** The longest bar of those on the same ground, g. */
function mostOf(groups: readonly CalciumGroup[], basis: Basis | undefined): number {
  if (basis === undefined) return 0;
  const parts = groups
    .filter((group) => group.basis === basis)
    .flatMap(({ need, water, amendments, feed }) => [need, water, feed, ...amendments]);
  return Math.max(...parts.map((part) => part?.[basis]?.high ?? 0));
}

function cardBody(group: CalciumGroup, mostG: number, options: CardOptions): Html {
  const { plantings, need, water, amendments, feed, basis, sharePercent } = group;
  const { amounts, footnotes } = options;
  const [first] = plantings;
  const alone = plantings.length === 1 && options.withArithmetic === true ? first : undefined;
  const row = (kind: string, name: string, part: CalciumAmount, more: Partial<RowNotes> = {}) =>
    amountRow({ kind, name, part, bar: barOf(group, part, mostG), amounts, ...more });
  const mark = first.need && footnotes?.(first.need);
  const rows = [
    need === undefined
      ? unknownRow("Takes up", "no figure of it was found")
      : row("need", "Takes up", need, {
          mark,
          note: first.need && sourceNote(first.need),
        }),
    water === undefined
      ? unknownRow("Tap water", "not known")
      : row("from-water", "Tap water", water, {
          note: alone?.water && broughtByWater(alone.water, amounts),
        }),
    ...first.amendments.map((amended, i) => {
      const part = amendments[i] ?? {};
      return row("dug-in", amended.name, part, {
        note: alone && broughtByAmendment(amended, amounts),
      });
    }),
    feed &&
      row("from-feed", "Feed", feed, {
        note: sharePercent && `${percentBetween(sharePercent)} of what it takes up`,
      }),
  ];
  return html`<h3>
      ${cropWords(first.cropName)}
      <span class="soft">${joined(plantings.map(nameAndBed), "; ")}</span>
    </h3>
    <ul class="amount-rows">
      ${rows}
    </ul>
    ${basis === undefined && need !== undefined && html`<p class="soft">${noScale}</p>`}
    ${soilLine(plantings, amounts)}
    ${verdictLines(group, amounts).map((line) => html`<p class="verdict">${line}</p>`)}`;
}

function sourceNote({ borrowedFrom, isWeak }: PublishedNeed): string | undefined {
  const notes = [
    ...(borrowedFrom === undefined ? [] : [`by figures of ${cropWords(borrowedFrom)}`]),
    ...(isWeak ? ["from a weak source"] : []),
  ];
  return notes.length === 0 ? undefined : notes.join(", ");
}

/** What a planting takes of it differs where there are several. */
function soilLine(
  [{ soil }, ...others]: CalciumGroup["plantings"],
  amounts: Amounts,
): Html | undefined {
  if (soil === undefined) return undefined;
  const { takenPercent, ...held } = soil;
  const told = others.length === 0 && takenPercent !== undefined ? { ...held, takenPercent } : held;
  return html`<p class="soil">Soil (not on the scale): ${heldBySoil(told, amounts)}.</p>`;
}

/** Rules may differ in their days alone; a planting's own grams are not those of the others. */
function verdictLines({ plantings, verdicts }: CalciumGroup, amounts: Amounts): string[] {
  const lines = verdicts.map((verdict) =>
    plantings.length > 1 && verdict.judgement.kind === "unlikely-water-covers-it"
      ? verdictInShort(verdict)
      : verdictWords(verdict, amounts),
  );
  return [...new Set(lines)];
}

interface RowNotes {
  readonly mark: Html | undefined;
  readonly note: string | undefined;
}

interface AmountRow extends Partial<RowNotes> {
  readonly kind: string;
  readonly name: string;
  readonly part: CalciumAmount;
  readonly bar: Html | undefined;
  readonly amounts: Amounts;
}

function amountRow({ kind, name, part, bar, amounts, mark, note }: AmountRow): Html {
  const { wholeG, ...onGround } = part;
  const figures =
    amountOfCalcium(onGround, amounts) || (wholeG ? amountOfCalcium({ wholeG }, amounts) : "");
  return html`<li class="${kind}">
    <p class="pair">
      <b class="what">${name}</b> <span>${figures || "not known"}${mark}</span>
      ${note !== undefined && html`<span class="soft">${note}</span>`}
    </p>
    ${bar}
  </li>`;
}

function unknownRow(name: string, words: string): Html {
  return html`<li>
    <p class="pair"><b class="what">${name}</b> <span>${words}</span></p>
  </li>`;
}

/** Behind each bar stands the range of what is taken up. */
function barOf(
  { basis, need }: CalciumGroup,
  part: CalciumAmount,
  mostG: number,
): Html | undefined {
  const range = basis && part[basis];
  if (basis === undefined || range === undefined || mostG === 0) return undefined;
  const percent = (g: number): string => `${Number(((g / mostG) * 100).toFixed(2))}%`;
  const wide = ({ low, high }: Range, kind: string): Html =>
    html`<rect
      class="${kind}"
      x="${percent(low)}"
      width="${percent(high - low)}"
      y="14%"
      height="72%"
    />`;
  const taken = need?.[basis];
  const ends = taken === undefined ? [] : [...new Set([taken.low, taken.high])];
  return html`<svg class="amount" width="100%" height="14" aria-hidden="true">
    ${wide({ low: 0, high: range.low }, "least")}${range.high > range.low && wide(range, "most")}
    ${ends.map((g) => html`<line class="taken" x1="${percent(g)}" x2="${percent(g)}" y1="0" y2="100%" />`)}
  </svg>`;
}

/** Unless the name says what the crop says. */
function nameAndBed({ name, cropName, bedName }: PlantingCalcium): Html {
  const isCrop = name === cropName || name === cropWords(cropName);
  return isCrop ? nameHtml(bedName) : html`${nameHtml(name)}, ${nameHtml(bedName)}`;
}

/** For every document with cards. */
export const calciumCardStyle = `.origin{break-inside:avoid}
.amount-rows .pair{justify-content:flex-end}
.amount-rows .what{margin-inline-end:auto}
.amount-rows .what::first-letter{text-transform:uppercase}
.amount{display:block;overflow:visible;border-left:2px solid var(--ink)}
.amount .least{fill:var(--soft)}
.amount .most{fill:none;stroke:var(--soft);stroke-width:1.5}
.from-water .amount .least,.from-feed .amount .least{fill:var(--water)}
.from-water .amount .most,.from-feed .amount .most{stroke:var(--water)}
.amount .taken{stroke:var(--ink);stroke-width:1;stroke-dasharray:2 2}
.amount{print-color-adjust:exact;-webkit-print-color-adjust:exact}
.verdict{margin-top:.3em;padding-left:.5em;border-left:3px solid var(--accent)}`;
