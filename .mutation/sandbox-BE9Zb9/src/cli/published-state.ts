/** Which file tells what was published of a garden, and what it tells. */
// @ts-nocheck

import { dirname, resolve } from "node:path";
import { daysTold, type EarlierCalendar } from "../calendar/index.js";
import type { Garden } from "../garden/index.js";
import type { Result } from "../problem.js";
import { nothingPublished, type Published } from "../published/index.js";
import { earlierCalendar, type EarlierFile, publishedInPlan } from "./earlier-files.js";
import { exists, isDevice, readBytes } from "./files.js";
import type { Shell } from "./shell.js";

export interface StateWishes {
  /** An earlier plan or calendar, named for this run alone; it must be there. */
  readonly keep?: string;
  /** The calendar about to be written, for a garden file that names none. */
  readonly calendarOut?: string;
  /** Text of the calendar that was served last, for a garden file that names none; empty for the first. */
  readonly served?: string;
  /** The file that holds it, where it is one that was published. */
  readonly servedFile?: string;
}

export interface PublishedState {
  readonly published: Published;
  /** Absent where nothing was published yet, or an earlier plan tells of it. */
  readonly earlier?: EarlierFile;
  /** Only the days of the rounds are known: an earlier version wrote the file, or it is a copy. */
  readonly isDaysOnly: boolean;
}

/** The calendar that the garden file names as its own, beside it. */
export function ownCalendar(gardenPath: string, { calendarFile }: Garden): string | undefined {
  if (calendarFile === undefined) return undefined;
  return resolve(gardenPath === "-" ? "." : dirname(gardenPath), calendarFile);
}

/**
 * Undefined for a garden whose calendar is kept nowhere. Problems where the file is not of that
 * garden, or damaged. Throws CommandError (exit code 3) where it cannot be read.
 */
export async function publishedState(
  gardenPath: string,
  garden: Garden,
  { keep, calendarOut, served, servedFile }: StateWishes,
  shell: Shell,
): Promise<Result<PublishedState | undefined>> {
  const path = keep ?? ownCalendar(gardenPath, garden) ?? calendarOut;
  if (path === undefined)
    return served === undefined
      ? { ok: true, value: undefined }
      : lastServed(served, servedFile, garden, shell);
  if (keep === undefined && (!(await exists(path)) || (await isDevice(path))))
    return { ok: true, value: { published: nothingPublished, isDaysOnly: false } };
  const bytes = await readBytes(path, shell);
  const inPlan =
    keep === undefined
      ? undefined
      : publishedInPlan(path, new TextDecoder().decode(bytes), garden.id);
  if (inPlan !== undefined)
    return inPlan.ok ? { ok: true, value: { published: inPlan.value, isDaysOnly: false } } : inPlan;
  const earlier = earlierCalendar(path, bytes, garden.id);
  if (!earlier.ok) return earlier;
  return { ok: true, value: { ...stateIn(earlier.value.calendar), earlier: earlier.value } };
}

/**
 * Another garden under the same name, or a damaged state of the server's own, is never a reason to
 * serve nothing; a file that was published is never written over without its history.
 */
function lastServed(
  text: string,
  file: string | undefined,
  garden: Garden,
  shell: Shell,
): Result<PublishedState> {
  const nothing = { published: nothingPublished, isDaysOnly: false };
  if (text === "") return { ok: true, value: nothing };
  const earlier = earlierCalendar(file ?? "", Buffer.from(text), garden.id);
  if (earlier.ok)
    return { ok: true, value: { ...stateIn(earlier.value.calendar), earlier: earlier.value } };
  if (file !== undefined) return earlier;
  const why = earlier.problems.map(({ message }) => message).join("; ");
  shell.stderr(`the calendar begins anew: ${why}\n`);
  return { ok: true, value: nothing };
}

function stateIn(calendar: EarlierCalendar): Omit<PublishedState, "earlier"> {
  const { published } = calendar;
  return { published: published ?? daysTold(calendar), isDaysOnly: published === undefined };
}
