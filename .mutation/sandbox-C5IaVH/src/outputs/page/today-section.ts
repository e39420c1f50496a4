/** The first thing on the page: what the day asks for, or the next day that asks for something. */
// @ts-nocheck

import { addDays, type Day } from "../../dates.js";
import { isSoon, type Plan, type PlanWarning, soonDays } from "../../season/index.js";
import { fullDate } from "../../garden/index.js";
import {
  askedDays,
  nextAsks,
  noRound,
  pageWritten,
  stillAsks,
  warningsUntil,
} from "../../words/index.js";
import { html, type Html } from "../html.js";
import { nextRound } from "../plan-facts.js";
import { warningBox } from "../round-card.js";

/**
 * Without a script it names the day and never says today: nobody knows when it is read. The script
 * puts in what the reader's day asks for, out of the days listed below.
 */
export function todaySection(plan: Plan, today?: Day): Html {
  const { amounts, season } = plan.garden;
  const isOver = plan.today > season.to;
  const [left] = askedDays(plan, today);
  const next = isOver ? undefined : left;
  const done = noRound(plan);
  const saysNone = next !== undefined && nextRound(plan, today) === undefined;
  const soon = today === undefined ? [] : plan.warnings.filter((one) => isSoon(one, today));
  return html`<section id="today" class="asked" aria-labelledby="today-head">
    <h2 id="today-head">${next === undefined ? done : nextAsks(next, amounts, today)}</h2>
    ${plan.rounds.length === 0 && !isOver && html`<p>${whyNothing(plan)}</p>`}
    <p class="then" ${!(isOver && left) && html` hidden`}>
      ${isOver && left && stillAsks(left.asks)}
    </p>
    <p class="none" ${!saysNone && html` hidden`}>${saysNone && done}</p>
    ${today !== undefined && html`<p class="written">${pageWritten(today, amounts)}</p>`}
    ${today !== undefined && soonWarnings(plan, soon, addDays(today, soonDays))}
  </section>`;
}

/** Folded, so that the round stays in sight. */
function soonWarnings(plan: Plan, soon: readonly PlanWarning[], until: Day): Html {
  const head = soon.length > 0 && warningsUntil(soon, until, plan);
  return html`<details class="soon" ${soon.length === 0 && html` hidden`}>
    <summary>${head}</summary>
    <div>${soon.map((one) => warningBox(one, plan))}</div>
  </details>`;
}

function whyNothing({ plantings, garden }: Plan): string {
  if (plantings.length === 0) return "No plantings are in the garden file yet.";
  const { from, to } = garden.season;
  const { amounts } = garden;
  return `None of the plantings needs calcium between ${fullDate(from, amounts)} and ${fullDate(to, amounts)}; the reasons are below.`;
}
