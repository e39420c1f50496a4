/**
 * The picture on a page: a table with a row for each planting, so that it is read row by row, breaks
 * only between beds, and has its head on each sheet of paper. As wide as its container (named
 * `picture` in the style). Needs the picture's marks in the document.
 */
// @ts-nocheck

import { grouped } from "../../values.js";
import { notFed } from "../../words/index.js";
import type { Plan } from "../../season/index.js";
import { hasBottles } from "../bottle-lives.js";
import { type Content, html, type Html, joined, nameHtml } from "../html.js";
import {
  feedInWords,
  nameInPicture,
  plantingInWords,
  roundsInWords,
  stockInWords,
} from "./picture-words.js";
import {
  barsOf,
  dayLines,
  feedMarksOf,
  headHeightPx,
  headOf,
  marksOf,
  type PictureContext,
  rowHeightPx,
} from "./plot.js";
import { type PictureOptions, pictureContext } from "./picture-context.js";
import { cropsWithoutRow, feedRows, type PlantingRow, plantingRows } from "./season-rows.js";
import { stockHeightPx, stockPlot } from "./stock-strip.js";
import { percent } from "./time-scale.js";

export function seasonDrawings(plan: Plan, options: PictureOptions = {}): readonly Html[] {
  const context = pictureContext(plan, options, { kind: "page" });
  const rows = plantingRows(plan);
  const beds = [...grouped(rows, ({ planting }) => planting.bed).values()];
  const unfed = cropsWithoutRow(plan, rows);
  const table = html`<table class="season-picture">
    <colgroup>
      <col class="bed-column wide" />
      <col class="name-column wide" />
      <col />
    </colgroup>
    <thead>
      <tr>
        <th colspan="2" scope="col">Rounds on</th>
        <td>
          ${strip(roundsInWords(plan), headHeightPx, html`${headOf(context)}`)}
          <svg class="defs" width="0" height="0" aria-hidden="true">
            <g id="fr-days">${dayLines(context)}</g>
          </svg>
        </td>
      </tr>
    </thead>
    ${beds.map(
      (those) =>
        html`<tbody>
          ${those.map((row, i) => plantingRow(row, i === 0 ? those.length : 0, context))}
        </tbody>`,
    )}
    <tbody>
      ${feedRows(plan).map(
        (row) =>
          html`<tr>
            <th colspan="2" scope="row">${namesOf(row.feeds)}</th>
            ${rowCell(feedInWords(row, plan.garden.amounts), html`${lines}${feedMarksOf(row, context.scale)}${nameOnBar(namesOf(row.feeds), row.marks, context)}`)}
          </tr>`,
      )}
    </tbody>
    ${
      hasBottles(plan) &&
      html`<tbody>
        <tr>
          <th colspan="2" scope="row">Stock</th>
          <td>
            ${strip(stockInWords(plan), stockHeightPx, html`${lines}${stockPlot(plan, context.scale, context.canvas)}`)}
          </td>
        </tr>
      </tbody>`
    }
  </table>`;
  return [table, ...(unfed.length === 0 ? [] : [html`<p class="unfed">${notFed(unfed)}</p>`])];
}

/** Drawn once, with the head. */
const lines = html`<use href="#fr-days" />`;

function plantingRow(row: PlantingRow, bedRows: number, context: PictureContext): Html {
  const { planting } = row;
  const bed = nameHtml(planting.bedName);
  const onBar = html`${bedRows > 0 && html`<b>${bed}</b> `}${nameHtml(planting.name)}`;
  return html`<tr>
    ${
      bedRows > 0 &&
      html`<th class="bed-name" scope="rowgroup" rowspan="${bedRows}" title="${planting.bedName}">
        ${bed}
      </th>`
    }
    <th scope="row" title="${nameInPicture(planting)}">${nameInPicture(planting)}</th>
    ${rowCell(
      plantingInWords(row, context.plan.garden.amounts),
      html`${barsOf(row, context.scale)}${lines}${nameOnBar(onBar, row.marks, context, row)}${marksOf(row, context.scale)}`,
    )}
  </tr>`;
}

/** On narrow screens the name stands where the most room is beside the marks. */
function nameOnBar(
  name: Content,
  marks: PlantingRow["marks"],
  { scale }: PictureContext,
  row?: PlantingRow,
): Html {
  const days = marks.map(({ day }) => day).filter((day) => scale.shows({ from: day, to: day }));
  const { feeding } = row?.planting ?? {};
  const shares = [...days, ...(feeding ? [feeding.first, feeding.last] : [])].map(scale.middle);
  const before = Math.max(0, Math.min(1, ...shares) - marginShare);
  const after = Math.min(1, Math.max(0, ...shares) + marginShare);
  const left = before >= 1 - after;
  return html`<foreignObject
    class="narrow"
    aria-hidden="true"
    x="${left ? "0" : percent(after)}"
    y="0"
    width="${percent(left ? before : 1 - after)}"
    height="${rowHeightPx}"
    ><div class="on-bar${left ? "" : " right"}">${name}</div></foreignObject
  >`;
}

/** Half a mark and a little, of a plot of 300 px. */
const marginShare = 0.03;

/** Tells its stages to whoever comes to it with the keyboard or a finger, and to those who hear it. */
function rowCell(words: string, body: Html): Html {
  return html`<td>
    <svg class="picture" role="img" width="100%" height="${rowHeightPx}" tabindex="0">
      <title>${words}</title>
      ${body}</svg
    ><span class="tip" aria-hidden="true">${words}</span>
  </td>`;
}

function strip(words: string, heightPx: number, body: Html): Html {
  return html`<svg class="picture" role="img" width="100%" height="${heightPx}">
    <title>${words}</title>
    ${body}
  </svg>`;
}

function namesOf(names: readonly string[]): Html {
  return html`${joined(names.map(nameHtml), ", ")}`;
}
