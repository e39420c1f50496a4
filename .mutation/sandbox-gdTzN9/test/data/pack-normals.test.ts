// @ts-nocheck
import { inflateSync, gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { unpackNormals } from "../../src/climate/unpack-normals.js";
import { loadNormals } from "../../src/tables.js";

interface ColumnRow {
  readonly name: string;
  readonly months?: true;
  readonly least?: number;
  readonly most?: number;
}
const { packedNormals } = (await import(
  new URL("../../scripts/pack-normals.js", import.meta.url).href
)) as { packedNormals: (csv: Uint8Array, columns: readonly ColumnRow[]) => string };

const monthly = { months: true, least: -600, most: 3000 } as const;
const columns: ColumnRow[] = [
  { name: "id" },
  { name: "name" },
  { name: "lat", least: -90, most: 90 },
  { name: "lon", least: -180, most: 180 },
  { name: "elev_m", least: -430, most: 6000 },
  { name: "shift10", least: 0, most: 15 },
  { name: "tx", ...monthly },
  { name: "tn", ...monthly },
  { name: "r", ...monthly },
];
const head = columns
  .flatMap(({ name, months }) =>
    months ? Array.from({ length: 12 }, (_, i) => `${name}${i + 1}`) : [name],
  )
  .join(",");
const row = (id: string, at: string, max: number, min: number, rain: number): string =>
  [
    id,
    `Point ${id}`,
    at,
    ...[max, min, rain].flatMap((value) => Array<number>(12).fill(value)),
  ].join(",");
const west = row("1", "-90.00,-180.00,-224,0", -300, -528, 0);
const east = row("2", "90.00,179.99,5304,15", 460, 306, 1737);
const packed = (...rows: string[]): string =>
  packedNormals(gzipSync([head, ...rows, ""].join("\n")), columns);

test("the widest steps there can be come out as they went in", async () => {
  const [, base64 = ""] =
    /packed: string = "(.*)"/.exec(packed(west, east, west.replace("1", "3"))) ?? [];
  const bytes = inflateSync(Buffer.from(base64, "base64"));
  const table = unpackNormals(bytes, 3, (await loadNormals()).about);
  expect([...table.longitudes]).toEqual([-18000, 17999, -18000]);
  expect([...table.latitudes]).toEqual([-9000, 9000, -9000]);
  expect([...table.heightsM]).toEqual([-224, 5304, -224]);
  expect(table.maxima.map((month) => month[1])).toEqual(Array(12).fill(460));
  expect(table.rains.map((month) => [...month])).toEqual(Array(12).fill([0, 1737, 0]));
  expect(table.names).toEqual(["Point 1", "Point 2", "Point 1"]);
});

test.each([
  ["an id twice", [east, east], /there twice/],
  ["a maximum below the minimum", [row("1", "1.00,1.00,5,0", 10, 11, 5)], /below the minimum, tx1/],
  ["a latitude beyond the pole", [row("1", "90.01,1.00,5,0", 10, 1, 5)], /lat/],
  ["a warming of another unit", [row("1", "9.00,1.00,5,16", 10, 1, 5)], /shift10/],
  ["no number", [row("1", "9.00,1.00,high,1", 10, 1, 5)], /elev_m/],
  ["a month too few", [east.slice(0, east.lastIndexOf(","))], /number of columns/],
])("a table with %s is refused", (_, rows, message) => {
  expect(() => packed(...rows)).toThrow(message);
});

test("a table of other columns is refused", () => {
  expect(() => packedNormals(gzipSync(`${head},sd\n${east}\n`), columns)).toThrow(
    /the columns are/,
  );
});
