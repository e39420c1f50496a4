/** Markup in which every value is escaped unless it is markup itself. Good for HTML and for SVG. */
import { legible } from "../legible.js";
import { batchName } from "../stock/index.js";

/** Markup made by {@link html} or {@link trusted}. */
export interface Html {
  readonly markup: string;
}

export type Content = Html | string | number | undefined | false | readonly Content[];

/** html`<p>${anything}</p>`: text is escaped, markup and lists of it are kept, nothing is nothing. */
export function html(parts: TemplateStringsArray, ...values: readonly Content[]): Html {
  const markup = unindented(parts).reduce((text, part, i) => text + markupOf(values[i - 1]) + part);
  return { markup };
}

const known = new WeakMap<TemplateStringsArray, readonly string[]>();

/** A line break and the source's indent mean no more to a reader than a line break. */
function unindented(parts: TemplateStringsArray): readonly string[] {
  const lines = known.get(parts) ?? parts.map((part) => part.replace(/\s*\n\s*/g, "\n"));
  known.set(parts, lines);
  return lines;
}

/** Markup from elsewhere, taken as it stands: never for what a user wrote. */
export function trusted(markup: string): Html {
  return { markup };
}

/** A name a user wrote, kept from turning the text around it when it runs right to left. */
/** What people call a batch: `batch 2`. */
export function batchHtml(id: string): Html {
  return nameHtml(batchName(id));
}

export function nameHtml(name: string): Html {
  return html`<bdi>${name}</bdi>`;
}

/** Drawings and names are kept whole; so is what is code already. */
const pieces = /<(svg|bdi|code)\b[^]*?<\/\1\s*>|<[^>]*>|[^<]+/g;
const inBackticks = /(?<![\w`])`([^`\s](?:[^`]*[^`\s])?)`(?![\w`])/g;

/** Keys and commands, which stand in backticks in prose, as code. */
export function withCode({ markup }: Html): Html {
  return trusted(
    markup.replace(pieces, (piece) =>
      piece.startsWith("<") ? piece : piece.replace(inBackticks, "<code>$1</code>"),
    ),
  );
}

/** What of it is read, to measure it by: an escaped letter counts as one. */
export function textOf({ markup }: Html): string {
  return markup.replace(/<[^>]*>/g, "").replace(/&[a-z#0-9]+;/g, "&");
}

/** With a comma or whatever else between them. */
export function joined(items: readonly Content[], between: Content): readonly Content[] {
  return items.flatMap((item, i) => (i === 0 ? [item] : [between, item]));
}

function markupOf(value: Content): string {
  if (value === undefined || value === false) return "";
  if (typeof value === "string") return escaped(value);
  if (typeof value === "number") return String(value);
  if ("markup" in value) return value.markup;
  return value.map(markupOf).join("");
}

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** XML 1.0 section 2.2: no document may hold these, escaped or not; nor what {@link legible} shows. */
const unprintable = /[\ufffe\uffff]/g;

function escaped(text: string): string {
  return legible(text)
    .replace(unprintable, "\ufffd")
    .replace(/[&<>"']/g, (c) => entities[c] ?? "");
}
