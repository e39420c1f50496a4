import { addDays, type Day, dayNumber, type DaySpan } from "../dates.js";
import type { Plan } from "../season/index.js";
import { byText, given, grouped } from "../values.js";
import { bedOfFeeding, type CalendarEvent, lineOfKey } from "./calendar-event.js";
import type { Grouping } from "./feeding-events.js";
import { nearestPairs } from "./nearest-pairs.js";
import { planEvents } from "./plan-events.js";
import { isLogged, logIdIn, type WrittenEvent } from "./vevent.js";

export interface EventMatches {
  /** Events of the new plan, each with the earlier one it continues; not those whose past entry stands. */
  readonly events: readonly EventMatch[];
  /** Past entries that stand as they are. */
  readonly standing: readonly WrittenEvent[];
  /** Past entries of which nothing was given. */
  readonly missed: readonly WrittenEvent[];
  /** Earlier events that nothing continues, cancelled ones too. */
  readonly gone: readonly WrittenEvent[];
}

interface EventMatch {
  readonly event: CalendarEvent;
  readonly was?: WrittenEvent;
}

/** Our choice: an event further off is another one, not the same one moved. Feedings are 7 to 14 days apart. */
const movesWithinDays = 14;

/** Our choice: that long past entries outlast their season. */
const pastKeptDays = 60;

/**
 * Which earlier event each new one continues: the one of the same key, a cancelled one if need be;
 * what the log tells of another day than the published one, the one of the published day; the events
 * to come that are left over are paired with the nearest day in their row, as many as can be and with
 * the least days moved in sum. So events that stay on their day keep their UID, and inserting one
 * renames none.
 *
 * An entry before today stands as it is: nothing but the log continues it, and only when it says
 * something else than when the entry was written.
 */
export function matchEvents(
  earlier: readonly WrittenEvent[],
  plan: Plan,
  today: Day,
): EventMatches {
  const isPast = ({ day, cancelled }: WrittenEvent): boolean => !cancelled && day < today;
  const past = earlier.filter(isPast);
  const events = planEvents(plan, groupingOf(past, plan));
  const matched = continued(earlier, events, today);
  const byLog = (event: CalendarEvent, was: WrittenEvent): boolean =>
    event.happened === "logged"
      ? event.logId !== logIdIn(was)
      : event.happened === "as-published" && isLogged(was);

  const toldDays = new Set(
    past.flatMap(({ key, day }) => (bedOfFeeding(key) === undefined ? [] : [day])),
  );
  const isMissed = missedIn(plan, events);
  const matches: EventMatch[] = [];
  const standing: WrittenEvent[] = [];
  for (const event of events) {
    const was = matched.get(event);
    if (was !== undefined && isPast(was) && !byLog(event, was)) standing.push(was);
    else if (was !== undefined || !isTold(event, toldDays))
      matches.push({ event, ...given({ was }) });
  }
  const taken = new Set(matched.values());
  const left = grouped(
    earlier.filter((was) => !taken.has(was)),
    (was) => {
      if (!isPast(was) || isOver(was.day, plan.garden.season, today)) return "gone";
      return isMissed(was) ? "missed" : "standing";
    },
  );
  return {
    events: matches,
    standing: [...standing, ...(left.get("standing") ?? [])],
    missed: left.get("missed") ?? [],
    gone: left.get("gone") ?? [],
  };
}

/** Past days stay in the grouping they were published in. */
function groupingOf(past: readonly WrittenEvent[], { garden }: Plan): Grouping {
  const groups = new Map(
    past.flatMap(({ key, day }) => {
      const bed = bedOfFeeding(key);
      return bed === undefined ? [] : [[day, bed === "" ? "round" : "bed"] as const];
    }),
  );
  return ({ day, standsFor = day }) =>
    groups.get(standsFor) ?? groups.get(day) ?? garden.calendar.group;
}

function continued(
  earlier: readonly WrittenEvent[],
  events: readonly CalendarEvent[],
  today: Day,
): Map<CalendarEvent, WrittenEvent> {
  const byKey = new Map(earlier.map((was) => [was.key, was]));
  const matched = new Map<CalendarEvent, WrittenEvent>();
  const taken = new Set<WrittenEvent>();
  const pair = (event: CalendarEvent, was: WrittenEvent | undefined) => {
    if (was === undefined || taken.has(was)) return;
    matched.set(event, was);
    taken.add(was);
  };
  for (const event of events) pair(event, byKey.get(event.key));
  for (const event of events) {
    const was = byKey.get(`${lineOfKey(event.key)}/${event.standsFor ?? ""}`);
    if (!matched.has(event) && was?.cancelled === false) pair(event, was);
  }

  const isAhead = ({ day }: Pick<WrittenEvent, "day">): boolean => day >= today;
  const movedFrom = byLine(
    earlier.filter((was) => !was.cancelled && isAhead(was) && !taken.has(was)),
  );
  const movedTo = byLine(events.filter((event) => isAhead(event) && !matched.has(event)));
  for (const [line, news] of movedTo) {
    const olds = movedFrom.get(line) ?? [];
    for (const [i, j] of nearestPairs(dayNumbers(olds), dayNumbers(news), movesWithinDays)) {
      const event = news[j];
      if (event) pair(event, olds[i]);
    }
  }
  return matched;
}

/** Whether a past entry tells of a day already what is taken as given on it. */
function isTold({ happened, day, key }: CalendarEvent, toldDays: ReadonlySet<Day>): boolean {
  return happened === "as-published" && bedOfFeeding(key) !== undefined && toldDays.has(day);
}

/** An entry of an earlier season is over with its own day, stock being made well ahead of a season. */
function isOver(day: Day, season: DaySpan, today: Day): boolean {
  const isEarlier = day < addDays(season.from, -pastKeptDays);
  return today > addDays(isEarlier ? day : season.to, pastKeptDays);
}

/** Whether nothing of a past feeding was given, as the log says. */
function missedIn(
  { missed = [] }: Plan,
  events: readonly CalendarEvent[],
): (was: WrittenEvent) => boolean {
  const byDay = <T extends { readonly day: Day }>(those: readonly T[]): ((day: Day) => T[]) => {
    const groups = grouped(those, ({ day }) => day);
    return (day) => groups.get(day) ?? [];
  };
  const missedOn = byDay(missed.filter(({ why }) => why === "log"));
  const eventsOn = byDay(events);
  return ({ key, day }) => {
    const bed = bedOfFeeding(key);
    if (bed === undefined) return false;
    const isHere = (other: string | undefined): boolean =>
      other !== undefined && (bed === "" || other === "" || other === bed);
    return (
      missedOn(day).some((m) => isHere(m.bed)) &&
      !eventsOn(day).some((event) => isHere(bedOfFeeding(event.key)))
    );
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
