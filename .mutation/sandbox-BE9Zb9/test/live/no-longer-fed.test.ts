/** Crops that trials found no use in feeding: not fed unless asked for, also in a season under way. */
// @ts-nocheck

import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { gardenText, planted, referenceBottle } from "../support/a-garden.js";
import { earlierOf } from "../support/calendars.js";
import { cli } from "../support/run-cli.js";
import { keptGarden } from "./a-kept-garden.js";
import { planOn } from "./a-live-garden.js";

const heads = { id: "heads", crop: "cabbage", transplanted: "2027-04-25" };
const sparse = (text: string): string => text.replace(/\s+/g, " ");

describe("cabbage", () => {
  const [plan, asked] = [
    planOn("2027-03-01", planted({}, heads)),
    planOn("2027-03-01", planted({}, { ...heads, feed: true })),
  ];
  const fedWith = ({ rounds }: typeof plan, planting: string): boolean =>
    rounds.some(({ beds }) =>
      beds.some(({ mixes }) =>
        mixes.some(({ feedings }) => feedings.some((f) => f.planting === planting)),
      ),
    );

  test("is not fed, and the plan says why; its neighbour is", () => {
    expect(fedWith(plan, "heads")).toBe(false);
    expect(fedWith(plan, "toms")).toBe(true);
    expect(plan.plantings.find(({ id }) => id === "heads")?.reason).toMatch(
      /^not fed unless asked for \(`feed: true`\), as published work found no effect .* six field trials/,
    );
  });

  test("is fed by who asks for it", () => {
    expect(fedWith(asked, "heads")).toBe(true);
  });
});

describe("in a season whose calendar still feeds it", () => {
  const older = `version: 1
rules:
  - id: head-brassica-drench
    crops: [cabbage]
    stages: [heading]
    rate: 2.5 mL per L
    interval: { shortest: 5 days, target: 7 days, longest: 9 days }
`;
  const today = "2027-06-22";
  let before: string;
  let changes: string;
  let after: string;
  beforeAll(async () => {
    const garden = keptGarden(
      gardenText({
        id: "weir-cottage",
        ...planted({}, heads),
        ...referenceBottle,
        calendar: { file: "gate.ics" },
        rules: "older.yaml",
      }),
    );
    writeFileSync(join(dirname(garden.file), "older.yaml"), older);
    before = await garden.publish("2027-03-01");
    garden.edit("rules: older.yaml\n", "");
    changes = sparse((await cli(["changes", garden.calendar, garden.file], { today })).stdout);
    after = await garden.publish(today);
  });

  test("what is past stays byte for byte", () => {
    const past = earlierOf(before).events.filter(
      ({ key, day }) => /^feeding/.test(key) && day < today,
    );
    expect(past.some(({ text }) => text.includes("abbage"))).toBe(true);
    for (const { text } of past) expect(after).toContain(text);
  });

  test("what was to come is gone, and `changes` says why", () => {
    expect(changes).toMatch(
      /- heads \(cabbage\): 1 feeding fewer to come than the calendar tells\. not fed unless asked for/i,
    );
  });
});
