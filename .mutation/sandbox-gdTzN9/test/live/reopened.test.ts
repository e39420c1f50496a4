/** A sign after the course of feedings has ended, through the real commands. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, daysBetween } from "../../src/dates.js";
import { shortDay } from "../../src/garden/index.js";
import { gardenText, referenceBottle } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";
import { type KeptGarden, keptGarden } from "./a-kept-garden.js";
import { aheadDays, fedOf, growing, planOn } from "./a-live-garden.js";

const kept = (): KeptGarden =>
  keptGarden(
    gardenText({
      id: "plot",
      ...growing({}),
      ...referenceBottle,
      calendar: { file: "gate.ics" },
    }),
  );
const signed = (garden: KeptGarden, on: string): void => {
  garden.edit(/$/, `signs: [{ on: ${on}, planting: toms, sign: blossom-end-rot }]\n`);
};

describe("in a calendar that is kept", () => {
  const seenOn = "2027-08-10";

  test("two more feedings come, the first within seven days, at the raised rate", async () => {
    const garden = kept();
    await garden.publish("2027-03-01");
    const before = await garden.days(seenOn, "toms");
    expect(before.given).toHaveLength(4);
    expect(before.ahead).toEqual([]);
    signed(garden, seenOn);
    const plan = await garden.plan(seenOn);
    const more = fedOf(plan).filter(({ day }) => day >= seenOn);
    expect(more).toHaveLength(2);
    const [first, second] = more.map(({ day }) => day as Day) as [Day, Day];
    expect(daysBetween(seenOn as Day, first)).toBeLessThanOrEqual(7);
    expect(daysBetween(first, second)).toBeGreaterThanOrEqual(10);
    expect(daysBetween(first, second)).toBeLessThanOrEqual(18);
    expect(more.map(({ feeding }) => feeding.level)).toEqual([1.5, 1.5]);
    const said = [first, second].map((one) => shortDay(one, "metric"));
    expect(plan.notes[0]?.message).toContain(
      `its feeding had ended, so it is fed 2 more times, on ${said.join(" and ")}; the rate rises`,
    );
    expect(plan.plantings[0]?.feeding).toMatchObject({ last: second, key: "signs" });
  });

  test("`changes` tells them and why, and once published they stay as days go by", async () => {
    const garden = kept();
    await garden.publish("2027-03-01");
    signed(garden, seenOn);
    const { stdout } = await cli(["changes", garden.calendar, garden.file], { today: seenOn });
    expect(stdout.replace(/\s+/g, " ")).toMatch(
      /- toms \(tomato\): 2 feedings more to come than the calendar tells\. Fed \d+ Jun to \d+ Aug\. It begins with flowering, on \d+ Jun, by the calendar\. 2 more feedings came with blossom-end rot seen on 10 Aug\. `signs` changes that\./,
    );
    await garden.publish(seenOn);
    const { given, ahead } = await garden.days(seenOn, "toms");
    expect(ahead).toHaveLength(2);
    for (const later of [3, 12, 40].map((days) => addDays(seenOn as Day, days))) {
      const now = await garden.days(later, "toms");
      expect([...now.given, ...now.ahead], later).toEqual([...given, ...ahead]);
    }
  });

  test("a second sign while they are to come adds nothing", async () => {
    const garden = kept();
    await garden.publish("2027-03-01");
    signed(garden, seenOn);
    await garden.publish(seenOn);
    const { ahead } = await garden.days(seenOn, "toms");
    const again = addDays(ahead[0] as Day, 2);
    garden.edit(/\}\]\n$/, `}, { on: ${again}, planting: toms, sign: blossom-end-rot }]\n`);
    expect((await garden.days(again, "toms")).ahead).toEqual(ahead.slice(1));
  });

  test("seen while feedings are to come, it changes the rate alone", async () => {
    const garden = kept();
    await garden.publish("2027-03-01");
    const { given, ahead } = await garden.days("2027-06-25", "toms");
    signed(garden, "2027-06-25");
    expect(await garden.days("2027-06-25", "toms")).toEqual({ given, ahead });
    const plan = await garden.plan("2027-06-25");
    expect(plan.notes[0]?.message).toContain("; the rate rises");
  });

  test("a feeding that was missed counts, so that the sign still opens two", async () => {
    const garden = kept();
    await garden.publish("2027-03-01");
    const { given } = await garden.days(seenOn, "toms");
    garden.edit(/$/, `log: [{ on: ${given[3] ?? ""}, planting: toms, missed: true }]\n`);
    signed(garden, seenOn);
    const { given: now, ahead } = await garden.days(seenOn, "toms");
    expect(now).toEqual(given.slice(0, 3));
    expect(ahead).toHaveLength(2);
  });
});

describe("in a garden that nobody keeps a calendar of", () => {
  const planSeen = (on: string, differs: object = {}) =>
    planOn("2027-10-10", {
      ...growing({}),
      signs: [{ on, planting: "toms", sign: "blossom-end-rot" }],
      ...differs,
    });

  test("what was planned before the sign stays, and two more come after it", () => {
    const usual = aheadDays(planOn("2027-10-10"));
    expect(usual).toHaveLength(4);
    const days = aheadDays(planSeen("2027-08-10"));
    expect(days.slice(0, 4)).toEqual(usual);
    expect(days).toHaveLength(6);
    expect(days[4] !== undefined && days[4] >= "2027-08-10" && days[4] <= "2027-08-17").toBe(true);
  });

  test("too late for any fruit, it opens nothing, and no rate is said to rise", () => {
    const plan = planSeen("2027-10-09");
    expect(aheadDays(plan)).toEqual(aheadDays(planOn("2027-10-10")));
    const [note] = plan.notes;
    expect(note?.message).toContain("so no rate changes");
    expect(note?.message).not.toMatch(/rise/);
    expect(note?.advice.length).toBeGreaterThan(0);
  });
});
