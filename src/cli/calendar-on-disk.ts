/** Calendar files that were written before, as they lie on the disk. */
import {
  type CalendarProblem,
  type EarlierCalendar,
  readEarlierCalendar,
} from "../calendar/index.js";
import type { Problem, Result } from "../problem.js";
import type { Published } from "../published/index.js";
import { readBytes, shownName } from "./files.js";
import { publishedIn } from "./kept-plan.js";
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
  const calendar = readEarlierCalendar(text, gardenId);
  if (!calendar.ok) return { ok: false, problems: calendar.problems.map((p) => ({ ...p, file })) };
  if (!Buffer.from(text).equals(bytes)) return { ok: false, problems: [notUtf8(file, text)] };
  return { ok: true, value: { text, calendar: calendar.value } };
}

function notUtf8(file: string, text: string): Problem {
  const before = text.slice(0, Math.max(0, text.indexOf("\ufffd")));
  const problem: CalendarProblem = {
    code: "damaged",
    at: { line: before.split("\n").length, column: 1 },
    message: "this calendar file is damaged: it is not UTF-8 text",
    mend: "write the calendar under another name, or move this file away if you no longer need it",
  };
  return { ...problem, file };
}
