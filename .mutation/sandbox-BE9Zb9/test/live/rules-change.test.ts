/** Other rules for a season that is under way: nothing past changes, and what comes or goes is told. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { gardenText, planted, referenceBottle } from "../support/a-garden.js";
import { earlierOf } from "../support/calendars.js";
import { cli } from "../support/run-cli.js";
import { type KeptGarden, keptGarden } from "./a-kept-garden.js";

/** More often, and for as long as the fruit grows. */
const olderRules = `version: 1
rules:
  - id: tomato-cordon-drench
    crops: [tomato]
    stages: [flowering, fruit-set, fruit-growth]
    rate: 2.5 mL per L
    interval: { shortest: 8 days, target: 10 days, longest: 12 days }
    first_within: 10 days
`;
const july = "2027-07-14";

/** A calendar published in spring with the older rules; the garden file then goes on without them. */
async function goneOn(): Promise<KeptGarden & { readonly before: string }> {
  const garden = keptGarden(
    gardenText({
      id: "weir-cottage",
      ...planted(
        { transplanted: "2027-04-10", days_to_harvest: 140 },
        { id: "more", crop: "cucumber", plants: 2 },
      ),
      ...referenceBottle,
      calendar: { file: "gate.ics" },
      rules: "older.yaml",
    }),
  );
  writeFileSync(join(dirname(garden.file), "older.yaml"), olderRules);
  const before = await garden.publish("2027-03-01");
  garden.edit("rules: older.yaml\n", "");
  return { ...garden, before };
}

describe("rules that change in July", () => {
  let garden: Awaited<ReturnType<typeof goneOn>>;
  let changes: string;
  let after: string;
  beforeAll(async () => {
    garden = await goneOn();
    const told = await cli(["changes", garden.calendar, garden.file], { today: july });
    changes = told.stdout.replace(/\s+/g, " ");
    after = await garden.publish(july);
  });

  test("leave what is past byte for byte", () => {
    const past = earlierOf(garden.before).events.filter(({ day }) => day < july);
    expect(past.filter(({ key }) => key.startsWith("feeding/")).length).toBeGreaterThan(1);
    for (const { text } of past) expect(after).toContain(text);
  });

  test("give from then on what the new ones ask for", async () => {
    const { given, ahead } = await garden.days(july, "toms");
    expect([...given, ...ahead]).toHaveLength(4);
    const older = earlierOf(garden.before).events.filter(({ key }) => key.startsWith("feeding/"));
    expect(older.length).toBeGreaterThan(4);
  });

  test("are told by `changes`: how many come or go, until when it is fed now, and why", () => {
    expect(changes).toMatch(
      /- toms \(tomato\): \d feedings? fewer to come than the calendar tells\. Fed \d+ Jun to \d+ \w{3}\. It begins with [^.]+\. The rule gives 4 feedings\. `through: harvest` changes that\./,
    );
    // Its rules are the same, so nothing is said of it.
    expect(changes).not.toContain("more (cucumber)");
  });

  test("and in JSON too", async () => {
    const fresh = await goneOn();
    const argv = ["changes", fresh.calendar, fresh.file, "--json"];
    const { feedings } = JSON.parse((await cli(argv, { today: july })).stdout) as {
      feedings: unknown[];
    };
    expect(feedings).toEqual([
      expect.objectContaining({
        planting: "toms",
        feeding: expect.objectContaining({ key: "through: harvest" }) as unknown,
      }),
    ]);
  });
});
