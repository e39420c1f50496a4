/** What would change in a calendar, in words. */
import { type Amounts, counted, shortDay } from "../garden/index.js";
import type { CalendarChange } from "../calendar/index.js";
import type { Day } from "../dates.js";
import type { FeedingChange } from "../notes/index.js";
import { quoted } from "../legible.js";
import { given } from "../values.js";
import { fedFromTo, moreOrFewer, whyFedSo } from "../words/index.js";
import { bullet, page, table, type TextStyle } from "./terminal-text.js";

/** One change as `changes --json` prints it. */
export interface ChangeFacts {
  readonly change: CalendarChange["change"];
  /** The day it has now; for what is gone, the day it had. */
  readonly day: Day;
  readonly summary: string;
  /** Absent for what is new. */
  readonly was?: { readonly uid: string; readonly day: Day; readonly summary: string };
  /** What else differs: `summary`, `details`, `time`, `reminder`, `colour`, `categories`. */
  readonly differs?: readonly string[];
  /** Lines of its description that are in one alone. */
  readonly said?: { readonly was: readonly string[]; readonly now: readonly string[] };
  /** A watering day that tells other amounts, and nothing else. */
  readonly amountsAlone?: true;
}

export function changeFacts(change: CalendarChange): ChangeFacts {
  if (change.change === "gone") {
    const { day, summary } = change.was;
    return { change: "gone", day, summary, was: change.was };
  }
  const { day, summary } = change.event;
  if (change.change === "new") return { change: "new", day, summary };
  const differs = [...new Set(change.properties.map((p) => propertyWords[p] ?? p))];
  const { was, said, amountsAlone } = change;
  return { change: change.change, day, summary, was, differs, ...given({ said, amountsAlone }) };
}

interface Changes {
  readonly changes: readonly ChangeFacts[];
  readonly feedings: readonly FeedingChange[];
}

/** Days of another year than today's bear it. */
interface Here {
  readonly amounts: Amounts;
  readonly today: Day;
}

export function changesText(
  { changes, feedings }: Changes,
  { amounts, today }: Here,
  style: TextStyle,
): string {
  if (changes.length === 0) return "Nothing changes.\n";
  const watering = changes.filter(({ amountsAlone }) => amountsAlone);
  const together = watering.length > 1 ? watering : [];
  const rows = changes
    .filter((change) => !together.slice(1).includes(change))
    .map((change) =>
      change === together[0]
        ? wateringRow(together, { amounts, today })
        : changeRow(change, { amounts, today }),
    );
  const why = feedings
    .map((change) => bullet(feedingChangeText(change, amounts), style.width))
    .join("\n");
  return page([table(rows, "", style.width), why, changeCounts(changes)]);
}

function changeRow(
  { change, day, summary, was, said, differs = [] }: ChangeFacts,
  { amounts, today }: Here,
): string[] {
  const before = was !== undefined && was.summary !== summary ? `; was: ${was.summary}` : "";
  const other = differs.filter((word) => word !== "summary" && word !== "details");
  return [
    change,
    shortDay(day, amounts, today),
    change === "moved" && was !== undefined ? `from ${shortDay(was.day, amounts, today)}` : "",
    `${summary}${before}${other.length > 0 ? ` (${other.join(", ")})` : ""}${said && before === "" ? saidWords(said) : ""}`,
  ];
}

/** Our choice: what differs is seen, and a calendar of many changes can still be read. */
const mostLines = 2;

/** `; calcium in each litre: 48.1, was 36; and 3 more lines` */
function saidWords({ was, now }: NonNullable<ChangeFacts["said"]>): string {
  const [before, after] = [was, now].map((lines) =>
    lines.map((line) => line.replace(/^- |[.:]$/g, "")),
  ) as [string[], string[]];
  const all = Array.from({ length: Math.max(was.length, now.length) }, (_, i) =>
    lineChange(before[i], after[i]),
  );
  const more = all.length - mostLines;
  return [...all.slice(0, mostLines), ...(more > 0 ? [`and ${counted(more, "more line")}`] : [])]
    .map((text) => `; ${text}`)
    .join("");
}

/** The clauses that differ in a line behind the same words and a colon; else the whole line. */
function lineChange(was: string | undefined, now: string | undefined): string {
  if (was === undefined) return `new: ${now ?? ""}`;
  // What stood in the file may be of another hand.
  if (now === undefined) return `no more: ${quoted(was)}`;
  const [before, after] = [was, now].map((line) => line.split(/(?<=[,;.:]) /)) as [
    string[],
    string[],
  ];
  const least = Math.min(before.length, after.length);
  let first = 0;
  while (first < least && before[first] === after[first]) first++;
  let last = 0;
  while (last < least - first && before.at(-1 - last) === after.at(-1 - last)) last++;
  const [gone, come] = [before, after].map((words) =>
    words
      .slice(first, words.length - last)
      .join(" ")
      .replace(/[,;.:]$/, ""),
  ) as [string, string];
  const label = after.slice(0, first).findLast((clause) => clause.endsWith(":"));
  return label === undefined || gone === "" || come === ""
    ? `now ${now}`
    : `${label} ${come}, was ${quoted(gone)}`;
}

/** All in one, since each day of weather changes many of them. */
function wateringRow(changes: readonly ChangeFacts[], { amounts, today }: Here): string[] {
  const [first, last] = [changes[0], changes.at(-1)].map(
    (one) => one && shortDay(one.day, amounts, today),
  );
  return [
    "changed",
    first ?? "",
    `to ${last ?? ""}`,
    `${changes.length} watering days tell other amounts of water`,
  ];
}

/** Of one planting: how many come or go, and why. */
function feedingChangeText(
  { planting, cropName, was, now, ...of }: FeedingChange,
  amounts: Amounts,
): string {
  const { feeding, reason } = of;
  const span =
    feeding === undefined ? reason : `${fedFromTo(feeding, amounts)} ${whyFedSo(feeding)}`;
  return `${planting} (${cropName}): ${moreOrFewer(was, now)}. ${span}`;
}

/** `2 new, 1 moved`, or `no event changed`. */
export function changeCounts(changes: readonly Pick<CalendarChange, "change">[]): string {
  const kinds = ["new", "moved", "changed", "gone"] as const;
  const counts = kinds
    .map((kind) => [changes.filter(({ change }) => change === kind).length, kind] as const)
    .filter(([n]) => n > 0);
  return counts.length === 0
    ? "no event changed"
    : counts.map(([n, kind]) => `${n} ${kind}`).join(", ");
}

/** iCalendar properties in the grower's words. */
const propertyWords: Readonly<Record<string, string>> = {
  SUMMARY: "summary",
  DESCRIPTION: "details",
  DTSTART: "time",
  DTEND: "time",
  COLOR: "colour",
  CATEGORIES: "categories",
  VALARM: "reminder",
};
