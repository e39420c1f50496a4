/** What was written before: an earlier calendar, or an earlier plan. */
import { type EarlierCalendar, readEarlierCalendar } from "../calendar/index.js";
import { mendedTexts, quoted } from "../legible.js";
import type { Problem, Result } from "../problem.js";
import { isPublished, type Published } from "../published/index.js";
import { shownName } from "./files.js";

export interface EarlierFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly text: string;
  readonly calendar: EarlierCalendar;
}

/** Problems where it is not a whole calendar of that garden. */
export function earlierCalendar(
  path: string,
  bytes: Uint8Array,
  gardenId: string,
): Result<EarlierFile> {
  // The mark of byte order stays, so that what is written again is what was read.
  const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
  const file = shownName(path);
  const read = readEarlierCalendar(text, gardenId);
  if (!read.ok)
    return { ok: false, problems: read.problems.map((problem) => ({ ...problem, file })) };
  if (!Buffer.from(text).equals(bytes)) return { ok: false, problems: [notUtf8(file, text)] };
  return { ok: true, value: { path, bytes, text, calendar: read.value } };
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

/** What an earlier `plan --json` of that garden has published; undefined where the text is no JSON. */
export function publishedInPlan(
  path: string,
  text: string,
  gardenId: string,
): Result<Published> | undefined {
  if (!/^\s*\{/.test(text)) return undefined;
  const plan = planIn(text);
  const refused = (code: string, message: string, mend: string): Result<Published> => {
    const problem = { code, file: shownName(path), at: { line: 1, column: 1 }, message, mend };
    return { ok: false, problems: [problem] };
  };
  if (plan === undefined)
    return refused(
      "not-a-plan",
      "this is no whole plan of a season",
      "give what `feedround plan --json` printed, or a calendar that `feedround calendar` wrote",
    );
  if (plan.gardenId !== gardenId)
    return refused(
      "other-garden",
      `this is of the garden "${quoted(plan.gardenId)}", not of "${gardenId}"`,
      "give an earlier plan or calendar of the same garden",
    );
  return { ok: true, value: plan.published };
}

/** What is used of a plan, and all that is looked at. */
interface LoosePlan {
  readonly planVersion?: unknown;
  readonly garden?: { readonly id?: unknown };
  readonly published?: unknown;
}

function planIn(text: string): { gardenId: string; published: Published } | undefined {
  try {
    const { planVersion, garden, published } = JSON.parse(text, mendedTexts) as LoosePlan;
    const gardenId = garden?.id;
    return planVersion === 1 && typeof gardenId === "string" && isPublished(published)
      ? { gardenId, published }
      : undefined;
  } catch {
    return undefined;
  }
}
