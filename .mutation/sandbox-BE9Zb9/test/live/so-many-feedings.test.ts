/** A rule that feeds only so many times, through a season of a garden whose calendar is kept. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { addDays, day, daysBetween } from "../../src/dates.js";
import { gatePlot, type KeptGarden, keptGarden } from "./a-kept-garden.js";

const rules = `version: 1
rules:
  - id: four-times
    crops: [tomato]
    stages: [flowering, fruit-set, fruit-growth, ripening, harvest]
    disorder: blossom-end rot
    rate: 10 mL in 4 L
    interval: { shortest: 7 days, target: 10 days, longest: 13 days }
    feedings: 4
    reason: Tried here.
`;

/** Tomatoes alone, fed on any day. */
function garden(): KeptGarden {
  const plot = keptGarden(
    gatePlot
      .replace("garden: Gate plot", "garden: Gate plot\nrules: four.yaml")
      .replace("days: [sat, sun]", "days: [mon, tue, wed, thu, fri, sat, sun]")
      .replace(/ +- \{ id: cukes.*\n/, ""),
  );
  writeFileSync(join(dirname(plot.file), "four.yaml"), rules);
  return plot;
}

describe("a planting that is fed four times", () => {
  test("has four feedings at the rule's interval, and not one more to the end of its season", async () => {
    const plot = garden();
    await plot.publish("2027-03-01");
    const { ahead } = await plot.days("2027-03-01", "toms");
    expect(ahead).toHaveLength(4);
    const gaps = ahead.slice(1).map((d, i) => daysBetween(day(ahead[i] ?? ""), day(d)));
    for (const gap of gaps) {
      expect(gap).toBeGreaterThanOrEqual(7);
      expect(gap).toBeLessThanOrEqual(13);
    }
    for (const today of [ahead[0], ahead[1], addDays(day(ahead[3] ?? ""), 1), "2027-09-30"]) {
      const now = await plot.days(today ?? "", "toms");
      expect([...now.given, ...now.ahead], today).toEqual(ahead);
    }
  });

  test("has one less to come for each feeding that was given besides", async () => {
    const plot = garden();
    await plot.publish("2027-03-01");
    const [first = "", second = ""] = (await plot.days("2027-03-01", "toms")).ahead;
    const between = addDays(day(first), 5);
    expect(between < second).toBe(true);
    await plot.run(between, "log", "--planting", "toms");
    const { given, ahead } = await plot.days(between, "toms");
    expect(given).toEqual([first, between]);
    expect(ahead).toHaveLength(2);
  });

  test("still owes one that was missed while its window lasts, and no longer after it", async () => {
    const plot = garden();
    await plot.publish("2027-03-01");
    const [first = "", second = ""] = (await plot.days("2027-03-01", "toms")).ahead;
    await plot.run(first, "log", "--missed");
    await plot.publish(first);
    const again = await plot.days(first, "toms");
    expect(again.given).toEqual([]);
    expect(again.ahead).toHaveLength(4);

    const plan = await plot.plan(second);
    await plot.run(second, "log", "--missed", "--on", again.ahead[0] ?? "");
    const latest = plan.rounds
      .flatMap(({ beds }) => beds.flatMap(({ mixes }) => mixes.flatMap((mix) => mix.feedings)))
      .find(({ planting }) => planting === "toms")?.window.latest;
    const after = addDays(day(latest ?? ""), 1);
    const { given, ahead } = await plot.days(after, "toms");
    expect(given.length + ahead.length).toBe(3);
  });
});
