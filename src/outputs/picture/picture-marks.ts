/**
 * What the season picture is drawn with: a colour and a pattern for each stage, and a shape for each
 * mark, so that it can be read without seeing colour and on a black and white print.
 */
import type { StageName } from "../../crops/index.js";
import type { Route } from "../../garden/index.js";
import { html, type Html, trusted } from "../html.js";

/** Fill in light and in dark, and the pattern drawn over it in the ink colour, in a 10 by 10 field. */
const stageLooks: Readonly<Record<StageName, { light: string; dark: string; pattern: string }>> = {
  seedling: { light: "#e3efc3", dark: "#3d4a22", pattern: '<circle cx="2.5" cy="5" r="1"/>' },
  establishment: { light: "#d3e8c4", dark: "#33492a", pattern: '<path d="M3 0V10"/>' },
  vegetative: { light: "#b4d8a4", dark: "#2c5230", pattern: "" },
  heading: { light: "#a6d6c2", dark: "#1f5147", pattern: '<path d="M0 3H10M0 8H10"/>' },
  "root-swelling": {
    light: "#e8c9a6",
    dark: "#5a4023",
    pattern: '<path d="M0 7Q2.5 2 5 7T10 7"/>',
  },
  flowering: { light: "#f6dcea", dark: "#5d3350", pattern: '<path d="M5 2V8M2 5H8"/>' },
  "fruit-set": { light: "#fbe9a9", dark: "#5e4f12", pattern: '<circle cx="5" cy="5" r="2.2"/>' },
  "fruit-growth": {
    light: "#f7cf8b",
    dark: "#664413",
    pattern: '<circle class="solid" cx="5" cy="5" r="2.2"/>',
  },
  ripening: { light: "#f2b09a", dark: "#6e3524", pattern: '<path d="M-1 6L6 -1M4 11L11 4"/>' },
  harvest: { light: "#dfc3ea", dark: "#4f3560", pattern: '<path d="M0 0L10 10M10 0L0 10"/>' },
  "after-harvest": {
    light: "#dedad0",
    dark: "#3f3d36",
    pattern: '<path d="M4 -1L11 6M-1 4L6 11"/>',
  },
};

const stages = Object.entries(stageLooks);

/** Shapes are drawn round 0,0. */
const shapes = {
  "fr-drop": '<path d="M0-6.5C2-3.2 4.4-.8 4.4 2A4.4 4.4 0 0 1-4.4 2C-4.4-.8-2-3.2 0-6.5Z"/>',
  "fr-spray": '<path d="M0-6L1.6-1.6L6 0L1.6 1.6L0 6L-1.6 1.6L-6 0L-1.6-1.6Z"/>',
  "fr-round": '<path d="M-3.5-5H3.5V1.5L0 6L-3.5 1.5Z"/>',
  "fr-end": '<path d="M0-7V7" fill="none"/><path d="M0-7H8L5.5-4L8-1H0Z"/>',
} as const;

/** `kind` is its class. */
export interface Mark {
  readonly shape: keyof typeof shapes;
  readonly kind: string;
}

export const routeMarks: Readonly<Record<Route, Mark>> = {
  drench: { shape: "fr-drop", kind: "drop" },
  foliar: { shape: "fr-spray", kind: "spray" },
};

export const endMark: Mark = { shape: "fr-end", kind: "end" };

/** Once in a document, before any picture. */
export function pictureDefs(): Html {
  const patterns = stages.map(
    ([stage, { pattern }]) =>
      html`<pattern id="fr-${stage}" width="10" height="10" patternUnits="userSpaceOnUse"
        ><rect class="fill-${stage}" width="10" height="10" /><g class="ink"
          >${trusted(pattern)}</g
        ></pattern
      >`,
  );
  const making = html`<pattern id="fr-making" width="6" height="6" patternUnits="userSpaceOnUse"
    ><rect class="blank" width="6" height="6" /><g class="ink"><path d="M0 6L6 0" /></g
  ></pattern>`;
  const marks = Object.entries(shapes).map(
    ([id, shape]) => html`<g id="${id}">${trusted(shape)}</g>`,
  );
  return html`<defs>${patterns}${making}${marks}</defs>`;
}

/** Colours by name, for a light or a dark background. */
export function stageColours(theme: "light" | "dark"): string {
  return stages.map(([stage, look]) => `--fill-${stage}:${look[theme]}`).join(";");
}

/** For the picture and its key, wherever they stand. */
export const pictureStyle = `${stages.map(([stage]) => `.fill-${stage}{fill:var(--fill-${stage})}`).join("")}
.ink{fill:none;stroke:var(--ink);stroke-width:1;stroke-opacity:.55}
.ink .solid{fill:var(--ink);fill-opacity:.55;stroke:none}
.blank{fill:var(--card)}
.picture{display:block;overflow:hidden;font:12px system-ui,"Segoe UI",Roboto,"Liberation Sans",Arial,sans-serif}
.picture text{fill:var(--ink);stroke:none}
.picture .inset{transform:translateX(2px)}
.picture .soft{fill:var(--soft)}
.picture .strong{font-weight:700}
.picture .halo{paint-order:stroke;stroke:var(--card);stroke-width:3px;stroke-linejoin:round}
.bar{stroke:var(--ink);stroke-width:1;stroke-opacity:.75}
.grid{stroke:var(--line);stroke-width:1}
.base{stroke:var(--soft);stroke-width:1}
.today{stroke:var(--accent);stroke-width:2;stroke-dasharray:5 3}
.drop{fill:var(--water);stroke:var(--card);stroke-width:1.5;paint-order:stroke}
.spray{fill:var(--spray);stroke:var(--card);stroke-width:1.5;paint-order:stroke}
.round-mark{fill:var(--soft)}
.round-mark.next{fill:var(--accent)}
.level{fill:var(--water);fill-opacity:.28;stroke:none}
.level-top{stroke:var(--water);stroke-width:2;fill:none}
.keeps{fill:var(--card);stroke:var(--ink);stroke-width:1}
.end{fill:var(--accent);stroke:var(--accent);stroke-width:1.5}`;
