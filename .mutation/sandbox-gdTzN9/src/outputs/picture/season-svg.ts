/** The season's picture as a file of its own. */
// @ts-nocheck

import type { Plan } from "../../season/index.js";
import { grouped } from "../../values.js";
import { isolated, notFed } from "../../words/index.js";
import { hasBottles } from "../bottle-lives.js";
import { html, type Html, trusted } from "../html.js";
import { shortened } from "../text-width.js";
import { inkDark, inkLight } from "../theme.js";
import { type PictureOptions, pictureContext } from "./picture-context.js";
import { pictureKey } from "./picture-key.js";
import { pictureDefs, pictureStyle } from "./picture-marks.js";
import {
  feedInWords,
  nameInPicture,
  plantingInWords,
  roundsInWords,
  stockInWords,
} from "./picture-words.js";
import {
  barsOf,
  dayLines,
  feedMarksOf,
  headHeightPx,
  headOf,
  marksOf,
  type PictureContext,
  rowHeightPx,
} from "./plot.js";
import { cropsWithoutRow, feedRows, type PlantingRow, plantingRows } from "./season-rows.js";
import { stockHeightPx, stockPlot } from "./stock-strip.js";
import { fontPx, gutter } from "./thinned-labels.js";

const widthPx = 960;
const marginPx = 16;
const titlePx = 28;
const bedPx = gutter.wideBedPx;
const gutterPx = bedPx + gutter.wideNamePx;
const innerPx = widthPx - 2 * marginPx;

/** What is drawn over the days, and beside it in the gutter. */
interface Row {
  readonly heightPx: number;
  readonly beside?: Html;
  readonly behind?: Html | undefined;
  readonly before?: Html;
}

/**
 * An SVG file: a row for each planting that is fed, rounds, other feeds, stock on hand and use-by
 * days. Follows the reader's light or dark setting. Every name is escaped.
 */
export function seasonSvg(plan: Plan, options: PictureOptions = {}): string {
  const context = pictureContext(plan, options, { kind: "file", plotPx: innerPx - gutterPx });
  const plantings = plantingRows(plan);
  const unfed = cropsWithoutRow(plan, plantings);
  const rows = rowsOf(plantings, context);
  const rowsPx = rows.reduce((sum, row) => sum + row.heightPx, 0);
  const plotY = marginPx + titlePx;
  const unfedY = plotY + rowsPx;
  const keyY = unfedY + (unfed.length > 0 ? rowHeightPx : 0) + 8;
  const heightPx = keyY + 20 + marginPx;
  const words = [
    roundsInWords(plan),
    ...plantings.map((row) => plantingInWords(row, plan.garden.amounts)),
    ...feedRows(plan).map((row) => feedInWords(row, plan.garden.amounts)),
    stockInWords(plan),
  ];
  return `${html`<svg
    xmlns="http://www.w3.org/2000/svg"
    class="picture"
    role="img"
    width="${widthPx}"
    height="${heightPx}"
    viewBox="0 0 ${widthPx} ${heightPx}"
    aria-labelledby="fr-title fr-desc"
  >
    <title id="fr-title">${isolated(plan.garden.name)}: the season</title>
    <desc id="fr-desc">${words.filter((text) => text !== "").join(" ")}</desc>
    <style>
      ${trusted(fileStyle)}
    </style>
    ${pictureDefs()}
    <rect class="blank" width="100%" height="100%" />
    <text class="strong heading" x="${marginPx}" y="${marginPx + 14}">
      ${isolated(shortened(plan.garden.name, innerPx / 18))}
    </text>
    ${placed(rows, plotY, "beside", marginPx, gutterPx)}
    ${placed(rows, plotY, "behind", marginPx + gutterPx, innerPx - gutterPx)}
    <svg
      x="${marginPx + gutterPx}"
      y="${plotY + headHeightPx}"
      width="${innerPx - gutterPx}"
      height="${rowsPx - headHeightPx}"
    >
      ${dayLines(context)}
    </svg>
    ${placed(rows, plotY, "before", marginPx + gutterPx, innerPx - gutterPx)}
    ${
      unfed.length > 0 &&
      html`<text class="soft" x="${marginPx}" y="${unfedY + 16}">
        ${shortened(notFed(unfed), innerPx / fontPx)}
      </text>`
    }
    <svg x="${marginPx}" y="${keyY}" width="${innerPx}" height="20">
      ${pictureKey(plan, options.today !== undefined)}
    </svg>
  </svg> `.markup.trimEnd()}\n`;
}

const fileStyle = `:root{${inkLight}}@media (prefers-color-scheme:dark){:root{${inkDark}}}
${pictureStyle}
.blank{fill:var(--card)}
.heading{font-size:18px}`;

function rowsOf(plantings: readonly PlantingRow[], context: PictureContext): readonly Row[] {
  const { plan, scale, canvas } = context;
  const beds = [...grouped(plantings, ({ planting }) => planting.bed).values()];
  return [
    { heightPx: headHeightPx, beside: gutterText("Rounds on", 0, 33), before: headOf(context) },
    ...beds.flatMap((rows) =>
      rows.map((row, i): Row => {
        const { planting } = row;
        const line = html`<line class="grid" x1="0" x2="${innerPx}" y1="0" y2="0" />`;
        const bed = i === 0 && html`${line}${gutterText(planting.bedName, 0, 16, bedPx, "strong")}`;
        const name = gutterText(nameInPicture(planting), bedPx, 16, gutterPx - bedPx);
        return {
          heightPx: rowHeightPx,
          beside: html`${bed}${name}`,
          behind: barsOf(row, scale),
          before: html`<g
            ><title>${plantingInWords(row, plan.garden.amounts)}</title>${marksOf(row, scale)}</g
          >`,
        };
      }),
    ),
    ...feedRows(plan).map((row): Row => ({
      heightPx: rowHeightPx,
      beside: gutterText(row.feeds.map(isolated).join(", "), 0, 16),
      before: html`<g
        ><title>${feedInWords(row, plan.garden.amounts)}</title>${feedMarksOf(row, scale)}</g
      >`,
    })),
    ...(hasBottles(plan)
      ? [
          {
            heightPx: stockHeightPx,
            beside: gutterText("Stock", 0, 29, gutterPx / 2),
            before: stockPlot(plan, scale, canvas),
          },
        ]
      : []),
  ];
}

function gutterText(text: string, x: number, y: number, roomPx = gutterPx, kind = ""): Html {
  const fitting = isolated(shortened(text, (roomPx - 8) / fontPx));
  return html`<text class="${kind}" x="${x}" y="${y}">${fitting}</text>`;
}

/** One layer of the rows, each from its own top edge. */
function placed(
  rows: readonly Row[],
  top: number,
  layer: "beside" | "behind" | "before",
  x: number,
  width: number,
): Html {
  let y = top;
  return html`${rows.map(({ heightPx, [layer]: body }) => {
    const at = y;
    y += heightPx;
    return (
      body &&
      html`<svg x="${x}" y="${at}" width="${width}" height="${heightPx}" overflow="visible">
        ${body}
      </svg>`
    );
  })}`;
}
