/** `plan`, `check` and `why` of gardens whose place is known, in several places of the world. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import type { StageName } from "../../src/crops/crop.js";
import { gardenText, type GardenDiffers } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

interface Grown {
  readonly out: string;
  readonly water: string;
}

const bed = ({ out, water }: Grown, differs = {}): Pick<GardenDiffers, "beds"> => ({
  beds: [
    {
      id: "south",
      plantings: [
        { id: "toms", crop: "tomato", transplanted: out, water, ...differs },
        { id: "peppers", crop: "sweet pepper", transplanted: out, water },
      ],
    },
  ],
});

const dublin: GardenDiffers = {
  location: { latitude: 53.3, longitude: -6.3, elevation: "20 m" },
  ...bed({ out: "2027-05-20", water: "10 L" }),
};
const desMoines: GardenDiffers = {
  timezone: "America/Chicago",
  amounts: "us",
  location: { latitude: 41.6, longitude: -93.6, elevation: "955 ft" },
  can: "2 gal",
  ...bed({ out: "2027-05-15", water: "4 gal" }),
};
const nelson: GardenDiffers = {
  timezone: "Pacific/Auckland",
  season: { from: "2027-08-01", to: "2028-05-31" },
  location: { latitude: -41.3, longitude: 173.2, elevation: "20 m" },
  ...bed({ out: "2027-11-10", water: "10 L" }),
};
const oslo: GardenDiffers = {
  timezone: "Europe/Oslo",
  season: { from: "2027-03-01", to: "2027-10-15" },
  location: { latitude: 59.9, longitude: 10.7, elevation: "20 m" },
  ...bed({ out: "2027-05-25", water: "10 L" }),
};

/** As one line, so that no break of a line matters. */
async function told(differs: GardenDiffers, command: string, ...argv: string[]): Promise<string> {
  const world = { stdin: gardenText(differs), today: "2027-01-10" };
  const { code, stdout, stderr } = await cli([command, "-", ...argv], world);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replace(/\s+/g, " ");
}

async function startOf(differs: GardenDiffers, stage: StageName, id = "toms"): Promise<string> {
  const world = { stdin: gardenText(differs), today: "2027-01-10" };
  const { plantings } = JSON.parse((await cli(["plan", "-", "--json"], world)).stdout) as Plan;
  const span = plantings.find((p) => p.id === id)?.stages.find((s) => s.stage === stage);
  if (span === undefined) throw new Error(`${id} has no ${stage}`);
  return span.from;
}

describe("the climate of the place", () => {
  test.each([
    ["Dublin", dublin, "Climate: Dublin, 13 km away and 54 m higher; CRU CL 2.0"],
    [
      "Des Moines",
      desMoines,
      "Climate: Des Moines International Airport, 5 miles away and 17 ft lower; CRU CL 2.0",
    ],
    ["Nelson", nelson, /Climate: [A-Z][^;]+, \d+ km away[^;]*; CRU CL 2\.0/],
  ])("of %s is told by plan, in the garden's own measures", async (_, differs, climate) => {
    expect(await told(differs, "plan")).toMatch(climate);
    expect(await told(differs, "check")).not.toContain("nearest place");
  });

  test("that is far away is warned of, by plan and check, as it may be a slip", async () => {
    const location = { latitude: -30, longitude: -140 };
    for (const command of ["plan", "check"])
      expect(await told({ ...nelson, location }, command)).toContain(
        "the nearest place whose climate is known, Mataveri Intl, is 2,994 km away: check `location:`, or write twelve means of your own (`climate:`)",
      );
  });

  test("without a longitude is not known, said once", async () => {
    const said = await told({ ...dublin, location: { latitude: 53.3 } }, "plan");
    expect(said).not.toContain("Climate:");
    expect(said.split("`location:` has no longitude (`longitude:`)")).toHaveLength(2);
  });
});

