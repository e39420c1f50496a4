/** Bottles: poured from, opened, labelled, used up. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Amounts,
  dayText,
  fullDate,
  type KeptIn,
  pouredText,
  type PourStyle,
  rateMeasures,
  shortDate,
  shortDay,
  strengthFigure,
  totalStockText,
} from "../garden/index.js";
import type { Pour, StrainedWhite } from "../season/index.js";
import { batchName, type Discard } from "../stock/index.js";
import { unbroken } from "./figures.js";
import { capital, plain, type Say } from "./say.js";

/** `23 mL from batch 1` */
export function fromBottle<T>(say: Say<T>, stock: string, batch: T | string): T {
  return say`${stock} from ${batch}`;
}

/** `from batch 1`, or how much from each where they are several. */
export function fromBottles(pours: readonly Pour[], amounts: Amounts): string {
  const [first] = pours;
  return pours.length === 1 && first !== undefined
    ? `from ${batchName(first.batch)}`
    : pours
        .map(({ batch, ml }) => fromBottle(plain, pouredText(ml, amounts), batchName(batch)))
        .join(", ");
}

/** After the day of a round: `, from batch 1 and batch 2` */
export function fromAll(batches: readonly string[]): string {
  return `, from ${batches.map(batchName).join(" and ")}`;
}

/** `Pour 20 mL from batch 1, then 3 mL from batch 2.` */
export function pourInTurn<T>(
  say: Say<T>,
  pours: readonly { readonly stock: string; readonly batch: T }[],
): T | undefined {
  const [first, ...then] = pours.map(({ stock, batch }) => say`${stock} from ${batch}`);
  if (first === undefined) return undefined;
  return say`Pour ${then.reduce((all, pour) => say`${all}, then ${pour}`, first)}.`;
}

/** A bottle poured from for the first time, another having been in use before. */
export interface NewBottle {
  readonly batch: string;
  readonly strengthGPerL: number;
  /** Strength of the bottle before it, where it is known. */
  readonly wasGPerL?: number;
}

export function newBottleInFull(
  { batch, strengthGPerL, wasGPerL }: NewBottle,
  amounts: Amounts,
): string {
  const { stock, strengthWord } = rateMeasures[amounts];
  const strength = strengthFigure(strengthGPerL, amounts);
  const line = `New bottle: ${batchName(batch)}, ${strength} of calcium to the ${strengthWord}`;
  if (wasGPerL === undefined) return line;
  const was = strengthFigure(wasGPerL, amounts);
  return was === strength
    ? `${line}, as in the one before`
    : `${line}, ${was} in the one before: ${stock} differ`;
}

export function openBottle<T>(say: Say<T>, batch: T): T {
  return say`Open a bottle of ${batch}`;
}

/** `Sat 26 Jun 2027`, and where it is kept */
export function useByWhenKept(useBy: Readonly<Record<KeptIn, Day>>, amounts: Amounts): string {
  return `${dayText(useBy.shelf, amounts)} on the shelf, ${dayText(useBy.fridge, amounts)} in the fridge`;
}

/** Its last day is over, or the grower is not there on it. */
export function isPastUse({ doOn, useUpBy }: Discard, today: Day = useUpBy): boolean {
  return doOn > useUpBy || today > useUpBy;
}

/** As a job on its day. */
export function useUpJob<T>(
  say: Say<T>,
  discard: Discard,
  batch: T,
  amounts: Amounts,
  today: Day,
): T {
  const left = totalStockText(discard.ml, amounts);
  const last = shortDate(discard.useUpBy, amounts);
  return isPastUse(discard, today)
    ? say`Throw away what is left of ${batch} (${left}): past its day since ${last}`
    : say`Use up or throw away what is left of ${batch} (${left}), by ${last}`;
}

/** The same in a whole sentence for each, on the day on which it is to be done. */
export function useUpInFull(discard: Discard, amounts: Amounts): string {
  const { batch, ml, doOn, useUpBy } = discard;
  const last = shortDay(useUpBy, amounts, doOn);
  const left = `${capital(batchName(batch))}: ${totalStockText(ml, amounts)} left`;
  return isPastUse(discard)
    ? `${left}; its last day was ${last}, so throw it away.`
    : `${left}; ${last} is its last day. Use it up, or throw it away.`;
}

