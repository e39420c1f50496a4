import { basename } from "node:path";
import { gunzipSync } from "node:zlib";
import { type Waiting, withLocks } from "../lock.js";
import { type Problem, problemLines } from "../problem.js";
import type { Plan } from "../season/index.js";
import type { TickSheet } from "../ticks/index.js";
import { given } from "../values.js";
import { nextAsks, todayAsks } from "../words/index.js";
import type { GardenReader } from "./garden-reader.js";
import type { PackedPlan, Reading } from "./garden-reading.js";
import type { AsOf, GardenSource } from "./garden-source.js";
import { readKept, writeKept } from "./kept.js";
import type { SubscribeLinks } from "./links.js";
import { writeOwn } from "./own-calendar.js";
import { problemPage } from "./plain-page.js";
import {
  nextModifiedS,
  renewed,
  representation,
  type Representation,
  shownAs,
} from "./representation.js";
import { troubleLine, troubleOf } from "./system-trouble.js";
import { always, isWithin, type Now, spanOfToday, type TimeSpan, todayIn } from "./today.js";

/** One garden as the server shows it. Plans and bytes are compressed: there may be a thousand. */
export interface GardenShow {
  readonly file: string;
  name: string;
  title: string;
  /** Files it depends on, besides its own. */
  reads: readonly string[];
  problems: readonly Problem[];
  good?: Good;
  /** Another process kept its file for itself: it is to be read again soon. */
  isHeld?: boolean;
  /** Hash of the kept file behind it, as last read or written. */
  keptHash?: string;
  page?: ShownPage;
  loading?: Promise<readonly string[]>;
  /** After something was written into its file. */
  rereading?: Promise<void>;
  /** Forms are taken one after the other: until the last of them is done. */
  sending?: Promise<unknown>;
}

interface Good {
  readonly calendar: Representation;
  /** Absent when only the calendar is left, after a start with a garden file that is broken. */
  readonly plan?: PackedPlan;
}

interface ShownPage extends TimeSpan {
  readonly shown: Representation;
  readonly good: Good | undefined;
  readonly problems: readonly Problem[];
}

export interface ShowContext {
  readonly source: Pick<GardenSource, "page">;
  readonly reader: GardenReader;
  /** A folder of the user's own: the secret, and what was last served. Made when it is not there. */
  readonly stateDir: string;
  readonly now: () => Now;
  /** Waits for another process; real unless given. */
  readonly pause?: Waiting["pause"];
  readonly linksTo: (name: string) => SubscribeLinks;
}

/** Not yet named. */
export function gardenShow(file: string): GardenShow {
  return { file, name: "", title: "", reads: [], problems: [] };
}

/**
 * Reads the garden file again and, when it is in order, shows what it says now; otherwise the last
 * good calendar stays. One reading at a time. Gives lines for the terminal.
 */
export async function reload(show: GardenShow, context: ShowContext): Promise<readonly string[]> {
  while (show.loading) await show.loading;
  const loading = read(show, context).finally(() => delete show.loading);
  show.loading = loading;
  return loading;
}

/** Once no reading is under way. */
export async function settled(show: GardenShow): Promise<void> {
  await show.rereading;
  while (show.loading) await show.loading;
}

export function wasRead({ loading, good, problems }: GardenShow): boolean {
  return loading === undefined && (good !== undefined || problems.length > 0);
}

async function read(show: GardenShow, context: ShowContext): Promise<readonly string[]> {
  const { file, isHeld } = show;
  const work = (): Promise<readonly string[]> => readLocked(show, context);
  const done = await withLocks([file], work, given({ pause: context.pause }));
  show.isHeld = !done.ok;
  if (done.ok) return done.value;
  return isHeld ? [] : done.problems.map((trouble) => `${show.name}: ${troubleLine(trouble)}`);
}

async function readLocked(show: GardenShow, context: ShowContext): Promise<readonly string[]> {
  const before = await takeUp(show, context);
  const now = context.now();
  const next = await context.reader.show(show.file, asOf(show, now));
  show.reads = next.reads.map(({ path }) => path).filter((path) => path !== show.file);
  const lines = next.ok
    ? await showNext(show, context, next, now.nowMs)
    : keepLast(show, next.problems);
  return [...before, ...lines];
}

/** What the next plan of a garden goes on from. */
export function asOf({ good }: GardenShow, now: Now): AsOf {
  const previous = good && gunzipSync(good.calendar.gzip).toString();
  return { ...now, ...given({ previous }) };
}

