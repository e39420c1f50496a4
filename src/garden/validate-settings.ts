import type {
  Calendar,
  FeedingDays as FeedingFile,
  GardenFile,
  Reminder,
} from "../compiled/garden-file.js";
import { type Weekday, weekdays } from "../dates.js";
import { didYouMean } from "../suggest.js";
import { given } from "../values.js";
import { type Fields, list, record, text } from "./fields.js";
import type { CalendarWishes, FeedingDays, SourceWater } from "./garden.js";
import type { Validation } from "./validation.js";

const hardnessBounds = { least: 0, most: 5000, words: "0 to 5,000 mg/L" };

export function validateSourceWater(value: unknown, fields: Fields): SourceWater | undefined {
  if (value === undefined) return undefined;
  const raw = record<NonNullable<GardenFile["source_water"]>>(value);
  const hardness = (key: "hardness" | "alkalinity"): number | undefined =>
    fields.quantity(raw[key], ["source_water", key], "hardness", hardnessBounds);
  return given({
    hardnessMgPerL: hardness("hardness"),
    alkalinityMgPerL: hardness("alkalinity"),
    calciumMgPerL: fields.quantity(raw.calcium, ["source_water", "calcium"], "concentration", {
      least: 0,
      most: 2000,
      words: "0 to 2,000 mg/L",
    }),
  });
}

export function validateFeeding(
  value: unknown,
  { fields, tables, assume }: Validation,
): FeedingDays {
  const raw = record<FeedingFile>(value);
  const days = list(raw.days).filter((d): d is Weekday => weekdays.includes(d as Weekday));
  if (raw.days === undefined) assume("feeding on any day of the week, as no days are given");
  const startMin = fields.clock(raw.time, ["feeding", "time"]);
  const durationMin = fields.minutes(raw.duration, ["feeding", "duration"]);
  if (durationMin !== undefined && (durationMin < 1 || durationMin > 720))
    fields.report({
      code: "absurd-size",
      path: ["feeding", "duration"],
      message: `\`${String(raw.duration)}\` is no length for a round`,
      mend: "write 1 min to 12 hours, like 30 min",
    });
  return {
    days: days.length > 0 ? weekdays.filter((d) => days.includes(d)) : weekdays,
    ...given({ timeOfDay: startMin === undefined ? undefined : clockText(startMin) }),
    durationMin: durationMin ?? tables.usual.round_min,
    away: list(raw.away).flatMap((span, i) => fields.span(span, ["feeding", "away", i]) ?? []),
  };
}

export function validateCalendar(
  value: unknown,
  timeOfDay: string | undefined,
  { fields, tables }: Validation,
): CalendarWishes {
  const { usual } = tables;
  const raw = record<Calendar>(value);
  const color = text(raw.color) ?? "yellowgreen";
  if (!tables.cssColors.has(color))
    fields.report({
      code: "color",
      path: ["calendar", "color"],
      message: `\`${color}\` is no CSS colour name`,
      mend: didYouMean(color, tables.cssColors, "write a name such as yellowgreen"),
    });
  const refreshMin = fields.minutes(raw.refresh, ["calendar", "refresh"]);
  if (refreshMin !== undefined && refreshMin < 60)
    fields.report({
      code: "absurd-size",
      path: ["calendar", "refresh"],
      message: `\`${String(raw.refresh)}\` is too short`,
      mend: "write 1 hour or more, like 6 hours",
    });
  const reminders =
    raw.reminders === undefined
      ? [timeOfDay === undefined ? -usual.reminder_clock_min : usual.reminder_before_min]
      : list(raw.reminders).flatMap(
          (reminder, i) => reminderMinBefore(reminder, i, timeOfDay, fields) ?? [],
        );
  return {
    group: raw.group === "bed" ? "bed" : "round",
    remindersMinBefore: reminders,
    color,
    refreshHours: Math.round((refreshMin ?? usual.refresh_hours * 60) / 60),
  };
}

function reminderMinBefore(
  value: unknown,
  index: number,
  timeOfDay: string | undefined,
  fields: Fields,
): number | undefined {
  const path = ["calendar", "reminders", index];
  const raw = record<Reminder>(value);
  const before = fields.minutes(raw.before, [...path, "before"]);
  const at = fields.clock(raw.at, [...path, "at"]);
  if (raw.before !== undefined && (raw.at !== undefined || raw.days_before !== undefined)) {
    fields.report({
      code: "reminder",
      path,
      message: "a reminder has both `before` and a clock time",
      mend: "keep `before`, or keep `at` with `days_before`",
    });
    return undefined;
  }
  if (before !== undefined) return before;
  if (raw.before === undefined && raw.at === undefined)
    fields.report({
      code: "reminder",
      path,
      message: "the reminder has no clock time",
      mend: 'add it, like `at: "18:00"`',
    });
  if (at === undefined) return undefined;
  const daysBefore = typeof raw.days_before === "number" ? raw.days_before : 0;
  return daysBefore * 1440 - at + (timeOfDay === undefined ? 0 : minutesOf(timeOfDay));
}

function minutesOf(clock: string): number {
  const [hours, minutes] = clock.split(":");
  return Number(hours) * 60 + Number(minutes);
}

function clockText(minutes: number): string {
  const pad = (n: number): string => String(n).padStart(2, "0");
  return `${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
}
