import { dayNumber } from "../dates.js";
import { byText, given, grouped } from "../values.js";
import { type CalendarEvent, lineOfKey } from "./calendar-event.js";
import { nearestPairs } from "./nearest-pairs.js";
import type { WrittenEvent } from "./vevent.js";

export interface EventMatches {
  /** All events of the new plan, each with the earlier one it continues. */
  readonly events: readonly { readonly event: CalendarEvent; readonly was?: WrittenEvent }[];
  /** Earlier events that no new one continues, cancelled ones too. */
  readonly gone: readonly WrittenEvent[];
}

/** Our choice: an event further off is another one, not the same one moved. Feedings are 7 to 14 days apart. */
const movesWithinDays = 14;

/**
 * Which earlier event each new one continues: the one of the same key, a cancelled one if need be;
 * the events left over are paired with the nearest day in their row, as many as can be and with the
 * least days moved in sum. So events that stay on their day keep their UID, and inserting one renames none.
 */
export function matchEvents(
  earlier: readonly WrittenEvent[],
  events: readonly CalendarEvent[],
): EventMatches {
  const byKey = new Map(earlier.map((was) => [was.key, was]));
  const matched = new Map<CalendarEvent, WrittenEvent>();
  const taken = new Set<WrittenEvent>();
  const pair = (event: CalendarEvent, was: WrittenEvent | undefined) => {
    if (was === undefined) return;
    matched.set(event, was);
    taken.add(was);
  };
  for (const event of events) pair(event, byKey.get(event.key));

  const movedFrom = byLine(earlier.filter((was) => !was.cancelled && !taken.has(was)));
  const movedTo = byLine(events.filter((event) => !matched.has(event)));
  for (const [line, news] of movedTo) {
    const olds = movedFrom.get(line) ?? [];
    for (const [i, j] of nearestPairs(dayNumbers(olds), dayNumbers(news), movesWithinDays)) {
      const event = news[j];
      if (event) pair(event, olds[i]);
    }
  }
  return {
    events: events.map((event) => ({ event, ...given({ was: matched.get(event) }) })),
    gone: earlier.filter((was) => !taken.has(was)),
  };
}

/** Rows of events, each by day. */
function byLine<T extends Pick<WrittenEvent, "key" | "day">>(
  events: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const inOrder = [...events].sort((a, b) => byText(a.day, b.day));
  return grouped(inOrder, ({ key }) => lineOfKey(key));
}

function dayNumbers(events: readonly Pick<WrittenEvent, "day">[]): number[] {
  return events.map(({ day }) => dayNumber(day));
}
