/** A grower in the middle of a season: the garden file, its calendar, and what is remembered of both. */
// @ts-nocheck

import { copyFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse, stringify } from "yaml";
import { addDays, type Day, later } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import { cli, type CliResult, examplePath, scratchFolder } from "../../support/run-cli.js";
import type { GardenDraft } from "./gardens.js";
import { gapsOf, type ToldRound, type Truth, truthOn } from "./truth.js";

export interface Grower {
  readonly folder: string;
  /** The garden file names its calendar, so that every command knows it. */
  readonly isNamed: boolean;
  garden: GardenDraft;
  /** As the calendar was last published. */
  told: readonly ToldRound[];
  plan?: Plan;
  readonly batches: Map<string, ToldBatch>;
  readonly clients: Map<string, number>;
  /** Days that the log spoke of since then. */
  readonly spokenOf: Set<Day>;
  /** Days away were changed since then. */
  isAwayChanged: boolean;
  /** Batches told to be otherwise since they were begun. */
  readonly toldOtherwise: Set<string>;
}

/** A batch as it was last told before it was begun. */
export interface ToldBatch {
  readonly id: string;
  readonly number: number;
  readonly startOn: Day;
  readonly readyOn: Day;
  readonly useBy: Day;
  readonly volumeMl: number;
}

export function newGrower(garden: GardenDraft): Grower {
  const folder = scratchFolder();
  copyFileSync(examplePath("orchard-rules"), join(folder, "orchard-rules.yaml"));
  const grower: Grower = {
    folder,
    isNamed: garden.calendar?.file !== undefined,
    garden,
    told: [],
    batches: new Map(),
    clients: new Map(),
    spokenOf: new Set(),
    isAwayChanged: false,
    toldOtherwise: new Set(),
  };
  save(grower);
  return grower;
}

export function gardenPath({ folder }: Pick<Grower, "folder">): string {
  return join(folder, "garden.yaml");
}

export function calendarPath({ folder }: Pick<Grower, "folder">): string {
  return join(folder, "garden.ics");
}

export function save(grower: Grower): void {
  writeFileSync(gardenPath(grower), stringify(grower.garden));
}

/** What a command has written into the garden file. */
export function reread(grower: Grower): void {
  grower.garden = parse(readFileSync(gardenPath(grower), "utf8")) as GardenDraft;
}

export function calendarText(grower: Grower): string | undefined {
  const path = calendarPath(grower);
  return existsSync(path) ? readFileSync(path, "utf8") : undefined;
}

export async function runOn(
  grower: Grower,
  today: Day,
  now: string,
  command: string,
  ...rest: readonly string[]
): Promise<CliResult> {
  return cli([command, gardenPath(grower), ...rest], { today, now });
}

/** As every command sees the season now. */
export async function planOf(grower: Grower, today: Day): Promise<Plan | CliResult> {
  const keeping =
    grower.isNamed || calendarText(grower) === undefined ? [] : ["--keep", calendarPath(grower)];
  const result = await runOn(grower, today, `${today}T12:00:00Z`, "plan", "--json", ...keeping);
  return result.code === 0 ? (JSON.parse(result.stdout) as Plan) : result;
}

export function isPlan(answer: Plan | CliResult): answer is Plan {
  return "planVersion" in answer;
}

export function truthOf(grower: Grower, today: Day, plan = grower.plan): Truth {
  const gapOf = gapsOf(plan, grower.garden);
  return truthOn(grower.garden, grower.told, today, gapOf, (id, day) => canPour(grower, id, day));
}

/** What the file says of a batch that was told: begun late, given up, broken, or bottled on its own day. */
function canPour({ garden, batches }: Grower, id: string, day: Day): boolean {
  const told = batches.get(id);
  const listed = (garden.stock?.batches ?? []).find(
    (batch) =>
      batch.id === id ||
      batch.planned === id ||
      (told !== undefined && batch.planned === told.number),
  );
  if (listed === undefined) return true;
  const { shells_out, made, thrown_away, missed } = listed;
  if (missed !== undefined) return false;
  if (thrown_away !== undefined && (made === undefined || thrown_away < day)) return false;
  if (made !== undefined) return made <= day;
  const makingDays = garden.stock?.acid === "vinegar" ? 9 : 4;
  const soonest = addDays(shells_out ?? day, makingDays);
  return later(told?.readyOn ?? soonest, soonest) <= day;
}