/** The same among the lines of a season's plan. */
export function leftOver(discard: Discard, amounts: Amounts, today: Day): string {
  const { batch, ml, useUpBy } = discard;
  const left = `${capital(batchName(batch))}: ${totalStockText(ml, amounts)}`;
  return today > useUpBy
    ? `${left}: throw away, past its day since ${shortDate(useUpBy, amounts)}`
    : `${left} is left over; use it up by ${shortDate(useUpBy, amounts)}, or throw it away`;
}

/** The same among the lines of a report on batches. */
export function leftToUseUp(discard: Discard, amounts: Amounts, today: Day): string {
  const { batch, ml, useUpBy, doOn } = discard;
  if (today > useUpBy) return leftOver(discard, amounts, today);
  const back = isPastUse(discard) ? `; you are back on ${dayText(doOn, amounts)}` : "";
  return `${capital(batchName(batch))}: ${totalStockText(ml, amounts)}, use up by ${dayText(useUpBy, amounts)}${back}`;
}

/** A bottle with its days, for its line in a picture. */
export interface BottleDays {
  readonly planned: boolean;
  readonly startOn?: Day;
  readonly readyOn?: Day;
  readonly useBy?: Day;
}

/** For those who hear the picture. */
export function bottleInFull(
  bottle: BottleDays,
  name: string,
  amount: string,
  amounts: Amounts,
): string {
  const { planned, startOn, readyOn, useBy } = bottle;
  const facts = [
    amount,
    planned ? "to be made" : "in hand",
    ...(startOn === undefined ? [] : [`begun ${shortDate(startOn, amounts)}`]),
    ...(readyOn === undefined ? [] : [`ready ${shortDate(readyOn, amounts)}`]),
    ...(useBy === undefined ? [] : [`use by ${shortDate(useBy, amounts)}`]),
  ];
  return `${name}: ${facts.join(", ")}.`;
}

/** To be written in by hand. */
const blank = "____________";

/** What a label says first. */
export const labelTitle = "Calcium plant feed";

/** The day of a label; one that is not known is left open. */
export function dayOnLabel(day: Day | undefined, amounts: Amounts): string {
  return day === undefined ? blank : fullDate(day, amounts);
}

/** `Made 8 May 2027` */
export function madeOnLabel(day: Day | undefined, amounts: Amounts): string {
  return `Made ${dayOnLabel(day, amounts)}`;
}

/** `Use by 6 August 2027` */
export function useByOnLabel(day: string): string {
  return `Use by ${day}`;
}

/** `Strength 14 g calcium per litre` as measured, else `About 16 g ... (mesh)`, `(mesh?)` where not known. */
export function strengthOnLabel(gPerL: number, amounts: Amounts, white?: StrainedWhite): string {
  const unit = `calcium per ${rateMeasures[amounts].strengthWord}`;
  if (white === undefined) return `Strength ${strengthFigure(gPerL, amounts)} ${unit}`;
  const about = strengthFigure(gPerL, amounts, gPerL < 10 ? 1 : 0);
  return `About ${about} ${unit} (${white.strainer}${white.assumed ? "?" : ""})`;
}

export const shakeOnLabel: Readonly<Record<PourStyle, string>> = {
  shaken: "Shake well.",
  clear: "Do not shake: pour off the clear part.",
};

export const shakeInShort: Readonly<Record<PourStyle, string>> = {
  shaken: "Shake well.",
  clear: "Do not shake.",
};

/** `Batch 2, bottle 1 of 2` */
export function batchOnLabel(batch: string, bottle: number, bottlesOfBatch: number): string {
  const name = capital(batchName(batch));
  return bottlesOfBatch > 1
    ? `${name}, ${unbroken(`bottle ${bottle} of ${bottlesOfBatch}`)}`
    : name;
}
