/** The making plan: batches with their days, bottles in hand, shells, what will be short. */
// @ts-nocheck

import {
  counted,
  rateMeasures,
  shortDate,
  strengthFigure,
  totalStockText,
} from "../../garden/index.js";
import type { Plan, SeasonStock } from "../../season/index.js";
import { batchName, weightText } from "../../stock/index.js";
import { capital, makingCautions, seasonOfStock } from "../../words/index.js";
import { type BottleLife, bottleLives, hasBottles } from "../bottle-lives.js";
import { section } from "../document.js";
import { type Html, html, joined, nameHtml } from "../html.js";
import { cautionList, dayTime } from "../round-card.js";
import { recipeDetails } from "./recipe-section.js";

export function makingSection(plan: Plan): Html | undefined {
  const { stock } = plan;
  if (stock === undefined || (plan.totals.stockMl === 0 && !hasBottles(plan))) return undefined;
  const lives = bottleLives(stock);
  const cautions = stock.making.batches.length > 0 && cautionList(makingCautions);
  const body = html`<p>${seasonOfStock(stock, plan.totals.stockMl, plan.garden.amounts)}</p>
    ${shellShortage(stock)} ${lives.length > 0 && bottleTable(plan, lives)}
    ${joined([recipeDetails(stock, plan), cautions], "\n")}`;
  return section("making", "Stock and making plan", body);
}

function bottleTable({ garden, today }: Plan, lives: readonly BottleLife[]): Html {
  const rows = lives.map((life) => {
    const { batch } = life;
    const cell = (head: string, content: Html | string | undefined) =>
      html`<td data-head="${head}">${content ?? "not known"}</td>`;
    return html`<tr>
      <th scope="row">${nameHtml(capital(batchName(life.id)))}</th>
      ${cell("Amount", `${totalStockText(life.volumeMl, garden.amounts)}${batch ? `, ${counted(batch.bottles, "bottle")}` : " in hand"}`)}
      ${cell("Made from", batch ? `${counted(batch.eggs, "shell")}, ${weightText(batch.shellG, garden.amounts)} dry` : "made already")}
      ${cell("Begin", life.startOn ? dayTime(life.startOn, shortDate(life.startOn, garden.amounts, today)) : "–")}
      ${cell("Ready", life.readyOn ? dayTime(life.readyOn, shortDate(life.readyOn, garden.amounts, today)) : life.planned ? undefined : "now")}
      ${cell("Use by", life.useBy && dayTime(life.useBy, shortDate(life.useBy, garden.amounts, today)))}
      ${cell("Calcium", life.strengthGPerL === undefined ? undefined : `${strengthFigure(life.strengthGPerL, garden.amounts)}/${rateMeasures[garden.amounts].strengthUnit}`)}
    </tr>`;
  });
  return html`<table class="bottles">
    <caption>
      Bottles and batches
    </caption>
    <thead>
      <tr>
        ${["Batch", "Amount", "Made from", "Begin", "Ready", "Use by", "Calcium"].map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows}
    </tbody>
  </table>`;
}

/** What feedings lack stock is among the warnings of the plan. */
function shellShortage({ making }: SeasonStock): Html | undefined {
  const { shortage } = making.shells;
  if (shortage === undefined) return undefined;
  return html`<p class="warning">
    <b>Short:</b> <span dir="auto">${shortage.message}</span>
    <span class="mend">What helps: ${shortage.mend}</span>
  </p>`;
}
