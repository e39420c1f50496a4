import type {
  Calendar,
  FeedingDays as FeedingFile,
  Reminder,
  SourceWater as SourceWaterFile,
} from "../compiled/garden-file.js";
import { weekdays } from "../dates.js";
import { meant, nearest } from "../suggest.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import type { CalendarWishes, FeedingDays, SourceWater } from "./garden.js";
import type { Bounds } from "./quantity.js";
import type { Usual } from "./usual.js";
import type { Validation } from "./validation.js";

const hardnessBounds: Bounds = { least: 0, most: 5000, words: "0 to 5,000 mg/L" };
const calciumBounds: Bounds = { least: 0, most: 2000, words: "0 to 2,000 mg/L" };

export function validateSourceWater(entry: Entry<SourceWaterFile>): SourceWater {
  return given({
    hardnessMgPerL: entry.quantity("hardness", "hardness", hardnessBounds),
    alkalinityMgPerL: entry.quantity("alkalinity", "hardness", hardnessBounds),
    calciumMgPerL: entry.quantity("calcium", "concentration", calciumBounds),
  });
}

export function validateFeeding(
  entry: Entry<FeedingFile>,
  { tables, assume }: Validation,
): FeedingDays {
  const { raw } = entry;
  if (raw.days === undefined) assume("feeding on any day of the week, as no days are given");
  const startMin = entry.clock("time");
  const durationMin = entry.minutes("duration");
  if (durationMin !== undefined && (durationMin < 1 || durationMin > 720))
    entry.report({
      code: "absurd-size",
      path: entry.at("duration"),
      message: `\`${String(raw.duration)}\` is no length for a round`,
      mend: "write 1 min to 12 hours, like 30 min",
    });
  const days = entry.weekdays("days");
  return {
    days: days.length > 0 ? days : weekdays,
    ...given({
      timeOfDay: startMin === undefined ? undefined : clockText(startMin),
      extraRounds: entry.number("extra_rounds"),
    }),
    durationMin: durationMin ?? tables.usual.round_min,
    away: entry.entries("away").flatMap((span) => {
      const { from, to } = span.span("time away");
      return from === undefined || to === undefined ? [] : [{ from, to }];
    }),
  };
}

export function validateCalendar(
  entry: Entry<Calendar>,
  timeOfDay: string | undefined,
  { tables: { cssColors, usual } }: Validation,
): CalendarWishes {
  const { raw } = entry;
  const color = entry.text("color") ?? "yellowgreen";
  if (!cssColors.has(color))
    entry.report({
      code: "color",
      path: entry.at("color"),
      message: `\`${color}\` is no CSS colour name`,
      ...meant(nearest(color, cssColors), "write a name such as yellowgreen"),
    });
  const refreshMin = entry.minutes("refresh");
  if (refreshMin !== undefined && refreshMin < 60)
    entry.report({
      code: "absurd-size",
      path: entry.at("refresh"),
      message: `\`${String(raw.refresh)}\` is too short`,
      mend: "write 1 hour or more, like 6 hours",
    });
  return {
    group: raw.group === "bed" ? "bed" : "round",
    remindersMinBefore: remindersOf(
      raw.reminders === undefined ? undefined : entry.entries("reminders"),
      timeOfDay,
      usual,
    ),
    color,
    refreshHours: Math.round((refreshMin ?? usual.refresh_hours * 60) / 60),
  };
}

/** Whether a path leads out of the garden file's folder. */
export function liesElsewhere(file: string): boolean {
  return /^[/~]|^[A-Za-z]:|\\/.test(file) || file.split("/").includes("..");
}

/** Nothing elsewhere on the computer is written because a garden file says so. */
export function validateCalendarFile(entry: Entry<Calendar>): string | undefined {
  const file = entry.text("file");
  if (file === undefined || file === "") return undefined;
  const isElsewhere = liesElsewhere(file);
  if (!isElsewhere && /[^/]\.ics$/i.test(file)) return file;
  entry.report({
    code: "calendar-file",
    path: entry.at("file"),
    message: isElsewhere
      ? `\`${file}\` does not lie beside the garden file or below it`
      : `\`${file}\` is no name of a calendar file`,
    mend: "write a name that ends in .ics, like weir.ics or public/weir.ics",
  });
  return undefined;
}

/** Of what begins at a time of day, or lasts all day: the usual one where none are told. */
export function remindersOf(
  told: readonly Entry<Reminder>[] | undefined,
  timeOfDay: string | undefined,
  usual: Usual,
): number[] {
  return told === undefined
    ? [timeOfDay === undefined ? -usual.reminder_clock_min : usual.reminder_before_min]
    : told.flatMap((one) => reminderMinBefore(one, timeOfDay) ?? []);
}

function reminderMinBefore(
  entry: Entry<Reminder>,
  timeOfDay: string | undefined,
): number | undefined {
  const { raw, path } = entry;
  const [before, at] = [entry.minutes("before"), entry.clock("at")];
  if (raw.before !== undefined && (raw.at !== undefined || raw.days_before !== undefined)) {
    entry.report({
      code: "reminder",
      path,
      message: "a reminder has both `before` and a clock time",
      mend: "keep `before`, or keep `at` with `days_before`",
    });
    return undefined;
  }
  if (before !== undefined) return before;
  if (raw.before === undefined && raw.at === undefined)
    entry.report({
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

export function clockText(minutes: number): string {
  const [hours, rest] = [Math.trunc(minutes / 60), minutes % 60];
  return `${String(hours).padStart(2, "0")}:${String(rest).padStart(2, "0")}`;
}
