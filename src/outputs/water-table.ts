/** Water a week of each bed that is watered, month by month, and the longest time without any. */
import type { Plan, PlanWatering } from "../season/index.js";
import {
  dryGapInShort,
  meansByMonth,
  nameOfMonth,
  unknownWater,
  weeklyWater,
} from "../words/index.js";
import { html, type Html, joined, nameHtml } from "./html.js";

/** Undefined where no bed is watered by the garden file. */
export function waterTable(plan: Plan): Html | undefined {
  const { watering = [] } = plan;
  if (watering.length === 0) return undefined;
  const known = watering.filter(({ weeks }) => weeks.length > 0);
  const months = [...new Set(known.flatMap(({ weeks }) => [...meansByMonth(weeks).keys()]))].sort(
    (a, b) => a - b,
  );
  return joinedHtml([
    known.length > 0 &&
      html`<table class="water-weeks">
        <caption>
          Water a week
        </caption>
        <thead>
          <tr>
            <th scope="col">Bed</th>
            ${months.map((month) => html`<th scope="col">${shortMonth(month)}</th>`)}
            <th scope="col" class="gap">Longest without</th>
          </tr>
        </thead>
        <tbody>
          ${known.map((bed) => bedRow(plan, bed, months))}
        </tbody>
      </table>`,
    unknownLines(plan, watering),
  ]);
}

function bedRow(
  { garden }: Plan,
  { bedName, weeks, dryGap }: PlanWatering,
  months: readonly number[],
): Html {
  const means = meansByMonth(weeks);
  const cells = months.map((month) => {
    const liters = means.get(month);
    return html`<td
      data-head="${shortMonth(month)}"
      ${liters === undefined && html` class="nothing"`}
    >
      ${liters === undefined ? "" : weeklyWater(liters, garden.amounts)}
    </td>`;
  });
  return html`<tr>
    <th scope="row">${nameHtml(bedName)}</th>
    ${cells}
    <td class="gap" data-head="Longest without">${dryGap ? dryGapInShort(dryGap) : "–"}</td>
  </tr>`;
}

function unknownLines({ plantings }: Plan, watering: readonly PlanWatering[]): Html | undefined {
  const lines = watering.flatMap(({ bedName, unknown }) =>
    unknown.map(({ planting, why }) => {
      const name = plantings.find(({ id }) => id === planting)?.name ?? planting;
      return { bedName, words: unknownWater([name], why) };
    }),
  );
  if (lines.length === 0) return undefined;
  return html`<ul class="plain">
    ${lines.map(({ bedName, words }) => html`<li>${nameHtml(bedName)}: <span dir="auto">${words}</span></li>`)}
  </ul>`;
}

function shortMonth(count: number): string {
  return nameOfMonth(((count - 1) % 12) + 1).slice(0, 3);
}

function joinedHtml(parts: readonly (Html | undefined | false)[]): Html {
  return html`${joined(parts, "\n")}`;
}
