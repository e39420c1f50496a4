/** Stock on hand through the season, on a scale, and until when each bottle keeps. */
// @ts-nocheck

import { addDays } from "../../dates.js";
import { type Amounts, mlPerTeaspoon, pouredText } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { bottleLives, stockSteps } from "../bottle-lives.js";
import { html, type Html } from "../html.js";
import { shapeAt } from "./picture-marks.js";
import { spanRect } from "./plot.js";
import type { Canvas } from "./thinned-labels.js";
import { percent, type TimeScale } from "./time-scale.js";

export const stockHeightPx = 84;
const [topPx, bottomPx] = [24, 78];

export function stockPlot(plan: Plan, scale: TimeScale, canvas: Canvas): Html {
  if (plan.stock === undefined) return html``;
  const steps = stockSteps(plan, scale.span.from).filter(({ from }) => from <= scale.span.to);
  const half = halfOfScale(Math.max(...steps.map(({ ml }) => ml), 1), plan.garden.amounts);
  const y = (ml: number) => Number((bottomPx - (ml / half / 2) * (bottomPx - topPx)).toFixed(1));
  const grid = [2 * half, half].map(
    (ml) => html`<line class="grid" x1="0" x2="100%" y1="${y(ml)}" y2="${y(ml)}" />`,
  );
  const levels = steps.map(({ from, ml }, i) => {
    const next = steps[i + 1]?.from;
    const span = { from, to: next === undefined ? scale.span.to : addDays(next, -1) };
    return spanRect(scale, span, "level", y(ml), bottomPx - y(ml));
  });
  const lives = bottleLives(plan.stock);
  const flags = lives.flatMap(({ useBy }) =>
    useBy !== undefined && scale.shows({ from: useBy, to: useBy })
      ? [shapeAt("fr-end", "end", percent(scale.start(addDays(useBy, 1))), 12)]
      : [],
  );
  return html`${grid}${levels}${outline(steps, scale, y)}
    <line class="base" x1="0" x2="100%" y1="${bottomPx}" y2="${bottomPx}" />${flags}
    ${[2 * half, half].map((ml) => scaleText(pouredText(ml, plan.garden.amounts), y(ml), canvas))}`;
}

/** Level after level, with a riser between them. */
function outline(
  steps: ReturnType<typeof stockSteps>,
  scale: TimeScale,
  y: (ml: number) => number,
): readonly Html[] {
  return steps.map(({ from, ml }, i) => {
    const next = steps[i + 1];
    const [x1, x2] = [scale.start(from), next === undefined ? 1 : scale.start(next.from)];
    const line = (a: number, b: number, y1: number, y2: number) =>
      html`<line class="level-top" x1="${percent(a)}" x2="${percent(b)}" y1="${y1}" y2="${y2}" />`;
    return html`${ml > 0 && line(x1, x2, y(ml), y(ml))}${next && line(x2, x2, y(ml), y(next.ml))}`;
  });
}

/** Beside the plot where there is a gutter, else in it. */
function scaleText(text: string, y: number, canvas: Canvas): Html {
  const beside = html`<text class="soft wide" x="-8" y="${y + 5}" text-anchor="end">${text}</text>`;
  return canvas.kind === "file"
    ? beside
    : html`${beside}<text class="soft halo narrow" x="0" y="${y + 5}">${text}</text>`;
}

const roundSteps = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10];

/** The middle of a scale that holds so much: a round number of mL, or a spoon, cup, quart of its own. */
export function halfOfScale(mostMl: number, amounts: Amounts): number {
  const wanted = mostMl / 2;
  if (amounts === "us") {
    const tablespoonMl = 3 * mlPerTeaspoon;
    return tablespoonMl * 2 ** Math.max(0, Math.ceil(Math.log2(wanted / tablespoonMl) - 1e-9));
  }
  const power = 10 ** Math.max(0, Math.floor(Math.log10(wanted)));
  return power * (roundSteps.find((step) => step * power >= wanted) ?? 10);
}
