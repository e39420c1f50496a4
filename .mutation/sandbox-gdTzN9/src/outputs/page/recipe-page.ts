/** How the batches that are still to be made are made: to be printed for the kitchen. */
// @ts-nocheck

import type { Plan } from "../../season/index.js";
import { humilityCautions, makingCautions } from "../../words/index.js";
import { documentOf } from "../document.js";
import { html, nameHtml } from "../html.js";
import { cautionList } from "../round-card.js";
import { pageStyle } from "./page-style.js";
import { recipeDetails } from "./recipe-section.js";

export function recipePage(plan: Plan): string {
  const { stock, garden } = plan;
  const recipes = stock === undefined ? [] : recipeDetails(stock, plan, true);
  return documentOf({
    title: `${garden.name}: recipes`,
    style: pageStyle,
    body: html`<header><h1>${nameHtml(garden.name)}: recipes</h1></header>
      <main>
        ${recipes.length === 0 && html`<p>No batch is left to make in this season.</p>`} ${recipes}
        ${cautionList([...makingCautions, ...humilityCautions])}
      </main>`,
  });
}
