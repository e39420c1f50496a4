/** A round as a person in the garden needs it: which beds, how many cans, how much in each. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Amounts,
  longDay,
  pouredText,
  totalStockText,
  type Vessel,
  vesselL,
  vesselOf,
  vessels,
  volumeText,
} from "../garden/index.js";
import {
  type BedRound,
  type CanFill,
  type CanMix,
  type Feeding,
  type Plan,
  type PlanWarning,
  type Round,
  toldOn,
} from "../season/index.js";
import { grouped } from "../values.js";
import {
  type BedLines,
  cansInLine,
  cautionsFor,
  feedingWords,
  fillWithStock,
  fillWords,
  fromBottle,
  isLong,
  missingStock,
  mixingSummary,
  nameInText,
  ofStockInWater,
  otherFeedInFull,
  plain,
  pourInTurn,
  routeNames,
  stockIn,
  stockInEach,
  tooLittleStock,
  unbroken,
  vesselCount,
  vesselsIn,
  waterCarriedL,
} from "../words/index.js";
import { batchHtml, type Html, html, joined, nameHtml } from "./html.js";
import { fillCount, mixesOf, stockByBatch } from "./plan-facts.js";

/** `18:30 · 3 cans · 46 mL of stock · 15 L of water` */
export function roundTotals({ garden }: Plan, round: Round): readonly string[] {
  const cans = vessels.flatMap((vessel) => {
    const count = fillCount(mixesOf(round), vessel);
    return count === 0 ? [] : [vesselCount(count, vessel)];
  });
  return [
    ...(round.timeOfDay === undefined ? [] : [round.timeOfDay]),
    ...cans,
    // A round of other feeds alone carries no stock.
    ...(cans.length === 0
      ? []
      : [
          `${totalStockText(round.stockMl, garden.amounts)} of stock`,
          `${volumeText(waterCarriedL(mixesOf(round)), garden.amounts)} of water`,
        ]),
    ...otherFeedTotals(round, garden.amounts),
    ...(round.shortMl === undefined ? [] : [tooLittleStock]),
  ].map(unbroken);
}

/** `seaweed: 2 cans, 90 mL` */
function otherFeedTotals({ feeds = [] }: Round, amounts: Amounts): string[] {
  return [...grouped(feeds, ({ feed }) => feed)].map(([feed, mixes]) => {
    const fills = mixes.flatMap((mix) => mix.fills);
    const cans = vesselCount(vesselsIn(fills), "can");
    return `${nameInText(feed)}: ${cans}, ${totalStockText(stockIn(fills), amounts)}`;
  });
}

/**
 * Bottles, beds, warnings and cautions of a round; one of many cans begins with a summary for mixing,
 * and each of its beds opens from a line.
 *
 * @param lines what is out of the usual for each bed
 * @param isTold the warnings that stand on the page above it
 */
export function roundBody(
  plan: Plan,
  round: Round,
  lines: BedLines,
  isTold: (warning: PlanWarning) => boolean = () => false,
): Html {
  const isOfMany = isLong(mixesOf(round));
  const bottles = stockByBatch(mixesOf(round));
  const take =
    bottles.length > 0 &&
    html`<p class="take">
      <b>Take:</b> ${joined(
        bottles.map(([batch, ml]) =>
          fromBottle(html, pouredText(ml, plan.garden.amounts), batchHtml(batch)),
        ),
        ", ",
      )}
    </p>`;
  const warnings = plan.warnings.filter(
    (warning) => toldOn(warning) === round.day && !isTold(warning),
  );
  const cautions = cautionsFor(mixesOf(round), plan.stock?.pour);
  const bedOf = isOfMany ? bedLine : bedCard;
  return html`${take} ${isOfMany && mixing(round)} ${warnings.map((one) => warningBox(one, plan))}
    <ul class="${isOfMany ? "bed-lines" : "beds"}">
      ${round.beds.map((bed) => bedOf(plan, bed, lines(round, bed)))}
    </ul>
    ${joined([otherFeeds(round, plan.garden.amounts), cautionList(cautions)], "\n")}`;
}

export function cautionList(lines: readonly string[]): Html {
  return html`<ul class="cautions">
    ${lines.map((line) => html`<li>${line}</li>`)}
  </ul>`;
}

export function warningBox(warning: PlanWarning, { plantings }: Plan): Html {
  const { message, mend, planting } = warning;
  const day = toldOn(warning);
  const who = plantings.find(({ id }) => id === planting)?.name;
  return html`<p
    class="warning"
    ${day !== undefined && html` data-day="${day}"`}
    ${who !== undefined && html` data-who="${nameInText(who)}"`}
  >
    <b>Warning:</b>
    <span class="message">${message}</span
    >${mend !== "" && html` <span class="mend">What helps: ${mend}</span>`}
  </p>`;
}

