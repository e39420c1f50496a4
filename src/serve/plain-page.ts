import { legible } from "../legible.js";
import { type Problem, problemLines } from "../problem.js";
import { byText } from "../values.js";

export interface IndexEntry {
  readonly title: string;
  /** As in a link on the index page. */
  readonly page: string;
  readonly calendar: string;
  readonly hasProblems: boolean;
  /** What it asks for, and when; absent where nothing is known of it. */
  readonly asks?: string;
}

const style =
  ":root{color-scheme:light dark}body{font:1.1rem/1.5 system-ui,sans-serif;max-width:45rem;margin:2rem auto;padding:0 1rem}ul{list-style:none;padding:0}li{margin:1rem 0}li p{margin:0}li a{display:inline-flex;align-items:center;min-height:48px}code{overflow-wrap:anywhere}";

/** All gardens, by title. */
export function indexPage(entries: readonly IndexEntry[]): string {
  const items = [...entries]
    .sort((a, b) => a.title.localeCompare(b.title, "en") || byText(a.page, b.page))
    .map((entry) => {
      const name = `<a href="${escapeHtml(entry.page)}"><bdi>${escapeHtml(entry.title)}</bdi></a>`;
      const calendar = `<a href="${escapeHtml(entry.calendar)}">calendar</a>`;
      const trouble = entry.hasProblems ? ", the garden file has a problem" : "";
      const asks = entry.asks === undefined ? "" : `<p>${escapeHtml(entry.asks)}</p>`;
      return `<li>${name}, ${calendar}${trouble}${asks}</li>`;
    });
  const list = items.length > 0 ? `<ul>\n${items.join("\n")}\n</ul>` : "<p>There are none yet.</p>";
  return plainPage("Gardens", list);
}

/**
 * For a garden that has never been in order, so that there is no plan to show.
 *
 * @param filePage where the file can be mended
 */
export function problemPage(
  title: string,
  problems: readonly Problem[],
  filePage?: string,
): string {
  const items = problemLines(problems).map((line) => `<li><code>${escapeHtml(line)}</code></li>`);
  const link =
    filePage === undefined ? "" : `\n<p><a href="${escapeHtml(filePage)}">Mend the file</a></p>`;
  return plainPage(
    title,
    `<p>There is no plan yet: the garden file has to be mended first.</p>\n<ul>\n${items.join("\n")}\n</ul>${link}`,
  );
}

export function escapeHtml(text: string): string {
  return legible(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

function plainPage(title: string, body: string): string {
  const name = escapeHtml(title);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${name}</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
<main>
<h1><bdi>${name}</bdi></h1>
${body}
</main>
</body>
</html>
`;
}
