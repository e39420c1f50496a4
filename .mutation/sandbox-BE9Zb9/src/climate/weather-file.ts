/** Text of a weather file -> what it tells of each day, or every problem with its place. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Result } from "../problem.js";
import { type CsvRow, csvRows } from "./csv.js";
import { cellOf, dayOf, isWhole, unitWords, valueOf } from "./weather-cells.js";
import { type Column, type Columns, columnsOf, headerOf } from "./weather-header.js";
import { problemList, type Report, type WeatherText } from "./weather-problems.js";

/** Temperatures are both told or neither, in degC. */
export interface WeatherRow {
  readonly day: Day;
  readonly temperatures: { readonly minC: number; readonly maxC: number } | undefined;
  readonly rainMm: number | undefined;
  /** Where in the text it stands. */
  readonly offset: number;
}

/**
 * Each day at most once, in the order of the file.
 *
 * @param since earlier rows are passed over unread: an archive may go back a century, with gaps
 */
export function readWeather(source: WeatherText, since: Day): Result<WeatherRow[]> {
  const { report, problems } = problemList(source);
  const rows = rowsOf(source.text, since, report);
  const found = problems();
  return found.length > 0 ? { ok: false, problems: found } : { ok: true, value: rows };
}

function rowsOf(text: string, since: Day, report: Report): WeatherRow[] {
  const header = headerOf(text, report);
  const columns = header && columnsOf(header, report);
  if (header === undefined || columns === undefined) return [];
  const rows = new Map<Day, WeatherRow>();
  let station: string | undefined;
  for (const row of csvRows(text, header.separator, header.end)) {
    if (!isWhole(row, header, report)) continue;
    const day = dayOf(row, columns, since, report);
    if (day === undefined) continue;
    const own = columns.station === undefined ? "" : row.cells[columns.station];
    station ??= own;
    if (own !== station) {
      report(
        "several-stations",
        row.offsets[columns.station ?? 0] ?? 0,
        `the file has weather of more than one station: \`${station ?? ""}\` and \`${own ?? ""}\``,
        "keep the rows of one station, the nearest to the garden, and remove the others",
      );
      break;
    }
    if (rows.has(day)) {
      const place = row.offsets[columns.date[0]] ?? 0;
      report("day-twice", place, `${day} is there twice`, "keep one of its rows");
      continue;
    }
    const min = valueOf(row, columns.min, header, report);
    const max = valueOf(row, columns.max, header, report);
    const rainMm = columns.rain && valueOf(row, columns.rain, header, report);
    if (min !== undefined && max !== undefined && max < min) maxBelowMin(row, columns, report);
    const isBoth = min !== undefined && max !== undefined;
    const temperatures = isBoth ? { minC: min, maxC: max } : undefined;
    rows.set(day, { day, temperatures, rainMm, offset: row.offsets[0] ?? 0 });
  }
  return [...rows.values()];
}

function maxBelowMin(row: CsvRow, { min, max }: Columns, report: Report): void {
  const isMixed = min.unit !== max.unit;
  const told = ({ index, unit }: Column): string =>
    `\`${cellOf(row, index)}\`${isMixed ? ` ${unitWords[unit]}` : ""}`;
  report(
    "max-below-min",
    row.offsets[max.index] ?? 0,
    `the maximum, ${told(max)}, is below the minimum, ${told(min)}`,
    isMixed
      ? `call the columns \`${min.name}\` and \`${max.name}\` by the units they are in, or mend the row`
      : "mend the row, or empty the two cells",
  );
}
