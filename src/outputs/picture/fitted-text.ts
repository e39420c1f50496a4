/** Text in a picture whose width is not known when it is drawn. */
import { isolated } from "../../words/index.js";
import { html, type Html } from "../html.js";
import { shortened, widthEm } from "../text-width.js";

/** Picture widths at which more text is shown, px; the style has a container query for each. */
const fitWidthsPx = [300, 380, 480, 600, 760, 920, 1200] as const;

/** `page`: as wide as its container, by query. `file`: that many px, for good. */
export type Canvas =
  { readonly kind: "page" } | { readonly kind: "file"; readonly widthPx: number };

const fontPx = 12;
/** The widths are of bold letters. */
const plainShare = 0.9;

/** Widths for which a text too long for them is cut. */
const cutWidthsPx = [
  300, 480, 760, 1200,
] as const satisfies readonly (typeof fitWidthsPx)[number][];

export interface TextPlace {
  readonly x: string;
  readonly y: number;
  readonly kind?: string;
  /** Share of the picture's width that the text may take, 0 to 1. */
  readonly share: number;
}

/** The text where all of it fits, else nothing. */
export function textThatFits(text: string, place: TextPlace, canvas: Canvas): Html | undefined {
  const neededPx = (widthEm(text) * letterPx(place) + 4) / place.share;
  if (canvas.kind === "file")
    return neededPx <= canvas.widthPx ? textAt(text, place, "") : undefined;
  const from = fitWidthsPx.find((px) => px >= neededPx);
  return from === undefined ? undefined : textAt(text, place, `from-${from}`);
}

/** A line across the picture: the whole text where it fits, else its beginning and an ellipsis. */
export function lineOfText(text: string, y: number, kind: string, canvas: Canvas): Html {
  const place = { x: "0", y, kind };
  const cut = (px: number) => shortened(text, px / letterPx(place));
  if (canvas.kind === "file") return textAt(cut(canvas.widthPx), place, "");
  const neededPx = widthEm(text) * letterPx(place);
  const first = cutWidthsPx.findIndex((px) => px >= neededPx);
  const stops = first === -1 ? cutWidthsPx : cutWidthsPx.slice(0, first + 1);
  return html`${stops.map((px, i) => {
    const next = stops[i + 1];
    const fit = [i > 0 && `from-${px}`, next && `to-${next}`];
    return textAt(cut(px), place, fit.filter(Boolean).join(" "));
  })}`;
}

/** Shows each text only where the picture, a container named `picture`, is wide enough. */
export const fittedTextStyle = fitWidthsPx
  .map(
    (px) =>
      `.from-${px}{display:none}@container picture (min-width:${px}px){.from-${px}{display:inline}.to-${px}{display:none}}`,
  )
  .join("\n");

function textAt(text: string, { x, y, kind }: Omit<TextPlace, "share">, fit: string): Html {
  const classes = [kind, fit].filter(Boolean).join(" ");
  return html`<text x="${x}" y="${y}" ${classes !== "" && html` class="${classes}"`}
    >${isolated(text)}</text
  >`;
}

function letterPx({ kind = "" }: Pick<TextPlace, "kind">): number {
  return kind.includes("strong") ? fontPx : fontPx * plainShare;
}
