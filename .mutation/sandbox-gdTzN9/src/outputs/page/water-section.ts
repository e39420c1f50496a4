/** What each bed is to be watered with: this week, and over the season. */
// @ts-nocheck

import { shortDay } from "../../garden/index.js";
import { type Day, within } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { feedIsNoWatering, usualRainTakenOff, waterFirst, waterOfWeek } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { nextRound } from "../plan-facts.js";
import { waterTable } from "../water-table.js";

export function waterSection(plan: Plan): Html | undefined {
  const table = waterTable(plan);
  if (table === undefined) return undefined;
  const { watering = [], garden } = plan;
  const rain = usualRainTakenOff(watering, garden.amounts);
  const mind = feedIsNoWatering(watering, garden.amounts);
  return section(
    "water",
    "Water",
    html`<p>${[waterFirst, rain, mind].filter((line) => line !== undefined).join(" ")}</p>
      ${table}`,
  );
}

/**
 * A line for each bed, of the week of that day, else of the next round's. The weeks after it are there
 * too, hidden, for the page's script.
 */
export function weekWater(plan: Plan, today?: Day): Html | undefined {
  const { watering = [] } = plan;
  const shown = today ?? nextRound(plan)?.day;
  const weeks = watering.flatMap(({ bedName, weeks: those }) =>
    those.map((week) => ({ bedName, week })),
  );
  const spans = [...new Map(weeks.map(({ week: { from, to } }) => [from, { from, to }])).values()]
    .filter(({ to }) => shown === undefined || to >= shown)
    .sort((a, b) => (a.from < b.from ? -1 : 1));
  if (spans.length === 0) return undefined;
  return html`<div class="weeks">
    ${spans.map((span) => {
      const isNow = shown !== undefined && within(shown, span);
      return html`<div
        class="week"
        data-from="${span.from}"
        data-to="${span.to}"
        ${!isNow && html` hidden`}
      >
        <h3>
          Water from ${shortDay(span.from, plan.garden.amounts, plan.today)} to
          ${shortDay(span.to, plan.garden.amounts, plan.today)}
        </h3>
        <ul>
          ${weeks
            .filter(({ week }) => week.from === span.from)
            .map(
              ({ bedName, week }) =>
                html`<li>
                  <b>${nameHtml(bedName)}</b> ${waterOfWeek(week, plan.garden.amounts)}
                </li>`,
            )}
        </ul>
      </div>`;
    })}
  </div>`;
}
