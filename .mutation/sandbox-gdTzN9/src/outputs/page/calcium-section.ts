/** How much calcium a can really carries, and how that compares with the tap water in it. */
// @ts-nocheck

import { decimal, pouredText, vesselL, vesselOf, volumeText } from "../../garden/index.js";
import type { CanMix, Plan } from "../../season/index.js";
import { byText, given, grouped } from "../../values.js";
import { cropWords, figures, fullVessel, upTo } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html, joined } from "../html.js";
import { allMixes } from "../plan-facts.js";

/** Mixes that put the same into the same vessel. */
export interface CanCalcium {
  readonly crops: readonly string[];
  readonly route: CanMix["route"];
  readonly vesselL: number;
  /** mg in a full can or sprayer. */
  readonly fromStockMg: number;
  readonly fromTapMg?: number;
  /** It cannot be more, and may be less. */
  readonly tapIsAtMost?: true;
  /** From the stock, if it were poured clear. */
  readonly clearMg?: number;
  /** Of the mixed can, where the source water is known. */
  readonly ph?: number;
  /** Stock in a full can or sprayer, mL. */
  readonly stockMl: number;
}

export function canCalcium(plan: Plan): readonly CanCalcium[] {
  const keyOf = (mix: CanMix) =>
    `${mix.route} ${figures(mix.rateMlPerL)} ${figures(mix.calciumMgPerL)}`;
  return [...grouped(allMixes(plan), keyOf).values()]
    .map((mixes): CanCalcium => {
      const [mix] = mixes;
      const full = vesselL(plan.garden, mix.route);
      const inFull = (perL?: number) => (perL === undefined ? undefined : perL * full);
      const crops = mixes.flatMap((m) => m.feedings.map(({ cropName }) => cropWords(cropName)));
      return {
        crops: [...new Set(crops)],
        route: mix.route,
        vesselL: full,
        fromStockMg: mix.calciumMgPerL * full,
        ...given({
          fromTapMg: inFull(mix.tapCalciumMgPerL),
          tapIsAtMost: mix.tapCalciumAtMost,
          clearMg: inFull(mix.clearCalciumMgPerL),
          ph: mix.can?.ph,
        }),
        stockMl: mix.rateMlPerL * full,
      };
    })
    .sort((a, b) => byText(a.route, b.route) || b.fromStockMg - a.fromStockMg);
}

export function calciumSection(plan: Plan): Html | undefined {
  const cans = canCalcium(plan);
  if (cans.length === 0) return undefined;
  const mostMg = Math.max(...cans.map((c) => c.fromStockMg + (c.fromTapMg ?? 0)));
  const body = html`<ul class="calcium">
      ${cans.map((can) => canRow(plan, can, mostMg))}
    </ul>
    ${notes(cans)}`;
  return section("calcium", "Calcium in a can", body);
}

function canRow({ garden }: Plan, can: CanCalcium, mostMg: number): Html {
  const { fromStockMg, fromTapMg, tapIsAtMost, clearMg } = can;
  const size = volumeText(can.vesselL, garden.amounts);
  const percent = (mg: number) => `${Number(((mg / mostMg) * 100).toFixed(1))}%`;
  return html`<li>
    <p>
      <b>${joined(can.crops, ", ")}</b>:
      ${fullVessel(vesselOf(can.route), size, pouredText(can.stockMl, garden.amounts), can.ph)}
    </p>
    <svg class="amounts" width="100%" height="22" aria-hidden="true">
      <rect class="from-stock" width="${percent(fromStockMg)}" height="22" />
      ${fromTapMg !== undefined && html`<rect class="from-tap" fill="url(#fr-making)" x="${percent(fromStockMg)}" width="${percent(fromTapMg)}" height="22" />`}
    </svg>
    <p class="parts">
      <span><i class="chip from-stock"></i>${mgWords(fromStockMg)} from the stock</span
      >${fromTapMg !== undefined && html` <span><i class="chip from-tap"></i>${upTo(tapIsAtMost)}${mgWords(fromTapMg)} from the tap water</span>`}${clearMg !== undefined && html` <span class="clear">(poured clear, the stock would bring ${mgWords(clearMg)})</span>`}
    </p>
  </li>`;
}

function notes(cans: readonly CanCalcium[]): Html | undefined {
  if (cans.some((can) => can.fromTapMg !== undefined)) return undefined;
  return html`<p class="note">
    What the tap water brings is not known: give its hardness (<code>source_water:</code>) to
    compare.
  </p>`;
}

function mgWords(mg: number): string {
  return `${decimal(mg, mg < 10 ? 1 : 0)} mg`;
}
