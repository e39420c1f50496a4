/** Forms that work without script; what the script reads of them stands in data attributes. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { type Fields, tickFields, type Ticked } from "../../ticks/index.js";
import { type Content, html, type Html } from "../html.js";
import type { TickView } from "./tick-view.js";

export interface FormParts {
  /** Names what is marked, for a mark that waits: `round of Sat 12 June`. */
  readonly thing: string;
  /** The same for all forms that mark the same thing. */
  readonly key: string;
  readonly fields: Fields;
  readonly body: Content;
  /** Of a round or a step: the day it is planned for. */
  readonly day?: Day;
}

export function formOf({ address }: TickView, { thing, key, fields, body, day }: FormParts): Html {
  return html`<form
    method="post"
    action="${address}"
    data-thing="${thing}"
    data-key="${key}"
    ${day !== undefined && html` data-day="${day}"`}
  >
    ${fields.map(([name, value]) => html`<input type="hidden" name="${name}" value="${value}" />`)}
    ${body}
  </form>`;
}

/** @param seen the thing's standing as the page shows it */
export function fieldsFor(view: TickView, seen: string, what: Ticked): Fields {
  return tickFields({ id: view.newFormId(), seen, what });
}

type Field = readonly [name: string, value: string];

/** What the usual case needs. */
export function mainButton(words: string, field?: Field): Html {
  return button("main", words, field);
}

export function otherButton(words: string, field?: Field): Html {
  return button("other", words, field);
}

function button(kind: string, words: string, field?: Field, more?: Html): Html {
  return html`<button
    class="${kind}"
    ${field && html` name="${field[0]}" value="${field[1]}"`}${more}
  >
    ${words}
  </button>`;
}

/**
 * Done on its day, and done on the day of the tap. Of a page that is kept for days the script shows
 * the first as soon as the day is past.
 *
 * @param today what it is called on the day itself, and on other days
 */
export function doneButtons(
  day: Day,
  view: TickView,
  today: readonly [onItsDay: string, onAnother: string],
  thatDay: string,
): Html {
  const [onItsDay, onAnother] = today;
  const words = day === view.today ? onItsDay : onAnother;
  return html`<div class="that-day" ${day >= view.today && html` hidden`}>
      ${mainButton(thatDay, ["on", day])}
    </div>
    <div class="usual">${button("main", words, undefined, html` data-later="${onAnother}"`)}</div>`;
}

export function dayField(label: string, day?: Day): Html {
  return html`<label class="field"
    ><span>${label}</span> <input type="date" name="on" value="${day ?? ""}"
  /></label>`;
}

export function takeBackForm(view: TickView, of: string, told: string): Html {
  return formOf(view, {
    thing: told,
    key: `undo ${of}`,
    fields: [
      ["form", view.newFormId()],
      ["kind", "undo"],
      ["of", of],
    ],
    body: otherButton("Take back"),
  });
}
