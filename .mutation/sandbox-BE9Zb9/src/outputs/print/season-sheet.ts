/** The season on paper, for the shed wall: what to do on which day, with boxes to tick. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { counted, fullDate } from "../../garden/index.js";
import { agendaOf, type Plan } from "../../season/index.js";
import {
  cautionsFor,
  climateOfPlace,
  humilityCautions,
  keepingCautions,
  makingCautions,
  usualRainTakenOff,
} from "../../words/index.js";
import { hasBottles } from "../bottle-lives.js";
import { documentOf } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { keyList, pictureDefs, seasonDrawings } from "../picture/index.js";
import { allMixes } from "../plan-facts.js";
import { waterTable } from "../water-table.js";
import { checklist, plantName } from "./checklist.js";
import { type Paper, papers } from "./paper.js";
import { sheetStyle } from "./sheet-style.js";

export interface SheetOptions {
  readonly paper: Paper;
  /** Marks the day in the picture; leave it out for a sheet that hangs all season. */
  readonly today?: Day;
}

/** Name, season and place, above the list of the first page. */
const headerMm = 32;

/** One HTML file to print: every day with its boxes, the cautions, water, and the season's picture. */
export function seasonSheet(plan: Plan, options: SheetOptions): string {
  const { garden } = plan;
  const pages = agendaOf(plan).length === 0 ? [] : checklist(plan, papers[options.paper], headerMm);
  return documentOf({
    title: `${garden.name}: season sheet`,
    style: sheetStyle(papers[options.paper]),
    body: html`<svg class="defs" width="0" height="0" aria-hidden="true">${pictureDefs()}</svg>
      <header>
        <h1>${nameHtml(garden.name)}</h1>
        <p>
          Feeding plan, ${fullDate(garden.season.from, garden.amounts)} to
          ${fullDate(garden.season.to, garden.amounts)}: ${counted(plan.totals.rounds, "round")}
        </p>
        ${garden.climate && html`<p>${climateOfPlace(garden.climate, garden.amounts)}</p>`}
      </header>
      <main>
        ${pages.length === 0 && html`<p>There is nothing to feed in this season.</p>`} ${pages}
        <section class="cautions" aria-label="Cautions">
          <ul>
            ${sheetCautions(plan).map((line) => html`<li>${line}</li>`)}
          </ul>
        </section>
        ${weeklyWaterTable(plan)}
        <section class="season" aria-labelledby="season-head">
          <h2 id="season-head">The season</h2>
          ${keyList(plan, options.today !== undefined)}
          <div class="picture-box">${seasonDrawings(plan, options)}</div>
          ${plan.plantings
            .filter(({ stages }) => stages.length === 0)
            .map((planting) => html`<p>${plantName(planting)}: ${planting.reason}</p>`)}
        </section>
      </main>`,
  });
}

/** Our choice: of more beds the table fills a page of its own, and the garden's page on screen has it. */
const mostBedsWatered = 12;

function weeklyWaterTable(plan: Plan): Html | undefined {
  if ((plan.watering ?? []).length > mostBedsWatered) return undefined;
  const table = waterTable(plan);
  const rain = usualRainTakenOff(plan.watering ?? [], plan.garden.amounts);
  return (
    table &&
    html`<section aria-labelledby="water-head">
      <h2 id="water-head">Water a week</h2>
      ${rain !== undefined && html`<p>${rain}</p>`} ${table}
    </section>`
  );
}

function sheetCautions(plan: Plan): readonly string[] {
  const makes = (plan.stock?.making.batches ?? []).length > 0;
  const cautions = [
    ...(plan.rounds.length > 0 ? cautionsFor(allMixes(plan), plan.stock?.pour) : []),
    ...(makes ? makingCautions : []),
    ...(hasBottles(plan) ? keepingCautions : []),
    ...humilityCautions,
  ];
  return [...new Set(cautions)];
}
