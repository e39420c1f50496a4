/** Plants raised in trays: what their days there count for, and when they are fed. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText, planted, type PlantingDiffers } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

async function fedDays(dates: PlantingDiffers, crop = "tomato"): Promise<string[]> {
  const stdin = gardenText(planted({ transplanted: undefined, crop, ...dates }));
  const { code, stdout, stderr } = await cli(["plan", "-", "--json"], { stdin });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return (JSON.parse(stdout) as Plan).rounds.map((round) => round.day);
}

describe("a planting raised in a tray", () => {
  test.each(["tomato", "sweet pepper", "cucumber", "celery"])(
    "%s: kept there long, it is fed as one planted out at the usual age",
    async (crop) => {
      const fed = await fedDays({ sown: "2027-02-20", transplanted: "2027-05-25" }, crop);
      expect(fed).toEqual(await fedDays({ transplanted: "2027-05-25" }, crop));
      expect(fed.length).toBeGreaterThan(0);
      expect(fed.filter((day) => day < "2027-05-25")).toEqual([]);
    },
  );

  test("is not fed before it is planted out, however early it flowers", async () => {
    const seen = [{ stage: "flowering", on: "2027-05-05" }];
    const fed = await fedDays({ sown: "2027-04-13", transplanted: "2027-05-25", seen });
    expect(fed[0]).toBe("2027-05-25");
  });

  test("goes out with its first truss open, and is fed from then on", async () => {
    const seen = [{ stage: "flowering", on: "2027-05-21" }];
    const fed = await fedDays({ transplanted: "2027-05-25", seen });
    expect(fed[0]).toBe("2027-05-25");
    expect(fed.length).toBeGreaterThan(1);
  });

  test("flowers no sooner than it can have been sown", async () => {
    const check = async (crop: string, stage: string, on: string) => {
      const dates = { crop, transplanted: "2027-05-25", seen: [{ stage, on }] };
      return cli(["check", "-"], { stdin: gardenText(planted(dates)) });
    };
    // Tomatoes are usually planted out at 42 days, carrots are never raised in trays.
    expect((await check("tomato", "flowering", "2027-04-13")).code).toBe(0);
    const tooEarly = await check("tomato", "flowering", "2027-04-12");
    expect(tooEarly.code).toBe(1);
    expect(tooEarly.stdout + tooEarly.stderr).toContain(
      "flowering was seen on 2027-04-12, more than 42 days before it was transplanted on 2027-05-25",
    );
    const carrot = await check("carrot", "root-swelling", "2027-05-24");
    expect(carrot.stdout + carrot.stderr).toContain(
      "root-swelling was seen on 2027-05-24, before it was transplanted on 2027-05-25",
    );
  });
});
