/**
 * A hundred gardens through a whole season each, with growers who forget. `npm run play`; GARDENS=10
 * and SEED=7 ask for fewer and for others. What goes wrong is told with the acts that led to it.
 */
import { appendFileSync } from "node:fs";
import { test } from "vitest";
import { NoGarden, play, scriptOf } from "./season.js";
import { shrunken } from "./shrink.js";

const gardens = Number(process.env["GARDENS"] ?? 100);
const firstSeed = Number(process.env["SEED"] ?? 0);
const tries = Number(process.env["TRIES"] ?? 30);

test("a hundred seasons", async () => {
  const seen = { seasons: 0, acts: 0, commands: 0 };
  const refused = new Map<string, number>();
  const bad: string[] = [];
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
    if (played.violation === undefined) continue;
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
