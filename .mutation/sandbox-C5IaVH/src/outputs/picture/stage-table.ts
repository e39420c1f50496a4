/** The stages of each planting with their days, folded, below the picture. */
// @ts-nocheck

import type { Plan } from "../../season/index.js";
import { lifeInWords, plantingWords } from "../../words/index.js";
import { html, type Html, nameHtml } from "../html.js";

export function stageTable({ plantings, garden }: Plan): Html | undefined {
  if (plantings.length === 0) return undefined;
  return html`<details>
    <summary>Stages and their days</summary>
    <table class="stage-table">
      <thead>
        <tr>
          <th scope="col">Planting</th>
          <th scope="col">Stages</th>
        </tr>
      </thead>
      <tbody>
        ${plantings.map(
          (planting) =>
            html`<tr>
              <th scope="row">
                ${nameHtml(planting.bedName)}:
                ${plantingWords(html, planting, nameHtml(planting.name))}
              </th>
              <td>${lifeInWords(planting.stages, garden.amounts)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </details>`;
}
