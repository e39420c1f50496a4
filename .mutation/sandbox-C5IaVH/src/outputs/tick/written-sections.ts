/** What became of a form, and what was written before. */
// @ts-nocheck

import { shortDay } from "../../garden/index.js";
import type { TickSheet } from "../../ticks/index.js";
import { capital } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { takeBackForm } from "./form-parts.js";
import type { FormOutcome, TickView } from "./tick-view.js";

/** On top; the script shows it again for what was sent late. */
export function outcomeBox(view: TickView): Html | undefined {
  const { outcome } = view;
  if (outcome === undefined) return undefined;
  const [head, body] = outcomeWords(outcome, view);
  return html`<section
    class="outcome ${outcome.kind}"
    data-outcome="${outcome.kind}"
    aria-labelledby="outcome-head"
  >
    <h2 id="outcome-head" tabindex="-1">${head}</h2>
    ${body}
  </section>`;
}

function outcomeWords(outcome: FormOutcome, view: TickView): readonly [string, Html] {
  switch (outcome.kind) {
    case "written":
      return [
        "Written down",
        html`<p dir="auto">${capital(outcome.told)}</p>
          ${takeBack(outcome.told, view)}`,
      ];
    case "already":
      return [
        "It stood there already",
        html`<p dir="auto">${capital(outcome.told)}</p>
          <p>Nothing was written.</p>`,
      ];
    case "conflict":
      return [
        "Not written: it was changed meanwhile",
        html`<dl>
            <div>
              <dt>The garden file says</dt>
              <dd dir="auto">${outcome.now}</dd>
            </div>
            <div>
              <dt>You marked</dt>
              <dd dir="auto">${outcome.wanted}</dd>
            </div>
          </dl>
          <p>
            If the file is right, there is nothing to do. If you are, take back below what was
            written, or change it in the garden file, and mark it again.
          </p>`,
      ];
    case "refused":
      return [
        "Not written",
        html`<ul class="plain">
          ${outcome.told.map((line) => html`<li dir="auto">${line}</li>`)}
        </ul>`,
      ];
  }
}

/** The newest in those words is the one that was written just now. */
function takeBack(told: string, view: TickView): Html | undefined {
  const of = view.lately.find((one) => one.told === told);
  return of?.canTakeBack ? takeBackForm(view, of.form, of.told) : undefined;
}

export function latelySection(view: TickView): Html | undefined {
  if (view.lately.length === 0) return undefined;
  const items = view.lately.map((one) => {
    const state = one.isTakenBack ? "taken back" : "cannot be taken back here";
    return html`<li data-thing-key="undo ${one.form}">
      <span dir="auto">${capital(one.told)}</span>
      ${one.canTakeBack ? takeBackForm(view, one.form, one.told) : html`<span class="soft">(${state})</span>`}
    </li>`;
  });
  return section(
    "lately",
    "Written from these pages",
    html`<ul class="lately">
      ${items}
    </ul>`,
  );
}

/** By whatever way they came into the file. */
export function doneSection({ rounds, steps, amounts }: TickSheet): Html | undefined {
  const done = [
    ...rounds
      .filter(({ state, told }) => told !== undefined && state !== "open" && state !== "in part")
      .map(({ day, told }) => ({
        day,
        words: html`Round of ${shortDay(day, amounts)}: ${told}`,
      })),
    ...steps
      .filter(({ told }) => told !== undefined)
      .map(({ day, batchName, told }) => ({
        day,
        words: html`${nameHtml(capital(batchName))}: ${told}`,
      })),
  ].sort((a, b) => (a.day < b.day ? 1 : -1));
  if (done.length === 0) return undefined;
  return section(
    "done",
    "In the garden file",
    html`<details class="fold">
      <summary>Rounds and steps of the last weeks that are written down</summary>
      <ul class="plain">
        ${done.map(({ words }) => html`<li dir="auto">${words}</li>`)}
      </ul>
    </details>`,
  );
}
