/** What was written before: calendars, and calendars or plans whose days the next plan keeps. */
import { type EarlierCalendar, feedingDays, readEarlierCalendar } from "../calendar/index.js";
import { parseDay } from "../dates.js";
import type { Problem, Result } from "../problem.js";
import type { Published } from "../published/index.js";
import { type Plan, publishedBy } from "../season/index.js";
import { given } from "../values.js";
import { readBytes, shownName } from "./files.js";
import type { Shell } from "./shell.js";

export interface EarlierFile {
  readonly text: string;
  readonly calendar: EarlierCalendar;
}

/** A file that should be an earlier calendar, before it is known whose. */
export interface CalendarBytes {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly text: string;
  /** Its rounds: a new plan leaves them where they are unless moving one saves a round. */
  readonly published: Published;
}

/** Throws CommandError (exit code 3) where it cannot be read. */
export async function readCalendarFile(path: string, shell: Shell): Promise<CalendarBytes> {
  const bytes = await readBytes(path, shell);
  // The mark of byte order stays, so that what is written again is what was read.
  const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
  return { file: shownName(path), bytes, text, published: publishedIn(text) };
}

/** Problems where it is not a whole calendar of that garden. */
export function earlierCalendar(
  { file, bytes, text }: CalendarBytes,
  gardenId: string,
): Result<EarlierFile> {
  const calendar = calendarIn(text, file, gardenId);
  if (!calendar.ok) return calendar;
  if (!Buffer.from(text).equals(bytes)) return { ok: false, problems: [notUtf8(file, text)] };
  return { ok: true, value: { text, calendar: calendar.value } };
}

function notUtf8(file: string, text: string): Problem {
  const before = text.slice(0, Math.max(0, text.indexOf("\ufffd")));
  return {
    code: "damaged",
    file,
    at: { line: before.split("\n").length, column: 1 },
    message: "this calendar file is damaged: it is not UTF-8 text",
    mend: "write the calendar under another name, or move this file away if you no longer need it",
  };
}

interface KeptDays {
  readonly gardenId: string;
  readonly published: Published;
}

/**
 * Reads what `plan --json` printed or `calendar` wrote; a plan tells the days of each planting, a
 * calendar those of the rounds.
 *
 * @param extraRounds rounds above the fewest that may be spent on keeping them
 * @returns problems where it is neither. Throws CommandError (exit code 3) where it cannot be read.
 */
export async function loadKept(
  path: string,
  extraRounds: number | undefined,
  shell: Shell,
): Promise<Result<KeptDays>> {
  const { file, text, published } = await readCalendarFile(path, shell);
  if (/^\s*\{/.test(text)) {
    const plan = planIn(text);
    if (plan === undefined) return { ok: false, problems: [notAPlan(file)] };
    const { id: gardenId } = plan.garden;
    return { ok: true, value: { gardenId, published: publishedBy(plan, extraRounds) } };
  }
  const calendar = calendarIn(text, file);
  if (!calendar.ok) return calendar;
  const { gardenId } = calendar.value;
  return { ok: true, value: { gardenId, published: { ...published, ...given({ extraRounds }) } } };
}

function calendarIn(text: string, file: string, gardenId?: string): Result<EarlierCalendar> {
  const read = readEarlierCalendar(text, gardenId);
  if (read.ok) return read;
  return { ok: false, problems: read.problems.map((problem) => ({ ...problem, file })) };
}

/** The rounds of a calendar of ours; none of any other text. */
export function publishedIn(calendar: string): Published {
  return { days: feedingDays(calendar) };
}

/** Its days and names are all that is used of it, and all that is looked at. */
function planIn(text: string): Plan | undefined {
  try {
    const plan = JSON.parse(text) as Plan;
    const isWhole =
      // The version is a type of its own; a file may hold another.
      (plan.planVersion as number) === 1 &&
      typeof plan.garden.id === "string" &&
      plan.rounds.every(
        ({ day, beds }) =>
          parseDay(day) !== undefined &&
          beds.every(({ mixes }) =>
            mixes.every(({ feedings }) => feedings.every((f) => typeof f.planting === "string")),
          ),
      );
    return isWhole ? plan : undefined;
  } catch {
    return undefined;
  }
}

function notAPlan(file: string): Problem {
  return {
    code: "not-a-plan",
    file,
    at: { line: 1, column: 1 },
    message: "this is no whole plan of a season",
    mend: "give what `feedround plan --json` printed, or a calendar that `feedround calendar` wrote",
  };
}

export function keptOfOtherGarden(path: string, theirs: string, ours: string): Problem {
  return {
    code: "other-garden",
    file: shownName(path),
    at: { line: 1, column: 1 },
    message: `this is of the garden "${theirs}", not of "${ours}"`,
    mend: "give an earlier plan or calendar of the same garden",
  };
}
