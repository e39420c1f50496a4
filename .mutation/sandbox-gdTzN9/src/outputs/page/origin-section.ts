/** Where the calcium of each planting comes from, beside what it takes up. */
// @ts-nocheck

import type { Plan } from "../../season/index.js";
import { waterAgainstFeed } from "../../words/index.js";
import { calciumCards } from "../calcium-card.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";

export function originSection(plan: Plan): Html | undefined {
  if (plan.calcium.every(({ need, verdicts }) => need === undefined && verdicts.length === 0))
    return undefined;
  const against = waterAgainstFeed(plan.calcium);
  const body = html`<p>
      ${against === undefined ? html`What the water brings is counted once <code>source_water:</code> and a bed's <code>watering:</code> are in the garden file.` : `${against}.`}
    </p>
    ${calciumCards(plan.calcium, { amounts: plan.garden.amounts })}`;
  return section("origin", "Where the calcium comes from", body);
}
