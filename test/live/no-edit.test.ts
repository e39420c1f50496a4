/** A season in which nothing is edited and nothing is logged: then nothing changes. */
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, day, type Day } from "../../src/dates.js";
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

describe.each(examples)("%s", (name) => {
  test("the calendar written on any later day is the same", async () => {
    const text = readFileSync(examplePath(name), "utf8");
    const { garden, calendar } = gardenFolder(text);
    const season = /season: \{ from: (\S+), to: (\S+) \}/.exec(text);
    const [from, to] = [day(season?.[1] ?? ""), day(season?.[2] ?? "")];
    const first = await publish(garden, calendar, from);
    for (let today = addDays(from, 1); today <= to; today = addDays(today, 1))
      expect({ today, text: await publish(garden, calendar, today) }).toEqual({
        today,
        text: first,
      });
  });
});
