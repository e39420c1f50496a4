/** A whole season of one grower, day by day; the first thing that should not have happened ends it. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { addDays, type Day } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import type { CliResult } from "../../support/run-cli.js";
import { type Act, acts, doAct, LogRefused } from "./acts.js";
import { batchActs } from "./batch-acts.js";
import { badRevisions, rememberEntries, unlikePlan } from "./check-calendar.js";
import { movedToday, otherPast, tooSoon } from "./check-feedings.js";
import { badPours, brokenBatches, rememberBatches } from "./check-stock.js";
import { unlikeEachOther } from "./check-words.js";
import { Dice } from "./dice.js";
import { gardenOf } from "./gardens.js";
import {
  calendarPath,
  calendarText,
  type Grower,
  isPlan,
  newGrower,
  planOf,
  runOn,
  save,
  truthOf,
} from "./grower.js";
import { toldWith, type Truth } from "./truth.js";

/** What is done when; all that is random is drawn from its own dice, so that any act can be left out. */
export interface Script {
  readonly seed: number;
  /** The calendar is written every so many days, and on days with an act. */
  readonly everyDays: number;
  readonly acts: readonly PlannedAct[];
}

export interface PlannedAct {
  readonly day: Day;
  readonly name: string;
}

export interface Violation {
  readonly day: Day;
  readonly what: readonly string[];
}

export interface Played {
  readonly violation?: Violation;
  /** What was really done, in words. */
  readonly deeds: readonly string[];
  readonly commands: number;
  /** Edits that the program refused, by the code of its first problem; they were taken back. */
  readonly refused: readonly string[];
  readonly folder: string;
  /** The day on which the calendar was written last. */
  readonly last: Day;
}

const everyAct = { ...acts, ...batchActs };
const daysBefore = 20;

export function scriptOf(seed: number, everyDays?: number): Script {
  const dice = new Dice(seed, 2);
  const { season } = gardenOf(seed);
  const share = dice.pick([0.02, 0.06, 0.15]);
  const names = Object.keys(everyAct);
  const planned: PlannedAct[] = [];
  const usual = dice.pick([1, 2, 4, 7]);
  for (let day = addDays(season.from, -daysBefore); day <= season.to; day = addDays(day, 1))
    while (dice.chance(share)) planned.push({ day, name: dice.pick(names) });
  return { seed, everyDays: everyDays ?? usual, acts: planned };
}

/** Any problem of the invented garden itself: it is none that is played. */
export class NoGarden extends Error {}

export async function play(script: Script): Promise<Played> {
  const grower = newGrower(gardenOf(script.seed));
  const { season } = grower.garden;
  const deeds: string[] = [];
  const refused: string[] = [];
  let commands = 0;
  let last = addDays(season.from, -daysBefore);
  let isEdited = false;
  const from = addDays(season.from, -daysBefore);
  const first = await planOf(grower, from);
  if (!isPlan(first)) throw new NoGarden(first.stdout + first.stderr);
  const done = (day?: Day, what: readonly string[] = []): Played => ({
    ...(day === undefined ? {} : { violation: { day, what } }),
    ...{ deeds, commands, refused, folder: grower.folder, last },
  });
  const end = addDays(season.to, 2);
  for (let today = from, n = 0; today <= end; today = addDays(today, 1), n++) {
    if (n % script.everyDays === 0 || today === end) {
      const found = await publish(grower, today, `${today}T07:00:00Z`, isEdited, n % 14 === 0);
      isEdited = false;
      commands += 3;
      last = today;
      if (found.length > 0) return done(today, found);
    }
    const ofToday = script.acts.filter(({ day }) => day === today);
    for (const [i, { name }] of ofToday.entries()) {
      const act = everyAct[name];
      if (act === undefined) throw new Error(`no act is called ${name}`);
      const tried = await tryAct(act, grower, new Dice(script.seed, n, i), today);
      commands++;
      if (tried.wrong !== undefined) return done(today, tried.wrong);
      if (tried.refused !== undefined) refused.push(`${name}: ${tried.refused}`);
      if (tried.deed === undefined) continue;
      deeds.push(`${today} ${tried.deed}`);
      isEdited = true;
    }
    if (ofToday.length > 0 && n % 3 !== 1) {
      const found = await publish(grower, today, `${today}T20:00:00Z`, isEdited, false);
      isEdited = false;
      commands += 3;
      last = today;
      if (found.length > 0) return done(today, found);
    }
  }
  return done();
}

