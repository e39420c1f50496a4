/** The frame of every page: one file that asks nothing of any network. */
// @ts-nocheck

import { type Content, html, type Html, trusted, withCode } from "./html.js";

export interface DocumentParts {
  readonly title: string;
  readonly style: string;
  readonly script?: string;
  readonly body: Content;
  /** More of the head. */
  readonly head?: Html;
  /** A page with forms tells its own server where they come from, as their origin is asked for. */
  readonly hasForms?: true;
  /** Goes on the root element, for the script. */
  readonly data?: Readonly<Record<string, string>>;
}

export function documentOf(parts: DocumentParts): string {
  const { title, style, script, body, head, hasForms = false, data = {} } = parts;
  const attributes = Object.entries(data).map(
    ([key, value]): Html => html` data-${key}="${value}"`,
  );
  // The empty icon keeps browsers from asking for one.
  return `${html`<!doctype html>
    <html lang="en" ${attributes}>
      <head>
        <meta charset="utf-8" />
        <title>${title}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="referrer" content="${hasForms ? "same-origin" : "no-referrer"}" />
        <meta name="robots" content="noindex" />
        <link rel="icon" href="data:," />
        ${head && html` ${head}`} ${inline("style", style)}
      </head>
      <body>
        ${withCode(html`${body}`)} ${script !== undefined && inline("script", script)}
      </body>
    </html> `.markup.trimEnd()}\n`;
}

/** A part of a page under its heading. */
export function section(id: string, heading: string, body: Content): Html {
  return html`<section id="${id}" aria-labelledby="${id}-head">
    <h2 id="${id}-head">${heading}</h2>
    ${body}
  </section>`;
}

/** To the letter, since policies name such blocks by their hash. */
function inline(tag: "style" | "script", text: string): Html {
  return trusted(`<${tag}>${text}</${tag}>`);
}
