import { encode } from "uqr";
import { escapeHtml } from "./plain-page.js";

/** Light modules around the code, as ISO/IEC 18004 asks for (from memory). */
const quietZone = 4;

/** Rows of modules, true for dark, with the quiet zone. Correction level M: 15 % may be lost. */
export function qrModules(text: string): readonly (readonly boolean[])[] {
  return encode(text, { ecc: "M", border: quietZone }).data;
}

/** An image of its own colours, so that it is dark on light in a dark page too. */
export function qrSvg(text: string, title: string): string {
  const modules = qrModules(text);
  const size = modules.length;
  const dark = modules.flatMap((row, y) => runs(row).map(([x, n]) => `M${x} ${y}h${n}v1h-${n}z`));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" role="img" aria-label="${escapeHtml(title)}" shape-rendering="crispEdges">`,
    `<rect width="${size}" height="${size}" fill="#fff"/>`,
    `<path fill="#000" d="${dark.join("")}"/></svg>`,
  ].join("");
}

/**
 * Two rows of modules a line. Light modules are the printed ones, which is right on a dark terminal;
 * with `color` it is white on black whatever the terminal's own colours are.
 */
export function qrTerminal(text: string, color: boolean): string {
  const modules = qrModules(text);
  const lines: string[] = [];
  for (let y = 0; y < modules.length; y += 2) {
    const [top = [], bottom = []] = [modules[y], modules[y + 1]];
    const line = top.map((dark, x) => halves(dark, bottom[x] ?? true)).join("");
    lines.push(color ? `\x1b[97;40m${line}\x1b[0m` : line);
  }
  return `${lines.join("\n")}\n`;
}

function halves(topDark: boolean, bottomDark: boolean): string {
  if (topDark) return bottomDark ? " " : "▄";
  return bottomDark ? "▀" : "█";
}

/** Start and length of each run of dark modules. */
function runs(row: readonly boolean[]): [number, number][] {
  const found: [number, number][] = [];
  row.forEach((dark, x) => {
    const last = found.at(-1);
    if (!dark) return;
    if (last !== undefined && last[0] + last[1] === x) last[1]++;
    else found.push([x, 1]);
  });
  return found;
}
