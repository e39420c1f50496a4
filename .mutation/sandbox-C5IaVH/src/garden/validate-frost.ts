/** The grower's own frost days: days of every year, that fit the half of the earth. */
// @ts-nocheck

import type { FrostDays } from "../climate/index.js";
import type { Frost as FrostFile } from "../compiled/garden-file.js";
import { type Day, daysBetween, parseDay } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import type { Garden } from "./garden.js";

export function validateFrost(
  entry: Entry<FrostFile>,
  hemisphere: Garden["hemisphere"],
): FrostDays | undefined {
  const [last, first] = [monthDay(entry, "last"), monthDay(entry, "first")];
  if (last === undefined && first === undefined) return undefined;
  if (!isPossible({ ...given({ last, first }) }, hemisphere)) {
    const told = [last && `a last frost on ${last}`, first && `a first frost on ${first}`];
    entry.report({
      code: "frost-days",
      path: entry.at(last === undefined ? "first" : "last"),
      message: `${told.filter(Boolean).join(" and ")} cannot be in the ${hemisphere}ern half of the earth`,
      mend: "`last` is the last frost before the summer and `first` the first one after it: swap or mend the days",
    });
    return undefined;
  }
  return given({ last, first });
}

const monthDayForm = /^(?:\d{4}-)?(\d{1,2})[-/.](\d{1,2})$/;

function monthDay(entry: Entry<FrostFile>, key: keyof FrostFile): string | undefined {
  const text = entry.text(key);
  if (text === undefined) return undefined;
  if (/^\d\d-\d\d$/.test(text) && inCommonYear(text) !== undefined) return text;
  const [, month = "", dayOfMonth = ""] = monthDayForm.exec(text) ?? [];
  const padded = `${month.padStart(2, "0")}-${dayOfMonth.padStart(2, "0")}`;
  entry.report({
    code: "frost-days",
    path: entry.at(key),
    message: `\`${text}\` is no day of every year`,
    mend:
      inCommonYear(padded) === undefined
        ? "write month and day, like 04-28"
        : `write month and day, ${padded}`,
  });
  return undefined;
}

function inCommonYear(monthDay: string): Day | undefined {
  return parseDay(`2027-${monthDay}`);
}

const midsummer = { north: "07-15", south: "01-15" } as const;

/** Frosts so far from midsummer can be of the spring or of the autumn. */
const windowDays = 120;

/** Only what no place on earth can have is refused. */
function isPossible({ last, first }: FrostDays, hemisphere: Garden["hemisphere"]): boolean {
  const daysAfter = (from: string, to: string): number => {
    const [a, b] = [inCommonYear(from), inCommonYear(to)];
    return a === undefined || b === undefined ? 0 : (daysBetween(a, b) + 365) % 365;
  };
  const summer = midsummer[hemisphere];
  const lastToSummer = last === undefined ? 0 : daysAfter(last, summer);
  const summerToFirst = first === undefined ? 0 : daysAfter(summer, first);
  const farthest = 365 - windowDays;
  return (
    lastToSummer <= farthest && summerToFirst <= farthest && lastToSummer + summerToFirst < 365
  );
}
