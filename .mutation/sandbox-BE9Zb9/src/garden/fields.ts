/**
 * Reading single fields of a garden file that may still be wrong. What the schema has refused
 * already (a number where text belongs) is passed over in silence, so no slip is told twice.
 */
// @ts-nocheck

import { type Day, type DaySpan, parseDay, type Weekday, weekdays } from "../dates.js";
import type { FilePath, Finding } from "../problem.js";
import type { Mending } from "../suggest.js";
import { given } from "../values.js";
import {
  absurdSize,
  type Bounds,
  type Parsed,
  parsePercent,
  parseQuantity,
  parseRate,
  parseSpread,
  parseWater,
  parseWeeklyWater,
  rateBounds,
  type SpreadAmount,
  type UnitContext,
  type WaterAmount,
} from "./quantity.js";
import { parseTemperature, parseTemperatureDifference } from "./temperature.js";
import type { UnitKind } from "./units.js";

const waterBounds: Bounds = { least: 0.001, most: 10_000, words: "1 mL to 10,000 L" };
const spreadBounds: Bounds = { least: 1, most: 1_000_000, words: "1 g to 1 t" };
const minutesBounds: Bounds = { least: 0, most: 366, words: "0 to 366 days" };

interface ReadContext extends UnitContext {
  readonly report: (finding: Finding) => void;
}

type KeyOf<T> = keyof T & string;
type ItemOf<List> = NonNullable<List> extends readonly (infer Item)[] ? Item : never;

/**
 * One object of the file, shaped as `T` if it is right; what is wrong in a field is reported. The one
 * class beside errors: it reads, so that no caller carries a value and its place side by side.
 */
export class Entry<T> {
  /** Without keys when it is no object. */
  readonly raw: Readonly<Partial<Record<keyof T, unknown>>>;
  readonly path: FilePath;
  readonly #context: ReadContext;

  constructor(value: unknown, path: FilePath, context: ReadContext) {
    const isRecord = typeof value === "object" && value !== null && !Array.isArray(value);
    this.raw = (isRecord ? value : {}) as typeof this.raw;
    this.path = path;
    this.#context = context;
  }

  at(...keys: FilePath): FilePath {
    return [...this.path, ...keys];
  }

  report(finding: Finding): void {
    this.#context.report(finding);
  }

