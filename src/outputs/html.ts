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
  const lines = unindented(parts);
  let markup = lines[0] ?? "";
  for (let i = 1; i < lines.length; i++) markup += markupOf(values[i - 1]) + (lines[i] ?? "");
  return { markup };
}

const known = new WeakMap<TemplateStringsArray, readonly string[]>();

/** A line break and the source's indent mean no more to a reader than a line break. */
function unindented(parts: TemplateStringsArray): readonly string[] {
  const lines = known.get(parts);
  if (lines !== undefined) return lines;
  const made = parts.map((part) => part.replace(/\s*\n\s*/g, "\n"));
  known.set(parts, made);
  return made;
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
const keptWhole = /<(svg|bdi|code)\b/y;
const inBackticks = /(?<![\w`])`([^`\s](?:[^`]*[^`\s])?)`(?![\w`])/g;

/** Keys and commands, which stand in backticks in prose, as code. */
export function withCode({ markup }: Html): Html {
  let text = "";
  let done = 0;
  let at = 0;
  // Nearly all of a page has none: what lies between is copied in one go.
  for (let tick = markup.indexOf("`"); tick !== -1; tick = markup.indexOf("`", at)) {
    while (at <= tick) {
      const tag = markup.indexOf("<", at);
      const end = tag === -1 ? markup.length : tag;
      if (tick < end) {
        const prose = markup.slice(at, end).replace(inBackticks, "<code>$1</code>");
        text += markup.slice(done, at) + prose;
        done = end;
      }
      at = tag === -1 ? end : endOfTag(markup, tag);
    }
  }
  return trusted(text + markup.slice(done));
}

/** Behind a tag, or behind the whole element that is kept. */
function endOfTag(markup: string, tag: number): number {
  keptWhole.lastIndex = tag;
  const name = keptWhole.exec(markup)?.[1];
  const closing = name === undefined ? -1 : markup.indexOf(`</${name}`, tag);
  return markup.indexOf(">", closing === -1 ? tag : closing) + 1 || markup.length;
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

/** Text in which nothing has to be escaped, as nearly all of ours is. */
const plain = /^[\t\n !#-%(-;=?-~]*$/;

function escaped(text: string): string {
  if (plain.test(text)) return text;
  return legible(text)
    .replace(unprintable, "\ufffd")
    .replace(/[&<>"']/g, (c) => entities[c] ?? "");
}
