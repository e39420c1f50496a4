import type { Day } from "../dates.js";
import type { BedRound, Plan, PlanWarning, Round } from "../season-plan.js";
import { calendarEvent, type CalendarEvent, gardenUid } from "./calendar-event.js";
import { descriptionOf, warningLines } from "./description.js";
import { summaryOf } from "./summary.js";

/** An event without its names yet. */
type UnnamedEvent = Omit<CalendarEvent, "key" | "uid"> & { readonly line: string };

/**
 * The calendar of a plan: one event a round, or one a bed, as `plan.garden.calendar.group` says, and
 * one for each warning that names a day on which no event could tell it. Sorted by day.
 */
export function planEvents(plan: Plan): CalendarEvent[] {
  const namespace = gardenUid(plan.garden.id);
  const named = ({ line, ...event }: UnnamedEvent) => calendarEvent(namespace, line, event);
  const feedings =
    plan.garden.calendar.group === "bed"
      ? plan.rounds.flatMap((round) => round.beds.map((bed) => bedEvent(plan, round, bed)))
      : plan.rounds.map((round) => roundEvent(plan, round));
  return [...feedings, ...noticeEvents(plan)].map(named).sort(byDay);
}

function roundEvent(plan: Plan, round: Round): UnnamedEvent {
  const warnings = plan.warnings.filter(({ day }) => day === round.day);
  return feedingEvent(plan, round, "", summaryOf(round.beds), round.beds, warnings);
}

function bedEvent(plan: Plan, round: Round, bed: BedRound): UnnamedEvent {
  const warnings = plan.warnings.filter(
    (warning) => warning.day === round.day && [undefined, bed.bed].includes(bedOf(plan, warning)),
  );
  return feedingEvent(plan, round, bed.bed, summaryOf([bed], bed.bedName), [bed], warnings);
}

function feedingEvent(
  { garden }: Plan,
  round: Round,
  line: string,
  summary: string,
  beds: readonly BedRound[],
  warnings: readonly PlanWarning[],
): UnnamedEvent {
  const routes = new Set(beds.flatMap(({ mixes }) => mixes.map(({ route }) => route)));
  const { timeOfDay } = round;
  return {
    line,
    kind: "feeding",
    day: round.day,
    ...(timeOfDay === undefined
      ? {}
      : { time: { timeOfDay, timezone: garden.timezone, durationMin: garden.durationMin } }),
    summary,
    description: descriptionOf(beds, warnings, garden.amounts),
    categories: [
      "Feeding",
      ...(routes.has("drench") ? ["Soil drench"] : []),
      ...(routes.has("foliar") ? ["Leaf spray"] : []),
    ],
    color: garden.calendar.color,
    remindersMinBefore: garden.calendar.remindersMinBefore,
  };
}

/** Warnings whose day has no feeding event that tells them, one event for each day, code and subject. */
function noticeEvents(plan: Plan): UnnamedEvent[] {
  const notices = new Map<string, { readonly day: Day; warnings: PlanWarning[] }>();
  for (const warning of plan.warnings) {
    const { day } = warning;
    if (day === undefined || isTold(plan, warning, day)) continue;
    const line = `${warning.code}/${warning.planting ?? warning.bed ?? ""}`;
    const key = `${line}/${day}`;
    const notice = notices.get(key);
    if (notice) notice.warnings.push(warning);
    else notices.set(key, { day, warnings: [warning] });
  }
  return [...notices].map(([key, notice]) =>
    noticeEvent(plan, key.slice(0, -"/YYYY-MM-DD".length), notice.day, notice.warnings),
  );
}

function noticeEvent(
  { garden }: Plan,
  line: string,
  day: Day,
  warnings: readonly PlanWarning[],
): UnnamedEvent {
  return {
    line,
    kind: "notice",
    day,
    summary: warnings.map(({ message }) => message).join("; "),
    description: warnings.flatMap(warningLines),
    categories: ["Garden notice"],
    color: "goldenrod",
    // Reminders of a garden that feeds at a time of day count from that time, not from midnight.
    remindersMinBefore: garden.timeOfDay === undefined ? garden.calendar.remindersMinBefore : [],
  };
}

function isTold(plan: Plan, warning: PlanWarning, day: Day): boolean {
  const round = plan.rounds.find((r) => r.day === day);
  if (round === undefined) return false;
  if (plan.garden.calendar.group === "round") return true;
  const bed = bedOf(plan, warning);
  return bed === undefined || round.beds.some((b) => b.bed === bed);
}

function bedOf(plan: Plan, warning: PlanWarning): string | undefined {
  return warning.bed ?? plan.plantings.find(({ id }) => id === warning.planting)?.bed;
}

function byDay(a: CalendarEvent, b: CalendarEvent): number {
  return compare(a.day, b.day) || compare(a.key, b.key);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
