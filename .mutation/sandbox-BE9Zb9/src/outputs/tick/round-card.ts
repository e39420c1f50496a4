/** A round: what each bed gets, the button for what is usual, and a fold for all else. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { counted, shortDay } from "../../garden/index.js";
import { batchName } from "../../stock/index.js";
import type { BedToTick, RoundToTick, TickedEntry, TickSheet } from "../../ticks/index.js";
import { html, type Html, joined, nameHtml } from "../html.js";
import { dayField, doneButtons, fieldsFor, formOf, mainButton, otherButton } from "./form-parts.js";
import type { TickView } from "./tick-view.js";

/** More beds than that are folded, so that the buttons stay in reach. Our choice. */
const fewBeds = 5;

/** `Round: South wall, Long bed` */
export function roundTitle({ beds }: RoundToTick): Html {
  const open = beds.filter(({ isDone }) => !isDone);
  if (open.length > fewBeds) return html`Round: ${counted(open.length, "bed")}`;
  return html`Round:
  ${joined(
    open.map(({ name }) => nameHtml(name)),
    ", ",
  )}`;
}

export function roundKey({ day }: RoundToTick): string {
  return `round ${day}`;
}

export function roundCard(round: RoundToTick, sheet: TickSheet, view: TickView): Html {
  const open = round.beds.filter(({ isDone }) => !isDone);
  const list = html`<ul class="beds">
    ${open.map(bedItem)}
  </ul>`;
  const beds =
    open.length > fewBeds
      ? html`<details class="fold">
          <summary>What each of the ${open.length} beds gets</summary>
          ${list}
        </details>`
      : list;
  return html`${round.told !== undefined && html`<p class="so-far">Written down so far: ${round.told}</p>`}
  ${beds} ${usualForm(round, open, sheet, view)} ${otherwiseForm(round, open, sheet, view)}`;
}

function bedItem({ name, lines }: BedToTick): Html {
  return html`<li>
    <b>${nameHtml(name)}</b>
    ${lines.map((line) => html`<span class="line" dir="auto">${line}</span>`)}
  </li>`;
}

interface RoundForm {
  readonly thing: string;
  readonly key: string;
  readonly day: Day;
}

function formFacts(round: RoundToTick, { amounts }: TickSheet): RoundForm {
  const { day } = round;
  return { thing: `round of ${shortDay(day, amounts)}`, key: roundKey(round), day };
}

function usualForm(
  round: RoundToTick,
  open: readonly BedToTick[],
  sheet: TickSheet,
  view: TickView,
): Html {
  const { day, seen } = round;
  const [beds, entries] = [open.map(({ bed }) => bed), open.flatMap((bed) => bed.entries)];
  return formOf(view, {
    ...formFacts(round, sheet),
    fields: fieldsFor(view, seen, { kind: "round", day, beds, entries }),
    body: html`${doneButtons(day, view, ["Given as planned", "Given today"], "Given that day")}
      <div class="by-then" ${day > view.today && html` hidden`}>
        ${otherButton("Not given", ["missed", "1"])}
      </div>`,
  });
}

/** Beds that are not marked stay open. */
function otherwiseForm(
  round: RoundToTick,
  open: readonly BedToTick[],
  sheet: TickSheet,
  view: TickView,
): Html {
  const { day, seen } = round;
  const entries = open.flatMap((bed) => bed.entries);
  let n = 0;
  const rows = open.map(
    (bed) =>
      html`<fieldset>
        <legend>
          <label class="check"
            ><input type="checkbox" name="bed" value="${bed.bed}" checked />
            <span>${nameHtml(bed.name)}</span></label
          >
        </legend>
        ${bed.entries.map((entry) => entryRow(entry, n++, sheet))}
      </fieldset>`,
  );
  return html`<details class="fold otherwise">
    <summary>Otherwise</summary>
    ${formOf(view, {
      ...formFacts(round, sheet),
      fields: fieldsFor(view, seen, { kind: "round", day, beds: [], entries }),
      body: html`<p class="hint">
          Beds without a mark stay open. An amount that is emptied was not given.
        </p>
        ${rows} ${dayField("Day", day < view.today ? day : view.today)}
        ${mainButton("Write it down so")}`,
    })}
  </details>`;
}

const amountWithUnit = /^(\d[\d.,/ ]*?)\s*([a-z].*)$/i;

function entryRow(entry: TickedEntry, n: number, sheet: TickSheet): Html | undefined {
  const { planting, stock } = entry;
  if (stock === undefined) return undefined;
  const [, amount = stock, unit] = amountWithUnit.exec(stock) ?? [];
  const name = sheet.plantings.find(({ id }) => id === planting)?.name ?? planting;
  return html`<div class="entry">
    <label class="field amount"
      ><span>${name !== undefined && nameHtml(name)}${unit !== undefined && `, ${unit}`}</span>
      <input name="stock-${n}" value="${amount}" inputmode="decimal" autocomplete="off"
    /></label>
    ${bottleField(entry, n, sheet)}
  </div>`;
}

function bottleField({ batch }: TickedEntry, n: number, { bottles }: TickSheet): Html | undefined {
  const isListed = batch === undefined || bottles.some(({ id }) => id === batch);
  const choices = isListed ? bottles : [...bottles, { id: batch, name: batchName(batch) }];
  if (choices.length === 0) return undefined;
  const option = (id: string, name: string): Html =>
    html`<option value="${id}" ${id === (batch ?? "") && html` selected`}>${name}</option>`;
  return html`<label class="field"
    ><span>Bottle</span>
    <select name="batch-${n}">
      ${choices.map(({ id, name }) => option(id, name))} ${option("", "not known")}
    </select></label
  >`;
}
