/** All rounds and jobs for the stock, in the order of days, each day to be opened; the past folded. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { longDay, shortDay } from "../../garden/index.js";
import { type AgendaDay, agendaOf, type Plan } from "../../season/index.js";
import { grouped } from "../../values.js";
import {
  type BedLines,
  capital,
  dayAsks,
  doneWords,
  jobInShort,
  roundTitles,
} from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";
import { type MakingJob, makingJobs } from "../making-jobs.js";
import { longTime, roundBody, roundTotals } from "../round-card.js";

export function agendaSection(plan: Plan, lines: BedLines, today?: Day): Html | undefined {
  const days = agendaOf(plan);
  if (days.length === 0) return undefined;
  const isPast = ({ day }: AgendaDay): boolean => today !== undefined && day < today;
  const jobs = grouped(makingJobs(plan), ({ day }) => day);
  const shown = (one: AgendaDay): Html => dayDetails(plan, one, jobs.get(one.day) ?? [], lines);
  const past = days.filter(isPast);
  const body = html`<details class="past" ${past.length === 0 && html` hidden`}>
      <summary>Earlier days</summary>
      <div class="days">${past.map(shown)}</div>
    </details>
    <div class="days to-come">${days.filter((one) => !isPast(one)).map(shown)}</div>`;
  return section("rounds", "Rounds, and jobs for the stock", body);
}

/** The page's script reads from it what a day asks for, and the next round. */
function dayDetails(plan: Plan, one: AgendaDay, jobs: readonly MakingJob[], lines: BedLines): Html {
  const { day, round } = one;
  const { amounts } = plan.garden;
  const asks = dayAsks(one, plan);
  const totals = round === undefined ? "" : roundTotals(plan, round).join(" · ");
  const isRoundLeft = round !== undefined && round.given !== true;
  const told = [
    ...(round === undefined ? [] : roundTitles(round, amounts).map((t) => t + doneWords(round))),
    ...one.jobs.map((job) => capital(jobInShort(job, plan))),
  ];
  return html`<details
    data-day="${day}"
    ${asks !== undefined && html` data-short="${shortDay(day, amounts, plan.today)}" data-asks="${asks}"`}
    ${isRoundLeft && html` data-long="${longDay(day, amounts, plan.today)}" data-totals="${totals}"`}
  >
    <summary>
      ${longTime(plan, day)} ${told.map((line) => html`<span class="told">${line}</span>`)}
    </summary>
    <div>
      ${
        jobs.length > 0 &&
        html`<ul class="jobs">
          ${jobs.map(jobItem)}
        </ul>`
      }
      ${
        round !== undefined &&
        html`<p class="totals">${totals}</p>
          <div class="round-body">${roundBody(plan, round, lines)}</div>`
      }
    </div>
  </details>`;
}

function jobItem({ words, command }: MakingJob): Html {
  return html`<li>${words}${command !== undefined && html`<br /><code>${command}</code>`}</li>`;
}
