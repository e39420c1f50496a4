/**
 * The season as pages of lines to tick. The pages are laid out here by the heights of their lines, not
 * by the browser: only so can a day that goes on say so at the top of the next page.
 */
// @ts-nocheck

import { longDay, vesselOf } from "../../garden/index.js";
import {
  type AgendaDay,
  agendaOf,
  type BedRound,
  type CanMix,
  isWrittenDown,
  type OtherFeedMix,
  type Plan,
  type PlannedPlanting,
  type Round,
} from "../../season/index.js";
import {
  fillOnSheet,
  fromAll,
  jobInFull,
  missing,
  otherFeedOnSheet,
  plantingWords,
} from "../../words/index.js";
import { batchHtml, type Content, html, type Html, joined, nameHtml, textOf } from "../html.js";
import { mixesOf, stockByBatch } from "../plan-facts.js";
import { dayTime, roundTotals } from "../round-card.js";
import { widthEm } from "../text-width.js";
import { lineMm, type papers, sheetMarginMm } from "./paper.js";

interface Row {
  readonly markup: Html;
  readonly heightMm: number;
}

interface DayRows {
  readonly head: (isContinued: boolean) => Html;
  readonly rows: readonly Row[];
}

const headMm = 8.2;
const notesMm = 10;
/** Above and below a line together, its rule too. */
const paddingMm = 1.4;
/** Left and right together. */
const sidesMm = 3;
/** Left at the foot of a page, for fonts that run larger. */
const spareMm = 6.5;
const emMm = (9.5 * 25.4) / 72;
const boxMm = 10;
const bedShare = 0.28;

type PaperSize = (typeof papers)[keyof typeof papers];

/** @param headerMm taken up by the head of the sheet on the first page */
export function checklist(plan: Plan, paper: PaperSize, headerMm: number): readonly Html[] {
  const roomMm = paper.heightMm - 2 * sheetMarginMm - spareMm;
  const days = agendaOf(plan).map((day) => dayRows(plan, day, paper));
  return pagesOf(days, roomMm, headerMm).map(
    (page) =>
      html`<table class="list">
        <colgroup>
          <col class="ticks" />
          <col class="who" />
          <col />
        </colgroup>
        ${page}
      </table>`,
  );
}

/** A day that fits a third of a page is kept whole; of a longer one at least three lines stay together. */
function pagesOf(days: readonly DayRows[], roomMm: number, headerMm: number): Html[][] {
  const pages: Html[][] = [[]];
  let leftMm = roomMm - headerMm;
  const turn = (): void => {
    pages.push([]);
    leftMm = roomMm;
  };
  for (const { head, rows } of days) {
    const wholeMm = headMm + heightOf(rows);
    const leastMm = wholeMm <= roomMm / 3 ? wholeMm : headMm + heightOf(rows.slice(0, 3));
    if (leftMm < leastMm) turn();
    let part: Row[] = [];
    let isContinued = false;
    const close = (): void => {
      pages.at(-1)?.push(
        html`<tbody>
          ${head(isContinued)} ${part.map(({ markup }) => markup)}
        </tbody>`,
      );
      part = [];
    };
    leftMm -= headMm;
    rows.forEach((row, i) => {
      // The line to write on never stands alone under a repeated day.
      const neededMm = heightOf(rows.slice(i, i === rows.length - 2 ? i + 2 : i + 1));
      if (neededMm > leftMm && part.length > 0) {
        close();
        turn();
        isContinued = true;
        leftMm -= headMm;
      }
      part.push(row);
      leftMm -= row.heightMm;
    });
    close();
  }
  return pages;
}

function heightOf(rows: readonly Row[]): number {
  return rows.reduce((sum, { heightMm }) => sum + heightMm, 0);
}

function dayRows(plan: Plan, agenda: AgendaDay, paper: PaperSize): DayRows {
  const { day, round, jobs } = agenda;
  const { stock, garden } = plan;
  const widthMm = paper.widthMm - 2 * sheetMarginMm - boxMm;
  const head = (isContinued: boolean): Html =>
    html`<tr class="head">
      <td>${round !== undefined && !isContinued && box(isWrittenDown(round), "round")}</td>
      <th scope="rowgroup" colspan="2">
        ${dayTime(day, longDay(day, garden.amounts))}${isContinued && ", continued"}
        ${!isContinued && round && html`<span class="totals">${totalsOf(plan, round)}</span>`}
      </th>
    </tr>`;
  const jobRows =
    stock === undefined
      ? []
      : jobs.map((job) =>
          rowOf([jobInFull(html, job, { ...plan, stock }, batchHtml)], "job", false, [widthMm]),
        );
  if (round === undefined) return { head, rows: jobRows };
  const notes = {
    markup: html`<tr class="notes">
      <td></td>
      <td colspan="2">What was given, signs seen:</td>
    </tr>`,
    heightMm: notesMm,
  };
  return { head, rows: [...jobRows, ...roundRows(plan, round, widthMm), notes] };
}

