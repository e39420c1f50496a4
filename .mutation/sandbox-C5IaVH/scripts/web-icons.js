/** The page's icon, drawn here: a feeding can with a drop, once as SVG and once as PNG. */
// @ts-nocheck

import { crc32, deflateSync } from "node:zlib";

const ground = "#1c5c43";
const ink = "#f6f3ea";
const water = "#7cc0ec";

/** On a square of 64 units, from the ground up; within the middle four fifths, so that no mask cuts it. */
const shapes = [
  { color: ground, corners: [0, 0, 64, 0, 64, 64, 0, 64] },
  // Body, spout, rose, handle, and the hole of the handle.
  { color: ink, corners: [24, 30, 46, 30, 48, 51, 22, 51] },
  { color: ink, corners: [23, 46, 22, 39, 15, 25, 12, 26] },
  { color: ink, corners: [8, 25, 17, 20, 19, 23, 10, 28] },
  {
    color: ink,
    corners: [30, 30, 33, 20, 49, 20, 54, 41, 47, 43, 46, 38, 49, 37, 46, 24, 36, 24, 34, 30],
  },
  { color: water, corners: [35, 34, 39.5, 41, 38, 46, 35, 47.5, 32, 46, 30.5, 41] },
];

export const iconSvg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64">${shapes
  .map(({ color, corners }) => `<polygon fill="${color}" points="${corners.join(" ")}"/>`)
  .join("")}</svg>\n`;

/** PNG (W3C, third edition): true colour, no filter; each pixel is the mean of 4 by 4 points. */
export function iconPng(size) {
  const fine = 4;
  const rows = Buffer.alloc(size * (1 + 3 * size));
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      const sum = [0, 0, 0];
      for (let dy = 0; dy < fine; dy++)
        for (let dx = 0; dx < fine; dx++) {
          const at = (whole, part) => ((whole + (part + 0.5) / fine) * 64) / size;
          const color = colorAt(at(x, dx), at(y, dy));
          for (let i = 0; i < 3; i++) sum[i] += color[i];
        }
      for (let i = 0; i < 3; i++)
        rows[y * (1 + 3 * size) + 1 + 3 * x + i] = Math.round(sum[i] / fine ** 2);
    }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk("IHDR", head),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function colorAt(x, y) {
  const { color } = shapes.findLast(({ corners }) => isInside(corners, x, y));
  return [1, 3, 5].map((i) => Number.parseInt(color.slice(i, i + 2), 16));
}

/** Even-odd rule. */
function isInside(corners, x, y) {
  let inside = false;
  for (let i = 0, j = corners.length - 2; i < corners.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [corners[i], corners[i + 1], corners[j], corners[j + 1]];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  whole.set(body, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}
