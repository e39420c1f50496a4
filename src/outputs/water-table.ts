/** Water a week of each bed that is watered, month by month, and the longest time without any. */
import type { Plan, PlanWatering } from "../season/index.js";
import { grouped } from "../values.js";
import {
  dryGapInShort,
  isolated,
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
    <td class="gap" data-head="Longest without">${dryGap ? dryGapInShort(dryGap) : "–"}</td>
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
