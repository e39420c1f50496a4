/** What refers to other parts of the file: other feeds, the log, the signs seen. */
import type {
  LogEntry as LogFile,
  OtherFeed as OtherFeedFile,
  Sign as SignFile,
} from "../compiled/garden-file.js";
import { findCrop } from "../crops/index.js";
import { type Weekday, weekdays } from "../dates.js";
import type { FilePath } from "../problem.js";
import { didYouMean } from "../suggest.js";
import { given } from "../values.js";
import { among, type Fields, list, record, text } from "./fields.js";
import { type LogEntry, type OtherFeed, routes, type SignSeen } from "./garden.js";
import type { References, Validation } from "./validation.js";

export function validateFeeds(
  feeds: readonly unknown[],
  references: References,
  { fields, tables }: Validation,
): OtherFeed[] {
  const days = (value: unknown, path: FilePath, least: number): number | undefined => {
    const amount = fields.quantity(value, path, "time", {
      least,
      most: 1100,
      words: `${least} to 1,100 days`,
    });
    return amount === undefined ? undefined : Math.round(amount);
  };
  return feeds.map((value, index) => {
    const path: FilePath = ["feeds", index];
    const raw = record<OtherFeedFile>(value);
    const everyDays = days(raw.every, [...path, "every"], 1);
    if ((raw.every === undefined) === (raw.days === undefined))
      fields.report({
        code: "feed-days",
        path,
        message:
          raw.every === undefined ? "the feed has no days" : "the feed has both `every` and `days`",
        mend: "give either `every: 14 days` or `days: [sun]`",
      });
    const from = fields.day(raw.from, [...path, "from"]);
    const to = fields.day(raw.to, [...path, "to"]);
    if (from !== undefined && to !== undefined && to < from)
      fields.report({
        code: "ends-before-begin",
        path: [...path, "to"],
        message: `the feed ends on ${to}, before it begins on ${from}`,
        mend: "swap the two dates or mend the year",
      });
    const names = list(raw.for).flatMap((name, i) => {
      if (typeof name !== "string") return [];
      const crop = findCrop(name, tables.catalogue)?.key;
      if (references.plantings.has(name) || references.beds.has(name)) return [name];
      if (crop !== undefined) return [crop];
      fields.report({
        code: "unknown-reference",
        path: [...path, "for", i],
        message: `\`${name}\` is no planting, bed or crop of this garden`,
        mend: didYouMean(
          name,
          [...references.plantings, ...references.beds, ...references.crops],
          "name one that is in `beds`",
        ),
      });
      return [];
    });
    const weekly = list(raw.days).filter((d): d is Weekday => weekdays.includes(d as Weekday));
    const holds = list(raw.holds).filter((h) => h === "sulfate" || h === "phosphate");
    return {
      name: text(raw.name) ?? "",
      ...given({ everyDays }),
      ...(weekly.length > 0 ? { days: weekly } : {}),
      ...given({ from, to }),
      rateMlPerL: fields.rate(raw.rate, [...path, "rate"]) ?? 0,
      for: names,
      holds,
      gapDays:
        days(raw.gap, [...path, "gap"], 0) ?? (holds.length > 0 ? tables.usual.salt_gap_days : 0),
      ...given({ shelfLifeDays: days(raw.shelf_life, [...path, "shelf_life"], 1) }),
      path,
    };
  });
}

export function validateLog(
  log: readonly unknown[],
  references: References,
  batchIds: ReadonlySet<string>,
  feeds: readonly OtherFeed[],
  fields: Fields,
): LogEntry[] {
  return log.flatMap((value, index): LogEntry[] => {
    const path: FilePath = ["log", index];
    const raw = record<LogFile>(value);
    const on = fields.day(raw.on, [...path, "on"]);
    if (raw.planting !== undefined && raw.bed !== undefined)
      fields.report({
        code: "log-target",
        path,
        message: "the entry names a planting and a bed",
        mend: "keep one of the two",
      });
    const keep = "; one that is gone stays in its bed, with `removed:` and the day";
    known(raw.planting, references.plantings, "planting", [...path, "planting"], fields, keep);
    known(raw.bed, references.beds, "bed", [...path, "bed"], fields);
    known(raw.batch, batchIds, "batch", [...path, "batch"], fields);
    known(raw.feed, new Set(feeds.map((feed) => feed.name)), "feed", [...path, "feed"], fields);
    const stockL = fields.quantity(raw.stock, [...path, "stock"], "volume", {
      least: 0,
      most: 100,
      words: "up to 100 L",
    });
    if (on === undefined) return [];
    const entry = { planting: text(raw.planting), bed: text(raw.bed), batch: text(raw.batch) };
    const stockMl = stockL === undefined ? undefined : stockL * 1000;
    const route = among(routes, raw.route);
    return [{ on, ...given({ ...entry, stockMl, route, feed: text(raw.feed) }), path }];
  });
}

export function validateSigns(
  signs: readonly unknown[],
  references: References,
  fields: Fields,
): SignSeen[] {
  return signs.flatMap((value, index): SignSeen[] => {
    const path: FilePath = ["signs", index];
    const raw = record<SignFile>(value);
    const on = fields.day(raw.on, [...path, "on"]);
    known(raw.planting, references.plantings, "planting", [...path, "planting"], fields);
    const [planting, sign] = [text(raw.planting), text(raw.sign)];
    if (on === undefined || planting === undefined || sign === undefined) return [];
    return [{ on, planting, sign, path }];
  });
}

function known(
  value: unknown,
  ids: ReadonlySet<string>,
  kind: string,
  path: FilePath,
  fields: Fields,
  hint = "",
): void {
  if (typeof value !== "string" || ids.has(value)) return;
  fields.report({
    code: "unknown-reference",
    path,
    message: `there is no ${kind} \`${value}\` in this file`,
    mend: didYouMean(
      value,
      ids,
      ids.size > 0
        ? `it is one of ${[...ids].slice(0, 8).join(", ")}${hint}`
        : `add it, or remove \`${kind}\` here`,
    ),
  });
}
