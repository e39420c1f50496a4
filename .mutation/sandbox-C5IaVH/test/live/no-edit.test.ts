/** A season in which nothing is edited and nothing is logged: then nothing changes. */
// @ts-nocheck

import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, day, type Day, eachDay } from "../../src/dates.js";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText } from "../support/a-garden.js";
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

/** The calendar of the first day of the season, then on each day to look at. */
async function expectSameOnAnyDay(garden: string, calendar: string): Promise<void> {
  const { stdout } = await cli(["plan", garden, "--json"]);
  const { season } = (JSON.parse(stdout) as Plan).garden;
  const first = await publish(garden, calendar, season.from);
  const published = await cli(["plan", garden, "--json", "--keep", calendar], {
    today: season.from,
  });
  for (const today of daysToLookAt(JSON.parse(published.stdout) as Plan)) {
    const text = await publish(garden, calendar, today);
    expect({ today, text }).toEqual({ today, text: first });
  }
}

describe.each(examples)("%s", (name) => {
  test("the calendar written on any later day is the same", async () => {
    const { garden, calendar } = gardenFolder(readFileSync(examplePath(name), "utf8"));
    await expectSameOnAnyDay(garden, calendar);
  });
});

/** Days that swing about 16 degC, warmer and colder than the place's means by turns. */
function weatherRows(from: string, to: string): string {
  const rows = [...eachDay({ from: day(from), to: day(to) })].map((on, i) => {
    const mean = 16 + 5 * Math.sin(i / 9);
    return `${on},${(mean - 5).toFixed(1)},${(mean + 6).toFixed(1)},1`;
  });
  return ["date,tmin_c,tmax_c,rain_mm", ...rows, ""].join("\n");
}

test("in a place with a climate and weather, seen and foretold, the calendar is the same too", async () => {
  const text = gardenText({
    location: { latitude: 53.3, longitude: -6.3 },
    weather: { seen: "seen.csv", forecast: "forecast.csv" },
    feeding: { days: ["wed", "sat"] },
    stock: { keep: "fridge" },
    beds: [
      {
        id: "south",
        plantings: [
          { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" },
          { id: "bush", crop: "bush tomato", plants: 4, transplanted: "2027-05-28" },
          { id: "peppers", crop: "sweet pepper", plants: 4, transplanted: "2027-05-24" },
          { id: "cukes", crop: "cucumber", plants: 3, transplanted: "2027-06-01" },
        ],
      },
    ],
  });
  const { garden, calendar } = gardenFolder(text);
  const files = [
    ["seen.csv", weatherRows("2027-04-20", "2027-07-04")],
    ["forecast.csv", weatherRows("2027-07-05", "2027-07-18")],
  ] as const;
  const stagesOf = async (): Promise<unknown> => {
    const { code, stdout, stderr } = await cli(["plan", garden, "--json"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    return (JSON.parse(stdout) as Plan).plantings.map(({ stages }) => stages);
  };
  for (const [name] of files)
    writeFileSync(join(garden, "..", name), weatherRows("2027-04-20", "2027-04-20"));
  const byMeans = await stagesOf();
  for (const [name, rows] of files) writeFileSync(join(garden, "..", name), rows);
  // The weather moves stages: it is not for nothing that it is there.
  expect(await stagesOf()).not.toEqual(byMeans);
  await expectSameOnAnyDay(garden, calendar);
});
