/** Where this garden's calcium comes from, on paper: water first, then a picture for each planting. */
// @ts-nocheck

import {
  type Judgement,
  type PlantingCalcium,
  type PublishedNeed,
  widest,
} from "../../calcium/index.js";
import { type Amounts, counted, fullDate } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { grouped } from "../../values.js";
import { isLongDry } from "../../watering/index.js";
import {
  cropWords,
  fedThoughUnlikely,
  feedIsSmall,
  feedMightHelp,
  humilityCautions,
  limeFirst,
  limeWithCare,
  longestDry,
  waterAgainstFeed,
  waterEvenly,
  waterFirst,
  waterNotTold,
  wouldDecide,
} from "../../words/index.js";
import { calciumCards } from "../calcium-card.js";
import { documentOf } from "../document.js";
import { html, type Html, joined, nameHtml } from "../html.js";
import { type Paper, papers } from "./paper.js";
import { sheetStyle } from "./sheet-style.js";

/** One HTML file to print. */
export function calciumSheet(plan: Plan, { paper }: { readonly paper: Paper }): string {
  const { garden, calcium } = plan;
  const sources = [...new Set(calcium.flatMap(({ need }) => need?.sources ?? []))];
  const footnotes = (need: PublishedNeed): Html =>
    html`<sup>${need.sources.map((source) => sources.indexOf(source) + 1).join(", ")}</sup>`;
  return documentOf({
    title: `${garden.name}: where its calcium comes from`,
    style: `${sheetStyle(papers[paper])}${calciumStyle}`,
    body: html`<header>
        <h1>${nameHtml(garden.name)}: where its calcium comes from</h1>
        <p>
          ${fullDate(garden.season.from, garden.amounts)} to
          ${fullDate(garden.season.to, garden.amounts)}. ${waterFirst}
        </p>
      </header>
      <main>
        <section class="cautions" aria-labelledby="first-head">
          <h2 id="first-head">What to do first</h2>
          <ol>
            ${firstThings(plan).map((line) => html`<li>${line}</li>`)}
          </ol>
        </section>
        <section aria-labelledby="origin-head">
          <h2 id="origin-head">Planting by planting</h2>
          <p>${inAll(calcium).join(" ")}</p>
          ${calciumCards(calcium, { amounts: garden.amounts, footnotes, withArithmetic: true })}
        </section>
      </main>
      <footer>
        ${sources.length > 0 && html`<h2>Where the figures of what plants take up are from</h2>`}
        <ol class="sources">
          ${sources.map((source) => html`<li>${source}</li>`)}
        </ol>
        <p>${humilityCautions.join(" ")}</p>
      </footer>`,
  });
}

function inAll(sums: readonly PlantingCalcium[]): string[] {
  const against = waterAgainstFeed(sums);
  const share = widest(
    sums.flatMap(({ feed, sharePercent }) =>
      (feed.wholeG?.high ?? 0) > 0 ? (sharePercent ?? []) : [],
    ),
  );
  return [
    ...(share === undefined ? [] : [feedIsSmall(share)]),
    ...(against === undefined ? [] : [`${against}.`]),
  ];
}

