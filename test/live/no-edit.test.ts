/** A season in which nothing is edited and nothing is logged: then nothing changes. */
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, type Day } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { cli, examplePath, examples, scratchFolder } from "../support/run-cli.js";

/** A garden file and its calendar in a folder of their own. */
function gardenFolder(text: string): { garden: string; calendar: string } {
  const folder = scratchFolder();
  const garden = join(folder, "garden.yaml");
  writeFileSync(garden, text);
  copyFileSync(examplePath("orchard-rules"), join(folder, "orchard-rules.yaml"));
  return { garden, calendar: join(folder, "garden.ics") };
}

async function publish(garden: string, calendar: string, today: Day): Promise<string> {
  const { code, stderr } = await cli(["calendar", garden, "--out", calendar], { today });
  expect({ code, stderr, today }).toMatchObject({ code: 0 });
  return readFileSync(calendar, "utf8");
}

/** Each third day of the season, and all near a round, a visit to a batch, or the shells' first day. */
function daysToLookAt({ garden: { season }, published }: Plan): Day[] {
  const { rounds, feeds, batches, shells } = published;
  const events = [
    ...[...rounds, ...feeds].map(({ day }) => day),
    ...batches.flatMap(({ shellsOut, acidIn, made }) => [shellsOut, acidIn, made]),
    ...(shells === undefined ? [] : [shells.day]),
  ];
  const near = events.flatMap((on) => [-2, -1, 0, 1, 2].map((n) => addDays(on, n)));
  const thirds: Day[] = [];
  for (let on = season.from; on <= season.to; on = addDays(on, 3)) thirds.push(on);
  return [...new Set([...thirds, ...near, season.to])]
    .filter((on) => season.from < on && on <= season.to)
    .sort();
}

describe.each(examples)("%s", (name) => {
  test("the calendar written on any later day is the same", async () => {
    const { garden, calendar } = gardenFolder(readFileSync(examplePath(name), "utf8"));
    const { stdout } = await cli(["plan", garden, "--json"]);
    const {
      garden: { season },
    } = JSON.parse(stdout) as Plan;
    const first = await publish(garden, calendar, season.from);
    const published = await cli(["plan", garden, "--json", "--keep", calendar], {
      today: season.from,
    });
    for (const today of daysToLookAt(JSON.parse(published.stdout) as Plan)) {
      const text = await publish(garden, calendar, today);
      expect({ today, text }).toEqual({ today, text: first });
    }
  });
});
