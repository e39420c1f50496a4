// @ts-nocheck
import { type Day, parseDay } from "../dates.js";

/** A moment in UTC, whole seconds: `2027-03-01T00:00:00Z`. Plain string order is time order. */
export type Stamp = string & { readonly [stampBrand]: true };
declare const stampBrand: unique symbol;

const isoStamp = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):([0-5]\d):([0-5]\d)(?:\.\d+)?Z$/;

function isMoment(iso: string): boolean {
  return isoStamp.test(iso) && parseDay(iso.slice(0, 10)) !== undefined;
}

/** Parts of a second are dropped. Throws RangeError for anything but an ISO 8601 moment in UTC. */
export function stampOf(iso: string): Stamp {
  if (!isMoment(iso))
    throw new RangeError(`not a moment in UTC such as 2027-03-01T00:00:00Z: ${iso}`);
  return `${iso.slice(0, 19)}Z` as Stamp;
}

export function startOfDay(day: Day): Stamp {
  return `${day}T00:00:00Z` as Stamp;
}

export function stampNotAfter(stamp: Stamp, latest: Stamp): Stamp {
  return stamp < latest ? stamp : latest;
}

export function dayOfStamp(stamp: Stamp): Day {
  return stamp.slice(0, 10) as Day;
}

/** `20270301T000000Z` */
export function stampText(stamp: Stamp): string {
  return stamp.replace(/[-:]/g, "");
}

/** The stamp that `20270301T000000Z` stands for, or undefined. */
export function parseStamp(text: string): Stamp | undefined {
  const iso = text.replace(/^(\d{4})(\d\d)(\d\dT\d\d)(\d\d)(\d\dZ)$/, "$1-$2-$3:$4:$5");
  return iso !== text && isMoment(iso) ? (iso as Stamp) : undefined;
}
