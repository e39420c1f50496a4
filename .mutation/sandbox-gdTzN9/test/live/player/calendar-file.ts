/** A calendar file as a client keeps it: each entry's text, known by its UID. */
// @ts-nocheck

import type { Day } from "../../../src/dates.js";

export interface Entry {
  readonly uid: string;
  readonly sequence: number;
  readonly stamp: string;
  /** `feeding/bed/2027-06-05` */
  readonly key: string;
  readonly day: Day;
  readonly isCancelled: boolean;
  readonly text: string;
  /** Unfolded, and unescaped. */
  readonly description: string;
}

export function entriesIn(calendar: string): Map<string, Entry> {
  const blocks = calendar.split("BEGIN:VEVENT\r\n").slice(1);
  const entries = blocks.map((block): Entry => {
    const [text = ""] = block.split("END:VEVENT\r\n");
    const [own = ""] = text.replace(/\r\n[ \t]/g, "").split("BEGIN:VALARM");
    const value = (name: string): string =>
      new RegExp(`^${name}(?:;[^:]*)?:(.*)$`, "m").exec(own)?.[1]?.trim() ?? "";
    const key = value("X-FEEDROUND-KEY").replace(/\\(.)/g, "$1");
    return {
      uid: value("UID"),
      sequence: Number(value("SEQUENCE")),
      stamp: value("DTSTAMP"),
      key,
      day: key.slice(-10) as Day,
      isCancelled: value("STATUS") === "CANCELLED",
      text,
      description: value("DESCRIPTION").replace(/\\n/g, "\n").replace(/\\(.)/g, "$1"),
    };
  });
  return new Map(entries.map((entry) => [entry.uid, entry]));
}
