/** How each batch is made, step by step on its days, each caution at the step where it counts. */
import type { Day } from "../../dates.js";
import type { BatchRecipe, SeasonStock } from "../../season/index.js";
import type { MakingStep, PlannedBatch, RecipeStep } from "../../stock/index.js";
import { shortDay } from "../../words/index.js";
import { html, type Html, nameHtml } from "../html.js";
import { dayTime } from "../round-card.js";

/** The visit at which each step is done. */
const visits: Readonly<Record<RecipeStep["key"], MakingStep>> = {
  "dry-shells": "dry-shells",
  crush: "add-acid",
  mix: "add-acid",
  wait: "add-acid",
  check: "strain",
  strain: "strain",
  store: "strain",
  use: "strain",
};

export function recipeDetails({ making, recipes }: SeasonStock): readonly Html[] {
  return making.batches.flatMap((batch) => {
    const recipe = recipes.find((r) => r.batch === batch.id);
    return recipe === undefined ? [] : [oneRecipe(batch, recipe)];
  });
}

function oneRecipe(batch: PlannedBatch, { steps }: BatchRecipe): Html {
  const items = steps.map(({ key, text, cautions }, i) => {
    const day = visitDay(batch, key);
    const before = steps[i - 1];
    const isNewDay = before === undefined || visitDay(batch, before.key) !== day;
    return html`<li>
      ${isNewDay && day !== undefined && html`${dayTime(day, shortDay(day))}: `}${text}
      ${
        cautions.length > 0 &&
        html`<ul class="cautions">
          ${cautions.map((line) => html`<li>${line}</li>`)}
        </ul>`
      }
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

function visitDay({ steps }: PlannedBatch, key: RecipeStep["key"]): Day | undefined {
  return steps.find(({ step }) => step === visits[key])?.day;
}
