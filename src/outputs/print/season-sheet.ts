/** The season on paper, for the shed wall: what to do on which day, with boxes to tick. */
import type { Day } from "../../dates.js";
import {
  counted,
  fullDate,
  longDay,
  pouredText,
  shortDay,
  type Vessel,
  vesselOf,
} from "../../garden/index.js";
import type {
  BedRound,
  CanFill,
  CanMix,
  OtherFeedMix,
  Plan,
  PlannedPlanting,
  Round,
} from "../../season/index.js";
import {
  cautionsFor,
  climateOfPlace,
  fedSpans,
  fillWithStock,
  humilityCautions,
  keepingCautions,
  makingCautions,
  missingStock,
  otherFeedOnSheet,
  plantingWords,
  usualRainTakenOff,
} from "../../words/index.js";
import { hasBottles } from "../bottle-lives.js";
import { documentOf } from "../document.js";
import { batchHtml, type Content, type Html, html, joined, nameHtml } from "../html.js";
import { makingJobs } from "../making-jobs.js";
import { keyList, pictureDefs, seasonDrawings } from "../picture/index.js";
import { allMixes } from "../plan-facts.js";
import { dayTime, roundTotals } from "../round-card.js";
import { waterTable } from "../water-table.js";
import { calciumTable } from "./calcium-table.js";
import { type Paper, papers } from "./paper.js";
import { sheetStyle } from "./sheet-style.js";

export interface SheetOptions {
  readonly paper: Paper;
  /** Marks the day in the picture; leave it out for a sheet that hangs all season. */
  readonly today?: Day;
}

/** One HTML file to print: the season's picture, cautions, every round, and the making of stock. */
export function seasonSheet(plan: Plan, options: SheetOptions): string {
  const { garden } = plan;
  return documentOf({
    title: `${garden.name}: season sheet`,
    style: sheetStyle(papers[options.paper]),
    body: html`<svg class="defs" width="0" height="0" aria-hidden="true">${pictureDefs()}</svg>
      <header>
        <h1>${nameHtml(garden.name)}</h1>
        <p>
          Feeding plan, ${fullDate(garden.season.from, garden.amounts)} to
          ${fullDate(garden.season.to, garden.amounts)}: ${counted(plan.totals.rounds, "round")}
        </p>
        ${garden.climate && html`<p>${climateOfPlace(garden.climate, garden.amounts)}</p>`}
      </header>
      <main>
        <section class="cautions" aria-label="Cautions">
          <ul>
            ${sheetCautions(plan).map((line) => html`<li>${line}</li>`)}
          </ul>
        </section>
        <section class="season" aria-labelledby="season-head">
          <h2 id="season-head">The season</h2>
          ${keyList(plan, options.today !== undefined)}
          <div class="picture-box">${seasonDrawings(plan, options)}</div>
          ${plan.plantings
            .filter(({ stages }) => stages.length === 0)
            .map((planting) => html`<p>${plantName(planting)}: ${planting.reason}</p>`)}
        </section>
        ${roundsTable(plan)} ${weeklyWaterTable(plan)} ${makingTable(plan)} ${fedList(plan)}
        ${calciumTable(plan)}
      </main>`,
  });
}

function weeklyWaterTable(plan: Plan): Html | undefined {
  const table = waterTable(plan);
  const rain = usualRainTakenOff(plan.watering ?? [], plan.garden.amounts);
  return (
    table &&
    html`<section aria-labelledby="water-head">
      <h2 id="water-head">Water a week</h2>
      ${rain !== undefined && html`<p>${rain}</p>`} ${table}
    </section>`
  );
}

/** When each planting is fed first and last, and why it ends there. */
function fedList({ plantings, garden }: Plan): Html | undefined {
  const lines = fedSpans(plantings, garden.amounts).map(
    ({ plantings: those, text }) =>
      html`<p>
        ${those.map((planting, i) => html`${i > 0 && ", "}${plantName(planting)}`)}: ${text}
      </p>`,
  );
  if (lines.length === 0) return undefined;
  return html`<section aria-labelledby="fed-head">
    <h2 id="fed-head">Fed from when until when</h2>
    ${lines}
  </section>`;
}

function sheetCautions(plan: Plan): readonly string[] {
  const makes = (plan.stock?.making.batches ?? []).length > 0;
  const cautions = [
    ...(plan.rounds.length > 0 ? cautionsFor(allMixes(plan), plan.stock?.pour) : []),
    ...(makes ? makingCautions : []),
    ...(hasBottles(plan) ? keepingCautions : []),
    ...humilityCautions,
  ];
  return [...new Set(cautions)];
}

