import { calendarChanges, calendarText, type CalendarUse } from "../calendar/index.js";
import type { Day } from "../dates.js";
import { counted } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { given } from "../values.js";
import { changeCounts } from "./changes-text.js";
import { earlierCalendar, type EarlierFile, readCalendarFile } from "./earlier-files.js";
import { exists, isDevice, writeText } from "./files.js";
import { loadGarden } from "./load.js";
import { reportProblems } from "./report.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export interface CalendarOptions {
  readonly out?: string;
  readonly for: CalendarUse;
  readonly stamp?: string;
  readonly today?: Day;
}

export async function calendarCommand(
  file: string,
  options: CalendarOptions,
  shell: Shell,
): Promise<number> {
  const { today } = options;
  const out = options.out === "-" ? undefined : options.out;
  const before =
    out !== undefined && (await exists(out)) && !(await isDevice(out))
      ? await readCalendarFile(out, shell)
      : undefined;
  const loaded = await loadGarden(file, shell, {
    ...given({ today }),
    ...(before === undefined ? {} : { keep: before.published }),
    isTimeless: true,
  });
  if (!loaded.ok) return reportProblems(loaded.problems, {}, shell);
  const { plan } = loaded.value;
  if (out === undefined) {
    shell.stdout(textOver(undefined, plan, options, shell));
    return exitCodes.fine;
  }
  let earlier: EarlierFile | undefined;
  if (before !== undefined) {
    const found = earlierCalendar(before, plan.garden.id);
    if (!found.ok) return reportProblems(found.problems, {}, shell);
    earlier = found.value;
  }
  const outcome = await writeText(out, textOver(earlier, plan, options, shell));
  const told =
    earlier === undefined || outcome === "unchanged"
      ? counted(plan.totals.rounds, "round")
      : changeCounts(calendarChanges(earlier.calendar, plan, todayOf(plan, options, shell)));
  shell.stderr(`${out}: ${outcome}, ${told}\n`);
  return exitCodes.fine;
}

/** A first file bears no time of its making unless one is given; a revision bears its own. */
function textOver(
  earlier: EarlierFile | undefined,
  plan: Plan,
  options: CalendarOptions,
  shell: Shell,
): string {
  const stamp = options.stamp ?? (earlier === undefined ? undefined : shell.now());
  const calendar = calendarText(plan, {
    for: options.for,
    today: todayOf(plan, options, shell),
    ...given({ stamp }),
    ...(earlier === undefined ? {} : { previous: earlier.text }),
  });
  // The earlier file has been read without problems.
  if (!calendar.ok) throw new CommandError(exitCodes.problems, calendar.problems[0]?.message ?? "");
  return calendar.value;
}

function todayOf({ garden }: Plan, { today }: CalendarOptions, shell: Shell): Day {
  return today ?? shell.today(garden.timezone);
}
