/** Days that an earlier plan or calendar has published, for the next plan to keep. */
import { feedingDays, readEarlierCalendar } from "../calendar/index.js";
import { parseDay } from "../dates.js";
import type { Problem, Result } from "../problem.js";
import type { Published } from "../published/index.js";
import { type Plan, publishedBy } from "../season/index.js";
import { readBytes, shownName } from "./files.js";
import type { Shell } from "./shell.js";

export interface KeptDays {
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
  extraRounds: number,
  shell: Shell,
): Promise<Result<KeptDays>> {
  const file = shownName(path);
  const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(await readBytes(path, shell));
  if (/^\s*\{/.test(text)) {
    const plan = planIn(text);
    if (plan === undefined) return { ok: false, problems: [notAPlan(file)] };
    const kept = { gardenId: plan.garden.id, published: publishedBy(plan, extraRounds) };
    return { ok: true, value: kept };
  }
  const calendar = readEarlierCalendar(text);
  if (!calendar.ok) return { ok: false, problems: calendar.problems.map((p) => ({ ...p, file })) };
  const published = publishedIn(text, extraRounds);
  return { ok: true, value: { gardenId: calendar.value.gardenId, published } };
}

/** The rounds of a calendar of ours; none of any other text. */
export function publishedIn(calendar: string, extraRounds = 0): Published {
  return { days: feedingDays(calendar), extraRounds };
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