function totalsOf(plan: Plan, round: Round): string {
  const bottles = stockByBatch(mixesOf(round)).map(([batch]) => batch);
  return `${roundTotals(plan, round).join(" · ")}${bottles.length === 0 ? "" : fromAll(bottles)}`;
}

function roundRows(plan: Plan, round: Round, widthMm: number): Row[] {
  const widths = [widthMm * bedShare, widthMm * (1 - bedShare)];
  const done = isWrittenDown(round);
  const several = stockByBatch(mixesOf(round)).length > 1;
  return [
    ...round.beds.flatMap((bed) =>
      bed.mixes.map((mix) => rowOf(mixCells(plan, bed, mix, several), "bed", done, widths)),
    ),
    ...(round.feeds ?? []).map((feed) => rowOf(feedCells(plan, feed), "bed", done, widths)),
  ];
}

function mixCells(plan: Plan, { bedName }: BedRound, mix: CanMix, several: boolean): Html[] {
  const { pours = [], shortMl, fills, route, feedings } = mix;
  const from =
    several && fills.every((fill) => fill.pours === undefined)
      ? joined([...new Set(pours.map(({ batch }) => batch))].map(batchHtml), ", ")
      : [];
  const lines: Content[] = [
    ...fills.map((fill) => fillOnSheet(html, fill, vesselOf(route), bold)),
    ...(from.length === 0 ? [] : [html`from ${from}`]),
    ...(shortMl === undefined ? [] : [missing(shortMl, plan.garden.amounts)]),
  ];
  return [
    bedCell(
      bedName,
      feedings.map(({ name }) => nameHtml(name)),
    ),
    html`${joined(lines, "; ")}`,
  ];
}

function feedCells(plan: Plan, other: OtherFeedMix): Html[] {
  const names = plan.plantings
    .filter(({ id }) => other.plantings.includes(id))
    .map(({ name }) => nameHtml(name));
  const fills = other.fills.map((fill) => fillOnSheet(html, fill, "can", bold));
  const what = otherFeedOnSheet(html, other, nameHtml(other.feed), plan.garden.amounts);
  return [bedCell(other.bedName, names), html`${joined([...fills, what], "; ")}`];
}

function bedCell(bedName: string, names: readonly Html[]): Html {
  return html`<b>${nameHtml(bedName)}</b> <span class="soft">${joined(names, ", ")}</span>`;
}

function rowOf(
  cells: readonly Html[],
  kind: "bed" | "job",
  done: boolean,
  widthsMm: readonly number[],
): Row {
  const lines = cells.map((cell, i) => linesIn(textOf(cell), (widthsMm[i] ?? 0) - sidesMm));
  const heightMm = Math.max(...lines) * lineMm + paddingMm;
  const span = cells.length === 1 && html` colspan="2"`;
  return {
    markup: html`<tr>
      <td>${box(done, kind)}</td>
      ${cells.map((cell) => html`<td${span}>${cell}</td>`)}
    </tr>`,
    heightMm,
  };
}

/** Of the widths of bold letters: most of a line is not bold. What the examples printed, with room to spare. */
const plainShare = 0.83;

/** A line ends before a word that does not fit. */
function linesIn(text: string, widthMm: number): number {
  const mostEm = widthMm / emMm / plainShare;
  let [lines, usedEm] = [1, 0];
  for (const word of text.split(/\s+/)) {
    const em = widthEm(`${word} `, "print");
    if (usedEm > 0 && usedEm + em > mostEm) [lines, usedEm] = [lines + 1, 0];
    lines += Math.floor((usedEm + em) / mostEm);
    usedEm = (usedEm + em) % mostEm;
  }
  return lines;
}

function bold(text: string): Html {
  return html`<b>${text}</b>`;
}

export function plantName(planting: Pick<PlannedPlanting, "name" | "cropName">): Html {
  return plantingWords(html, planting, nameHtml(planting.name));
}

/** A square to tick; what a log already holds is ticked. */
export function box(done: boolean, kind: "round" | "bed" | "job"): Html {
  return html`<span class="box ${kind}" role="img" aria-label="${done ? "done" : "to do"}"
    >${done && "✓"}</span
  >`;
}
