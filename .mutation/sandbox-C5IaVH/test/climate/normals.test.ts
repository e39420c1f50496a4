// @ts-nocheck
import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Column, nearestPoint, type Normals } from "../../src/climate/normals.js";
import { loadNormals } from "../../src/tables.js";

const normals = await loadNormals();

const [head = "", ...lines] = gunzipSync(
  readFileSync(new URL("../../src/climate/normals.csv.gz", import.meta.url)),
)
  .toString("utf8")
  .trimEnd()
  .split("\n");
const columnNames = head.split(",");
const rows = lines.map((line) => line.split(","));

function inFile(name: string, scale = 1): number[] {
  const at = columnNames.indexOf(name);
  return rows.map((row) => Math.round(Number(row[at]) * scale));
}

describe("the table as it is unpacked", () => {
  test.each<[name: string, column: Column, scale: number]>([
    ["lat", normals.latitudes, 100],
    ["lon", normals.longitudes, 100],
    ["elev_m", normals.heightsM, 1],
    ["shift10", normals.warmings, 1],
    ...[normals.maxima, normals.minima, normals.rains].flatMap((months, kind) =>
      months.map((column, i): [string, Column, number] => [
        `${["tx", "tn", "r"][kind] ?? ""}${i + 1}`,
        column,
        1,
      ]),
    ),
  ])("has every value of the column %s of its file", (name, column, scale) => {
    expect([...column]).toEqual(inFile(name, scale));
  });

  test("has the name of each of 9,832 points", () => {
    expect(normals.names).toEqual(rows.map((row) => row[columnNames.indexOf("name")]));
    expect(normals.names).toHaveLength(9832);
  });

  test("is read once", async () => {
    expect(await loadNormals()).toBe(normals);
  });
});

/** Straight through the earth: another way to the same order, without trigonometry of differences. */
function bruteForce({ latitudes, longitudes }: Normals, at: readonly [number, number]): number {
  const here = onSphere(...at);
  let most = -Infinity;
  for (let i = 0; i < latitudes.length; i++) {
    const there = onSphere((latitudes[i] ?? 0) / 100, (longitudes[i] ?? 0) / 100);
    const cosine = here[0] * there[0] + here[1] * there[1] + here[2] * there[2];
    most = Math.max(most, cosine);
  }
  return 6371.0088 * Math.acos(Math.min(1, most));
}

function onSphere(latitudeDeg: number, longitudeDeg: number): [number, number, number] {
  const [latitude, longitude] = [(latitudeDeg * Math.PI) / 180, (longitudeDeg * Math.PI) / 180];
  const out = Math.cos(latitude);
  return [out * Math.cos(longitude), out * Math.sin(longitude), Math.sin(latitude)];
}

describe("the nearest point", () => {
  const named = (latitudeDeg: number, longitudeDeg: number): string | undefined =>
    normals.names[nearestPoint(normals, latitudeDeg, longitudeDeg).index];

  test("is as near as any, everywhere on earth", () => {
    const latitude = fc.double({ min: -90, max: 90, noNaN: true });
    const longitude = fc.oneof(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 179, max: 180, noNaN: true }),
      fc.double({ min: -180, max: -179, noNaN: true }),
    );
    fc.assert(
      fc.property(latitude, longitude, (...at) => {
        const { distanceKm } = nearestPoint(normals, ...at);
        // The cosine of a small angle loses digits: 0.1 km is far less than the points are apart.
        expect(Math.abs(distanceKm - bruteForce(normals, at))).toBeLessThan(0.1);
      }),
      { numRuns: 200 },
    );
  });

  test("is each point itself where one stands on it", () => {
    for (let i = 0; i < normals.names.length; i += 97) {
      const at = [(normals.latitudes[i] ?? 0) / 100, (normals.longitudes[i] ?? 0) / 100] as const;
      expect(nearestPoint(normals, ...at)).toEqual({ index: i, distanceKm: 0 });
    }
  });

  test("lies across the date line where that is nearer", () => {
    const east = nearestPoint(normals, -16.7, 179.99);
    const west = nearestPoint(normals, -16.7, -179.99);
    expect(east.index).toBe(west.index);
    expect(Math.abs(east.distanceKm - west.distanceKm)).toBeLessThan(3);
  });

  test("is the same at a pole whatever the longitude", () => {
    for (const pole of [-90, 90]) expect(named(pole, -120)).toBe(named(pole, 60));
  });

  test("of a garden in Dublin is Dublin's, 13 km away", () => {
    const { index, distanceKm } = nearestPoint(normals, 53.3, -6.3);
    expect(normals.names[index]).toBe("Dublin");
    // 0.12 degrees north and 0.03 east: 13.34 km and 2.0 km.
    expect(distanceKm).toBeCloseTo(13.49, 1);
  });

  test("of a garden of known height is none on the summit above it", () => {
    // 1,655 m high, at the foot of the Rocky Mountains.
    const boulder = [40.01, -105.27] as const;
    const nameOf = (elevationM?: number): [string | undefined, number | undefined] => {
      const { index } = nearestPoint(normals, ...boulder, elevationM);
      return [normals.names[index], normals.heightsM[index]];
    };
    expect(nameOf()).toEqual(["Boulder 14 W", 2996]);
    expect(nameOf(2996)).toEqual(["Boulder 14 W", 2996]);
    expect(Math.abs((nameOf(1655)[1] ?? 0) - 1655)).toBeLessThan(200);
  });
});
