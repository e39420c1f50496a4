/** What a terminal shows, as a document that a browser can take a picture of. */

// Select Graphic Rendition, ECMA-48 section 8.3.117: the parameters that the program writes.
const looks: Readonly<Record<string, string>> = {
  "1": "font-weight:700",
  "2": "opacity:.6",
  "4": "text-decoration:underline",
  "31": "color:#ff8a80",
  "32": "color:#a5d6a7",
  "33": "color:#ffd54f",
  "36": "color:#80deea",
};

/** @param columns of the terminal */
export function terminalPage(text: string, columns: number): string {
  const escaped = text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  const marked = escaped.split("\u001b[").map((part, i) => {
    if (i === 0) return part;
    const end = part.indexOf("m");
    const look = looks[part.slice(0, end)];
    const rest = part.slice(end + 1);
    return look === undefined ? `</span>${rest}` : `<span style="${look}">${rest}`;
  });
  return `<!doctype html><meta charset="utf-8"><style>body{margin:0;background:#1c1f1a;color:#e8e6dc}pre{margin:12px;width:${columns}ch;font:14px/1.35 "DejaVu Sans Mono",monospace}</style><pre>${marked.join("")}</pre>`;
}
