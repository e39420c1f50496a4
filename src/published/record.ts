/** The published state as named lines of text, one a round, a batch and another feed's day. */
import { type Day, parseDay } from "../dates.js";
import { routes } from "../garden/index.js";
import { mendedTexts } from "../legible.js";
import type { ForecastHarm, Moved, Published, PublishedMix } from "./published.js";

export interface RecordLine {
  readonly kind: "round" | "feed" | "batch" | "shells";
  /** JSON. */
  readonly text: string;
}

export function recordLines({ rounds, feeds, batches, shells }: Published): RecordLine[] {
  return [
    ...rounds.map((round) => lineOf("round", round)),
    ...feeds.map((feed) => lineOf("feed", feed)),
    ...batches.map((batch) => lineOf("batch", batch)),
    ...(shells === undefined ? [] : [lineOf("shells", shells)]),
  ];
}

function lineOf(kind: RecordLine["kind"], value: object): RecordLine {
  return { kind, text: JSON.stringify(value) };
}

/** What {@link recordLines} wrote; undefined where a line is not as it writes them. */
export function readRecord(lines: readonly RecordLine[]): Published | undefined {
  const all = <T>(kind: RecordLine["kind"], isOne: (value: unknown) => value is T): T[] =>
    lines
      .filter((line) => line.kind === kind)
      .map(({ text }) => {
        const value = parsed(text);
        if (!isOne(value)) throw new NotOurs();
        return value;
      });
  try {
    const [shells] = all("shells", isTold);
    const batches = all("batch", isBatch);
    if (!areOnce(batches)) return undefined;
    return {
      rounds: all("round", isRound),
      feeds: all("feed", isFeed),
      batches,
      ...(shells === undefined ? {} : { shells }),
    };
  } catch (error) {
    if (error instanceof NotOurs) return undefined;
    throw error;
  }
}

/** A value from elsewhere that should be published state. */
export function isPublished(value: unknown): value is Published {
  return (
    isObject(value) &&
    isList(value.rounds, isRound) &&
    isList(value.feeds, isFeed) &&
    isList(value.batches, isBatch) &&
    areOnce(value.batches) &&
    (value.shells === undefined || isTold(value.shells))
  );
}

class NotOurs extends Error {}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text, mendedTexts);
  } catch {
    return undefined;
  }
}

type Loose = Readonly<Record<string, unknown>>;
type Told = NonNullable<Published["shells"]>;

function isObject(value: unknown): value is Loose {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isList<T>(value: unknown, isOne: (item: unknown) => item is T): value is T[] {
  return Array.isArray(value) && value.every(isOne);
}

function isDay(value: unknown): value is Day {
  return typeof value === "string" && parseDay(value) !== undefined;
}

function isText(value: unknown): value is string {
  return typeof value === "string" && value !== "";
}

function isAmount(value: unknown): value is number {
  return typeof value === "number" && value >= 0 && value < 1e9;
}

function isTold(value: unknown): value is Told {
  return isObject(value) && isDay(value.day) && isDay(value.first);
}

function isRound(value: unknown): value is Published["rounds"][number] {
  if (!isTold(value)) return false;
  const { mixes, moved } = value as Loose & Told;
  return isList(mixes, isMix) && (moved === undefined || isMoved(moved));
}

function isMoved(value: unknown): value is Moved {
  return (
    isObject(value) &&
    isDay(value.from) &&
    isHarm(value.harm) &&
    (value.part === undefined || value.part === true)
  );
}

function isHarm(value: unknown): value is ForecastHarm {
  if (!isObject(value) || !isDay(value.on)) return false;
  const { kind, mm, maxC, limitC } = value;
  return kind === "rain" ? isAmount(mm) : kind === "heat" && [maxC, limitC].every(isAmount);
}

function isMix(value: unknown): value is PublishedMix {
  return (
    isObject(value) &&
    isText(value.bed) &&
    routes.some((route) => route === value.route) &&
    isList(value.fed, isFed) &&
    isList(value.pours, isPour)
  );
}

function isFed(value: unknown): value is PublishedMix["fed"][number] {
  return isObject(value) && isText(value.planting) && isText(value.crop) && isAmount(value.waterL);
}

function isPour(value: unknown): value is PublishedMix["pours"][number] {
  return (
    isObject(value) &&
    isAmount(value.ml) &&
    (value.batch === undefined || isText(value.batch)) &&
    (value.missing === undefined || value.missing === true)
  );
}

function isFeed(value: unknown): value is Published["feeds"][number] {
  return isTold(value) && isText((value as Loose & Told).feed);
}

/** A bottle that is there twice would be poured from twice. */
function areOnce(batches: Published["batches"]): boolean {
  return new Set(batches.map(({ id }) => id)).size === batches.length;
}

function isBatch(value: unknown): value is Published["batches"][number] {
  return (
    isObject(value) &&
    isText(value.id) &&
    Number.isSafeInteger(value.number) &&
    isAmount(value.volumeMl) &&
    [value.first, value.shellsOut, value.acidIn, value.made].every(isDay) &&
    (value.withdrawn === undefined || value.withdrawn === true)
  );
}
