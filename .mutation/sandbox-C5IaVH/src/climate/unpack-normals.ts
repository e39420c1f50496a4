// @ts-nocheck
import type { Column, Normals, NormalsAbout } from "./normals.js";

/**
 * Undoes what `scripts/pack-normals.js` has done to the table.
 *
 * @param bytes no longer deflated: the columns, each number as the difference to the one before (of a
 *   month, to the month before), in seven bits a byte; behind them the names, a line each
 */
export function unpackNormals(bytes: Uint8Array, points: number, about: NormalsAbout): Normals {
  const zeros = new Int16Array(points);
  let end = 0;
  const column = (before: Column = zeros): Column => {
    const values = new Int16Array(points);
    // A variable of its own: one that is shared with the outer function is read and written slower.
    let at = end;
    let sum = 0;
    for (let i = 0; i < points; i++) {
      let byte = bytes[at++] ?? 0;
      let folded = byte & 127;
      for (let shift = 7; byte > 127; shift += 7) {
        byte = bytes[at++] ?? 0;
        folded |= (byte & 127) << shift;
      }
      sum += (folded >>> 1) ^ -(folded & 1);
      values[i] = sum + (before[i] as number);
    }
    end = at;
    return values;
  };
  const months = (): Column[] => {
    const all: Column[] = [];
    for (let month = 0; month < 12; month++) all.push(column(all.at(-1)));
    return all;
  };
  return {
    latitudes: column(),
    longitudes: column(),
    heightsM: column(),
    warmings: column(),
    maxima: months(),
    minima: months(),
    rains: months(),
    names: new TextDecoder().decode(bytes.subarray(end)).split("\n"),
    about,
  };
}