/** In the order in which they are worth the walk. */
function firstThings({ watering, calcium, garden: { amounts } }: Plan): Html[] {
  const judged = calcium.flatMap((sum) =>
    sum.verdicts.filter(({ feeds }) => feeds).map(({ judgement }) => ({ sum, judgement })),
  );
  const of = (...kinds: readonly Judgement["kind"][]): PlantingCalcium[] => [
    ...new Set(
      judged.filter(({ judgement }) => kinds.includes(judgement.kind)).map(({ sum }) => sum),
    ),
  ];
  const line = (sums: readonly PlantingCalcium[], words: (names: Html) => Html): Html[] =>
    sums.length === 0 ? [] : [words(namesOf(sums))];
  const undecided = grouped(
    judged.flatMap(({ sum, judgement }) =>
      judgement.kind === "cannot-tell" && judgement.decidedBy !== undefined
        ? [{ sum, fact: judgement.decidedBy }]
        : [],
    ),
    ({ fact }) => fact,
  );
  const sour = judged.flatMap(({ sum, judgement }) =>
    judgement.kind === "lime-first"
      ? [{ sum, isPlain: judgement.limedOn === undefined && judgement.besideSour === undefined }]
      : [],
  );
  return [
    html`${waterEvenly}`,
    ...(watering === undefined ? [html`${waterNotTold}`] : longestDryLine(watering, amounts)),
    ...line(
      sour.filter(({ isPlain }) => isPlain).map(({ sum }) => sum),
      (names) => limeFirst(html, names),
    ),
    ...line(
      sour.filter(({ isPlain }) => !isPlain).map(({ sum }) => sum),
      (names) => limeWithCare(html, names),
    ),
    ...[...undecided].flatMap(([fact, those]) =>
      line([...new Set(those.map(({ sum }) => sum))], (names) => wouldDecide(html, fact, names)),
    ),
    ...line(of("might-help"), (names) => feedMightHelp(html, names)),
    ...line(
      of("unlikely-whatever-the-soil", "unlikely-soil-has-enough", "unlikely-water-covers-it"),
      (names) => fedThoughUnlikely(html, names),
    ),
  ];
}

/** Of all beds that wait as long as the one that waits longest, where that is longer than usual. */
function longestDryLine(watering: NonNullable<Plan["watering"]>, amounts: Amounts): Html[] {
  const gaps = watering.flatMap(({ bedName, dryGap }) =>
    dryGap !== undefined && isLongDry(dryGap) ? [{ bedName, dryGap }] : [],
  );
  const [longest] = [...gaps].sort((a, b) => b.dryGap.days - a.dryGap.days);
  if (longest === undefined) return [];
  const { from, to } = longest.dryGap;
  const those = gaps.filter(({ dryGap }) => dryGap.from === from && dryGap.to === to);
  const beds =
    those.length > mostNames
      ? html`${those.length} beds`
      : html`${joined(
          those.map(({ bedName }) => nameHtml(bedName)),
          ", ",
        )}`;
  return [longestDry(html, longest.dryGap, beds, amounts)];
}

const mostNames = 8;

/** Their crops, and how many of each, where the names would be too many to read. */
function namesOf(sums: readonly PlantingCalcium[]): Html {
  const byCrop = grouped(sums, ({ cropName }) => cropWords(cropName));
  const names =
    sums.length > mostNames
      ? [...byCrop].map(([crop, those]) => html`${crop} (${counted(those.length, "planting")})`)
      : sums.map(({ name }) => nameHtml(name));
  return html`${joined(names, ", ")}`;
}

/** Small, in a narrow font: a small garden fits on one sheet. */
const calciumStyle = `@page{margin:10mm}
body{padding:0;font:7.5pt/1.16 Arial,"Liberation Sans",Arimo,sans-serif}
h1{font-size:14pt}
h2{font-size:10pt;margin:1.5mm 0 .5mm}
h3{font-size:8.5pt}
h3 .soft{font-weight:400}
header p,.cautions{font-size:8.5pt}
.cautions{margin-top:1.5mm;padding:1mm 3mm}
.cautions h2{margin-top:0}
.cautions ol,.sources{padding-left:4mm}
.origins{list-style:none;columns:2;column-gap:3mm;margin-top:1mm}
.origin{border:.5pt solid #999;padding:.7mm 2mm 1mm;margin-bottom:1.5mm}
.amount-rows{list-style:none}
.pair{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 2mm}
.amount-rows li+li{margin-top:.2mm}
.amount{height:2.2mm}
sup{line-height:0}
footer h2{font-size:8pt}
.sources{columns:2;column-gap:6mm;font-size:7pt}
@media screen{body{font-size:11pt;padding:4mm}.cautions,header p,.sources{font-size:11pt}}
@media screen and (max-width:40rem){.origins,.sources{columns:1}}
`;
