/** A step of making stock: what there is to do, and the button that it is done. */
// @ts-nocheck

import type { BatchStepKey } from "../../garden/index.js";
import type { StepToTick } from "../../ticks/index.js";
import { capital } from "../../words/index.js";
import { html, type Html, nameHtml } from "../html.js";
import { dayField, doneButtons, fieldsFor, formOf, mainButton } from "./form-parts.js";
import type { TickView } from "./tick-view.js";

const doneWords: Readonly<Record<BatchStepKey, string>> = {
  shells_out: "Shells set out",
  acid_in: "Acid in",
  made: "Bottled",
  thrown_away: "Thrown away",
  missed: "Given up",
};

export function stepTitle({ batchName, step }: StepToTick): Html {
  return html`${nameHtml(capital(batchName))}: ${doneWords[step].toLowerCase()}`;
}

export function stepKey({ batch, step }: StepToTick): string {
  return `step ${batch} ${step}`;
}

export function stepCard(one: StepToTick, view: TickView): Html {
  const { day, line, step } = one;
  const done = doneWords[step];
  return html`<p dir="auto">${line}</p>
    ${stepForm(
      one,
      view,
      html`${volumeField(one)}
      ${doneButtons(day, view, [done, `${done} today`], `${done} that day`)}`,
    )}
    <details class="fold otherwise">
      <summary>On another day</summary>
      ${stepForm(one, view, html`${volumeField(one)} ${dayField("Day", day)} ${mainButton(done)}`)}
    </details>`;
}

function stepForm(one: StepToTick, view: TickView, body: Html): Html {
  const { batch, batchName, step, day, seen } = one;
  return formOf(view, {
    thing: batchName,
    key: stepKey(one),
    day,
    fields: fieldsFor(view, seen, { kind: "step", batch, step }),
    body,
  });
}

/** With its unit, since a US garden measures bottles and cans otherwise than spoons. */
function volumeField({ volume }: StepToTick): Html | undefined {
  if (volume === undefined) return undefined;
  return html`<label class="field"
    ><span>How much it made, with its unit</span>
    <input name="volume" value="${volume}" autocomplete="off"
  /></label>`;
}
