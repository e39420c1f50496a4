/** The season as a picture: one drawing for a file, or several that a page can break between. */
import type { Day } from "../../dates.js";
import type { Plan } from "../../season/index.js";
import { given } from "../../values.js";
import { isolated } from "../../words/index.js";
import { html, type Html, trusted } from "../html.js";
import { inkDark, inkLight } from "../theme.js";
import { type Canvas, fittedTextStyle } from "./fitted-text.js";
import { pictureKey } from "./picture-key.js";
import { pictureDefs, pictureStyle, stageColours } from "./picture-marks.js";
import {
  backgroundLines,
  type BedStrip,
  bedStrips,
  monthStrip,
  type PictureContext,
  roundStrip,
  type Strip,
} from "./picture-parts.js";
import { plantingsInWords, roundsInWords, stockInWords } from "./picture-words.js";
import { stockStrips } from "./stock-strips.js";
import { timeScale } from "./time-scale.js";

export interface PictureOptions {
  readonly today?: Day;
}

const fileWidthPx = 960;
const marginPx = 16;
/** Two drawings of beds fit a printed page. */
const tallestDrawingPx = 470;

/**
 * An SVG file of its own: beds by time with stages and feedings, rounds, stock on hand and use-by
 * days. Follows the reader's light or dark setting. Every name is escaped.
 */
export function seasonSvg(plan: Plan, options: PictureOptions = {}): string {
  const widthPx = fileWidthPx - 2 * marginPx;
  const context = contextOf(plan, options, { kind: "file", widthPx });
  const strips = stacked([
    monthStrip(context),
    roundStrip(context),
    ...bedStrips(context),
    ...stockStrips(context),
  ]);
  const key = pictureKey(plan, options.today !== undefined, widthPx);
  const keyY = marginPx + 28 + strips.heightPx + 12;
  const heightPx = keyY + key.heightPx + marginPx;
  return `${html`<svg
    xmlns="http://www.w3.org/2000/svg"
    class="picture"
    role="img"
    width="${fileWidthPx}"
    height="${heightPx}"
    viewBox="0 0 ${fileWidthPx} ${heightPx}"
    aria-labelledby="fr-title fr-desc"
  >
    <title id="fr-title">${isolated(plan.garden.name)}: the season</title>
    <desc id="fr-desc">${inWords(plan)}</desc>
    <style>
      ${trusted(fileStyle)}
    </style>
    ${pictureDefs()}
    <rect class="blank" width="100%" height="100%" />
    <text class="strong heading" x="${marginPx}" y="${marginPx + 12}">
      ${isolated(plan.garden.name)}
    </text>
    <svg x="${marginPx}" y="${marginPx + 28}" width="${widthPx}" height="${strips.heightPx}">
      ${backgroundLines(context, strips.heightPx)}${strips.body}
    </svg>
    <svg x="${marginPx}" y="${keyY}" width="${widthPx}" height="${key.heightPx}">${key.body}</svg>
  </svg> `.markup.trimEnd()}\n`;
}

/**
 * The same for a page: as wide as its container (named `picture` in the style), months above each
 * drawing, none taller than a sheet of paper. Needs {@link pictureDefs} in the document.
 */
export function seasonDrawings(plan: Plan, options: PictureOptions = {}): readonly Html[] {
  const context = contextOf(plan, options, { kind: "page" });
  const stock = stockStrips(context);
  const drawing = (id: string, title: string, desc: string, strips: readonly Strip[]): Html => {
    const { heightPx, body } = stacked([monthStrip(context), ...strips]);
    return html`<svg
      class="picture"
      role="img"
      width="100%"
      height="${heightPx}"
      aria-labelledby="fr-${id}-title fr-${id}-desc"
    >
      <title id="fr-${id}-title">${title}</title>
      <desc id="fr-${id}-desc">${desc}</desc>
      ${backgroundLines(context, heightPx)}${body}
    </svg>`;
  };
  return [
    drawing("rounds", "Rounds of the season", roundsInWords(plan), [roundStrip(context)]),
    ...chunksOf(bedStrips(context)).map((beds, i) => {
      const plantings = beds.map(({ planting }) => planting);
      const words = plantingsInWords(plan, plantings);
      return drawing(`beds-${i + 1}`, "Beds, stages and feedings", words, beds);
    }),
    ...(stock.length === 0 ? [] : [drawing("stock", "Stock on hand", stockInWords(plan), stock)]),
  ];
}

/** The strips of each drawing. */
function chunksOf(strips: readonly BedStrip[]): readonly (readonly BedStrip[])[] {
  const chunks: BedStrip[][] = [];
  let heightPx = Infinity;
  for (const strip of strips) {
    heightPx += strip.heightPx;
    if (heightPx <= tallestDrawingPx) chunks.at(-1)?.push(strip);
    else {
      chunks.push([strip]);
      heightPx = strip.heightPx;
    }
  }
  return chunks;
}

const fileStyle = `:root{${inkLight};${stageColours("light")}}@media (prefers-color-scheme:dark){:root{${inkDark};${stageColours("dark")}}}
${pictureStyle}.heading{font-size:18px}`;

/** For pages that hold {@link seasonDrawings}. */
export const drawingsStyle = `${pictureStyle}\n${fittedTextStyle}`;

function contextOf(plan: Plan, { today }: PictureOptions, canvas: Canvas): PictureContext {
  return { plan, scale: timeScale(plan), canvas, ...given({ today }) };
}

function inWords(plan: Plan): string {
  return [roundsInWords(plan), plantingsInWords(plan, plan.plantings), stockInWords(plan)]
    .filter((text) => text !== "")
    .join(" ");
}

function stacked(strips: readonly Strip[]): Strip {
  let y = 0;
  const bodies = strips.map(({ heightPx, body }) => {
    const placed = html`<svg y="${y}" width="100%" height="${heightPx}" overflow="visible">
      ${body}
    </svg>`;
    y += heightPx;
    return placed;
  });
  return { heightPx: y, body: html`${bodies}` };
}
