/** A round as a person in the garden needs it: which beds, how many cans, how much in each. */
import type { Day } from "../dates.js";
import { counted, stockText, totalStockText, volumeText } from "../garden/index.js";
import type { BedRound, CanFill, CanMix, Plan, PlanWarning, Round } from "../season/index.js";
import {
  cautionsFor,
  cropWords,
  dayOfSeason,
  fillWords,
  routeWords,
  shortDate,
  stageWords,
  unbroken,
  vesselOf,
} from "../words/index.js";
import { type Content, html, type Html, joined, nameHtml } from "./html.js";
import { fillCounts, mixesOf, stockByBatch, vesselL, warningsOn } from "./plan-facts.js";

/** `18:30 · 3 cans · 46 mL of stock · 15 L of water` */
export function roundTotals({ garden }: Plan, round: Round): readonly string[] {
  const { cans, sprayers } = fillCounts(mixesOf(round));
  return [
    ...(round.timeOfDay === undefined ? [] : [round.timeOfDay]),
    ...(cans > 0 ? [counted(cans, "can")] : []),
    ...(sprayers > 0 ? [counted(sprayers, "sprayer")] : []),
    `${totalStockText(round.stockMl, garden.amounts)} of stock`,
    `${volumeText(round.waterL, garden.amounts)} of water`,
  ].map(unbroken);
}

/** Beds, bottles, warnings and cautions of a round. */
export function roundBody(plan: Plan, round: Round): Html {
  const bottles = stockByBatch(mixesOf(round));
  const take =
    bottles.length > 0 &&
    html`<p class="take">
      <b>Take:</b> ${joined(
        bottles.map(
          ([batch, ml]) =>
            html`${stockText(ml, plan.garden.amounts)} from bottle ${nameHtml(batch)}`,
        ),
        ", ",
      )}
    </p>`;
  return html`${take} ${warningsOn(plan, round.day).map(warningBox)}
    <ul class="beds">
      ${round.beds.map((bed) => html`<li class="bed">${bedBody(plan, bed)}</li>`)}
    </ul>
    ${otherFeeds(round)}
    <ul class="cautions">
      ${cautionsFor(mixesOf(round), plan.stock?.pour).map((line) => html`<li>${line}</li>`)}
    </ul>`;
}

export function warningBox({ message, mend }: PlanWarning): Html {
  return html`<p class="warning">
    <b>Warning:</b>
    <span dir="auto">${message}</span
    >${mend !== "" && html` <span class="mend">What helps: ${mend}</span>`}
  </p>`;
}

/** `Saturday 26 June`, readable by programs too. */
export function dayTime(day: Day, words: string = dayOfSeason(day), kind?: string): Html {
  return html`<time${kind !== undefined && html` class="${kind}"`} datetime="${day}">${words}</time>`;
}

function bedBody(plan: Plan, { bedName, mixes }: BedRound): Html {
  return html`<h3 dir="auto">${bedName}</h3>
    ${mixes.map((mix) => mixBody(plan, mix))}`;
}

function mixBody(plan: Plan, mix: CanMix): Html {
  const pours = mix.pours ?? [];
  const from =
    pours.length > 1 &&
    html`<p class="from">
      Pour
      ${joined(
        pours.map((p) => html`${stockText(p.ml, plan.garden.amounts)} from ${nameHtml(p.batch)}`),
        ", then ",
      )}.
    </p>`;
  return html`<div class="mix">
    <p class="route">${routeWords(mix.route)}</p>
    <ul class="fills">
      ${mix.fills.map((fill) => fillLine(fill, mix, vesselL(plan, mix.route)))}
    </ul>
    ${from}
    <p class="for">For ${joined(mix.feedings.map(feedingWords), ", ")}</p>
  </div>`;
}

function fillLine(fill: CanFill, mix: CanMix, fullL: number): Html {
  const ml = fill.stockText.endsWith(" mL") ? "" : ` (${Number(fill.stockMl.toFixed(1))} mL)`;
  const each = fill.count > 1 ? " each" : "";
  return html`<li>
    ${vesselSign(mix.route, fill.waterL / fullL)}
    <div>
      <p class="pair">
        <span class="count">${unbroken(fillWords(fill, mix.route))}</span>
        <span class="stock">${fill.stockText}${each}</span>
      </p>
      <p class="water">of stock${ml} in ${fill.waterText} of water${each}</p>
    </div>
  </li>`;
}

function otherFeeds({ feeds = [] }: Round): Html | undefined {
  if (feeds.length === 0) return undefined;
  const items = feeds.map(({ feed, bedName, fills, openedSince }) => {
    const cans = fills.map(
      (fill) =>
        `${fillWords(fill, "drench")}: ${fill.stockText} in ${fill.waterText}${fill.count > 1 ? " each" : ""}`,
    );
    return html`<li>
      ${nameHtml(feed)}, ${nameHtml(bedName)}:
      ${joined(cans, "; ")}${openedSince !== undefined && `, from a bottle opened since ${shortDate(openedSince)}`}
    </li>`;
  });
  return html`<div class="others">
    <h3>Other feeds, in cans of their own</h3>
    <ul class="plain">
      ${items}
    </ul>
  </div>`;
}

/** A can or a sprayer, as full as it is to be. */
function vesselSign(route: CanMix["route"], full: number): Html {
  const level = Number((20 * Math.min(1, full)).toFixed(1));
  const body =
    vesselOf(route) === "can"
      ? html`<path class="vessel" d="M7 5V27H25V5" /><path
            class="vessel"
            d="M25 18L34 8M32 6L36 10M7 10Q1 10 1 16T7 22"
          />`
      : html`<path class="vessel" d="M7 8V27H25V8Z" /><path
            class="vessel"
            d="M16 8V3H27M16 3H11M30 3H33M30 0L33-1M30 6L33 7"
          />`;
  return html`<svg class="sign" width="38" height="30" viewBox="0 -1 38 30" aria-hidden="true">
    <rect class="fill" x="7" y="${27 - level}" width="18" height="${level}" />
    ${body}
  </svg>`;
}

function feedingWords({ name, cropName, stage, planting }: CanMix["feedings"][number]): Content {
  const crop = cropWords(cropName);
  const words = html`${nameHtml(name)}${name !== crop && name !== cropName && ` (${crop})`},
  ${stageWords(stage)}`;
  return html`<a href="#why-${encodeURIComponent(planting)}">${words}</a>`;
}
