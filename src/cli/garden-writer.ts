/** How a server writes into garden files: by the code of `log`, under the garden's lock. */
import { basename } from "node:path";
import type { Day } from "../dates.js";
import { decodeText, type Garden, largestGardenBytes } from "../garden/index.js";
import type { Problem, Result } from "../problem.js";
import { nothingPublished, type Published } from "../published/index.js";
import {
  type AsOf,
  type GardenWriter,
  hashOfText,
  type Outcome,
  type Saved,
  todayIn,
} from "../serve/index.js";
import type { Tick } from "../ticks/index.js";
import { byteOrderMarkOf, readBytes, shownName, whileLocked, writeText } from "./files.js";
import { refusedTick, type TickWish, tickWish } from "./log-tick.js";
import { publishedState } from "./published-state.js";
import { withMend } from "./report.js";
import { CommandError, type Shell } from "./shell.js";
import {
  type LogAsk,
  type LogOutcome,
  type LogWish,
  unknownBatches,
  writeLog,
} from "./write-log.js";

export function gardenWriter(shell: Shell): GardenWriter {
  return {
    tick: (file, tick, asOf) => inOutcome(file, () => writeTick(file, tick, asOf, shell)),
    takeBack: (file, undo, asOf) =>
      inOutcome(file, async () => {
        const ask: LogAsk<LogWish> = {
          wish: () => Promise.resolve({ ok: true, value: { edits: undo } }),
          plan: planFor(asOf),
        };
        const outcome = await writeLog(file, ask, shellAt(asOf, shell));
        if (outcome.kind === "refused") return refusedOf(outcome);
        return outcome.kind === "nothing"
          ? { kind: "already", told: "there was nothing to take back" }
          : { kind: "written", told: "taken out of the garden file again", undo: outcome.undo };
      }),
    save: (file, { text, openedHash }) =>
      inOutcome(file, () =>
        whileLocked(file, shell, () => saveText(file, text, openedHash, shell)),
      ),
  };
}

/** A shell whose day is the one asked for; what it would tell is told with the plan. */
function shellAt(asOf: AsOf, shell: Shell): Shell {
  return {
    ...shell,
    today: (timezone) => todayIn(timezone, asOf),
    stderr: () => undefined,
  };
}

function planFor({ previous }: AsOf): { readonly served: string } {
  return { served: previous ?? "" };
}

async function writeTick(file: string, tick: Tick, asOf: AsOf, shell: Shell): Promise<Outcome> {
  const at = shellAt(asOf, shell);
  const ask: LogAsk<TickWish> = {
    wish: async (now) => {
      const on = dayOf(tick, asOf, now.garden);
      if (!on.ok) return { ok: true, value: refusedTick(on.problems.join("; ")) };
      const published = await publishedTo(file, now.garden, asOf, at);
      return { ok: true, value: tickWish(now, { tick, on: on.value }, published) };
    },
    plan: planFor(asOf),
  };
  const outcome = await writeLog(file, ask, at);
  switch (outcome.kind) {
    case "refused":
      return refusedOf(outcome);
    case "nothing":
      return outcome.wish.instead ?? { kind: "already", told: outcome.wish.told };
    case "written": {
      const { told, remarks = [] } = outcome.wish;
      const all = [told, ...remarks, ...unknownBatches(outcome)];
      return { kind: "written", told: all.join(". "), undo: outcome.undo };
    }
  }
}

/** Clocks of telephones differ so much. Our choice. */
const aheadMs = 5 * 60_000;
/** A tick that waited longer is of another season. Our choice. */
const waitedMs = 400 * 86_400_000;

/** The day that the grower named, else the garden's day at the tap, else at its arrival. */
function dayOf({ on, tappedMs }: Tick, asOf: AsOf, { timezone }: Garden): Result<Day, string> {
  const { nowMs } = asOf;
  const refuse = (why: string): Result<Day, string> => ({ ok: false, problems: [why] });
  if (on === undefined && tappedMs !== undefined) {
    if (tappedMs > nowMs + aheadMs)
      return refuse("the clock of this device is ahead: set it right, or name the day");
    if (tappedMs < nowMs - waitedMs)
      return refuse(
        "this was marked more than 400 days ago: write it into the garden file by hand",
      );
  }
  // A clock that is a little ahead makes no tomorrow.
  const tapMs = Math.min(tappedMs ?? nowMs, nowMs);
  const today = todayIn(timezone, asOf);
  const day = on ?? todayIn(timezone, { ...asOf, nowMs: tapMs });
  return day > today
    ? refuse(`${day} is still to come: mark it when it is done`)
    : { ok: true, value: day };
}

/** Where the calendar can't be read, the file alone tells: a damaged one keeps nobody from ticking. */
async function publishedTo(
  file: string,
  garden: Garden,
  asOf: AsOf,
  shell: Shell,
): Promise<Published> {
  const state = await publishedState(file, garden, planFor(asOf), shell);
  return (state.ok ? state.value?.published : undefined) ?? nothingPublished;
}

function refusedOf({
  problems,
  isOfNewText,
}: LogOutcome<LogWish> & { kind: "refused" }): Outcome & { kind: "refused" } {
  const line = (problem: Problem): string =>
    isOfNewText || problem.code === "changed-since"
      ? withMend(problem)
      : `line ${problem.at.line} of the garden file: ${withMend(problem)}`;
  return { kind: "refused", told: problems.map(line) };
}

async function saveText(
  file: string,
  typed: string,
  openedHash: string,
  shell: Shell,
): Promise<Saved> {
  const text = typed.replace(/^\ufeff/, "");
  const refuse = (why: string): Saved => ({ kind: "refused", told: [why] });
  if (Buffer.byteLength(text) > largestGardenBytes)
    return refuse("the text is larger than any garden: nothing was saved");
  if (/[\0\p{Cs}]/u.test(text))
    return refuse("the text holds signs that are no letters: take them out");
  const bytes = await readBytes(file, shell);
  const before = decodeText(bytes, file);
  if (!before.ok) return refuse(before.problems.map(withMend).join("; "));
  const hash = hashOfText(text);
  if (before.value === text) return { kind: "saved", hash };
  const now = hashOfText(before.value);
  if (now !== openedHash) return { kind: "conflict", text: before.value, hash: now };
  await writeText(file, byteOrderMarkOf(bytes) + text, shell, bytes);
  return { kind: "saved", hash };
}

/** Trouble with the file is told without the folder that it lies in: that is nobody else's business. */
async function inOutcome<T>(
  file: string,
  work: () => Promise<T>,
): Promise<T | { readonly kind: "refused"; readonly told: readonly string[] }> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof CommandError)) throw error;
    return {
      kind: "refused",
      told: [error.message.replaceAll(shownName(file), shownName(basename(file)))],
    };
  }
}
