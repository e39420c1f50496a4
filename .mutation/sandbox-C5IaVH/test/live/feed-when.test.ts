/** `feed_when: might-help` as a grower meets it: at the plan, its reasons and a calendar that is kept. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, day } from "../../src/dates.js";
import { gatePlot, keptGarden } from "./a-kept-garden.js";
import { gardenText, planted } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

interface Told {
  readonly rounds: readonly { day: string }[];
  readonly plantings: readonly {
    reason: string;
    fed: boolean;
    stages: readonly { stage: string; from: string; to: string }[];
  }[];
}

async function planned(differs: Readonly<Record<string, unknown>>): Promise<Told> {
  const { code, stdout } = await cli(["plan", "--json", "-"], { stdin: gardenText(differs) });
  expect(code).toBe(0);
  return JSON.parse(stdout) as Told;
}

const poor = { soil: { kind: "sand" }, source_water: { hardness: "30 mg/L" } };

describe("a garden that feeds only where it might help", () => {
  test("is not fed where nothing tells, and hears what would decide it", async () => {
    const { rounds, plantings } = await planned({ feed_when: "might-help" });
    expect(rounds).toEqual([]);
    expect(plantings[0]?.fed).toBe(false);
    expect(plantings[0]?.reason).toContain("not fed, as `feed_when: might-help` asks");
    expect(plantings[0]?.reason).toContain("the kind of soil is not told");
  });

  test("is fed on sand with soft water, and not on once the fruit ripens", async () => {
    const mightHelp = await planned({
      ...poor,
      feed_when: "might-help",
      ...planted({ through: "harvest" }),
    });
    const ripens = mightHelp.plantings[0]?.stages.find(({ stage }) => stage === "ripening")?.from;
    const days = mightHelp.rounds.map((round) => round.day);
    expect(days.length).toBeGreaterThan(1);
    expect(days.filter((one) => one >= (ripens ?? ""))).toEqual([]);
    expect(mightHelp.plantings[0]?.reason).toContain("might help. Sand holds little calcium");
  });

  test("`always` feeds as if nothing were said", async () => {
    expect((await planned({ feed_when: "always" })).rounds).toEqual((await planned({})).rounds);
  });
});

describe.each([
  ["feed_when: might-help", "garden: Gate plot", "garden: Gate plot\nfeed_when: might-help"],
  ["feed: false", "crop: tomato", "feed: false, crop: tomato"],
])("%s, said in the middle of a season", (key, from, to) => {
  test("leaves what is past in plan and calendar, and takes what was to come", async () => {
    const plot = keptGarden(gatePlot);
    await plot.publish("2027-03-01");
    const { ahead } = await plot.days("2027-03-01", "toms");
    const [first, second, ...coming] = ahead.map(day);
    expect(coming.length).toBeGreaterThan(0);
    const today = addDays(second ?? day("2027-03-01"), 1);
    plot.edit(from, to);
    await plot.publish(today);
    const { given, ahead: left } = await plot.days(today, "toms");
    expect([given, left]).toEqual([[first, second], []]);
    const { stdout } = await plot.run(today, "plan");
    expect(stdout.replace(/\s+/g, " ")).toContain(
      `The garden file asks for no more since. \`${key.split(":")[0] ?? ""}\` changes that.`,
    );
  });
});

describe("blossom-end rot seen where a feed is unlikely to help", () => {
  const seen = "signs:\n  - { on: 2027-06-20, planting: toms, sign: blossom-end rot }\n";
  const enough =
    "soil: { test: { on: 2027-02-01, extract: mehlich-3, calcium: 1400 ppm, ph: 6.5 } }\n";

  test("opens no feeding that `feed_when` has stopped", async () => {
    const plot = keptGarden(gatePlot);
    await plot.publish("2027-03-01");
    const [first] = (await plot.days("2027-03-01", "toms")).ahead.map(day);
    const today = addDays(first ?? day("2027-03-01"), 1);
    plot.edit("beds:", `${enough}feed_when: might-help\n${seen.replace("2027-06-20", today)}beds:`);
    expect((await plot.days(today, "toms")).ahead).toEqual([]);
    const { stdout } = await plot.run(today, "plan");
    expect(stdout).not.toMatch(/more time|rate rises|the warnings say why/);
  });

  test("raises the rate, and says what speaks against it", async () => {
    const plot = keptGarden(gatePlot);
    plot.edit("beds:", `${enough}${seen}beds:`);
    const { stdout } = await plot.run("2027-06-21", "plan");
    const told = stdout.replace(/\s+/g, " ");
    expect(told).toContain("But look at the verdict before you feed more.");
    expect(told).toMatch(
      /before you feed more\. Soil drench .* unlikely to help: the soil has enough/,
    );
    plot.edit(enough, "");
    expect((await plot.run("2027-06-21", "plan")).stdout).not.toContain("look at the verdict");
  });
});
