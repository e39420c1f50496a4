/** Water as a grower reads it, through the real commands. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, examplePath, scratchFile } from "../support/run-cli.js";
import { read } from "../support/read-cli.js";

const tomatoes = { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" };
const dublin = { latitude: 53.3, longitude: -6.3, elevation: "20 m" };

function watered(watering: unknown, differs: object = {}, planting: object = tomatoes): string {
  const beds = [{ id: "south", name: "South wall", area: "4 m2", watering, plantings: [planting] }];
  return gardenText({
    location: dublin,
    feeding: { days: ["wed", "sat"], away: [{ from: "2027-07-10", to: "2027-07-24" }] },
    beds,
    ...differs,
  });
}

test("a bed by the weather has a row of months, this week's litres, and its longest dry gap", async () => {
  const plan = await read(watered("auto"), "plan", "--today", "2027-07-06");
  expect(plan).toMatch(
    /Water, a week this week by month South wall \d+ L \(round 12 L\) May \d+ L, Jun \d+ L, Jul \d+ L/,
  );
  expect(plan).toContain(
    "Longest time without water: 20 days, 8 Jul to 27 Jul, while you are away (South wall)",
  );
  expect(plan).toMatch(
    /A can of feed is not the plants' water: .* brings South wall 12 L of \d+ L/,
  );
});

test("before the season no week is this week, and a bed without the key has no water", async () => {
  expect(await read(watered("auto"), "plan", "--today", "2027-03-01")).not.toContain("this week");
  expect(await read(watered(undefined), "plan")).not.toContain("Water, a week");
});

test("what cannot be told says why, and an amount needs no climate", async () => {
  const nowhere = { location: undefined };
  expect(await read(watered("auto", nowhere), "plan")).toContain(
    "toms: cannot tell, since the climate of the garden's place is not known (`location:`)",
  );
  expect(await read(watered("auto", nowhere), "check")).toContain("water of toms: cannot tell");
  expect(await read(watered("60 L", nowhere), "plan")).toMatch(/South wall .*May to Oct 60 L/);
});

test("check asks for watering once, and then tells long dry gaps instead of time away", async () => {
  const silent = await read(watered(undefined), "check");
  expect(silent.match(/write `watering: auto`/g)).toHaveLength(1);
  expect(silent).toContain("you are away from 10 Jul");
  const told = await read(watered("auto"), "check");
  expect(told).not.toMatch(/write `watering|- you are away from 10 Jul/);
  expect(told).toContain(
    "South wall: without water for 20 days (8 Jul to 27 Jul) while you are away: have someone water",
  );
});

test("check is silent on a gap of a week or less", async () => {
  const home = { feeding: { days: ["wed"] } };
  expect(await read(watered("auto", home), "check")).not.toContain("without water for");
});

test("a US garden reads gallons, and no litres", async () => {
  const text = readFileSync(examplePath("shared-garden"), "utf8");
  const plan = await read(text, "plan", "--today", "2027-06-10");
  expect(plan).toMatch(/Row A, bed 1 [\d /]+ gal .*Jun [\d /]+ gal, Jul/);
  expect(plan).not.toMatch(/\d L\b/);
  expect(await read(text, "check")).not.toMatch(/\d L\b/);
});

test("a southern garden's months run over New Year", async () => {
  const { stdout } = await cli(["plan", examplePath("orchard-corner")]);
  expect(stdout.replace(/\s+/g, " ")).toMatch(
    /Lower terrace Oct and Nov none, Dec \d+ L, Jan \d+ L, Feb \d+ L, Mar/,
  );
});

test("a sign's first advice is the dry gap before it, then what trials found, then the rest", async () => {
  const signs = [{ on: "2027-08-02", planting: "toms", sign: "blossom-end-rot" }];
  const plan = await read(watered("auto", { signs }), "plan", "--today", "2027-08-03");
  expect(plan).toMatch(
    /Water first: up to that day the bed was without water for 20 days at the longest \(8 Jul to 27 Jul\).*10 kPa.*14\.5 %.*Water evenly/,
  );
  const early = [{ on: "2027-07-06", planting: "toms", sign: "blossom-end-rot" }];
  expect(
    await read(watered("auto", { signs: early }), "plan", "--today", "2027-08-03"),
  ).not.toContain("Water first:");
});

test("beds that the usual rain covers are told no dry time, whoever is away", async () => {
  const months = (value: number): number[] => Array<number>(12).fill(value);
  const climate = { max: months(15), min: months(8), rain: months(200), source: "a test" };
  const rainy = watered("auto", { climate: { ...climate, temperature: "C", rain_unit: "mm" } });
  for (const command of ["check", "plan"] as const)
    expect(await read(rainy, command)).not.toMatch(/without water|have someone water/);
  const sheet = await read(rainy, "sheet", "--calcium");
  expect(sheet).not.toMatch(/without water|have someone water/);
  expect(await read(watered("auto"), "sheet", "--calcium")).toContain("have someone water");
});

test("what to do first names no dry time of a week or less", async () => {
  const home = watered("auto", { feeding: { days: ["wed", "sat"] } });
  expect(await read(home, "plan")).toContain("Longest time without water: 3 days");
  expect(await read(home, "sheet", "--calcium")).not.toContain("without water for");
});

test("the plan says what rain it counts on, for beds outdoors by the weather alone", async () => {
  const rain = /The usual rain of the place is taken off already, up to (\d+) mm a week/;
  const [, mm] = rain.exec(await read(watered("auto"), "plan")) ?? [];
  // Dublin has some 60 to 80 mm a month.
  expect(Number(mm)).toBeGreaterThan(9);
  expect(Number(mm)).toBeLessThan(20);
  expect(await read(watered("auto"), "sheet")).toMatch(rain);
  expect(await read(watered("60 L"), "plan")).not.toMatch(rain);
});

test("check advises once a bed on an amount of less than half of what the weather asks for", async () => {
  const little = await read(watered("20 L a week"), "check");
  expect(little.match(/- South wall: 20 L a week; in the week from \d+ \w+ /g)).toHaveLength(1);
  expect(little).toMatch(/the weather of a usual year asks for about \d+[05] L/);
  expect(await read(watered("60 L/week"), "check")).not.toContain("asks for about");
});

test("without watering the trials come first all the same, each crop with its own", async () => {
  const signs = [{ on: "2027-08-02", planting: "p", sign: "blossom-end-rot" }];
  const pepper = { ...tomatoes, id: "p", crop: "sweet pepper" };
  const plan = await read(watered(undefined, { signs }, pepper), "plan", "--today", "2027-08-03");
  expect(plan).not.toContain("Water first:");
  expect(plan).toMatch(/more than half of the peppers .* 5 to 8 % with it\. .*Water evenly/);
  expect(plan).not.toContain("10 kPa");
});

test("strawberries are watered after their last pick, to the end of the season", async () => {
  const berries = { id: "berries", crop: "strawberry", plants: 20, established: true };
  const climate = { source: "a test", temperature: "C", max: Array<number>(12).fill(22) };
  const dry = { climate: { ...climate, min: Array<number>(12).fill(10) } };
  const plan = await read(watered("auto", dry, berries), "plan");
  expect(plan).toMatch(/Aug \d+ L, Sep \d+ L, Oct \d+ L/);
});

test("a watering without a unit is told one that it may be", async () => {
  const file = scratchFile("garden.yaml", watered(25));
  const { code, stderr } = await cli(["check", file]);
  expect(code).toBe(1);
  expect(stderr).toContain("write the unit behind the number, like 25 mm");
});
