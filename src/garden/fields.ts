/**
 * Reading single fields of a garden file that may still be wrong. What the schema has refused
 * already (a number where text belongs) is passed over in silence, so no slip is told twice.
 */
import { type Day, type DaySpan, parseDay } from "../dates.js";
import type { FilePath, Finding } from "../problem.js";
import { absurdSize, type Bounds } from "./bounds.js";
import {
  type Parsed,
  parsePercent,
  parseQuantity,
  parseRate,
  parseWater,
  type UnitContext,
  type WaterAmount,
} from "./quantity.js";
import type { UnitKind } from "./units.js";

/** An object of the file with known keys and unknown values. */
export type Loose<T> = Readonly<Partial<Record<keyof T, unknown>>>;

export const rateBounds: Bounds = { least: 0.01, most: 100, words: "0.01 to 100 mL per L" };
const waterBounds: Bounds = { least: 0.001, most: 10_000, words: "1 mL to 10,000 L" };
const minutesBounds: Bounds = { least: 0, most: 366, words: "0 to 366 days" };

export interface Fields {
  readonly report: (finding: Finding) => void;
  readonly day: (value: unknown, path: FilePath) => Day | undefined;
  readonly span: (value: unknown, path: FilePath) => DaySpan | undefined;
  readonly quantity: (
    value: unknown,
    path: FilePath,
    kind: UnitKind,
    bounds: Bounds,
  ) => number | undefined;
  readonly rate: (value: unknown, path: FilePath) => number | undefined;
  readonly water: (value: unknown, path: FilePath) => WaterAmount | undefined;
  readonly share: (value: unknown, path: FilePath, bounds: Bounds) => number | undefined;
  /** `18:30` -> minutes after midnight. */
  readonly clock: (value: unknown, path: FilePath) => number | undefined;
  /** Days, or hours and minutes, in minutes. */
  readonly minutes: (value: unknown, path: FilePath) => number | undefined;
}

export function fieldReaders(context: UnitContext, report: (finding: Finding) => void): Fields {
  const day: Fields["day"] = (value, path) => {
    if (typeof value !== "string") return undefined;
    const parsed = parseDay(value);
    if (parsed === undefined)
      report({ code: "date", path, message: `\`${value}\` is no date`, mend: dateMend(value) });
    return parsed;
  };

  function accept<T>(parsed: Parsed<T>, path: FilePath): T | undefined {
    if (parsed.ok) return parsed.value;
    report({ code: "quantity", path, message: parsed.message, mend: parsed.mend });
    return undefined;
  }

  function inBounds(amount: number | undefined, text: string, path: FilePath, bounds: Bounds) {
    const absurd = amount === undefined ? undefined : absurdSize(text, amount, bounds);
    if (absurd === undefined) return amount;
    report({ code: "absurd-size", path, ...absurd });
    return undefined;
  }

  return {
    report,
    day,
    span(value, path) {
      const raw = record<DaySpan>(value);
      const from = day(raw.from, [...path, "from"]);
      const to = day(raw.to, [...path, "to"]);
      if (from === undefined || to === undefined) return undefined;
      if (to >= from) return { from, to };
      report({
        code: "ends-before-begin",
        path: [...path, "to"],
        message: `the ${path.includes("away") ? "time away" : "season"} ends on ${to}, before it begins on ${from}`,
        mend: "swap the two dates or mend the year",
      });
      return undefined;
    },
    quantity(value, path, kind, bounds) {
      if (typeof value !== "string") return undefined;
      const amount = accept(parseQuantity(value, kind, context), path);
      return inBounds(amount, value, path, bounds);
    },
    rate(value, path) {
      if (typeof value !== "string") return undefined;
      return inBounds(accept(parseRate(value, context), path), value, path, rateBounds);
    },
    water(value, path) {
      if (typeof value !== "string") return undefined;
      const water = accept(parseWater(value, context), path);
      return inBounds(water?.liters, value, path, waterBounds) === undefined ? undefined : water;
    },
    share(value, path, bounds) {
      if (typeof value !== "string") return undefined;
      return inBounds(accept(parsePercent(value), path), value, path, bounds);
    },
    clock(value, path) {
      if (typeof value !== "string") return undefined;
      const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(value);
      if (match) return Number(match[1]) * 60 + Number(match[2]);
      report({
        code: "clock",
        path,
        message: `\`${value}\` is no time of day`,
        mend: 'write it on the 24-hour clock in quotes, like "18:30"',
      });
      return undefined;
    },
    minutes(value, path) {
      if (typeof value !== "string") return undefined;
      const time = accept(parseQuantity(value, "time", context), path);
      const days = inBounds(time, value, path, minutesBounds);
      return days === undefined ? undefined : Math.round(days * 1440);
    },
  };
}

/** The value as an object; one without keys when it is something else. */
export function record<T>(value: unknown): Loose<T> {
  const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
  return (isRecord ? value : emptyRecord) as Loose<T>;
}

const emptyRecord: unknown = {};

/** The value as a list; an empty one when it is something else. */
export function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? (value as readonly unknown[]) : [];
}

/** The value, where it is one of the list. */
export function among<T>(known: readonly T[], value: unknown): T | undefined {
  return known.find((one) => one === value);
}

export function text(value: unknown): string | undefined {
  return typeof value === "string" ? value : undefined;
}

export function number(value: unknown): number | undefined {
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
}

function dateMend(value: string): string {
  const numbers = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(value);
  if (!numbers) return "write it as year-month-day, like 2027-05-20";
  const [year, month, dayOfMonth] = [numbers[1] ?? "", numbers[2] ?? "", numbers[3] ?? ""];
  const padded = `${year}-${month.padStart(2, "0")}-${dayOfMonth.padStart(2, "0")}`;
  return padded !== value && parseDay(padded) !== undefined
    ? `write ${padded}`
    : "check the month and the day: there is no such day in the calendar";
}
