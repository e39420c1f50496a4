/** What refers to other parts of the file: other feeds, the log, the signs seen. */
// @ts-nocheck

import type {
  LogEntry as LogFile,
  OtherFeed as OtherFeedFile,
  Sign as SignFile,
} from "../compiled/garden-file.js";
import { findCrop } from "../crops/index.js";
import { meant, nearest } from "../suggest.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import { type LogEntry, type OtherFeed, routes, type SignSeen } from "./garden.js";
import type { Bounds } from "./quantity.js";
import type { Validation } from "./validation.js";

/** What other parts of the file may name: ids, crops, names of feeds. */
type References<Kind extends string> = Readonly<Record<Kind, ReadonlySet<string>>>;

const mostDays: Bounds = { least: 1, most: 1100, words: "1 to 1,100 days" };
const gapBounds: Bounds = { least: 0, most: 1100, words: "0 to 1,100 days" };
const stockBounds: Bounds = { least: 0, most: 100, words: "up to 100 L" };

export function validateFeeds(
  feeds: readonly Entry<OtherFeedFile>[],
  references: References<"plantings" | "beds" | "crops" | "listed">,
  { tables }: Validation,
): OtherFeed[] {
  return feeds.map((entry) => {
    const { raw, path } = entry;
    if ((raw.every === undefined) === (raw.days === undefined))
      entry.report({
        code: "feed-days",
        path,
        message:
          raw.every === undefined ? "the feed has no days" : "the feed has both `every` and `days`",
        mend: "give either `every: 14 days` or `days: [sun]`",
      });
    const names = entry.list("for").flatMap((name, i) => {
      if (typeof name !== "string") return [];
      const crop = findCrop(name, tables.catalogue)?.key;
      if (references.listed.has(name))
        entry.report({
          code: "unknown-crop",
          path: entry.at("for", i),
          message: `the crop of \`${name}\` is not known, so it is only listed and never fed`,
          mend: "take it out of `for`, or write a crop that is known",
        });
      if (references.plantings.has(name) || references.beds.has(name)) return [name];
      if (crop !== undefined) return [crop];
      entry.report({
        code: "unknown-reference",
        path: entry.at("for", i),
        message: `\`${name}\` is no planting, bed or crop of this garden`,
        ...meant(
          nearest(name, [...references.plantings, ...references.beds, ...references.crops]),
          "name one that is in `beds`",
        ),
      });
      return [];
    });
    const weekly = entry.weekdays("days");
    const holds = entry.list("holds").filter((h) => h === "sulfate" || h === "phosphate");
    return {
      name: entry.text("name") ?? "",
      ...given({
        everyDays: entry.days("every", mostDays),
        days: weekly.length > 0 ? weekly : undefined,
      }),
      ...entry.span("feed"),
      rateMlPerL: entry.rate("rate") ?? 0,
      for: names,
      holds,
      gapDays: entry.days("gap", gapBounds) ?? (holds.length > 0 ? tables.usual.salt_gap_days : 0),
      ...given({ shelfLifeDays: entry.days("shelf_life", mostDays) }),
      path,
    };
  });
}

export function validateLog(
  log: readonly Entry<LogFile>[],
  references: References<"plantings" | "beds" | "feeds">,
): LogEntry[] {
  return log.flatMap((entry): LogEntry[] => {
    const { raw, path } = entry;
    if (raw.planting !== undefined && raw.bed !== undefined)
      entry.report({
        code: "log-target",
        path,
        message: "the entry names a planting and a bed",
        mend: "keep one of the two",
      });
    const on = entry.day("on");
    const keep =
      "; where it has a new id, write that here too; one that is gone stays in its bed, with `removed:` and the day";
    const planting = known(entry, "planting", references.plantings, keep);
    const bed = known(entry, "bed", references.beds);
    const feed = known(entry, "feed", references.feeds);
    const stockL = entry.quantity("stock", "volume", stockBounds);
    const stockMl = stockL === undefined ? undefined : stockL * 1000;
    const missed = entry.among([true] as const, "missed");
    const poured = (["stock", "batch"] as const).find((key) => raw[key] !== undefined);
    if (missed && poured !== undefined)
      entry.report({
        code: "log-missed-stock",
        path: entry.at(poured),
        message: `the feeding was missed, and the entry has \`${poured}\``,
        mend: `take out \`${poured}\`, or \`missed\` if it was given`,
      });
    const more = {
      // One that is not listed is warned of with the plan: the calendar may know it.
      batch: entry.text("batch"),
      route: entry.among(routes, "route"),
      round: entry.day("round"),
    };
    if (on === undefined) return [];
    return [{ on, ...given({ missed, planting, bed, stockMl, feed, ...more }), path }];
  });
}

/** A sign as it is known, of one written with capitals and blanks: `Blossom end rot`. */
export function signKey(word: string): string {
  return word
    .trim()
    .toLowerCase()
    .replace(/[ _-]+/g, "-");
}

export function validateSigns(
  signs: readonly Entry<SignFile>[],
  references: References<"plantings">,
): SignSeen[] {
  return signs.flatMap((entry): SignSeen[] => {
    const word = entry.text("sign");
    const sign = word === undefined ? undefined : signKey(word);
    const on = entry.day("on");
    const planting = known(entry, "planting", references.plantings);
    if (on === undefined || planting === undefined || sign === undefined) return [];
    return [{ on, planting, sign, path: entry.path }];
  });
}

/** The name under a key; one that is not among the ids is reported. */
function known<Kind extends string>(
  entry: Entry<{ readonly [Key in Kind]?: unknown }>,
  kind: Kind,
  ids: ReadonlySet<string>,
  hint = "",
): string | undefined {
  const name = entry.text(kind);
  if (name !== undefined && !ids.has(name))
    entry.report({
      code: "unknown-reference",
      path: entry.at(kind),
      message: `there is no ${kind} \`${name}\` in this file`,
      ...meant(
        nearest(name, ids),
        ids.size > 0
          ? `it is one of ${[...ids].slice(0, 8).join(", ")}${hint}`
          : `add it, or remove \`${kind}\` here`,
      ),
    });
  return name;
}