describe("why", () => {
  const date = "(?:\\d+ \\w{3}|\\w{3} \\d+)";
  const flowering = (base: string, sum: number): RegExp =>
    new RegExp(
      `by warmth: ${sum} degree days above ${base} after planting out on ${date}, somewhere from ${date} to ${date}; by the calendar ${date} `,
    );

  test("tells both ways' dates of a stage that follows warmth, with its band and its source", async () => {
    const said = await told(dublin, "why", "toms");
    expect(said).toMatch(flowering("7 degrees C", 281));
    expect(said).toContain("TomatoGDD (FAO, 2017; 525)");
  });

  test("tells the other way's date of a stage that stays on the calendar", async () => {
    const said = await told({ ...dublin, warmth: "off" }, "why", "toms");
    expect(said).toMatch(/by warmth \d+ \w{3}, 281 degree days above 7 degrees C after /);
    expect(said).not.toContain("by warmth:");
  });

  test("tells degree days of Fahrenheit in US measures, those from indoors too", async () => {
    expect(await told(desMoines, "why", "toms")).toMatch(flowering("45 degrees F", 506));
    const indoors = / on top of (\d+) from 49 days indoors/;
    const toldC = Number(indoors.exec(await told(dublin, "why", "peppers"))?.[1]);
    const toldF = Number(indoors.exec(await told(desMoines, "why", "peppers"))?.[1]);
    expect(toldC).toBeGreaterThan(300);
    expect(Math.abs(toldF - toldC * 1.8)).toBeLessThan(1);
  });

  test("counts from what was seen, in plain words", async () => {
    const seen = [{ stage: "fruit-set", on: "2027-06-30" }];
    const differs = { ...dublin, ...bed({ out: "2027-05-20", water: "10 L" }, { seen }) };
    const world = { stdin: gardenText(differs), today: "2027-07-01" };
    const { stdout } = await cli(["why", "-", "toms"], world);
    expect(stdout.replace(/\s+/g, " ")).toMatch(
      /by warmth: \d+ degree days above 7 degrees C after fruit set seen on 30 Jun,/,
    );
  });

  test("of a southern garden counts on over New Year", async () => {
    const said = await told(nelson, "why", "toms");
    expect(said).toMatch(flowering("7 degrees C", 281));
    expect(await startOf(nelson, "harvest")).toMatch(/^2028-0[123]-/);
  });
});

describe("warmth", () => {
  test("off keeps a cool garden to the calendar, which is sooner than its warmth", async () => {
    const off = { ...dublin, warmth: "off" };
    const noPlace = { ...dublin, location: undefined };
    expect(await startOf(off, "flowering")).toBe(await startOf(noPlace, "flowering"));
    expect((await startOf(off, "flowering")) < (await startOf(dublin, "flowering"))).toBe(true);
  });

  test("off of one planting keeps that alone to the calendar", async () => {
    const off = { ...dublin, ...bed({ out: "2027-05-20", water: "10 L" }, { warmth: "off" }) };
    expect(await startOf(off, "flowering")).toBe(
      await startOf({ ...dublin, warmth: "off" }, "flowering"),
    );
  });

  test("on follows it for a crop that is left to the calendar else", async () => {
    expect(await told(dublin, "why", "peppers")).not.toContain("by warmth:");
    expect(await told({ ...dublin, warmth: "on" }, "why", "peppers")).toMatch(
      /by warmth: \d+ degree days above 10 degrees C after planting out on 20 May, on top of \d+ from 49 days indoors/,
    );
  });

  test("that would move a stage too far is held back, and check and why say so", async () => {
    expect(await told(oslo, "check")).toMatch(
      /toms \(tomato\): warmth would move ripening further than 28 days from the calendar \(ripening to \d+ Sep\)/,
    );
    expect(await told(oslo, "why", "toms")).toMatch(
      /that is \d+ Sep, but warmth moves a date by 28 days at most, and by the calendar it is \d+ \w{3} /,
    );
  });

  test("that does not reach a stage in the season leaves it to the calendar, and check says so", async () => {
    const cold = { ...oslo, ...bed({ out: "2027-05-25", water: "10 L" }, { warmth: "off" }) };
    expect(await told(cold, "why", "toms")).toContain(
      "by warmth 1 Aug at the earliest, and perhaps not at all: the calendar's date stands",
    );
    expect(await told(cold, "check")).not.toContain("not reached by warmth");
    expect(await told(dublin, "check")).not.toContain("not reached by warmth");
  });

  test("that moves the stage before it moves it as far, and check and why say so", async () => {
    expect(await told(oslo, "check")).toContain(
      "toms (tomato): harvest not reached by warmth here before the season ends; the calendar counts on from the stage before, so go by what you see (`seen:`)",
    );
    expect(await startOf(oslo, "harvest")).toBe("2027-09-03");
    expect(await told(oslo, "why", "toms")).not.toContain("the calendar's date stands");
  });
});

test("crops prints the ids of the table's rows, which `row:` takes, and the published sum", async () => {
  const { code, stdout } = await cli(["crops", "tomato"]);
  const said = stdout.replace(/\s+/g, " ");
  expect(code).toBe(0);
  expect(said).toContain("flowering 281 (150 to 525) degree days above 7 degrees C");
  const rows = [...stdout.matchAll(/\b([a-z-]+): \d+\/\d+\/\d+\/\d+ days from sowing/g)];
  expect(rows.map(([, id]) => id)).toContain("california-apr-may");
  expect(rows.length).toBeGreaterThan(3);
  const starts = new Set<string>();
  for (const [, row] of rows) {
    const differs = bed({ out: "2027-05-20", water: "10 L" }, { row });
    starts.add(await startOf(differs, "harvest"));
  }
  expect(starts.size).toBeGreaterThan(2);
});
