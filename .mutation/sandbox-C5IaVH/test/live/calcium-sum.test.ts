/** Where the calcium comes from, as a grower reads it, through the real commands. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, examplePath } from "../support/run-cli.js";
import { read } from "../support/read-cli.js";

const tomatoes = { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" };
const bed = { id: "south", name: "South wall", area: "4 m2", plantings: [tomatoes] };

const hard = gardenText({
  source_water: { hardness: "300 mg/L" },
  beds: [{ ...bed, watering: "100 L" }],
});
/** A bed of sand, watered from a barrel. */
const sandy = (differs: object = {}, planting: object = tomatoes): string =>
  gardenText({
    source_water: { hardness: "5 mg/L" },
    beds: [{ ...bed, soil: { kind: "sand" }, watering: "60 L", plantings: [planting] }],
    ...differs,
  });

test("tap water that covers the need is told in plan, check and why, season against season", async () => {
  expect(await read(hard, "plan")).toMatch(/toms 30-68 \d+-\d+ .* % unlikely: water covers it/);
  const check = await read(hard, "check");
  expect(check).toMatch(
    /toms: Soil drench against blossom-end rot: unlikely to help: the water covers it\. In a usual season/,
  );
  expect(check).toMatch(
    /In the season your water brings \d+ to \d+ g .* times the [\d.]+ g of the feed/,
  );
  // 300 mg/L x 0.4004 x 0.6 and 0.9.
  expect(await read(hard, "why", "toms")).toMatch(
    /water \d+ L x 72 to 108 mg per L = \d+ to \d+ g/,
  );
});

test("hardness tells the most that a can's water brings, a calcium of its own what it brings", async () => {
  // 300 mg/L x 0.4004: calcium alone, were there no magnesium.
  const exact = gardenText({ source_water: { hardness: "300 mg/L", calcium: "95 mg/L" } });
  expect(await read(hard, "why", "toms")).toContain("up to 120 mg from the source water");
  expect(await read(hard, "plan")).toContain("up to 120 mg from the source water");
  expect(await read(exact, "why", "toms")).toContain("; 95 mg from the source water");
  const soft = gardenText({ source_water: { hardness: "0 mg/L" } });
  expect(await read(soft, "why", "toms")).toContain("; 0 mg from the source water");
});

test("on sand with rain water the feed might help, only then", async () => {
  expect(await read(sandy(), "check")).toMatch(/toms: .*might help\. Sand holds little calcium/);
  const days = async (text: string): Promise<number> => {
    const { stdout } = await cli(["plan", "-", "--json"], { stdin: text });
    return (JSON.parse(stdout) as { rounds: unknown[] }).rounds.length;
  };
  expect(await days(sandy({ feed_when: "might-help" }))).toBeGreaterThan(0);
  const lettuce = { ...tomatoes, crop: "celery" };
  expect(await days(sandy({}, lettuce))).toBeGreaterThan(0);
  expect(await days(sandy({ feed_when: "might-help" }, lettuce))).toBe(0);
  expect(await read(sandy({ feed_when: "might-help" }, lettuce), "plan")).toMatch(
    /Not fed - toms \(celery\): not fed, as `feed_when: might-help` asks: Soil drench against blackheart: cannot tell\./,
  );
});

test("why shows the arithmetic of the soil test, and what was dug in", async () => {
  const why = await read(readFileSync(examplePath("back-garden"), "utf8"), "why", "toms");
  expect(why).toContain("1450 mg in a kg x 240 kg of soil = 348 g per m2, as deep as the sample");
  expect(why).toMatch(/of which the crop takes [\d.]+ to [\d.]+ %/);
  const celery = await read(readFileSync(examplePath("back-garden"), "utf8"), "why", "celery");
  expect(celery).toMatch(
    /dug in 800 g of .* on 14 November 2026: .* g this season, .* in the next/,
  );
});

test("why --json has the sum of each planting", async () => {
  const { stdout } = await cli(["why", "-", "toms", "--json"], { stdin: hard });
  const [reasons] = JSON.parse(stdout) as { calcium?: { planting: string; need?: object } }[];
  expect(reasons?.calcium?.planting).toBe("toms");
  expect(reasons?.calcium?.need).toBeDefined();
});

test.each([
  ["2020-03-01", "2020-03-01 is old: repeat it before you go by it"],
  ["2027-06-01", "2027-06-01 lies ahead: mend its day"],
])("a soil test of %s is told once for its bed", async (on, words) => {
  const test = { on, extract: "mehlich-3", calcium: "900 ppm", ph: 6.4, ph_in: "water" };
  const doubtful = gardenText({ beds: [{ ...bed, soil: { test } }] });
  const told = await read(doubtful, "check", "--today", "2027-03-05");
  expect(told.split(`South wall: the soil test of ${words}`)).toHaveLength(2);
});

test("a garden with none of the new keys gets two lines more, however many beds it has", async () => {
  const beds = Array.from({ length: 30 }, (_, i) => ({
    id: `b${i}`,
    plantings: [{ ...tomatoes, id: `t${i}`, crop: i % 2 === 0 ? "tomato" : "celery" }],
  }));
  const { stdout } = await cli(["check", "-", "--json"], { stdin: gardenText({ beds }) });
  const { advice } = JSON.parse(stdout) as { advice: { code: string; message: string }[] };
  const isNew = /ask-watering|verdict|dry-gap|water-not-known|soil-test-day|water-brings/;
  const added = advice.filter(({ code }) => isNew.test(code));
  expect(added.map(({ code }) => code)).toEqual(["ask-watering", "verdict"]);
  for (const { message } of added) expect(message.length).toBeLessThan(700);
});

test("the table of a plan stays within 80 columns", async () => {
  for (const name of ["back-garden", "shared-garden"]) {
    const { stdout } = await cli(["plan", examplePath(name)], { columns: 80 });
    for (const line of stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  }
});

test("what nobody is there to pour brings no calcium", async () => {
  const litres = async (feeding: object): Promise<number> => {
    const why = await read(
      gardenText({
        source_water: { hardness: "300 mg/L" },
        beds: [{ ...bed, watering: "100 L" }],
        feeding,
      }),
      "why",
      "toms",
    );
    return Number(/water (\d+) L x/.exec(why)?.[1]);
  };
  const days = ["wed", "sat"];
  const home = await litres({ days });
  // Two whole weeks, Monday to Sunday, and the Monday after.
  const away = await litres({ days, away: [{ from: "2027-06-07", to: "2027-06-21" }] });
  expect(home - away).toBe(200);
});
