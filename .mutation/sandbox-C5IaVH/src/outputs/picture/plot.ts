/** Parts of the picture that lie over the line of days, each drawn from its own top edge. */
// @ts-nocheck

import { addDays, type Day, type DaySpan, yearOf } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { dayOfMonth, monthName } from "../../garden/index.js";
import { html, type Html } from "../html.js";
import { nextRound } from "../plan-facts.js";
import { markAt, shapeAt } from "./picture-marks.js";
import type { FeedRow, PlantingRow } from "./season-rows.js";
import { anchorAt, type Canvas, type Label, thinnedLabels } from "./thinned-labels.js";
import { monthsOf, percent, type TimeScale } from "./time-scale.js";

export interface PictureContext {
  readonly plan: Plan;
  readonly scale: TimeScale;
  readonly canvas: Canvas;
  readonly today?: Day;
}

export const headHeightPx = 40;
export const rowHeightPx = 22;
const bar = { y: 3, height: 16 };

/** Months, and the day of each round: where numbers would collide, only lines are left of some. */
export function headOf({ plan, scale, canvas, today }: PictureContext): Html {
  const next = today === undefined ? undefined : nextRound(plan, today);
  const months = monthsOf(scale.span).map(({ from }, i): Label => {
    const name = monthName(from).slice(0, 3);
    const text = i > 0 && name === "Jan" ? `${name} ${yearOf(from)}` : name;
    return { text, share: scale.start(from), anchor: "start", kind: "soft" };
  });
  const days = plan.rounds
    .filter(({ day }) => scale.shows({ from: day, to: day }))
    .map(({ day }): Label => {
      const [text, share] = [String(dayOfMonth(day)), scale.middle(day)];
      const isNext = day === next?.day;
      const kind = isNext ? "strong next" : "strong";
      return { text, share, anchor: anchorAt(text, share), first: isNext, kind };
    });
  const none = html`<text y="33">No rounds in this season</text>`;
  return html`${months.map(({ share }) => verticalLine("month-line", share, "1", "15"))}
  ${thinnedLabels(
    months.map((label) => ({ ...label, share: label.share + 0.01 })),
    13,
    canvas,
  )}
  ${days.length === 0 ? none : thinnedLabels(days, 33, canvas)}`;
}

/** A hairline for each round, and today, down through whatever they are put in. */
export function dayLines({ plan, scale, today }: PictureContext): Html {
  const days = plan.rounds.map(({ day }) => day);
  const lines = days
    .filter((day) => scale.shows({ from: day, to: day }))
    .map((day) => verticalLine("round-line", scale.middle(day), "0", "100%"));
  const now =
    today !== undefined &&
    scale.shows({ from: today, to: today }) &&
    verticalLine("today", scale.middle(today), "0", "100%");
  return html`${lines}${now}`;
}

function verticalLine(kind: string, share: number, from: string, to: string): Html {
  const x = percent(share);
  return html`<line class="${kind}" x1="${x}" x2="${x}" y1="${from}" y2="${to}" />`;
}

/** Behind the lines: growing, the weeks in which it is fed, harvest. */
export function barsOf({ planting }: PlantingRow, scale: TimeScale): Html {
  const { stages, feeding } = planting;
  const [first, last] = [stages[0], stages.at(-1)];
  const life = first && last && { from: first.from, to: last.to };
  const fed = feeding && { from: feeding.first, to: feeding.last };
  return html`${life && spanRect(scale, life, "growing", bar.y, bar.height)}
  ${fed && spanRect(scale, fed, "window", bar.y, bar.height)}
  ${stages
    .filter(({ stage }) => stage === "harvest")
    .map((span) => spanRect(scale, span, "harvest", bar.y + bar.height - 2, 2))}`;
}

/** Before the lines. Two marks of a day stand side by side. */
export function marksOf({ marks }: PlantingRow, scale: TimeScale): Html {
  return html`${marks
    .filter(({ day }) => scale.shows({ from: day, to: day }))
    .map((mark) => {
      const twin = marks.filter(({ day }) => day === mark.day);
      const aside = (twin.indexOf(mark) - (twin.length - 1) / 2) * 11;
      return html`<svg x="${percent(scale.middle(mark.day))}" overflow="visible">
        ${markAt(mark, aside, rowHeightPx / 2)}
      </svg>`;
    })}`;
}

export function feedMarksOf({ marks }: FeedRow, scale: TimeScale): Html {
  return html`${marks
    .filter(({ day }) => scale.shows({ from: day, to: day }))
    .map(({ day, kind }) =>
      shapeAt("fr-other", `other ${kind}`, percent(scale.middle(day)), rowHeightPx / 2),
    )}`;
}

/** A rectangle over a span, when any of it shows. */
export function spanRect(
  scale: TimeScale,
  span: DaySpan,
  kind: string,
  y: number,
  height: number,
): Html | undefined {
  if (!scale.shows(span) || span.to < span.from) return undefined;
  const [from, to] = [scale.start(span.from), scale.start(addDays(span.to, 1))];
  return html`<rect
    class="${kind}"
    x="${percent(from)}"
    y="${y}"
    width="${percent(to - from)}"
    height="${height}"
  />`;
}
