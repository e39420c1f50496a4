/**
 * What the season picture is drawn with. Each shape has a meaning of its own, and filled, outlined
 * and crossed say what became of a feeding, so that no colour is needed to read it.
 */
// @ts-nocheck

import type { Route } from "../../garden/index.js";
import { html, type Html, trusted } from "../html.js";
import type { RowMark } from "./season-rows.js";
import { fontPx, gutter, roomStyle } from "./thinned-labels.js";

/** Drawn round 0,0. */
const shapes = {
  "fr-drop": '<path d="M0-6.5C2-3.2 4.4-.8 4.4 2A4.4 4.4 0 0 1-4.4 2C-4.4-.8-2-3.2 0-6.5Z"/>',
  "fr-leaf": '<path d="M-5 5C-6.5-2-2-6.5 5.5-5.5C6.5 2 2 6.5-5 5ZM-5 5L1-1"/>',
  "fr-cross": '<path d="M-6-5.5L6 6.5M6-5.5L-6 6.5"/>',
  "fr-sign": '<path d="M0-6L6 5H-6Z"/>',
  "fr-other": '<path d="M-4-4H4V4H-4Z"/>',
  "fr-end": '<path d="M0 8V-7H8L5.5-4L8-1H0"/>',
} as const;

type Shape = keyof typeof shapes;

const routeShapes: Readonly<Record<Route, Shape>> = {
  drench: "fr-drop",
  foliar: "fr-leaf",
};

/** Once in a document, before any picture. */
export function pictureDefs(): Html {
  const marks = Object.entries(shapes).map(
    ([id, shape]) => html`<g id="${id}">${trusted(shape)}</g>`,
  );
  return html`<defs>${marks}</defs>`;
}

export function shapeAt(shape: Shape, kind: string, x: string | number, y: number): Html {
  return html`<use href="#${shape}" class="mark ${kind}" x="${x}" y="${y}" />`;
}

/** A missed feeding is the outlined one, crossed. */
export function markAt({ kind, route = "drench" }: RowMark, x: string | number, y: number): Html {
  if (kind === "sign") return shapeAt("fr-sign", "sign", x, y);
  const shape = routeShapes[route];
  return kind === "missed"
    ? html`${shapeAt(shape, "missed", x, y)}${shapeAt("fr-cross", "cross", x, y)}`
    : shapeAt(shape, `${kind} ${route}`, x, y);
}

/** For the picture and its key, wherever they stand. */
export const pictureStyle = `.picture{display:block;overflow:visible;font:${fontPx}px system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif}
.picture text{fill:var(--ink);stroke:none}
.picture .soft{fill:var(--soft)}
.picture .strong{font-weight:700}
.picture .next{fill:var(--accent)}
.picture .halo{paint-order:stroke;stroke:var(--card);stroke-width:3px;stroke-linejoin:round}
.growing{fill:var(--growing)}
.window{fill:var(--fed);stroke:var(--water);stroke-width:1}
.harvest{fill:var(--soft)}
.round-line{stroke:var(--soft);stroke-width:.75;stroke-opacity:.6}
.month-line{stroke:var(--soft);stroke-width:1}
.today{stroke:var(--accent);stroke-width:2;stroke-dasharray:5 3}
.mark{stroke-width:1.5;stroke:var(--water);fill:var(--card);stroke-linejoin:round}
.mark.given{fill:var(--water)}
.mark.foliar{stroke:var(--spray)}
.mark.foliar.given{fill:var(--spray)}
.mark.missed{stroke:var(--soft);stroke-width:1}
.mark.cross{stroke:var(--warn);stroke-width:2}
.mark.sign{fill:var(--warn);stroke:var(--card)}
.mark.other{stroke:var(--ink)}
.mark.other.given{fill:var(--ink)}
.mark.end{stroke:var(--ink);stroke-width:1.25}
.level{fill:var(--water);fill-opacity:.2}
.level-top{stroke:var(--water);stroke-width:2;fill:none}
.grid{stroke:var(--line);stroke-width:1}
.base{stroke:var(--soft);stroke-width:1}`;

/** For pages that hold the picture as rows of a table. */
export const drawingsStyle = `${pictureStyle}
.season-picture{width:100%;margin:0;border-collapse:collapse;table-layout:fixed;background:none;font-size:${fontPx}px;line-height:22px}
.season-picture .bed-column{width:${gutter.bedPx}px}
.season-picture .name-column{width:${gutter.namePx}px}
@container picture (min-width:${gutter.wideFromPx}px){.season-picture .bed-column{width:${gutter.wideBedPx}px}.season-picture .name-column{width:${gutter.wideNamePx}px}}
.season-picture :is(th,td){padding:0;border:0;width:auto;background:none;text-align:start;vertical-align:top;font-weight:400}
.season-picture td{position:relative}
.season-picture th{white-space:nowrap;overflow:hidden;text-overflow:ellipsis;overflow-wrap:normal;padding-inline-end:8px}
.season-picture thead th{vertical-align:bottom}
.season-picture tbody{break-inside:avoid}
.season-picture .bed-name{font-weight:700}
.season-picture tbody>tr:first-child>*{box-shadow:inset 0 1px var(--line)}
.season-picture .on-bar{font-size:${fontPx}px;line-height:22px;color:var(--ink);white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.season-picture .on-bar.right{text-align:end}
.tip{display:none;position:absolute;z-index:1;inset-inline:0;top:100%;padding:4px 8px;border:1px solid var(--accent);border-radius:4px;background:var(--card);color:var(--ink)}
.picture:focus+.tip{display:block}
.unfed{margin:6px 0 0;font-size:${fontPx}px;line-height:22px;color:var(--soft);white-space:nowrap;overflow:hidden;text-overflow:ellipsis}
.stage-table{font-size:.95rem;table-layout:fixed}
.stage-table th,.stage-table td{border-width:1px 0 0;overflow-wrap:anywhere}
.stage-table thead th:first-child{width:30%}
@media (max-width:44rem){.stage-table thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}.stage-table,.stage-table :is(tbody,tr,th,td){display:block}.stage-table td{border:0;padding-top:0}}
${roomStyle}`;
