/** What the colours, patterns and shapes of the season picture mean. */
import { stageNames } from "../../crops/index.js";
import { routes } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { routeNames, stageWords } from "../../words/index.js";
import { hasBottles } from "../bottle-lives.js";
import { type Content, html, type Html } from "../html.js";
import { allMixes } from "../plan-facts.js";
import { widthEm } from "../text-width.js";
import { endMark, type Mark, routeMarks } from "./picture-marks.js";
import { mark, type Strip } from "./picture-parts.js";

interface KeyEntry {
  readonly sign: Html;
  readonly words: string;
}

const todaySign = html`<line class="today" x1="12" x2="12" y1="0" y2="16" />`;

/** Only what this season's picture shows. Signs are drawn in a field of 24 by 16. */
function keyEntries(plan: Plan, withToday: boolean): readonly KeyEntry[] {
  const seen = new Set(plan.plantings.flatMap((p) => p.stages.map(({ stage }) => stage)));
  const stages = stageNames.filter((stage) => seen.has(stage));
  const used = new Set(allMixes(plan).map(({ route }) => route));
  const batches = plan.stock?.making.batches ?? [];
  const box = (fill: Content): Html =>
    html`<rect class="bar" fill="url(#fr-${fill})" x="1" y="1" width="22" height="14" />`;
  const sign = (what: Mark, words: string): KeyEntry => ({ sign: mark(what, "12", 8), words });
  return [
    ...stages.map((stage) => ({ sign: box(stage), words: stageWords(stage) })),
    ...(plan.rounds.length > 0 ? [sign({ shape: "fr-round", kind: "round-mark" }, "a round")] : []),
    ...routes
      .filter((route) => used.has(route))
      .map((route) => sign(routeMarks[route], routeNames[route].inLine)),
    ...(batches.length > 0 ? [{ sign: box("making"), words: "stock is being made" }] : []),
    ...(hasBottles(plan) ? [sign(endMark, "use-by day")] : []),
    ...(withToday ? [{ sign: todaySign, words: "today" }] : []),
  ];
}

/** As a list that wraps. */
export function keyList(plan: Plan, withToday: boolean): Html {
  const items = keyEntries(plan, withToday).map(
    ({ sign, words }) =>
      html`<li>
        <svg class="picture" width="24" height="16" aria-hidden="true">${sign}</svg>${words}
      </li>`,
  );
  return html`<ul class="key">
    ${items}
  </ul>`;
}

/** In rows, for a drawing of that width. */
export function pictureKey(plan: Plan, withToday: boolean, widthPx: number): Strip {
  let [x, y] = [0, 0];
  const entries = keyEntries(plan, withToday).map(({ sign, words }) => {
    const entryPx = 30 + widthEm(words) * 12 + 14;
    if (x > 0 && x + entryPx > widthPx) [x, y] = [0, y + 24];
    const placed = html`<svg x="${x}" y="${y}" width="24" height="16">${sign}</svg
      ><text x="${x + 30}" y="${y + 12}">${words}</text>`;
    x += Math.round(entryPx);
    return placed;
  });
  return { heightPx: y + 20, body: html`${entries}` };
}
