/** Bars of what plantings take up and of what brings it, on one scale, each with its figures. */
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
  const untold = sums.filter((sum) => !groups.some(({ plantings }) => plantings.includes(sum)));
  const isOnScale = groups.some(({ basis }) => basis !== undefined);
  return html`${isOnScale && html`<p class="scale">${scaleWords}</p>`}
    <ul class="origins">
      ${groups.map((group) => html`<li class="origin">${cardBody(group, mostOf(groups, group.basis), options)}</li>`)}
    </ul>
    ${
      untold.length > 0 &&
      html`<p class="note">
        No figure is known of
        ${joined(
          untold.map(({ cropName, bedName }) => html`${cropWords(cropName)}, ${nameHtml(bedName)}`),
          "; ",
        )}.
      </p>`
    }`;
}

const scaleWords =
  "Grams of calcium in the season, all bars on one scale: filled the least, open up to the most. The dashed lines stand where what the plants take up begins and ends.";

/** The longest bar of those on the same ground, g. */
function mostOf(groups: readonly CalciumGroup[], basis: Basis | undefined): number {
  if (basis === undefined) return 0;
  const parts = groups
    .filter((group) => group.basis === basis)
    .flatMap(({ need, water, amendments, feed }) => [need, water, feed, ...amendments]);
  return Math.max(...parts.map((part) => part?.[basis]?.high ?? 0));
}

function cardBody(group: CalciumGroup, mostG: number, options: CardOptions): Html {
  const { plantings, need, water, amendments, feed, basis, verdicts, sharePercent } = group;
  const { amounts, footnotes } = options;
  const [first] = plantings;
  const alone = plantings.length === 1 && options.withArithmetic === true ? first : undefined;
  const row = (kind: string, name: string, part: CalciumAmount, more: Partial<RowNotes> = {}) =>
    amountRow({ kind, name, part, bar: barOf(group, part, mostG), amounts, ...more });
  const mark = first.need && footnotes?.(first.need);
  const borrowed = first.need?.borrowedFrom;
  const rows = [
    need === undefined
      ? verdicts.length > 0 && unknownRow("Takes up", "no figure of it was found")
      : row("need", "Takes up", need, {
          mark,
          note: borrowed === undefined ? undefined : `by figures of ${cropWords(borrowed)}`,
        }),
    water === undefined
      ? basis !== undefined && unknownRow("Tap water", "not known")
      : row("from-water", "Tap water", water, {
          note: alone?.water && broughtByWater(alone.water, amounts),
        }),
    ...first.amendments.map((amended, i) => {
      const part = amendments[i] ?? {};
      return row("dug-in", amended.name, part, { note: alone && broughtByAmendment(amended) });
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
    ${first.soil && html`<p class="soil">Soil (not on the scale): ${heldBySoil(first.soil, amounts)}.</p>`}
    ${verdicts.map((verdict) => html`<p class="verdict">${plantings.length === 1 || verdict.judgement.kind !== "unlikely-water-covers-it" ? verdictWords(verdict, amounts) : verdictInShort(verdict)}</p>`)}`;
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
    <p class="pair"><b class="what">${name}</b> <span>${figures || "not known"}${mark}</span></p>
    ${bar}${note !== undefined && html`<p class="soft">${note}</p>`}
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
      y="2"
      height="10"
    />`;
  const taken = need?.[basis];
  const ends = taken === undefined ? [] : [...new Set([taken.low, taken.high])];
  return html`<svg class="amount" width="100%" height="14" aria-hidden="true">
    ${wide({ low: 0, high: range.low }, "least")}${range.high > range.low && wide(range, "most")}
    ${ends.map((g) => html`<line class="taken" x1="${percent(g)}" x2="${percent(g)}" y1="0" y2="14" />`)}
  </svg>`;
}

/** Unless the name says what the crop says. */
export function nameAndBed({ name, cropName, bedName }: PlantingCalcium): Html {
  const isCrop = name === cropName || name === cropWords(cropName);
  return isCrop ? nameHtml(bedName) : html`${nameHtml(name)}, ${nameHtml(bedName)}`;
}

/** For every document with cards. */
export const calciumCardStyle = `.origin{break-inside:avoid}
.amount-rows .what::first-letter{text-transform:uppercase}
.amount{display:block;overflow:visible;border-left:2px solid var(--ink)}
.amount .least{fill:var(--soft)}
.amount .most{fill:none;stroke:var(--soft);stroke-width:1.5}
.from-water .amount .least,.from-feed .amount .least{fill:var(--water)}
.from-water .amount .most,.from-feed .amount .most{stroke:var(--water)}
.amount .taken{stroke:var(--ink);stroke-width:1;stroke-dasharray:2 2}
.amount{print-color-adjust:exact;-webkit-print-color-adjust:exact}
.verdict{margin-top:.3em;padding-left:.5em;border-left:3px solid var(--accent)}`;
