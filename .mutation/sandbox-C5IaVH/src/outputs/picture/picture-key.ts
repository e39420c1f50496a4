/** What the tints and shapes of the season picture mean, in one line. */
// @ts-nocheck

import { shortDate } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { pictureKeyWords } from "../../words/index.js";
import { bottleLives } from "../bottle-lives.js";
import { html, type Html } from "../html.js";
import { widthEm } from "../text-width.js";
import { markAt, shapeAt } from "./picture-marks.js";
import { plantingRows } from "./season-rows.js";
import { fontPx } from "./thinned-labels.js";

interface KeyEntry {
  readonly sign: Html;
  readonly words: string;
}

const signPx = 18;
/** Widths of letters are those of bold ones, the widest of each kind. */
const plainShare = 0.82;

/** Only what this season's picture shows and does not name itself. Signs are drawn in a field of 18 by 16. */
function keyEntries(plan: Plan, withToday: boolean): readonly KeyEntry[] {
  const rows = plantingRows(plan);
  const marks = rows.flatMap((row) => row.marks);
  const shown = (kind: (typeof marks)[number]["kind"]) => marks.some((mark) => mark.kind === kind);
  const box = (kind: string, y: number, height: number): Html =>
    html`<rect class="${kind}" x="1" y="${y}" width="16" height="${height}" />`;
  const today = html`<line class="today" x1="9" x2="9" y1="0" y2="16" />`;
  const day = plan.today;
  const spray = marks.find(({ route }) => route === "foliar");
  const words = pictureKeyWords;
  const entry = (is: boolean, sign: Html, what: string): readonly KeyEntry[] =>
    is ? [{ sign, words: what }] : [];
  const reaped = rows.some((row) => row.planting.stages.some(({ stage }) => stage === "harvest"));
  const useBy = plan.stock && bottleLives(plan.stock).some((life) => life.useBy !== undefined);
  return [
    ...entry(rows.length > 0, box("growing", 1, 14), words.growing),
    ...entry(
      rows.some((row) => row.planting.feeding),
      box("window", 1, 14),
      words.window,
    ),
    ...entry(reaped, html`${box("growing", 1, 14)}${box("harvest", 13, 2)}`, words.harvest),
    ...(["given", "planned", "missed"] as const).flatMap((kind) =>
      entry(shown(kind), markAt({ day, kind }, 9, 8), words[kind]),
    ),
    ...entry(
      spray !== undefined,
      markAt({ day, kind: spray?.kind ?? "planned", route: "foliar" }, 9, 8),
      words.spray,
    ),
    ...entry(shown("sign"), markAt({ day, kind: "sign" }, 9, 8), words.sign),
    ...entry(useBy === true, shapeAt("fr-end", "end", 6, 8), words.useBy),
    // A page is read on later days too, on which it is no longer today.
    ...entry(withToday, today, shortDate(day, plan.garden.amounts)),
  ];
}

/** As a list that wraps. */
export function keyList(plan: Plan, withToday: boolean): Html {
  const items = keyEntries(plan, withToday).map(
    ({ sign, words }) =>
      html`<li>
        <svg class="picture" width="${signPx}" height="16" aria-hidden="true">${sign}</svg>${words}
      </li>`,
  );
  return html`<ul class="key">
    ${items}
  </ul>`;
}

/** In one row of 20 px. */
export function pictureKey(plan: Plan, withToday: boolean): Html {
  let x = 0;
  return html`${keyEntries(plan, withToday).map(({ sign, words }) => {
    const placed = html`<svg x="${x}" y="0" width="${signPx}" height="16">${sign}</svg
      ><text x="${x + signPx + 4}" y="13">${words}</text>`;
    x += Math.round(signPx + 12 + widthEm(words) * fontPx * plainShare);
    return placed;
  })}`;
}