/** A day in words, readable by programs too. */
export function dayTime(day: Day, words: string, kind?: string): Html {
  return html`<time${kind !== undefined && html` class="${kind}"`} datetime="${day}">${words}</time>`;
}

/** `Saturday 26 June` */
export function longTime({ garden, today }: Plan, day: Day, kind?: string): Html {
  return dayTime(day, longDay(day, garden.amounts, today), kind);
}

function mixing(round: Round): Html {
  return html`<div class="mixing">
    <h3>Mix</h3>
    <ul>
      ${mixingSummary(mixesOf(round)).map((line) => html`<li>${line}</li>`)}
    </ul>
  </div>`;
}

function bedCard(plan: Plan, { bedName, mixes }: BedRound, lines: readonly string[]): Html {
  return html`<li class="bed">
    <h3>${nameHtml(bedName)}</h3>
    ${unusual(lines)} ${mixes.map((mix) => mixBody(plan, mix))}
  </li>`;
}

/** Its cans in a line, which opens to the rest. */
function bedLine(plan: Plan, { bedName, mixes }: BedRound, lines: readonly string[]): Html {
  const cans = mixes.flatMap(({ fills, route }) =>
    fills.map((fill) => html`<span>${unbroken(cansInLine(fill, vesselOf(route)))}</span>`),
  );
  return html`<li class="bed-line">
    <details>
      <summary>
        <b>${nameHtml(bedName)}</b> <span class="cans">${joined(cans, " ")}</span> ${unusual(lines)}
      </summary>
      <div>${mixes.map((mix) => mixBody(plan, mix))}</div>
    </details>
  </li>`;
}

function unusual(lines: readonly string[]): readonly Html[] {
  return lines.map((line) => html`<span class="unusual">${line}</span>`);
}

function mixBody({ garden }: Plan, mix: CanMix): Html {
  const { route, fills, feedings, shortMl, pours = [] } = mix;
  const inTurn = pours.map(({ ml, batch }) => ({
    stock: pouredText(ml, garden.amounts),
    batch: batchHtml(batch),
  }));
  return html`<div class="mix">
    <p class="route">${routeNames[route].title}</p>
    <ul class="fills">
      ${fills.map((fill) => fillLine(fill, vesselOf(route), vesselL(garden, route)))}
    </ul>
    ${pours.length > 1 && html`<p class="from">${pourInTurn(html, inTurn)}</p>`}
    ${shortMl !== undefined && html`<p class="from">${missingStock(shortMl, garden.amounts)}</p>`}
    <ul class="for">
      ${feedings.map((feeding) => html`<li>${feedingLink(feeding)}</li>`)}
    </ul>
  </div>`;
}

function fillLine(fill: CanFill, vessel: Vessel, fullL: number): Html {
  return html`<li>
    ${vesselSign(vessel, fill.waterL / fullL)}
    <div>
      <p class="pair">
        <span class="count">${unbroken(fillWords(fill, vessel))}</span>
        <span class="stock">${stockInEach(fill)}</span>
      </p>
      <p class="water">${ofStockInWater(fill)}</p>
    </div>
  </li>`;
}

function otherFeeds({ feeds = [] }: Round, amounts: Amounts): Html | undefined {
  if (feeds.length === 0) return undefined;
  const items = feeds.map((mix) => {
    const cans = mix.fills.map((fill) => fillWithStock(plain, fill, "can", (stock) => stock));
    const [feed, bed] = [nameHtml(mix.feed), nameHtml(mix.bedName)];
    return html`<li>
      ${otherFeedInFull(html, mix, { feed, bed, cans: cans.join("; ") }, amounts)}
    </li>`;
  });
  return html`<div class="others">
    <h3>Other feeds, in cans of their own</h3>
    <ul class="plain">
      ${items}
    </ul>
  </div>`;
}

const vesselShapes: Readonly<Record<Vessel, Html>> = {
  can: html`<path class="vessel" d="M7 5V27H25V5" /><path
      class="vessel"
      d="M25 18L34 8M32 6L36 10M7 10Q1 10 1 16T7 22"
    />`,
  sprayer: html`<path class="vessel" d="M7 8V27H25V8Z" /><path
      class="vessel"
      d="M16 8V3H27M16 3H11M30 3H33M30 0L33-1M30 6L33 7"
    />`,
};

/** A can or a sprayer, as full as it is to be. */
function vesselSign(vessel: Vessel, full: number): Html {
  const level = Number((20 * Math.min(1, full)).toFixed(1));
  return html`<svg class="sign" width="38" height="30" viewBox="0 -1 38 30" aria-hidden="true">
    <rect class="fill" x="7" y="${27 - level}" width="18" height="${level}" />
    ${vesselShapes[vessel]}
  </svg>`;
}

function feedingLink(feeding: Feeding): Html {
  const words = feedingWords(html, feeding, nameHtml(feeding.name));
  return html`<a href="#why-${encodeURIComponent(feeding.planting)}">${words}</a>`;
}
