/** Cells of a weather file -> days, degC and mm. */
// @ts-nocheck

import { type Day, parseDay } from "../dates.js";
import type { CsvRow } from "./csv.js";
import { inBaseUnit } from "./units.js";
import type { WeatherUnit } from "./weather-forms.js";
import type { Column, Columns, Header } from "./weather-header.js";
import { type Report, shortened } from "./weather-problems.js";

/** Whether a row has no more cells than the header, and its quotes are in order. */
export function isWhole(row: CsvRow, { cells: names, separator }: Header, report: Report): boolean {
  const { cells, offsets, strayQuote } = row;
  if (strayQuote !== undefined)
    report(
      "stray-quote",
      strayQuote,
      "a quoted cell isn't closed where it ends",
      'close it with ", and write a quote inside it twice',
    );
  const extra = cells.findIndex((cell, i) => i >= names.length && cell !== "");
  if (extra === -1 || strayQuote !== undefined) return strayQuote === undefined;
  report(
    "too-many-cells",
    offsets[extra] ?? 0,
    `the row has more cells than the header has names: \`${shortened(cells[extra] ?? "")}\` stands below none`,
    separator === ","
      ? "write decimals with a point, like 17.2, or put semicolons between the cells"
      : "remove it, or name its column",
  );
  return false;
}

/** Undefined, too, where it lies before the days that are wanted. */
export function dayOf(row: CsvRow, { date }: Columns, since: Day, report: Report): Day | undefined {
  const cells = date.map((index) => cellOf(row, index));
  const parts =
    cells.length === 1 ? /^(\d{4})-?(\d\d)-?(\d\d)$/.exec(cells[0] ?? "") : ["", ...cells];
  const text = parts && [1, 2, 3].map((i) => (parts[i] ?? "").padStart(2, "0")).join("-");
  if (text !== null && /^\d{4}-\d\d-\d\d$/.test(text) && text < since) return undefined;
  const day = text === null ? undefined : parseDay(text);
  if (day === undefined)
    report(
      "date",
      row.offsets[date[0]] ?? row.offsets[0] ?? 0,
      `\`${shortened(cells.join("-"))}\` is no date`,
      "write it as year-month-day, like 2027-05-01",
    );
  return day;
}

const farthestC = 60;
const mostRainMm = 700;

/** In degC or mm; undefined where it is missing, has failed a check of the service, or is wrong. */
export function valueOf(
  row: CsvRow,
  { index, element, unit, name, checkIndex }: Column,
  { separator, form }: Header,
  report: Report,
): number | undefined {
  const text = cellOf(row, index);
  const [, failedCheck = ""] = cellOf(row, checkIndex).split(",");
  if (text === "" || failedCheck.trim() !== "") return undefined;
  const place = row.offsets[index] ?? 0;
  // Where commas part no cells they are those of decimals.
  const plain = separator === ";" ? text.replace(",", ".") : text;
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(plain)) {
    const mend = "write a number, or leave the cell empty";
    report("number", place, `\`${shortened(text)}\` in the column \`${name}\` is no number`, mend);
    return undefined;
  }
  const written = Number(plain);
  if (written === form.missing) return undefined;
  const isRain = element === "rain";
  if (isRain && written === form.trace) return 0;
  const value = inBaseUnit[unit](written);
  const isRight = isRain ? value >= 0 && value <= mostRainMm : Math.abs(value) <= farthestC;
  if (isRight) return value;
  const range = isRain ? `0 to ${mostRainMm} mm` : `-${farthestC} to ${farthestC} degC`;
  report(
    "absurd-weather",
    place,
    `\`${text}\` in the column \`${name}\`, which is in ${unitWords[unit]}, lies outside ${range}`,
    "mend it, empty the cell, or name the column by its unit",
  );
  return undefined;
}

export const unitWords: Readonly<Record<WeatherUnit, string>> = {
  C: "degC",
  "0.1 C": "tenths of degC",
  F: "degF",
  mm: "mm",
  "0.1 mm": "tenths of mm",
  in: "inches",
};

export function cellOf({ cells }: CsvRow, index: number): string {
  return cells[index] ?? "";
}
