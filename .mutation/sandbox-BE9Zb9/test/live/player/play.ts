/**
 * A hundred gardens through a whole season each, with growers who forget. `npm run play`; GARDENS=10
 * and SEED=7 ask for fewer and for others. What goes wrong is told with the acts that led to it.
 */
// @ts-nocheck

import { execFileSync } from "node:child_process";
import { appendFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { calendarPath, gardenPath } from "./grower.js";
import { NoGarden, play, type Played, scriptOf } from "./season.js";
import { shrunken } from "./shrink.js";

const gardens = Number(process.env["GARDENS"] ?? 100);
const firstSeed = Number(process.env["SEED"] ?? 0);
const tries = Number(process.env["TRIES"] ?? 30);

/** So many seasons end with a start of the built program, which is to write what stands there. */
const starts = 50;

function calendarOf(played: Played): string {
  return readFileSync(calendarPath(played), "utf8");
}

function startedOn(played: Played): string {
  const main = join(import.meta.dirname, "../../../dist/cli/main.js");
  const on = ["--today", played.last, "--stamp", `${played.last}T20:00:00Z`];
  const argv = [main, "calendar", gardenPath(played), "--out", calendarPath(played), ...on];
  execFileSync(process.execPath, argv, { stdio: "pipe" });
  return calendarOf(played);
}

test("a hundred seasons", async () => {
  const seen = { seasons: 0, acts: 0, commands: 0 };
  const refused = new Map<string, number>();
  const bad: string[] = [];
  let started = 0;
  for (let seed = firstSeed; seen.seasons < gardens; seed++) {
    const script = scriptOf(seed);
    const played = await play(script).catch((error: unknown) => {
      if (error instanceof NoGarden) return undefined;
      throw new Error(`seed ${seed}`, { cause: error });
    });
    if (played === undefined) continue;
    seen.seasons++;
    seen.acts += played.deeds.length;
    seen.commands += played.commands;
    for (const what of played.refused) refused.set(what, (refused.get(what) ?? 0) + 1);
    if (process.env["TELL"] !== undefined)
      appendFileSync(process.env["TELL"], `${seed}: ${played.deeds.length} ${played.commands}\n`);
    if (played.violation === undefined) {
      if (started++ < starts) {
        const before = calendarOf(played);
        expect(startedOn(played)).toBe(before);
      }
      continue;
    }
    const { script: least, played: again } = await shrunken(script, tries);
    const { day, what } = again.violation ?? played.violation;
    const told = [
      `seed ${seed}, every ${least.everyDays} days, ${day}:`,
      ...what.map((line) => `  ! ${line}`),
      ...again.deeds.map((deed) => `  - ${deed}`),
      `  in ${again.folder}`,
    ].join("\n");
    console.log(told);
    if (process.env["TELL"] !== undefined) appendFileSync(process.env["TELL"], `${told}\n`);
    bad.push(told);
  }
  console.log(seen, bad.length, "gone wrong");
  console.log([...refused.keys()].join("\n"));
  if (bad.length > 0) throw new Error(`${bad.length} of ${seen.seasons} seasons went wrong`);
});
