/** The making plan: batches with their days, bottles in hand, shells, what will be short. */
import { counted, decimal, gramsText, totalStockText } from "../../garden/index.js";
import type { Plan, SeasonStock } from "../../season/index.js";
import { makingCautions, seasonOfStock, shortDate, shortDay } from "../../words/index.js";
import { type BottleLife, bottleLives, hasBottles } from "../bottles.js";
import { html, type Html, nameHtml } from "../html.js";
import { makingJobs } from "../making-jobs.js";
import { dayTime } from "../round-card.js";
import { recipeDetails } from "./recipe-section.js";

export function makingSection(plan: Plan): Html | undefined {
  const { stock } = plan;
  if (stock === undefined) return undefined;
  const { making } = stock;
  if (plan.totals.stockMl === 0 && !hasBottles(stock)) return undefined;
  const lives = bottleLives(stock);
  const jobs = makingJobs(plan);
  return html`<section id="making" aria-labelledby="making-head">
    <h2 id="making-head">Stock and making plan</h2>
    <p>${seasonOfStock(stock, plan.totals.stockMl, plan.garden.amounts)}</p>
    ${shortageBoxes(plan, stock)} ${lives.length > 0 && bottleTable(plan, stock, lives)}
    ${
      jobs.length > 0 &&
      html`<h3>What to do when</h3>
        <ol class="jobs">
          ${jobs.map(({ day, words }) => html`<li data-day="${day}">${dayTime(day, shortDay(day))}<span>${words}</span></li>`)}
        </ol>`
    }
    ${recipeDetails(stock)}
    ${
      making.batches.length > 0 &&
      html`<ul class="cautions">
        ${makingCautions.map((line) => html`<li>${line}</li>`)}
      </ul>`
    }
  </section>`;
}

function bottleTable({ garden }: Plan, stock: SeasonStock, lives: readonly BottleLife[]): Html {
  const batches = new Map(stock.making.batches.map((batch) => [batch.id, batch]));
  const rows = lives.map((life) => {
    const batch = batches.get(life.id);
    const cell = (head: string, content: Html | string | undefined) =>
      html`<td data-head="${head}">${content ?? "not known"}</td>`;
    return html`<tr>
      <th scope="row">${nameHtml(life.id)}</th>
      ${cell("Amount", `${totalStockText(life.volumeMl, garden.amounts)}${batch ? `, ${counted(batch.bottles, "bottle")}` : " in hand"}`)}
      ${cell("Made from", batch ? `${counted(batch.eggs, "shell")}, ${gramsText(batch.shellG)} dry` : "made already")}
      ${cell("Begin", life.startOn ? dayTime(life.startOn, shortDate(life.startOn)) : "–")}
      ${cell("Ready", life.readyOn ? dayTime(life.readyOn, shortDate(life.readyOn)) : life.planned ? undefined : "now")}
      ${cell("Use by", life.useBy && dayTime(life.useBy, shortDate(life.useBy)))}
      ${cell("Calcium", life.strengthGPerL === undefined ? undefined : `${decimal(life.strengthGPerL, 1)} g/L`)}
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

function shortageBoxes(plan: Plan, { making }: SeasonStock): Html {
  const { shortage } = making.shells;
  const lines = [...(shortage ? [shortage] : []), ...making.shortages]
    .map(({ message, mend }) => ({ message, mend }))
    // The same is often among the warnings of the plan, where it is told once.
    .filter(({ message }) => !plan.warnings.some((warning) => warning.message === message));
  return html`${lines.map(({ message, mend }) => html`<p class="warning"><b>Short:</b> <span dir="auto">${message}</span> <span class="mend">What helps: ${mend}</span></p>`)}`;
}
