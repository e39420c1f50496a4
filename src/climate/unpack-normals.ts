import type { Column, Normals, NormalsAbout } from "./normals.js";

/**
 * Undoes what `scripts/pack-normals.js` has done to the table.
 *
 * @param bytes no longer deflated: for each column the low bytes of all points, then the high ones;
 *   behind the columns the names, a line each
 */
export function unpackNormals(bytes: Uint8Array, points: number, about: NormalsAbout): Normals {
  let at = 0;
  const column = (before?: Column): Column => {
    const values = new Int16Array(points);
    let sum = 0;
    for (let i = 0; i < points; i++) {
      const folded = (bytes[at + i] ?? 0) | ((bytes[at + points + i] ?? 0) << 8);
      sum += (folded >>> 1) ^ -(folded & 1);
      values[i] = sum + (before?.[i] ?? 0);
    }
    at += 2 * points;
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
    names: new TextDecoder().decode(bytes.subarray(at)).split("\n"),
    about,
  };
}
