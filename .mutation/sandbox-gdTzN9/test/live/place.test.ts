/** The climate of the garden's place, as the commands tell it. */
// @ts-nocheck

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, scratchFile, scratchFolder } from "../support/run-cli.js";

const location = { latitude: 53.3, longitude: -6.3, elevation: "20 m" };
const climate =
  "Climate: Dublin, 13 km away and 54 m higher; CRU CL 2.0, means of 1961-1990 with the warming to 1979-2013";

describe("a garden in Dublin", () => {
  const file = scratchFile("garden.yaml", gardenText({ location }));

  test("is told its climate once by plan and sheet", async () => {
    for (const command of ["plan", "sheet"]) {
      const { code, stdout } = await cli([command, file], { columns: 200 });
      expect(code).toBe(0);
      expect(stdout.split(climate)).toHaveLength(2);
    }
  });

  test("is told it by the published page", async () => {
    const folder = scratchFolder();
    const { code } = await cli(["publish", folder, file]);
    expect(code).toBe(0);
    const page = readdirSync(folder, { recursive: true, encoding: "utf8" }).find((name) =>
      /(?<!index)\.html$/.test(name),
    );
    expect(readFileSync(join(folder, page ?? ""), "utf8")).toContain(climate);
  });

  test("keeps it into the next year", async () => {
    const next = await cli(["new", "--from", file], { today: "2027-11-10" });
    expect(next.code).toBe(0);
    const { stdout } = await cli(["plan", "-"], { stdin: next.stdout, today: "2028-03-01" });
    expect(stdout).toContain("Climate: Dublin, 13 km away");
  });
});

test("a garden below the sea has its climate", async () => {
  const polder = { latitude: 52.6, longitude: 4.8, elevation: "-4 m" };
  const stdin = gardenText({ timezone: "Europe/Amsterdam", location: polder });
  const { code, stdout } = await cli(["plan", "-"], { stdin, columns: 200 });
  expect(code).toBe(0);
  expect(stdout).toMatch(/\nClimate: [^;]+ and \d+ m higher; CRU/);
});

test("check tells once of a place whose climate is not known", async () => {
  const check = async (at: object): Promise<string> =>
    (await cli(["check", "-"], { stdin: gardenText({ location: at }), columns: 200 })).stdout;
  expect(await check({ latitude: 53.3 })).toContain("`location:` has no longitude");
  expect(await check({ latitude: 53.3, longitude: -6.3 })).toContain("a height of 74 m");
  expect(await check({ ...location, longitude: -30 })).toMatch(/climate is known, .* km away/);
  expect(await check(location)).not.toMatch(/longitude|height|climate is known/);
});

test("a lost minus is told by plan and check, as the time zone gives it away", async () => {
  const timezone = "America/Chicago";
  const said = async (command: string, longitude: number): Promise<string> => {
    const stdin = gardenText({ timezone, location: { latitude: 41.6, longitude } });
    const { code, stdout } = await cli([command, "-"], { stdin });
    expect(code).toBe(0);
    return stdout.replace(/\s+/g, " ");
  };
  const slip =
    "the garden lies at 41.6 north, 93.6 east, and the time zone America/Chicago does not: check the two numbers of `location:` and their signs";
  for (const command of ["plan", "check"]) {
    expect((await said(command, 93.6)).split(slip)).toHaveLength(2);
    expect(await said(command, -93.6)).not.toContain("does not: check");
  }
});

test("own means that are turned by half a year are warned of by plan and check", async () => {
  const turning = (january: number): number[] =>
    Array.from({ length: 12 }, (_, month) => 12 + january * Math.cos((month * Math.PI) / 6));
  const said = async (command: string, january: number): Promise<string> => {
    const [max, min] = [turning(january), turning(january).map((c) => c - 10)];
    const climate = { source: "Our met service", temperature: "C", max, min };
    const { stdout } = await cli([command, "-"], { stdin: gardenText({ location, climate }) });
    return stdout.replace(/\s+/g, " ");
  };
  const slip =
    "the warmest month of the means under `climate:` lies in the winter of the northern half of the earth: check both lists, which begin with January in both halves, and the sign of the latitude";
  for (const command of ["plan", "check"]) {
    expect((await said(command, 8)).split(slip)).toHaveLength(2);
    expect(await said(command, -8)).not.toContain("warmest month");
  }
});

test("warmth that is followed in vain is told by plan and check", async () => {
  for (const command of ["plan", "check"]) {
    const stdin = gardenText({ location: { latitude: 53.3 }, warmth: "on" });
    const { stdout } = await cli([command, "-"], { stdin });
    const told = "`warmth: on` needs the climate of the place: add a longitude to `location:`";
    expect(stdout.replace(/\s+/g, " ").split(told)).toHaveLength(2);
  }
});

test("own means are told as they are called, and `off` leaves the calendar", async () => {
  const own = {
    source: "Our met service",
    temperature: "F",
    max: Array(12).fill(60),
    min: Array(12).fill(40),
  };
  const plan = async (differs: object): Promise<string> =>
    (await cli(["plan", "-"], { stdin: gardenText({ location, ...differs }) })).stdout;
  expect(await plan({ climate: own })).toContain("\nClimate: Our met service\n");
  expect(await plan({ climate: "off" })).not.toContain("Climate:");
});

test("a US garden reads miles and feet", async () => {
  const garden = gardenText({
    location: { latitude: 41.6, longitude: -93.6, elevation: "950 ft" },
    amounts: "us",
  });
  const { stdout } = await cli(["plan", "-"], { stdin: garden });
  expect(stdout).toMatch(/\nClimate: .*, \d+ miles? away and \d+ ft (higher|lower);/);
});

describe("an apple tree whose bloom is not given", () => {
  const tree = { id: "tree", crop: "apple", transplanted: "2012-11-20" };
  async function told(at: object): Promise<{ readonly check: string; readonly why: string }> {
    const stdin = gardenText({ location: at, ...planted({ ...tree, water: "10 L" }) });
    const [check, why] = [
      await cli(["check", "-"], { stdin }),
      await cli(["why", "-", "tree"], { stdin }),
    ];
    return { check: check.stdout.replace(/\s+/g, " "), why: why.stdout.replace(/\s+/g, " ") };
  }

  test.each([
    ["Dublin", location],
    ["Seattle", { latitude: 47.6, longitude: -122.3, elevation: "50 m" }],
    ["Nantes", { latitude: 47.2, longitude: -1.55, elevation: "20 m" }],
    ["Nairobi", { latitude: -1.3, longitude: 36.8, elevation: "1700 m" }],
  ])("blooms when usual in %s, where no winter gives the sum a meaning", async (_, at) => {
    const { check, why } = await told(at);
    const usual =
      /full bloom on 5 (May|Nov), usual for apple in temperate gardens \(winters here are too mild for the published sum\)/;
    expect(check).toMatch(usual);
    expect(why).toContain("winters here are too mild");
  });

  test("blooms by warmth where there is one, told without degrees by check and why", async () => {
    const { check, why } = await told({ latitude: 43.1, longitude: -77.6, elevation: "150 m" });
    const words =
      /full bloom about \d+ May by the warmth since 1 Jan \(The March of spring, [^()]*; a week either way [^()]*\); 5 May is usual for apple in temperate gardens/;
    expect(check).toMatch(words);
    expect(words.exec(check)?.[0]).not.toMatch(/degree|degC/);
    expect(check).toContain("write the real day (`bloom:`) when you see it");
    expect(why).toContain("full bloom about");
  });
});
