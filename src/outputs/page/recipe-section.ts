/** How each batch is made, step by step on its days, each caution at the step where it counts. */
import type { BatchRecipe, SeasonStock } from "../../season/index.js";
import { dayOfStep, type PlannedBatch, visitOf } from "../../stock/index.js";
import { shortDay } from "../../words/index.js";
import { html, type Html, nameHtml } from "../html.js";
import { cautionList, dayTime } from "../round-card.js";

export function recipeDetails({ making, recipes }: SeasonStock): readonly Html[] {
  return making.batches.flatMap((batch) => {
    const recipe = recipes.find((r) => r.batch === batch.id);
    return recipe === undefined ? [] : [oneRecipe(batch, recipe)];
  });
}

function oneRecipe(batch: PlannedBatch, { steps }: BatchRecipe): Html {
  const items = steps.map(({ key, text, cautions }, i) => {
    const day = dayOfStep(batch, visitOf[key]);
    const before = steps[i - 1];
    const isNewDay = before === undefined || dayOfStep(batch, visitOf[before.key]) !== day;
    return html`<li>
      ${isNewDay && html`${dayTime(day, shortDay(day))}: `}${text}
      ${cautions.length > 0 && cautionList(cautions)}
    </li>`;
  });
  return html`<details>
    <summary>How to make ${nameHtml(batch.id)}</summary>
    <div>
      <ol class="steps">
        ${items}
      </ol>
    </div>
  </details>`;
}
