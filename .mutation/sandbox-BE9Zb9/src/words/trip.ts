/** A trip as a calendar's entry tells it: what to fetch, what each bed gets, and what lies behind it. */
// @ts-nocheck

import {
  type Amounts,
  counted,
  shortDate,
  sumOfStockText,
  totalOf,
  vesselOf,
} from "../garden/index.js";
import type { BedRound, CanFill, CanMix, Feeding, OtherFeedMix } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { grouped } from "../values.js";
import { fromBottle, fromBottles } from "./bottles.js";
import { fillInShort, fromEach, missingStock, stockIn, tooLittleStock, vesselsIn } from "./cans.js";
import { openedOn } from "./feedings.js";
import { nameInText } from "./names.js";
import { plantingWords, stageWords } from "./plants.js";
import { plain } from "./say.js";

/** What is done on a trip. */
export interface Trip {
  readonly mixes: readonly CanMix[];
  readonly feeds: readonly OtherFeedMix[];
  /** Batches poured from for the first time, another having been in use before. */
  readonly newBatches: ReadonlySet<string>;
  /** It has been done: the log holds it. */
  readonly given: boolean;
}

/**
 * The first line: from which bottle how much, into what, and what is short or late.
 *
 * @example "79 mL from batch 1, 4 cans; late: toms"
 */
export function tripToFetch(trip: Trip, amounts: Amounts): string {
  const { mixes, feeds, newBatches, given } = trip;
  const stock = [
    ...[...grouped(poursOf(mixes), ({ batch }) => batch ?? "")].map(([batch, those]) => {
      const amount = sumOfStockText(totalOf(those.map(({ ml }) => ml)), amounts);
      if (batch === "") return `${amount} of stock`;
      const isNew = newBatches.has(batch) ? " (new bottle)" : "";
      return fromBottle(plain, amount, `${batchName(batch)}${isNew}`);
    }),
    ...[...grouped(mixes, ({ route }) => vesselOf(route))].map(([vessel, those]) =>
      counted(vesselsIn(those.flatMap(({ fills }) => fills)), vessel),
    ),
  ];
  const others = [...grouped(feeds, ({ feed }) => feed)].map(([feed, those]) => {
    const fills = those.flatMap((mix) => mix.fills);
    const cans = counted(vesselsIn(fills), "can");
    return `${sumOfStockText(stockIn(fills), amounts)} of ${nameInText(feed)}, ${cans}`;
  });
  const shortMl = totalOf(mixes.map((mix) => mix.shortMl ?? 0));
  const late = lateOf(trip).map(({ name }) => nameInText(name));
  const line = [
    ...(stock.length === 0 ? [] : [stock.join(", ")]),
    ...others,
    ...(shortMl > 0 ? [missingStock(shortMl, amounts)] : []),
    ...(late.length > 0 ? [`late: ${late.join(", ")}`] : []),
  ].join("; ");
  return given ? `Given: ${line}` : line;
}

/** Whether its title bears a mark. */
export function isShortOrLate(trip: Pick<Trip, "mixes" | "given">): boolean {
  return trip.mixes.some(({ shortMl }) => shortMl !== undefined) || lateOf(trip).length > 0;
}

/** What was given is late no more. */
function lateOf({ mixes, given }: Pick<Trip, "mixes" | "given">): Feeding[] {
  return given ? [] : mixes.flatMap(({ feedings }) => feedings.filter((one) => !one.inWindow));
}

/** Of each bottle; without one where the garden has none, or none holds enough. */
function poursOf(mixes: readonly CanMix[]): readonly { batch?: string; ml: number }[] {
  return mixes.flatMap(
    ({ pours, stockMl, shortMl = 0 }): readonly { batch?: string; ml: number }[] => {
      if (pours !== undefined) return pours;
      return shortMl < stockMl ? [{ ml: stockMl - shortMl }] : [];
    },
  );
}

/**
 * A bed in one line.
 *
 * @param from names the bottles, where the trip pours from several
 * @example "South bed: 2 cans × 23 mL, 1 part can × 10 mL (4 L) for toms"
 */
export function bedInOneLine(
  { bedName, mixes }: BedRound,
  amounts: Amounts,
  from: boolean,
): string {
  const told = mixes.map(({ route, fills, pours = [], shortMl, feedings }) => {
    const cans = fills.map((fill) => fillInShort(fill, vesselOf(route)) + inEach(fill)).join(", ");
    const isTold = fills.length === 1 && fills[0]?.count === 1 && fills[0].pours !== undefined;
    const bottles = from && pours.length > 0 && !isTold ? ` (${fromBottles(pours, amounts)})` : "";
    const short = shortMl === undefined ? "" : ` (${tooLittleStock})`;
    return `${cans}${bottles}${short} for ${feedings.map(({ name }) => nameInText(name)).join(", ")}`;
  });
  return `${nameInText(bedName)}: ${told.join("; ")}`;
}

function inEach(fill: CanFill): string {
  return fill.pours === undefined ? "" : ` (${fromEach(fill)})`;
}

/** @example "South bed: comfrey tea, 1 can × 900 mL for toms" */
export function otherFeedInOneLine(
  { feed, bedName, fills, plantings, openedSince }: OtherFeedMix,
  nameOf: (planting: string) => string,
  amounts: Amounts,
): string {
  const cans = fills.map((fill) => fillInShort(fill, "can")).join(", ");
  const names = plantings.map((planting) => nameInText(nameOf(planting)));
  const since = openedSince === undefined ? "" : `; ${openedOn(openedSince, amounts)}`;
  return `${nameInText(bedName)}: ${nameInText(feed)}, ${cans} for ${names.join(", ")}${since}`;
}

/** @example "toms (tomato): fruit set, feeding 3, due 24 to 30 Jun" */
export function feedingBehind(feeding: Feeding, given: boolean, amounts: Amounts): string {
  const { name, stage, number, inWindow, window } = feeding;
  const who = plantingWords(plain, feeding, nameInText(name));
  const line = `${who}: ${stageWords(stage)}, feeding ${number}`;
  if (given) return line;
  const [earliest, latest] = [window.earliest, window.latest].map((d) => shortDate(d, amounts));
  const due = earliest === latest ? latest : `${earliest} to ${latest}`;
  return `${line}, due ${due}${inWindow ? "" : ", which this day misses"}`;
}
