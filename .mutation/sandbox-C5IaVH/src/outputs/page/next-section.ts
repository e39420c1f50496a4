/** The next round, as a strip with its cans below. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { isSoon, type Plan, type PlanWarning } from "../../season/index.js";
import type { BedLines } from "../../words/index.js";
import { html, type Html } from "../html.js";
import { nextRound } from "../plan-facts.js";
import { longTime, roundBody, roundTotals } from "../round-card.js";

/** None where no round is left. How many days it is away is put in by the page's script. */
export function nextSection(plan: Plan, lines: BedLines, today?: Day): Html | undefined {
  const next = nextRound(plan, today);
  if (next === undefined) return undefined;
  const isTold = today === undefined ? undefined : (warning: PlanWarning) => isSoon(warning, today);
  return html`<section id="next" class="next" aria-labelledby="next-head" data-day="${next.day}">
    <h2 id="next-head">
      <span>Next round</span> ${longTime(plan, next.day, "day")} <span class="when"></span>
    </h2>
    <p class="totals">${roundTotals(plan, next).join(" · ")}</p>
    <div class="round-body">${roundBody(plan, next, lines, isTold)}</div>
  </section>`;
}
