/**
 * Checks the table of monthly means, `src/climate/normals.csv.gz`, against the columns that
 * `normals.yaml` beside it tells, and packs it for `src/climate/unpack-normals.ts`.
 */
// @ts-nocheck

import { gunzipSync, deflateSync, constants } from "node:zlib";

/** Whole numbers of each point; the id is not packed. */
const numbers = [
  { column: "lat", scale: 100 },
  { column: "lon", scale: 100 },
  { column: "elev_m" },
  { column: "shift10" },
  ...["tx", "tn", "r"].flatMap((name) => months(name).map((column) => ({ column }))),
];

/** Bytes of the csv file, columns as the data file tells them -> text of the module. */
export function packedNormals(csv, columns) {
  const [head, ...lines] = gunzipSync(csv).toString("utf8").trimEnd().split("\n");
  const rows = lines.map((line) => line.split(","));
  const names = columns.flatMap(({ name, months: isMonthly }) => (isMonthly ? months(name) : name));
  if (head !== names.join(",")) throw new Error(`normals.csv.gz: the columns are ${head}`);
  const column = (name) => rows.map((row) => row[names.indexOf(name)]);
  checkRows(rows, names, columns);

  const differences = numbers.map(({ column: name, scale = 1 }, i) => {
    const values = column(name).map((text) => Math.round(Number(text) * scale));
    const before = monthBefore(name, i);
    return differencesOf(before === undefined ? values : less(values, column(before).map(Number)));
  });
  const packed = deflateSync(
    Buffer.concat([...differences.map(inBytes), Buffer.from(column("name").join("\n"))]),
    { level: constants.Z_BEST_COMPRESSION },
  );
  return [
    "/** Made from normals.csv.gz. Do not edit. */",
    `export const points: number = ${rows.length};`,
    // Without its type the compiler would write the whole text into the types, too.
    `export const packed: string = ${JSON.stringify(packed.toString("base64"))};\n`,
  ].join("\n");
}

function months(name) {
  return Array.from({ length: 12 }, (_, i) => `${name}${i + 1}`);
}

function monthBefore(name, i) {
  const [, month] = /^[a-z]+(\d+)$/.exec(name) ?? [];
  return i > 3 && month !== "1" ? numbers[i - 1].column : undefined;
}

function checkRows(rows, names, columns) {
  const wrong = (row, what) => new Error(`normals.csv.gz: ${row.join(",")}: ${what}`);
  const ids = new Set();
  for (const row of rows) {
    if (row.length !== names.length) throw wrong(row, "a wrong number of columns");
    if (ids.has(row[0])) throw wrong(row, "an id that is there twice");
    ids.add(row[0]);
    for (const { name, months: isMonthly, least, most } of columns)
      for (const key of least === undefined ? [] : isMonthly ? months(name) : [name]) {
        const text = row[names.indexOf(key)];
        const isNumber = /^-?\d+(\.\d\d)?$/.test(text);
        if (!isNumber || Number(text) < least || Number(text) > most) throw wrong(row, key);
      }
    for (const [i, max] of months("tx").entries())
      if (Number(row[names.indexOf(max)]) < Number(row[names.indexOf(`tn${i + 1}`)]))
        throw wrong(row, `a maximum below the minimum, ${max}`);
  }
}

function less(values, others) {
  return values.map((value, i) => value - others[i]);
}

function differencesOf(values) {
  return values.map((value, i) => value - (values[i - 1] ?? 0));
}

/** Seven bits a byte, the lowest first, the eighth set where more follow; the sign is the lowest bit. */
function inBytes(values) {
  const bytes = [];
  for (const value of values) {
    let folded = value < 0 ? -2 * value - 1 : 2 * value;
    for (; folded > 127; folded >>>= 7) bytes.push((folded & 127) | 128);
    bytes.push(folded);
  }
  return Buffer.from(bytes);
}