  /** An object in it. */
  inner<Key extends KeyOf<T>>(key: Key): Entry<NonNullable<T[Key]>> {
    return new Entry(this.raw[key], this.at(key), this.#context);
  }

  /** A list of objects in it. */
  entries<Key extends KeyOf<T>>(key: Key): Entry<ItemOf<T[Key]>>[] {
    return this.list(key).map((item, i) => new Entry(item, this.at(key, i), this.#context));
  }

  list(key: KeyOf<T>): readonly unknown[] {
    const value = this.raw[key];
    return Array.isArray(value) ? (value as readonly unknown[]) : [];
  }

  text(key: KeyOf<T>): string | undefined {
    const value = this.raw[key];
    return typeof value === "string" ? value : undefined;
  }

  /** In the order of the week, each once; `Thursday` is `thu`, and the schema lets no other word by. */
  weekdays(key: KeyOf<T>): Weekday[] {
    const named = this.list(key).map((word) => String(word).slice(0, 3).toLowerCase());
    return weekdays.filter((d) => named.includes(d));
  }

  number(key: KeyOf<T>): number | undefined {
    const value = this.raw[key];
    return typeof value === "number" && Number.isFinite(value) ? value : undefined;
  }

  /** The value, where it is one of the list. */
  among<One>(known: readonly One[], key: KeyOf<T>): One | undefined {
    return known.find((one) => one === this.raw[key]);
  }

  day(key: KeyOf<T>): Day | undefined {
    const text = this.text(key);
    const parsed = text === undefined ? undefined : parseDay(text);
    if (text !== undefined && parsed === undefined)
      this.report({
        code: "date",
        path: this.at(key),
        message: `\`${text}\` is no date`,
        ...dateMend(text),
      });
    return parsed;
  }

  /** Its `from` and `to`; neither where they are in the wrong order. */
  span(this: Entry<Record<keyof DaySpan, unknown>>, what: string): Partial<DaySpan> {
    const [from, to] = [this.day("from"), this.day("to")];
    if (from === undefined || to === undefined || to >= from) return given({ from, to });
    this.report({
      code: "ends-before-begin",
      path: this.at("to"),
      message: `the ${what} ends on ${to}, before it begins on ${from}`,
      mend: "swap the two dates or mend the year",
    });
    return {};
  }

  quantity(key: KeyOf<T>, kind: UnitKind, bounds: Bounds): number | undefined {
    return this.#parsed(key, bounds, (text) =>
      parseQuantity(text, kind, this.#context, bounds.least < 0),
    );
  }

  /** A length of time in whole days. */
  days(key: KeyOf<T>, bounds: Bounds): number | undefined {
    const days = this.quantity(key, "time", bounds);
    return days === undefined ? undefined : Math.round(days);
  }

  /** Days, or hours and minutes, in minutes. */
  minutes(key: KeyOf<T>): number | undefined {
    const days = this.quantity(key, "time", minutesBounds);
    return days === undefined ? undefined : Math.round(days * 1440);
  }

  rate(key: KeyOf<T>): number | undefined {
    return this.#parsed(key, rateBounds, (text) => parseRate(text, this.#context));
  }

  /** 0 to 1. */
  share(key: KeyOf<T>, bounds: Bounds): number | undefined {
    return this.#parsed(key, bounds, parsePercent);
  }

  /** degC. */
  temperature(key: KeyOf<T>, bounds: Bounds): number | undefined {
    return this.#parsed(key, bounds, parseTemperature);
  }

  /** degC. */
  temperatureDifference(key: KeyOf<T>, bounds: Bounds): number | undefined {
    return this.#parsed(key, bounds, parseTemperatureDifference);
  }

  water(key: KeyOf<T>): WaterAmount | undefined {
    const parse = (text: string) => parseWater(text, this.#context);
    return this.#parsed(key, waterBounds, parse, ({ liters }) => liters);
  }

  /** {@link water} of a week. */
  weeklyWater(key: KeyOf<T>): WaterAmount | undefined {
    const parse = (text: string) => parseWeeklyWater(text, this.#context);
    return this.#parsed(key, waterBounds, parse, ({ liters }) => liters);
  }

  /** A mass for the whole of something, or for each m2 of it. */
  spread(key: KeyOf<T>): SpreadAmount | undefined {
    const parse = (text: string) => parseSpread(text, this.#context);
    return this.#parsed(key, spreadBounds, parse, ({ grams }) => grams);
  }

  /** `18:30` -> minutes after midnight. */
  clock(key: KeyOf<T>): number | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text);
    if (match) return Number(match[1]) * 60 + Number(match[2]);
    this.report({
      code: "clock",
      path: this.at(key),
      message: `\`${text}\` is no time of day`,
      mend: 'write it on the 24-hour clock in quotes, like "18:30"',
    });
    return undefined;
  }

  #parsed<Value>(
    key: KeyOf<T>,
    bounds: Bounds,
    parse: (text: string) => Parsed<Value>,
    sizeOf: (value: Value) => number = Number,
  ): Value | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const parsed = parse(text);
    const trouble = parsed.ok ? absurdSize(text, sizeOf(parsed.value), bounds) : parsed;
    if (trouble !== undefined) {
      const { message, mend, fix } = { fix: undefined, ...trouble };
      const code = parsed.ok ? "absurd-size" : "quantity";
      this.report({ code, path: this.at(key), message, mend, ...given({ fix }) });
    }
    return parsed.ok && trouble === undefined ? parsed.value : undefined;
  }
}

function dateMend(value: string): Mending {
  const numbers = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(value);
  if (!numbers) return { mend: "write it as year-month-day, like 2027-05-20" };
  const [year, month, dayOfMonth] = [numbers[1] ?? "", numbers[2] ?? "", numbers[3] ?? ""];
  const padded = `${year}-${month.padStart(2, "0")}-${dayOfMonth.padStart(2, "0")}`;
  return padded !== value && parseDay(padded) !== undefined
    ? { mend: `write ${padded}`, fix: padded }
    : { mend: "check the month and the day: there is no such day in the calendar" };
}
