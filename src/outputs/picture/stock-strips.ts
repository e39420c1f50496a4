/** Stock on hand through the season, and when each bottle is made, keeps and must be used up. */
import { batchName } from "../../stock/index.js";
import { addDays, later } from "../../dates.js";
import { totalStockText } from "../../garden/index.js";
import type { SeasonStock } from "../../season/index.js";
import { bottleInShort, isolated } from "../../words/index.js";
import { type BottleLife, bottleLives, hasBottles, stockSteps } from "../bottle-lives.js";
import { html } from "../html.js";
import { lineOfText } from "./fitted-text.js";
import { endMark } from "./picture-marks.js";
import { mark, type PictureContext, spanRect, type Strip } from "./picture-parts.js";

const levelHeight = 48;

export function stockStrips(context: PictureContext): readonly Strip[] {
  const { stock } = context.plan;
  if (stock === undefined || !hasBottles(context.plan)) return [];
  const lives = bottleLives(stock);
  return [levelStrip(context, stock), ...lives.map((life) => bottleStrip(context, life))];
}

function levelStrip({ plan, scale, canvas, today }: PictureContext, stock: SeasonStock): Strip {
  // What was on hand before the plan was made is not known.
  const steps = stockSteps(stock, later(today ?? scale.span.from, scale.span.from));
  const mostMl = Math.max(...steps.map(({ ml }) => ml), 1);
  const most = steps.find(({ ml }) => ml === mostMl);
  const words =
    most === undefined
      ? "Stock on hand: none"
      : `Stock on hand, at most ${totalStockText(mostMl, plan.garden.amounts)}`;
  const bottom = 22 + levelHeight;
  const rects = steps.map(({ from, ml }, i) => {
    const next = steps[i + 1];
    const span = { from, to: next === undefined ? scale.span.to : addDays(next.from, -1) };
    const height = Number(((ml / mostMl) * levelHeight).toFixed(1));
    return html`${spanRect(scale, span, "level", bottom - height, height)}${ml > 0 && html`<line class="level-top" x1="${scale.at(span.from)}" x2="${scale.at(addDays(span.to, 1))}" y1="${bottom - height}" y2="${bottom - height}" />`}`;
  });
  return {
    heightPx: bottom + 10,
    body: html`${rects}<line
        class="base"
        x1="0"
        x2="100%"
        y1="${bottom}"
        y2="${bottom}"
      />${lineOfText(words, 14, "strong halo", canvas)}`,
  };
}

function bottleStrip({ plan, scale, canvas }: PictureContext, life: BottleLife): Strip {
  const { readyOn, useBy, startOn } = life;
  const amount = totalStockText(life.volumeMl, plan.garden.amounts);
  const words = bottleInShort(life, isolated(batchName(life.id)), amount, plan.garden.amounts);
  const from = readyOn ?? scale.span.from;
  const keeps = { from, to: useBy ?? scale.span.to };
  return {
    heightPx: 40,
    body: html`${lineOfText(words, 13, "halo", canvas)}
    ${startOn !== undefined && spanRect(scale, { from: startOn, to: addDays(from, -1) }, "bar", 20, 9, "url(#fr-making)")}
    ${spanRect(scale, keeps, "keeps", 20, 9)}
    ${useBy !== undefined && scale.shows({ from: useBy, to: useBy }) && mark(endMark, scale.at(addDays(useBy, 1)), 25)}`,
  };
}
