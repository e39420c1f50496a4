import type { PlanGarden } from "../season/index.js";
import type { UnnamedEvent } from "./calendar-event.js";
import type { Told } from "./told.js";

/** One event for each day, code and subject. */
export function noticeEvents(garden: PlanGarden, told: readonly Told[]): UnnamedEvent[] {
  const notices = new Map<string, [Told, ...Told[]]>();
  for (const item of told) {
    const key = `${item.code}/${item.subject}/${item.day}`;
    const notice = notices.get(key);
    if (notice) notice.push(item);
    else notices.set(key, [item]);
  }
  return [...notices.values()].map(([first, ...more]): UnnamedEvent => {
    const all = [first, ...more];
    return {
      kind: "notice",
      line: `${first.code}/${first.subject}`,
      day: first.day,
      summary: all.map(({ message }) => firstSentence(message)).join("; "),
      description: all.flatMap(({ lines }) => lines),
      categories: ["Garden notice"],
      color: "goldenrod",
      // Reminders of a garden that feeds at a time of day count from that time, not from midnight.
      remindersMinBefore: garden.timeOfDay === undefined ? garden.calendar.remindersMinBefore : [],
    };
  });
}

/** A note may go on for several; the description holds them all. */
function firstSentence(message: string): string {
  return message.replace(/\. .*$/s, "");
}
