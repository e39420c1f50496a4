import {
  calendarChanges,
  calendarPieces,
  type CalendarUse,
  midnightIn,
} from "../calendar/index.js";
import { type Day, earlier } from "../dates.js";
import { counted } from "../garden/index.js";
import { dayOfFile } from "../log/index.js";
import { given } from "../values.js";
import { changeCounts } from "./changes-text.js";
import { isDevice, shownName, whileLocked, writeText } from "./files.js";
import { type LoadedGarden, loadGarden } from "./load.js";
import { ownCalendar } from "./published-state.js";
import { giveText, reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell, wrongUsage } from "./shell.js";
import { resolve } from "node:path";

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
  const { today, extraRounds } = options;
  const wishes = { ...given({ today, extraRounds }), isTimeless: true };
  const loaded = await loadGarden(file, shell, wishes);
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { timezone } = loaded.value.garden;
  const made = earlier(dayOfFile(loaded.value.garden), today ?? shell.today(timezone));
  const stamp = options.stamp ?? midnightIn(made, timezone);
  const text = [...piecesOf(loaded.value, true, { ...options, stamp })].join("");
  await giveText(text, device, shell);
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
  const loaded = await loadGarden(file, shell, {
    ...given({ today, extraRounds }),
    ...{ calendarOut: out, isForWriting: true },
  });
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { garden, plan, earlier: was } = loaded.value;
  refuseOtherDay(garden.timezone, options, shell);
  // Beside the calendar that the garden file names, any other is a copy that no plan goes on from.
  const isCopy = (ownCalendar(file, garden) ?? resolve(out)) !== resolve(out);
  const pieces = piecesOf(loaded.value, isCopy, {
    ...options,
    stamp: options.stamp ?? shell.now(),
  });
  const outcome = await writeText(
    out,
    pieces,
    shell,
    isCopy ? undefined : (was?.bytes ?? "nothing"),
  );
  const told =
    was === undefined || outcome === "unchanged"
      ? counted(plan.totals.rounds, "round")
      : changeCounts(calendarChanges(was.calendar, plan, plan.today));
  shell.stderr(`${shownName(out)}: ${outcome}, ${told}\n`);
  return exitCodes.fine;
}

/** What a file holds on a day is taken as published on it: only a real day may say so. */
function refuseOtherDay(timezone: string, { today, stamp }: CalendarOptions, shell: Shell): void {
  const realDay = shell.today(timezone);
  if (today === undefined || today === realDay || stamp !== undefined) return;
  throw wrongUsage(
    `--today ${today} with --out: the file would say that its rounds were published on ${realDay}, as they are seen on ${today}; leave out --today, give --stamp with the time it is to be of, or leave out --out to print it`,
  );
}

function piecesOf(
  { plan, earlier: was }: LoadedGarden,
  isCopy: boolean,
  options: CalendarOptions & { readonly stamp: string },
): Iterable<string> {
  const calendar = calendarPieces(plan, {
    for: options.for,
    today: plan.today,
    stamp: options.stamp,
    isCopy,
    ...given({ previous: was?.text }),
  });
  // The earlier file has been read without problems.
  if (!calendar.ok) throw new CommandError(exitCodes.problems, calendar.problems[0]?.message ?? "");
  return calendar.value;
}
