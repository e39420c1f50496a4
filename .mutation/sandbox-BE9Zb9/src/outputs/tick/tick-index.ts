/** The gardens that can be marked; what waits in this browser is shown and sent from here, too. */
// @ts-nocheck

import { byText } from "../../values.js";
import { documentOf } from "../document.js";
import { html, nameHtml } from "../html.js";
import { keptParts, manifestLink } from "./tick-page.js";
import { tickScript } from "./tick-script.js";
import { tickStyle } from "./tick-style.js";

export interface GardenToTick {
  readonly title: string;
  /** The last part of its page's address. */
  readonly address: string;
  /** What it asks for, and when; absent where nothing is known of it. */
  readonly asks?: string;
  readonly hasProblems: boolean;
}

/** By title. */
export function tickIndex(gardens: readonly GardenToTick[]): string {
  const items = [...gardens]
    .sort((a, b) => a.title.localeCompare(b.title, "en") || byText(a.address, b.address))
    .map(
      ({ title, address, asks, hasProblems }) =>
        html`<li class="card">
          <a class="garden" href="${address}">${nameHtml(title)}</a>
          ${asks !== undefined && html`<p dir="auto">${asks}</p>`}
          ${hasProblems && html`<p>The garden file has a problem.</p>`}
        </li>`,
    );
  return documentOf({
    title: "Gardens to mark",
    style: tickStyle,
    script: tickScript,
    head: manifestLink,
    hasForms: true,
    body: html`<header><h1>Gardens</h1></header>
      <main>
        <div id="told"></div>
        ${keptParts}
        ${
          items.length === 0
            ? html`<p>There are none yet.</p>`
            : html`<ul class="gardens">
                ${items}
              </ul>`
        }
      </main>`,
  });
}
