/** Weather files, seen and forecast, joined: what is told of each day, gaps filled. */
// @ts-nocheck

import { addDays, type Day, daysBetween, type DaySpan } from "../dates.js";
import { inFileOrder, type Problem, type Result } from "../problem.js";
import { byText, given } from "../values.js";
import type { DayWeather } from "./climate.js";
import { readWeather, type WeatherRow } from "./weather-file.js";
import { problemList, type WeatherText } from "./weather-problems.js";

export type WeatherKind = "seen" | "forecast";
export type WeatherTexts = Readonly<Partial<Record<WeatherKind, WeatherText>>>;

export interface WeatherDays {
  readonly days: ReadonlyMap<Day, DayWeather>;
  /** What each file tells by itself. */
  readonly files: readonly ToldFile[];
  /** What was filled, and what was left to the means, in words for the grower. */
  readonly assumptions: readonly string[];
}

export interface ToldFile {
  readonly file: string;
  /** With both temperatures, in the order of the file. */
  readonly rows: readonly WarmRow[];
}

interface ToldRow extends WeatherRow {
  readonly kind: WeatherKind;
  /** Of which file the rain is. */
  readonly rainKind: WeatherKind;
}

interface WarmRow extends ToldRow {
  readonly temperatures: Exclude<WeatherRow["temperatures"], undefined>;
}

function isWarm(row: ToldRow): row is WarmRow {
  return row.temperatures !== undefined;
}

/** Longer gaps can't be told from the days around them. */
const longestGapDays = 5;

/**
 * Joins weather files. A day that both tell is taken as seen. Gaps of up to five days are filled with
 * a straight line between the days around them; longer ones are problems, but for one between what was
 * seen and the forecast, or over the winter before the season, where the means stand in.
 *
 * @param today only names days, as seen or forecast: both count alike, so that a plan of coming days
 *   never changes because a day has passed
 * @param since earlier days are not read
 * @param season its first day
 */
export function weatherDays(
  texts: WeatherTexts,
  { today, since, season }: Readonly<Record<"today" | "since" | "season", Day>>,
): Result<WeatherDays> {
  const problems: Problem[] = [];
  const byDay = new Map<Day, ToldRow>();
  const files: ToldFile[] = [];
  for (const kind of ["forecast", "seen"] as const) {
    const source = texts[kind];
    const rows = source && readWeather(source, since);
    if (rows?.ok === false) problems.push(...rows.problems);
    if (source === undefined || rows?.ok !== true) continue;
    const told = rows.value.map((row): ToldRow => ({ ...row, kind, rainKind: kind }));
    files.push({ file: source.file, rows: told.filter(isWarm) });
    for (const row of told) byDay.set(row.day, joinedRow(byDay.get(row.day), row));
  }
  if (problems.length > 0) return { ok: false, problems: inFileOrder(problems) };

  const warm = [...byDay.values()].filter(isWarm).sort(byTheirDays);
  const gaps = gapsOf(warm);
  const isOpen = (gap: Gap): boolean => isBetweenKinds(gap) || gap.before.day < season;
  const tooLong = gaps.filter((gap) => gap.days > longestGapDays && !isOpen(gap));
  if (tooLong.length > 0) return { ok: false, problems: refused(tooLong, texts) };

  const short = gaps.filter((gap) => gap.days <= longestGapDays);
  const all = [...warm, ...short.flatMap((gap) => filled(gap, byDay))].sort(byTheirDays);
  const weatherOf = ({ day, kind, temperatures, rainMm, rainKind }: WarmRow): DayWeather => ({
    ...{ ...temperatures, from: day >= today ? "forecast" : kind },
    ...given({ rainMm }),
    ...(rainMm !== undefined && rainKind === "seen" ? { isRainSeen: true } : {}),
  });
  return {
    ok: true,
    value: {
      days: new Map(all.map((row) => [row.day, weatherOf(row)])),
      files,
      assumptions: [
        ...filledWords(short),
        ...gaps.filter((gap) => !short.includes(gap)).map(betweenWords),
      ],
    },
  };
}

/** A later file goes before an earlier one; where it tells rain alone, only its rain does. */
function joinedRow(earlier: ToldRow | undefined, row: ToldRow): ToldRow {
  if (earlier === undefined || isWarm(row)) return row;
  const { rainMm, rainKind } = row;
  return rainMm === undefined ? earlier : { ...earlier, rainMm, rainKind };
}

function byTheirDays(a: WeatherRow, b: WeatherRow): number {
  return byText(a.day, b.day);
}

interface Gap {
  readonly before: WarmRow;
  readonly after: WarmRow;
  readonly days: number;
}

function gapsOf(warm: readonly WarmRow[]): Gap[] {
  return warm.flatMap((after, i) => {
    const before = warm[i - 1];
    const days = before === undefined ? 0 : daysBetween(before.day, after.day) - 1;
    return before !== undefined && days > 0 ? [{ before, after, days }] : [];
  });
}

function isBetweenKinds({ before, after }: Gap): boolean {
  return before.kind !== after.kind;
}

function filled({ before, after, days }: Gap, told: ReadonlyMap<Day, ToldRow>): WarmRow[] {
  const [a, b] = [before.temperatures, after.temperatures];
  return Array.from({ length: days }, (_, i) => {
    const share = (i + 1) / (days + 1);
    const temperatures = {
      minC: a.minC + share * (b.minC - a.minC),
      maxC: a.maxC + share * (b.maxC - a.maxC),
    };
    const day = addDays(before.day, i + 1);
    const { kind, offset } = after;
    const { rainMm, rainKind = kind } = told.get(day) ?? {};
    return { day, kind, offset, temperatures, rainMm, rainKind };
  });
}

function refused(gaps: readonly Gap[], texts: WeatherTexts): Problem[] {
  return Object.entries(texts).flatMap(([kind, source]) => {
    const { report, problems } = problemList(source);
    for (const { before, after, days } of gaps)
      if (after.kind === kind)
        report(
          "weather-gap",
          after.offset,
          `no temperatures are told of ${days} days between ${before.day} and ${after.day}: at most ${longestGapDays} are filled`,
          "add rows for these days, or remove those before the gap",
        );
    return problems();
  });
}

const mostGapsNamed = 6;

function filledWords(gaps: readonly Gap[]): string[] {
  if (gaps.length === 0) return [];
  const days = gaps.reduce((sum, gap) => sum + gap.days, 0);
  const named = gaps.slice(0, mostGapsNamed).map((gap) => spanWords(spanOf(gap)));
  const more = gaps.length - named.length;
  const list = [...named, ...(more > 0 ? [`${more} more gaps`] : [])].join(", ");
  const what = days === 1 ? "a day that lacks" : `${days} days that lack`;
  return [
    `the weather files: ${what} temperatures are taken as a straight line between the days around them (${list})`,
  ];
}

function betweenWords(gap: Gap): string {
  return `the weather of ${spanWords(spanOf(gap))}, which the weather files don't tell, is that of the monthly means`;
}

function spanOf({ before, after }: Gap): DaySpan {
  return { from: addDays(before.day, 1), to: addDays(after.day, -1) };
}

function spanWords({ from, to }: DaySpan): string {
  return from === to ? from : `${from} to ${to}`;
}