interface Tried {
  /** What was done, in words. */
  readonly deed?: string;
  /** It led to a garden with problems, and was taken back. */
  readonly refused?: string;
  readonly wrong?: readonly string[];
}

async function tryAct(act: Act, grower: Grower, dice: Dice, today: Day): Promise<Tried> {
  const { told } = grower;
  const garden = structuredClone(grower.garden);
  const otherwise = [...grower.toldOtherwise];
  try {
    const deed = await doAct(act, grower, dice, today);
    if (deed === undefined) return {};
    const plan = await planOf(grower, today);
    if (isPlan(plan)) return { deed };
    if (plan.code !== 1) return { wrong: [deed, ...linesOf(plan)] };
    grower.garden = garden;
    grower.told = told;
    grower.toldOtherwise.clear();
    for (const id of otherwise) grower.toldOtherwise.add(id);
    save(grower);
    return { refused: `${linesOf(plan)[1] ?? ""} (${deed})` };
  } catch (error) {
    if (error instanceof LogRefused) return { wrong: [error.message] };
    throw error;
  }
}

function linesOf({ code, stdout, stderr }: CliResult): string[] {
  return [`exit code ${code}`, ...`${stdout}${stderr}`.split("\n").filter(Boolean)];
}

/** Writes the calendar, and looks at all that should hold then. */
async function publish(
  grower: Grower,
  today: Day,
  now: string,
  isEdited: boolean,
  isFull: boolean,
): Promise<readonly string[]> {
  const before = calendarText(grower) ?? "";
  const write = (): Promise<CliResult> =>
    runOn(grower, today, now, "calendar", "--out", calendarPath(grower));
  const written = await write();
  if (written.code !== 0) return linesOf(written);
  const after = calendarText(grower) ?? "";
  const again = before === after ? written : await write();
  if (again.code !== 0) return linesOf(again);
  // Nothing was edited and nothing is written: the plan is that of the day before.
  if (before === after && !isEdited && !isFull) return [];
  const plan = await planOf(grower, today);
  if (!isPlan(plan)) return linesOf(plan);
  const truth = truthOf(grower, today, plan);
  const found = [
    ...(calendarText(grower) === after ? [] : ["written twice, and not the same"]),
    ...tooSoon(grower, plan, truth, today),
    ...movedToday(grower.told, plan, truth, today),
    ...otherPast(grower, plan, truth, today),
    ...badPours(grower, plan, truth, today),
    ...brokenBatches(grower, plan, today),
    ...badRevisions(grower, before, after, now, today),
    ...unlikePlan(after, plan, today),
    ...(isFull && grower.isNamed ? await unlikeEachOther(grower, plan, today) : []),
  ];
  if (found.length > 0) keepForLook(grower, before, after, plan);
  rememberTold(grower, plan, truth, after, today);
  return found;
}

function rememberTold(
  grower: Grower,
  plan: Plan,
  truth: Truth,
  calendar: string,
  today: Day,
): void {
  rememberBatches(grower, plan, today);
  rememberEntries(grower, calendar);
  grower.told = toldWith(grower.told, plan, truth.spokenOf, today);
  grower.plan = plan;
  grower.spokenOf.clear();
  grower.isAwayChanged = false;
}

/** Beside the garden, for whoever looks for the fault. */
function keepForLook(grower: Grower, before: string, after: string, plan: Plan): void {
  writeFileSync(join(grower.folder, "before.ics"), before);
  writeFileSync(join(grower.folder, "after.ics"), after);
  writeFileSync(join(grower.folder, "plan.json"), JSON.stringify(plan, null, 1));
}
