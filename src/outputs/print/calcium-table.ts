/** The sum of calcium in a few columns, with what can be expected of the feed. */
import type { CalciumAmount } from "../../calcium/index.js";
import type { Plan } from "../../season/index.js";
import {
  amountOfCalcium,
  cropWords,
  percentBetween,
  verdictTitles,
  waterAgainstFeed,
} from "../../words/index.js";
import { nameAndBed } from "../calcium-card.js";
import { type CalciumGroup, calciumGroups } from "../calcium-groups.js";
import { html, type Html, joined } from "../html.js";

/** Undefined where nothing is fed, and nothing is known. */
export function calciumTable({ calcium, garden: { amounts } }: Plan): Html | undefined {
  const groups = calciumGroups(calcium);
  if (groups.length === 0) return undefined;
  const against = waterAgainstFeed(calcium);
  const heads = ["For", "Takes up", "Tap water", "Dug in", "Feed, and its share", "Verdict"];
  const row = (group: CalciumGroup): Html => {
    const { plantings, need, water, amendments, feed, sharePercent, basis, verdicts } = group;
    const figure = (part: CalciumAmount | undefined): string =>
      part === undefined
        ? "not known"
        : amountOfCalcium(shown(part, basis), amounts) || "not known";
    const brought = feed === undefined ? "none" : figure(feed);
    const cells = [
      figure(need),
      figure(water),
      amendments.length === 0 ? "none" : amendments.map(figure).join("; "),
      sharePercent === undefined || feed === undefined
        ? brought
        : `${brought}: ${percentBetween(sharePercent)}`,
      [...new Set(verdicts.map(({ judgement }) => verdictTitles[judgement.kind]))].join("; ") ||
        "–",
    ];
    return html`<tr>
      <th scope="row">
        ${cropWords(plantings[0].cropName)}
        <span class="soft">${joined(plantings.map(nameAndBed), "; ")}</span>
      </th>
      ${cells.map((cell, i) => html`<td data-head="${heads[i + 1]}">${cell}</td>`)}
    </tr>`;
  };
  return html`<section aria-labelledby="calcium-head">
    <h2 id="calcium-head">Where the calcium comes from</h2>
    ${against !== undefined && html`<p>${against}.</p>`}
    <table class="calcium-sum">
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${groups.map(row)}
      </tbody>
    </table>
  </section>`;
}

/** On the ground that can be compared, else as it is known. */
function shown(part: CalciumAmount, basis: CalciumGroup["basis"]): CalciumAmount {
  const range = basis && part[basis];
  return basis === undefined || range === undefined ? part : { [basis]: range };
}
