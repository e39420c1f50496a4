// @ts-nocheck
import jsqrModule from "jsqr";
import { describe, expect, test } from "vitest";
import { qrModules, qrSvg, qrTerminal } from "../../src/serve/qr.js";

// A CommonJS module whose types say otherwise.
const jsQR = jsqrModule as unknown as typeof jsqrModule.default;
const address = `http://192.168.178.101:8080/${"A".repeat(32)}/weir-cottage`;

/** What jsQR, a reader by others, sees in the modules drawn `scale` pixels wide. */
function readBack(dark: readonly (readonly boolean[])[], scale = 4): string | undefined {
  const width = (dark[0]?.length ?? 0) * scale;
  const height = dark.length * scale;
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (dark[Math.floor(y / scale)]?.[Math.floor(x / scale)])
        pixels.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
  return jsQR(pixels, width, height, { inversionAttempts: "dontInvert" })?.data;
}

/** Dark modules of an SVG path of `M x y h n v1 h-n z` boxes. */
function drawn(svg: string): boolean[][] {
  const size = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
  const modules = Array.from({ length: size }, () => Array.from({ length: size }, () => false));
  for (const [, x, y, n] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let i = 0; i < Number(n); i++) (modules[Number(y)] as boolean[])[Number(x) + i] = true;
  return modules;
}

/** Dark modules of half-block lines, light ones being printed. */
function printed(text: string): boolean[][] {
  return text
    .trimEnd()
    .split("\n")
    .flatMap((line) => [
      Array.from(line, (c) => c === " " || c === "▄"),
      Array.from(line, (c) => c === " " || c === "▀"),
    ]);
}

describe("the QR code of an address", () => {
  test("is read back by another program, from modules, SVG and terminal alike", () => {
    expect(readBack(qrModules(address))).toBe(address);
    expect(readBack(drawn(qrSvg(address, "code")))).toBe(address);
    expect(readBack(printed(qrTerminal(address, false)))).toBe(address);
  });

  test("has four light modules around it", () => {
    const modules = qrModules(address);
    const edge = modules.flatMap((row, y) =>
      row.filter((_, x) => Math.min(x, y, row.length - 1 - x, modules.length - 1 - y) < 4),
    );
    expect(edge).not.toContain(true);
  });

  test("has a name for those who do not see it, escaped", () => {
    expect(qrSvg("x", `"<b>`)).toContain('aria-label="&quot;&lt;b&gt;"');
  });

  test("is white on black in a terminal with colours, whatever its own are", () => {
    const lines = qrTerminal("x", true).trimEnd().split("\n");
    for (const line of lines) expect(line).toMatch(/^\x1b\[97;40m[ ▀▄█]+\x1b\[0m$/);
  });
});
