/** The season at a glance: its picture, and the stages of each planting in words. */
// @ts-nocheck

import { fullDate } from "../../garden/index.js";
import type { Day } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { climateOfPlace } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";
import { keyList, seasonDrawings, stageTable } from "../picture/index.js";

export function seasonSection(plan: Plan, marked: { readonly today?: Day }): Html {
  const { garden } = plan;
  const [from, to] = [garden.season.from, garden.season.to].map((d) => fullDate(d, garden.amounts));
  const body = html`<p class="season">
      ${from} to ${to}${garden.climate && html`. ${climateOfPlace(garden.climate, garden.amounts)}`}
    </p>
    ${keyList(plan, marked.today !== undefined)}
    <div class="frame"><div class="picture-box">${seasonDrawings(plan, marked)}</div></div>
    ${stageTable(plan)}`;
  return section("season", "The season", body);
}
