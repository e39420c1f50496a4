/** The first thing on the page: the next round, and what the stock wants until then. */
import { daysAway, fullDate, longDay, shortDay } from "../../garden/index.js";
import type { Day } from "../../dates.js";
import type { Plan, Round } from "../../season/index.js";
import { doneWords } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";
import { makingJobs } from "../making-jobs.js";
import { nextRound } from "../plan-facts.js";
import { dayTime, longTime, roundBody, roundTotals } from "../round-card.js";
import { weekWater } from "./water-section.js";

export function nextSection(plan: Plan, today?: Day): Html {
  const next = nextRound(plan, today);
  if (next !== undefined) return roundSection(plan, next, today);
  const words =
    plan.rounds.length > 0
      ? "All rounds of this season are done"
      : "There is nothing to feed in this season";
  return html`<section id="next" class="next" aria-labelledby="next-head">
    <h2 id="next-head"><span>Next round</span> <span class="day">${words}</span></h2>
    ${plan.rounds.length === 0 && html`<p class="totals">${whyNothing(plan)}</p>`}
    ${weekWater(plan, today)}
  </section>`;
}

function roundSection(plan: Plan, next: Round, today?: Day): Html {
  const when = today !== undefined && html`<span class="when">${daysAway(today, next.day)}</span>`;
  return html`<section id="next" class="next" aria-labelledby="next-head" data-day="${next.day}">
    <h2 id="next-head"><span>Next round</span> ${when} ${longTime(plan, next.day, "day")}</h2>
    <p class="totals">${roundTotals(plan, next).join(" · ")}</p>
    <div class="round-body">${roundBody(plan, next)}</div>
    ${weekWater(plan, today)} ${plan.stock !== undefined && untilThen(plan, next, today)}
  </section>`;
}

function untilThen(plan: Plan, next: Round, today?: Day): Html {
  const jobs = makingJobs(plan).filter(
    ({ day }) => today !== undefined && day >= today && day <= next.day,
  );
  return html`<div class="until" ${jobs.length === 0 && html` hidden`}>
    <h3>Until then, for the stock</h3>
    <ol class="jobs">
      ${jobs.map(({ day, words }) => html`<li>${dayTime(day, shortDay(day, plan.garden.amounts))}<span>${words}</span></li>`)}
    </ol>
  </div>`;
}

function whyNothing({ plantings, garden }: Plan): string {
  if (plantings.length === 0) return "No plantings are in the garden file yet.";
  const { from, to } = garden.season;
  const { amounts } = garden;
  return `None of the plantings needs calcium between ${fullDate(from, amounts)} and ${fullDate(to, amounts)}; the reasons are below.`;
}

/** All rounds, each to be opened, those to come first. */
export function roundsSection(plan: Plan, today?: Day): Html | undefined {
  if (plan.rounds.length === 0) return undefined;
  const isPast = ({ day, given }: Round) => given === true || (today !== undefined && day < today);
  const past = plan.rounds.filter(isPast);
  const toCome = plan.rounds.filter((round) => !isPast(round));
  const body = html`${toCome.map((round) => roundDetails(plan, round))}
  ${
    past.length > 0 &&
    html`<h3 class="details-only earlier">Earlier</h3>
      ${past.map((round) => roundDetails(plan, round))}`
  }`;
  return section("rounds", "All rounds", body);
}

function roundDetails(plan: Plan, round: Round): Html {
  const totals = roundTotals(plan, round).join(" · ");
  return html`<details
    data-day="${round.day}"
    data-long="${longDay(round.day, plan.garden.amounts)}"
    data-totals="${totals}"
    ${round.given === true && html` data-given`}
  >
    <summary>
      ${longTime(plan, round.day)}
      <span class="totals-line">${totals}${doneWords(round)}</span>
    </summary>
    <div class="round-body">${roundBody(plan, round)}</div>
  </details>`;
}
