/** How each batch is made, step by step on its days, each caution at the step where it counts. */
// @ts-nocheck

import { shortDay } from "../../garden/index.js";
import type { BatchRecipe, Plan, SeasonStock } from "../../season/index.js";
import { dayOfStep, type PlannedBatch, visitOf } from "../../stock/index.js";
import { batchHtml, type Html, html } from "../html.js";
import { cautionList, dayTime } from "../round-card.js";

export function recipeDetails(
  { making, recipes }: SeasonStock,
  plan: Plan,
  isOpen = false,
): readonly Html[] {
  return making.batches.flatMap((batch) => {
    const recipe = recipes.find((r) => r.batch === batch.id);
    return recipe === undefined ? [] : [oneRecipe(batch, recipe, plan, isOpen)];
  });
}

function oneRecipe(
  batch: PlannedBatch,
  { steps }: BatchRecipe,
  { garden, today }: Plan,
  isOpen: boolean,
): Html {
  const items = steps.map(({ key, text, cautions }, i) => {
    const day = dayOfStep(batch, visitOf[key]);
    const before = steps[i - 1];
    const isNewDay = before === undefined || dayOfStep(batch, visitOf[before.key]) !== day;
    return html`<li>
      ${isNewDay && html`${dayTime(day, shortDay(day, garden.amounts, today))}: `}${text}
      ${cautions.length > 0 && cautionList(cautions)}
    </li>`;
  });
  return html`<details ${isOpen && html` open`}>
    <summary>How to make ${batchHtml(batch.id)}</summary>
    <div>
      <ol class="steps">
        ${items}
      </ol>
    </div>
  </details>`;
}
