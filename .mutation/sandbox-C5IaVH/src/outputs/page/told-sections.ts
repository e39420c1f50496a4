/** What a plan has to tell beside its days: changes, warnings, what was taken as usual, cautions. */
// @ts-nocheck

import { counted, shortDay } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { closed, humilityCautions, keepingCautions } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";
import { cautionList, warningBox } from "../round-card.js";

export const generalCautions = cautionList([...keepingCautions, ...humilityCautions]);

/** What the log and the signs changed, and what to do about it first. */
export function notesSection({ notes, garden, today }: Plan): Html | undefined {
  if (notes.length === 0) return undefined;
  const body = notes.map(
    ({ day, message, advice }) =>
      html`<div class="changed">
        <p dir="auto"><b>${shortDay(day, garden.amounts, today)}</b> ${closed(message)}</p>
        <ul class="plain">
          ${advice.map((line) => html`<li dir="auto">${line}</li>`)}
        </ul>
      </div>`,
  );
  return section("notes", "What changed", body);
}

export function warningsSection(plan: Plan): Html | undefined {
  if (plan.warnings.length === 0) return undefined;
  const boxes = plan.warnings.map((one) => warningBox(one, plan));
  return section("warnings", "Warnings", boxes);
}

export function assumptionsSection({ assumptions }: Plan): Html | undefined {
  if (assumptions.length === 0) return undefined;
  const body = html`<details>
    <summary>${counted(assumptions.length, "value")} not given in the garden file</summary>
    <div>
      <ul class="plain">
        ${assumptions.map((line) => html`<li dir="auto">${line}</li>`)}
      </ul>
    </div>
  </details>`;
  return section("assumptions", "Taken as usual", body);
}
