// @ts-nocheck
import { describe, expect, test } from "vitest";
import { gardenText, planted } from "../support/a-garden.js";
import { cli } from "../support/run-cli.js";

describe("a feeding that is late", () => {
  const saturdays = (away: Readonly<Record<string, string>>): string =>
    gardenText({
      feeding: { days: ["sat"], away: [away] },
      ...planted({ crop: "courgette", transplanted: "2027-05-10" }),
    });
  const warned = async (stdin: string): Promise<string> =>
    (await cli(["check", "-"], { stdin })).stdout.replaceAll(/\s+/g, " ");

  test("although a feeding day lay in its window says what that day was passed by for", async () => {
    expect(await warned(saturdays({ from: "2027-07-05", to: "2027-07-15" }))).toContain(
      "toms (courgette): not fed from Tue 8 Jun to Fri 18 Jun, as a feeding on Sat 12 Jun would make later ones late by as many days or more; it is fed on Sat 19 Jun, 1 day late",
    );
  });

  test("because no feeding day lay in its window says so", async () => {
    expect(await warned(saturdays({ from: "2027-06-10", to: "2027-06-18" }))).toContain(
      "toms (courgette): no feeding day falls from Tue 8 Jun to Fri 18 Jun, and you are away from Thu 10 Jun to Fri 18 Jun; it is fed on Sat 19 Jun, 1 day late",
    );
  });
});