/** Goes on from what was served before the last stop, or by another server meanwhile. */
async function takeUp(show: GardenShow, { stateDir }: ShowContext): Promise<string[]> {
  const { kept, hash, notice } = await readKept(stateDir, show.file);
  const isKnown = hash === show.keptHash;
  if (hash === undefined) delete show.keptHash;
  else show.keptHash = hash;
  if (kept && !isKnown)
    show.good = { calendar: representation("calendar", kept.calendar, kept.modifiedS) };
  return notice === undefined ? [] : [`${show.name}: ${notice}`];
}

function keepLast(show: GardenShow, problems: readonly Problem[]): string[] {
  show.problems = problems;
  const kept = show.good ? "the last good calendar stays" : "there is no calendar to show yet";
  return [...problemLines(problems), `${show.name}: ${kept}`];
}

async function showNext(
  show: GardenShow,
  { stateDir }: ShowContext,
  { plan, calendar, ownCalendar, notices }: Reading & { ok: true },
  nowMs: number,
): Promise<string[]> {
  const { good: last, problems } = show;
  const same = last?.calendar.hash === calendar.hash;
  const modifiedS = nextModifiedS(last?.calendar.modifiedS, nowMs);
  show.problems = [];
  show.title = plan.title;
  show.good = { plan, calendar: same ? last.calendar : shownAs("calendar", calendar, modifiedS) };
  const lines = [...notices];
  if (!same) lines.push(last ? "the new calendar is live" : "the calendar is live");
  else if (problems.length > 0) lines.push("in order again, the calendar is unchanged");
  if (!same) {
    const kept = { keptVersion: 1, file: show.file, calendar: calendar.text, modifiedS } as const;
    try {
      show.keptHash = await writeKept(stateDir, kept, show.keptHash);
    } catch (error) {
      lines.push(troubleLine(troubleOf(error, stateDir)));
    }
  }
  lines.push(...(await writeOwn(ownCalendar, calendar.text)));
  return lines.map((line) => `${show.name}: ${line}`);
}

/** What can be marked, as of the last good reading. */
export function ticksOf({ good }: GardenShow): { sheet: TickSheet; timezone: string } | undefined {
  if (good?.plan?.ticks === undefined) return undefined;
  const sheet = JSON.parse(gunzipSync(good.plan.ticks).toString()) as TickSheet;
  return { sheet, timezone: good.plan.timezone };
}

/** After a start with a broken file nobody has told the garden's own name. */
export function titleOf({ title, name }: GardenShow): string {
  return title === "" ? name : title;
}

function planOf(good: Good | undefined): Plan | undefined {
  return good?.plan && (JSON.parse(gunzipSync(good.plan.gzip).toString()) as Plan);
}

/** What the garden asks for today, else on its next day; undefined where its plan is not known. */
export function asksNow({ good }: GardenShow, now: Now): string | undefined {
  if (good?.plan === undefined) return undefined;
  const { timezone, index } = good.plan;
  const today = todayIn(timezone, now);
  const next = index.asked.find(({ day }) => day >= today);
  if (next === undefined) return index.done;
  return next.day === today
    ? todayAsks(next.asks, today, index.amounts)
    : nextAsks(next, index.amounts, today);
}

/** The page of today in the garden's zone, made when it is asked for and anything in it has changed. */
export function pageOf(show: GardenShow, context: ShowContext, now: Now): Representation {
  const { page, good, problems } = show;
  const isOfNow = page?.good === good && page?.problems === problems;
  if (isOfNow && isWithin(page, now.nowMs)) return page.shown;
  const shown = renewed(page?.shown, pageContent(show, context, now), now.nowMs);
  const span = good?.plan ? spanOfToday(good.plan.timezone, now) : always;
  show.page = { shown, good, problems, ...span };
  return shown;
}

function pageContent(show: GardenShow, context: ShowContext, now: Now): string {
  const { good } = show;
  // Where files lie on this computer is nobody else's business.
  const problems = show.problems.map((one) => ({ ...one, file: basename(one.file) }));
  const plan = planOf(good);
  if (plan === undefined) return problemPage(titleOf(show), problems);
  const today = todayIn(plan.garden.timezone, now);
  return context.source.page(plan, { today, problems, subscribe: context.linksTo(show.name) });
}
