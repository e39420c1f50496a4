import { calendarChanges, calendarText, type CalendarUse, midnightIn } from "../calendar/index.js";
import { type Day, earlier } from "../dates.js";
import { counted } from "../garden/index.js";
import { dayOfFile } from "../log/index.js";
import type { Plan } from "../season/index.js";
import { given } from "../values.js";
import { changeCounts } from "./changes-text.js";
import { earlierCalendar, type EarlierFile, readCalendarFile } from "./earlier-files.js";
import { exists, isDevice, whileLocked, writeText } from "./files.js";
import { loadGarden } from "./load.js";
import { giveText, reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";

export interface CalendarOptions {
  readonly out?: string;
  readonly for: CalendarUse;
  readonly stamp?: string;
  readonly today?: Day;
  readonly extraRounds?: number;
}

export async function calendarCommand(
  file: string,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const out = options.out === "-" ? undefined : options.out;
  // What goes through a pipe can't be kept up.
  return out === undefined || (await isDevice(out))
    ? printCalendar(file, out, options, shell)
    : whileLocked(file === "-" ? out : file, shell, () =>
        keepUpCalendar(file, out, options, shell),
      );
}

async function printCalendar(
  file: string,
  device: string | undefined,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const loaded = await loadGarden(file, shell, {
    ...given({ today: options.today }),
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { garden, plan } = loaded.value;
  const made = earlier(dayOfFile(garden), todayOf(plan, options, shell));
  const stamp = options.stamp ?? midnightIn(made, garden.timezone);
  await giveText(textOver(undefined, plan, { ...options, stamp }, shell), device, shell);
  return exitCodes.fine;
}

/** Over the file that is there, if there is one. */
async function keepUpCalendar(
  file: string,
  out: string,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const { today, extraRounds } = options;
  const before = (await exists(out)) ? await readCalendarFile(out, shell) : undefined;
  const loaded = await loadGarden(file, shell, {
    ...given({ today, keep: before && { ...before.published, ...given({ extraRounds }) } }),
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  refuseOtherDay(plan, options, shell);
  const found = before === undefined ? undefined : earlierCalendar(before, plan.garden.id);
  if (found?.ok === false) return reportProblems(found.problems, {}, shell);
  const was = found?.value;
  const stamp = options.stamp ?? shell.now();
  const text = textOver(was, plan, { ...options, stamp }, shell);
  const outcome = await writeText(out, text, before?.bytes ?? "nothing");
  const told =
    was === undefined || outcome === "unchanged"
      ? counted(plan.totals.rounds, "round")
      : changeCounts(calendarChanges(was.calendar, plan, todayOf(plan, options, shell)));
  shell.stderr(`${out}: ${outcome}, ${told}\n`);
  return exitCodes.fine;
}

/** What a file holds on a day is taken as published on it: only a real day may say so. */
function refuseOtherDay({ garden }: Plan, { today, stamp }: CalendarOptions, shell: Shell): void {
  const realDay = shell.today(garden.timezone);
  if (today === undefined || today === realDay || stamp !== undefined) return;
  throw wrongUsage(
    `--today ${today} with --out: the file would say that its rounds were published on ${realDay}, as they are seen on ${today}; leave out --today, give --stamp with the time it is to be of, or leave out --out to print it`,
  );
}

function textOver(
  was: EarlierFile | undefined,
  plan: Plan,
  options: CalendarOptions & { readonly stamp: string },
  shell: Shell,
): string {
  const calendar = calendarText(plan, {
    for: options.for,
    today: todayOf(plan, options, shell),
    stamp: options.stamp,
    ...given({ previous: was?.text }),
  });
  // The earlier file has been read without problems.
  if (!calendar.ok) throw new CommandError(exitCodes.problems, calendar.problems[0]?.message ?? "");
  return calendar.value;
}

function todayOf({ garden }: Plan, { today }: CalendarOptions, shell: Shell): Day {
  return today ?? shell.today(garden.timezone);
}
