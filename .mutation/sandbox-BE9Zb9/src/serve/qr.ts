// @ts-nocheck
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
  const dark = modules.flatMap((row, y) =>
    [...row.map(Number).join("").matchAll(/1+/g)].map(
      ({ 0: { length }, index }) => `M${index} ${y}h${length}v1h-${length}z`,
    ),
  );
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
