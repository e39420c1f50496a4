/** The header of a weather file: its form, and which column holds what. */
// @ts-nocheck

import { given } from "../values.js";
import { type CsvRow, csvRows, type Separator } from "./csv.js";
import {
  type Element,
  formOf,
  plainName,
  type WeatherForm,
  type WeatherUnit,
} from "./weather-forms.js";
import { type Report, shortened } from "./weather-problems.js";

/** A header stands below at most so many lines. */
const mostPreamble = 200;

const plainForm =
  "the first line is to be `date,tmin_c,tmax_c,rain_mm` (or tmin_f, tmax_f, rain_in), then one line for each day, like 2027-05-01,6.5,17.2,0.4";

export interface Header extends CsvRow {
  readonly separator: Separator;
  readonly form: WeatherForm;
  /** Where the rows begin. */
  readonly end: number;
}

export function headerOf(text: string, report: Report): Header | undefined {
  const begin = text.startsWith("\ufeff") ? 1 : 0;
  let at = begin;
  for (let line = 0; line < mostPreamble && at < text.length; line++) {
    const next = text.indexOf("\n", at) + 1 || text.length;
    for (const separator of [",", ";"] as const) {
      // The header itself may be a comment.
      const start = text[at] === "#" ? at + 1 : at;
      const row = [...csvRows(text.slice(0, next), separator, start)][0];
      const form = row && formOf(row.cells);
      if (row === undefined || form === undefined) continue;
      if (form !== "no-unit") return { ...row, separator, form, end: next };
      report(
        "no-unit",
        row.offsets[row.cells.findIndex((name) => /^t(?:min|max)$/i.test(name))] ?? at,
        "nothing in the file tells the unit of its temperatures: the same columns come in tenths of degC, in degC and in degF",
        "take the file with the *_ATTRIBUTES columns, which is in tenths, or call the columns date, tmin_c, tmax_c and rain_mm, or tmin_f, tmax_f and rain_in",
      );
      return undefined;
    }
    at = next;
  }
  const [first] = csvRows(text, ",", begin);
  const words = first?.cells.join(",") ?? "";
  const message =
    first === undefined
      ? "the file is empty"
      : /^"?\d{4}-?\d\d-?\d\d/.test(words)
        ? "the file begins with a day: its header is missing"
        : `no header of a known form is in the file; it begins with \`${shortened(words)}\``;
  report("weather-header", first?.offsets[0] ?? begin, message, plainForm);
  return undefined;
}

export interface Column {
  readonly index: number;
  readonly element: Element;
  readonly unit: WeatherUnit;
  readonly name: string;
  /** Of the column that tells which check a value has failed; -1 for none. */
  readonly checkIndex: number;
}

export interface Columns {
  readonly date: readonly [number, ...number[]];
  readonly min: Column;
  readonly max: Column;
  readonly rain?: Column;
  readonly station?: number;
}

export function columnsOf({ cells, offsets, form }: Header, report: Report): Columns | undefined {
  const names = cells.map(plainName);
  const found: Partial<Record<Element, Column>> = {};
  for (const [index, plain] of names.entries()) {
    const [element, unit] = Object.hasOwn(form.columns, plain) ? (form.columns[plain] ?? []) : [];
    if (element === undefined || unit === undefined) continue;
    const [name, before] = [cells[index] ?? "", found[element]];
    const checkIndex = form.checks === undefined ? -1 : names.indexOf(plain + form.checks);
    found[element] ??= { index, element, unit, name, checkIndex };
    if (before === undefined) continue;
    const message = `the columns \`${before.name}\` and \`${name}\` tell the same`;
    report("column-twice", offsets[index] ?? 0, message, "keep one of the two");
    return undefined;
  }
  const { min, max, rain } = found;
  const [year, ...rest] = form.date.map((name) => names.indexOf(name));
  const station = form.station === undefined ? -1 : names.indexOf(form.station);
  if (min !== undefined && max !== undefined && year !== undefined)
    return {
      ...{ date: [year, ...rest], min, max },
      ...given({ rain, station: station === -1 ? undefined : station }),
    };
  const lacks = [min ?? "minimum", max ?? "maximum"].filter((one) => typeof one === "string");
  report(
    "no-temperature",
    offsets[0] ?? 0,
    `${form.name} has no column of daily ${lacks.join(" and ")} temperatures here, and a day's warmth needs both`,
    "join the files of minimum, maximum and rain by their days, side by side in one file with the header `date,tmin_c,tmax_c,rain_mm`",
  );
  return undefined;
}
