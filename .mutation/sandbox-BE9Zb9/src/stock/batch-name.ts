/** The id of a batch, for files and commands, and what people call it. */
// @ts-nocheck


import { parseDay } from "../dates.js";
import { shortDate } from "../garden/index.js";

/** For a number that no batch of the garden has had. */
export function batchId(number: number): string {
  return `batch-${number}`;
}

/**
 * Within a sentence: `batch 2`, and of an id that the grower chose `batch spring`; of one by its day, as
 * ids were once drawn and stand on bottles, `batch 9 May`, the second of that day `batch 9 May (2)`.
 */
export function batchName(id: string): string {
  const [, date = "", second] = /^batch-(\d{4}-\d{2}-\d{2})(?:-(\d+))?$/.exec(id) ?? [];
  const day = parseDay(date);
  if (day !== undefined)
    return `batch ${shortDate(day, "metric")}${second === undefined ? "" : ` (${second})`}`;
  const own = id.replace(/^batch[\s_-]*/i, "");
  return own === "" ? "batch" : `batch ${own}`;
}
