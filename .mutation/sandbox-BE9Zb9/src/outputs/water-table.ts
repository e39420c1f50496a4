/** Water a week of each bed that is watered, month by month, and the longest time without any. */
// @ts-nocheck

import { nameOfMonth } from "../garden/index.js";
import type { Plan, PlanWatering } from "../season/index.js";
import { grouped } from "../values.js";
import {
  dryGapInShort,
  isolated,
  meansByMonth,
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
  const parts = [
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
  ];
  return html`${joined(parts, "\n")}`;
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
    <td class="gap" data-head="Longest without">
      ${dryGap ? dryGapInShort(dryGap, garden.amounts) : "–"}
    </td>
  </tr>`;
}

function unknownLines({ plantings }: Plan, watering: readonly PlanWatering[]): Html | undefined {
  const unknown = grouped(
    watering.flatMap((bed) => bed.unknown),
    ({ why }) => why,
  );
  if (unknown.size === 0) return undefined;
  const nameOf = (id: string): string =>
    isolated(plantings.find((planting) => planting.id === id)?.name ?? id);
  const lines = [...unknown].map(([why, those]) =>
    unknownWater(
      those.map(({ planting }) => nameOf(planting)),
      why,
    ),
  );
  return html`<ul class="plain">
    ${lines.map((line) => html`<li>${line}</li>`)}
  </ul>`;
}

function shortMonth(count: number): string {
  return nameOfMonth(((count - 1) % 12) + 1).slice(0, 3);
}

/** Where the table is too wide: a block for each bed, in which its months flow, each amount on one line. */
export const narrowWaterTable = `.water-weeks thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.water-weeks,.water-weeks caption,.water-weeks tbody{display:block;background:none}
.water-weeks tr{display:grid;background:var(--card);grid-template-columns:repeat(auto-fill,minmax(5.5em,1fr));column-gap:.75em;border:1px solid var(--line);border-radius:.5em;margin-top:.6em;padding:.35em .7em}
.water-weeks th,.water-weeks td{border:0;padding:.1em 0}
.water-weeks th,.water-weeks .gap{grid-column:1/-1}
.water-weeks td:not(.gap){white-space:nowrap}
.water-weeks td::before{content:attr(data-head) " ";color:var(--soft)}
.water-weeks td:not(.gap)::before{display:block}
.water-weeks .nothing{display:none}
`;
