/** The season on one sheet: a line for each day, with a box, and what it asks for. */
// @ts-nocheck

import { longDay } from "../../garden/index.js";
import { agendaOf, isWrittenDown, mixesOf, type Plan } from "../../season/index.js";
import { cautionsFor, humilityCautions } from "../../words/index.js";
import { documentOf } from "../document.js";
import { html, nameHtml } from "../html.js";
import { dayTime, roundTotals } from "../round-card.js";
import { box } from "./checklist.js";
import { type Paper, papers } from "./paper.js";
import { sheetStyle } from "./sheet-style.js";

const linesOnPage = 25;

/** One HTML file to print: days of feeding and how much. */
export function shortSheet(plan: Plan, { paper }: { readonly paper: Paper }): string {
  const { garden } = plan;
  const days = agendaOf(plan).filter(({ round }) => round !== undefined);
  const pages = Array.from({ length: Math.ceil(days.length / linesOnPage) }, (_, i) =>
    days.slice(i * linesOnPage, (i + 1) * linesOnPage),
  );
  const mixes = mixesOf(plan.rounds);
  return documentOf({
    title: `${garden.name}: feeding days`,
    style: sheetStyle(papers[paper]),
    body: html`<header>
        <h1>${nameHtml(garden.name)}: feeding days ${garden.season.from.slice(0, 4)}</h1>
      </header>
      <main>
        ${days.length === 0 && html`<p>There is nothing to feed in this season.</p>`}
        ${pages.map(
          (lines) =>
            html`<table class="list short">
              ${lines.map(
                ({ day, round }) =>
                  html`<tr>
                    <td>${round && box(isWrittenDown(round), "round")}</td>
                    <th scope="row">${dayTime(day, longDay(day, garden.amounts))}</th>
                    <td>${round && roundTotals(plan, round).join(" · ")}</td>
                  </tr>`,
              )}
            </table>`,
        )}
        <p class="small">
          ${[...(mixes.length === 0 ? [] : cautionsFor(mixes, plan.stock?.pour)), ...humilityCautions].join(" ")}
        </p>
      </main>`,
  });
}