function roundsTable(plan: Plan): Html {
  if (plan.rounds.length === 0)
    return html`<section>
      <h2>Rounds</h2>
      <p>There is nothing to feed in this season.</p>
    </section>`;
  const heads = ["Done", "Bed", "For", "Cans and stock", "Bottle"];
  return html`<section aria-labelledby="rounds-head">
    <h2 id="rounds-head">Rounds</h2>
    <table class="rounds">
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      ${plan.rounds.map((round) => roundRows(plan, round))}
    </table>
  </section>`;
}

function roundRows(plan: Plan, round: Round): Html {
  const mixes = round.beds.flatMap((bed) => bed.mixes.map((mix) => ({ bed, mix })));
  // A round that fits a third of a page stays on one page.
  const kept = mixes.length <= 10 ? "kept" : "long";
  // What nobody wrote down is still to be ticked.
  const done = round.given === true && round.asPublished === undefined;
  return html`<tbody class="${kept}">
    <tr class="head">
      <td>${box(done, "round")}</td>
      <th scope="rowgroup" colspan="4">
        ${dayTime(round.day, longDay(round.day, plan.garden.amounts))}
        <span class="totals">${roundTotals(plan, round).join(" · ")}</span>
      </th>
    </tr>
    ${mixes.map(({ bed, mix }) => mixRow(plan, bed, mix, done))}
    ${(round.feeds ?? []).map((feed) => otherFeedRow(plan, feed, done))}
    <tr class="notes">
      <td></td>
      <td colspan="4">What was given, signs seen:</td>
    </tr>
  </tbody>`;
}

function mixRow(plan: Plan, { bedName }: BedRound, mix: CanMix, done: boolean): Html {
  const { shortMl, pours = [] } = mix;
  const { amounts } = plan.garden;
  const bottles = pours.map(
    ({ batch, ml }) =>
      html`${batchHtml(batch)}${pours.length > 1 && `, ${pouredText(ml, amounts)}`}`,
  );
  const short = shortMl === undefined ? [] : [missingStock(shortMl, amounts)];
  return html`<tr>
    <td>${box(done, "bed")}</td>
    <td>${nameHtml(bedName)}</td>
    <td>${joined(mix.feedings.map(plantName), ", ")}</td>
    <td>${fillsCell(mix.fills, vesselOf(mix.route))}</td>
    <td>${joined([...bottles, ...short], html`<br />`)}</td>
  </tr>`;
}

function otherFeedRow(plan: Plan, other: OtherFeedMix, done: boolean): Html {
  const names = plan.plantings.filter(({ id }) => other.plantings.includes(id)).map(plantName);
  return html`<tr>
    <td>${box(done, "bed")}</td>
    <td>${nameHtml(other.bedName)}</td>
    <td>${joined(names, ", ")}</td>
    <td>${fillsCell(other.fills, "can")}</td>
    <td>${otherFeedOnSheet(html, other, nameHtml(other.feed), plan.garden.amounts)}</td>
  </tr>`;
}

function fillsCell(fills: readonly CanFill[], vessel: Vessel): readonly Content[] {
  const lines = fills.map((fill) =>
    fillWithStock(html, fill, vessel, (stock) => html`<b>${stock}</b>`),
  );
  return joined(lines, html`<br />`);
}

function plantName(planting: Pick<PlannedPlanting, "name" | "cropName">): Html {
  return plantingWords(html, planting, nameHtml(planting.name));
}

/** A square to tick; what a log already holds is ticked. */
function box(done: boolean, kind: "round" | "bed" | "job"): Html {
  return html`<span class="box ${kind}" role="img" aria-label="${done ? "done" : "to do"}"
    >${done && "✓"}</span
  >`;
}

function makingTable(plan: Plan): Html | undefined {
  const jobs = makingJobs(plan);
  if (jobs.length === 0) return undefined;
  return html`<section aria-labelledby="making-head">
    <h2 id="making-head">Making and keeping stock</h2>
    <table class="jobs">
      <thead>
        <tr>
          <th scope="col">Done</th>
          <th scope="col">Day</th>
          <th scope="col">What</th>
        </tr>
      </thead>
      <tbody>
        ${jobs.map(
          ({ day, words }) =>
            html`<tr>
              <td>${box(false, "job")}</td>
              <th scope="row">${dayTime(day, shortDay(day, plan.garden.amounts))}</th>
              <td>${words}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
