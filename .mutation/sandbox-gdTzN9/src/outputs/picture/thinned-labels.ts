/** Labels along the line of days, left out where they would run into each other. */
// @ts-nocheck

import { isolated } from "../../words/index.js";
import { html, type Html } from "../html.js";
import { widthEm } from "../text-width.js";
import { percent } from "./time-scale.js";

/** `page`: as wide as its container, by query. `file`: days over that many px, for good. */
export type Canvas = { readonly kind: "page" } | { readonly kind: "file"; readonly plotPx: number };

export interface Label {
  readonly text: string;
  /** Where it stands, 0 to 1. */
  readonly share: number;
  readonly anchor: "start" | "middle" | "end";
  /** Shown before any other. */
  readonly first?: boolean;
  readonly kind: string;
}

export const fontPx = 14;
/** Containers that wide have the names in a gutter. */
const gutterFromPx = 620;
/** Of beds, then of plantings; with more room, wider. */
export const gutter = { bedPx: 120, namePx: 140, wideFromPx: 960, wideBedPx: 140, wideNamePx: 200 };
const gutterPx = gutter.bedPx + gutter.namePx;
const wideGutterPx = gutter.wideBedPx + gutter.wideNamePx;
const gapPx = 4;

/** From that width of the container on the days have that much room; never less than a step before. */
const steps = [
  { from: 0, plotPx: 300 },
  { from: 370, plotPx: gutterFromPx - gutterPx },
  { from: 760, plotPx: 760 - gutterPx },
  { from: 960, plotPx: 960 - wideGutterPx },
  { from: 1040, plotPx: 1040 - wideGutterPx },
] as const;

/** Shows each label, and what belongs to one kind of room, only where there is room for it. */
export const roomStyle = `${steps
  .filter(({ from }) => from > 0)
  .map(
    ({ from }) =>
      `.from-${from}{display:none}@container picture (min-width:${from}px){.from-${from}{display:inline}}`,
  )
  .join("\n")}
.narrow{display:none}
@container picture (max-width:${gutterFromPx - 0.1}px){.narrow{display:inline}.wide{display:none}
.season-picture,.season-picture :is(thead,tbody,tr,td){display:block}
.season-picture th{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}}`;

/** By their place; those for which there is no room anywhere are left out. */
export function thinnedLabels(labels: readonly Label[], y: number, canvas: Canvas): Html {
  const from = roomFrom(labels, canvas);
  return html`${labels.map(({ text, share, anchor, kind }, i) => {
    const step = from[i];
    if (step === undefined) return undefined;
    const classes = step === 0 ? kind : `${kind} from-${step}`;
    return html`<text class="${classes}" x="${percent(share)}" y="${y}" text-anchor="${anchor}"
      >${isolated(text)}</text
    >`;
  })}`;
}

/** For each label the width of the container from which on it is shown. */
export function roomFrom(
  labels: readonly Label[],
  canvas: Canvas,
): readonly (number | undefined)[] {
  const from: (number | undefined)[] = labels.map(() => undefined);
  const rooms = canvas.kind === "page" ? steps : [{ from: 0, plotPx: canvas.plotPx }];
  for (const room of rooms) {
    const ends = labels.map((label) => endsPx(label, room.plotPx));
    const firsts = labels.map(({ first }, i) => first === true && from[i] === undefined);
    for (const turn of [firsts, labels.map(() => true)]) {
      // What stands to the right already, seen from each label.
      const wall: number[] = [];
      labels.reduceRight((limit, _, i) => {
        wall[i] = limit;
        return from[i] === undefined ? limit : (ends[i]?.[0] ?? limit) - gapPx;
      }, room.plotPx + 0.5);
      let left = -Infinity;
      ends.forEach(([start, end], i) => {
        const fits = turn[i] === true && start >= left && end <= (wall[i] ?? 0);
        if (from[i] === undefined && fits) from[i] = room.from;
        if (from[i] !== undefined) left = end + gapPx;
      });
    }
  }
  return from;
}

function endsPx({ text, share, anchor }: Label, plotPx: number): readonly [number, number] {
  const width = widthEm(text) * fontPx;
  const start = share * plotPx - { start: 0, middle: width / 2, end: width }[anchor];
  return [start, start + width];
}

/** Centred over its place, but at the edges turned inwards. */
export function anchorAt(text: string, share: number): Label["anchor"] {
  const half = (widthEm(text) * fontPx) / 2 / steps[0].plotPx;
  return share < half ? "start" : share > 1 - half ? "end" : "middle";
}
