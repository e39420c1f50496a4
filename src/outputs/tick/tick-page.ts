/** The page on which a grower marks what was done: what is due first, in large buttons. */
import { counted } from "../../garden/index.js";
import { problemLines } from "../../problem.js";
import type { TickSheet } from "../../ticks/index.js";
import { documentOf } from "../document.js";
import { html, type Html, nameHtml } from "../html.js";
import { dueSections } from "./due-sections.js";
import { bottlesSection, seenSection } from "./more-sections.js";
import { tickScript } from "./tick-script.js";
import { tickStyle } from "./tick-style.js";
import type { TickView } from "./tick-view.js";
import { doneSection, latelySection, outcomeBox } from "./written-sections.js";

/**
 * A page of plain forms, which works without script. With {@link tickScript} what can't be sent is
 * kept in the browser and sent later. Its inline style and script are constants, for a
 * Content-Security-Policy of their hashes, with `connect-src`, `worker-src`, `manifest-src` and
 * `form-action` of `'self'`.
 */
export function tickPage(sheet: TickSheet, view: TickView): string {
  return documentOf({
    title: `${view.title}: mark what was done`,
    style: tickStyle,
    script: tickScript,
    head: manifestLink,
    hasForms: true,
    data: {
      garden: view.address,
      name: view.title,
      zone: view.timezone,
      today: view.today,
      locale: sheet.amounts === "us" ? "en-US" : "en-GB",
    },
    body: html`<header>
        <h1>${nameHtml(view.title)}</h1>
        <nav aria-label="Other pages">
          <ul>
            <li><a href="./">All gardens</a></li>
            ${view.filePage !== undefined && html`<li><a href="${view.filePage}">The garden file</a></li>`}
          </ul>
        </nav>
      </header>
      <main>
        <div id="told">${outcomeBox(view)}</div>
        ${keptParts} ${troubleBox(view)} ${dueSections(sheet, view)} ${seenSection(sheet, view)}
        ${bottlesSection(sheet, view)} ${latelySection(view)} ${doneSection(sheet)}
      </main>
      ${foot(view)}`,
  });
}

export const manifestLink = html`<link rel="manifest" href="manifest.webmanifest" />`;

/** Filled by the script. */
export const keptParts = html`<p id="old" class="notice" hidden></p>
  <section id="unsent" class="notice" aria-label="Not sent yet" hidden></section>`;

function troubleBox({ problems, filePage }: TickView): Html | undefined {
  if (problems.length === 0) return undefined;
  const where =
    filePage === undefined ? "the garden file" : html`<a href="${filePage}">the garden file</a>`;
  return html`<section class="notice" role="alert" aria-label="Problems of the garden file">
    <p>
      <b>The garden file has ${counted(problems.length, "problem")}.</b> What stands here is of the
      last good plan, and nothing can be written down until ${where} is mended.
    </p>
    <ul class="plain">
      ${problemLines(problems).map((line) => html`<li dir="auto">${line}</li>`)}
    </ul>
  </section>`;
}

function foot({ mayWorkOffline }: Pick<TickView, "mayWorkOffline">): Html {
  return html`<footer>
    ${
      !mayWorkOffline &&
      html`<p>
        Browsers keep a page for times without a network only where its address begins with https.
        This one cannot be opened while the server is not reached. What you mark on it while it is
        open stays in this browser until it can be sent.
      </p>`
    }
    <p id="kept-page" hidden>
      This page opens without a network, too. What you mark then stays in this browser until it can
      be sent.
    </p>
    <noscript>
      <p>Without script nothing is kept: what cannot be sent at once has to be marked again.</p>
    </noscript>
  </footer>`;
}
