/** Frost in the commands: what `check` says of a tender crop that goes out early. */
// @ts-nocheck

import { expect, test } from "vitest";
import type { Plan } from "../../src/season/season-plan.js";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

/** In North Carolina, where the first frost is known well enough to end a harvest. */
const location = { latitude: 36.1, longitude: -77.2, elevation: "20 m" };
const own = { frost: { first: "10-12" } };

function fileWith(frost: unknown, transplanted = "2027-05-20"): string {
  return scratchFile("garden.yaml", gardenText({ frost, ...planted({ transplanted }) }));
}

test("`check` advises against planting out before the grower's last frost, and stops when it is over", async () => {
  const file = fileWith({ last: "05-28" });
  const before = await cli(["check", file], { today: "2027-03-01" });
  expect(before).toMatchObject({ code: 0 });
  expect(before.stdout.replace(/\s+/g, " ")).toContain(
    "toms: planted out on 20 May, before the last frost of spring on 28 May",
  );
  const after = await cli(["check", file], { today: "2027-05-29" });
  expect(after.stdout).not.toContain("frost");
  const later = await cli(["check", fileWith({ last: "04-28" })]);
  expect(later.stdout).not.toContain("frost");
});

test("`check --json` gives the same advice as a value", async () => {
  const { stdout } = await cli(["check", fileWith({ last: "05-28" }), "--json"]);
  const { advice } = JSON.parse(stdout) as { advice: { code: string; plantings: string[] }[] };
  expect(advice).toContainEqual(expect.objectContaining({ code: "frost", plantings: ["toms"] }));
});

test("days that cannot be are told with their place, and nothing is planned", async () => {
  const { code, stdout, stderr } = await cli(["check", fileWith({ last: "10-20", first: "4-28" })]);
  expect(code).toBe(1);
  expect(stdout + stderr).toContain("`4-28` is no day of every year: write month and day, 04-28");
});

test.each([
  ["no cover", undefined, "frost"],
  ["one all season", "glass", "season"],
  ["one without days", { kind: "tunnel" }, "season"],
  [
    "one that stands on that day",
    { kind: "fleece", from: "2027-09-20", to: "2027-11-10" },
    "season",
  ],
  ["one from autumn on", { kind: "fleece", from: "2027-09-20" }, "season"],
  ["one that came off in May", { kind: "fleece", from: "2027-04-01", to: "2027-05-20" }, "frost"],
  ["one that comes after it", { kind: "tunnel", from: "2027-11-20" }, "frost"],
  ["last year's", { kind: "tunnel", from: "2026-04-01", to: "2026-11-30" }, "frost"],
] as const)("frost ends tomatoes unless a cover stands on that day: %s", async (_, cover, ends) => {
  const [bed] = planted({}).beds as [object];
  for (const place of [{ location }, own, { location, ...own }]) {
    const stdin = gardenText({
      season: { from: "2027-03-01", to: "2027-12-15" },
      ...place,
      beds: [{ ...bed, ...(cover ? { cover } : {}) }],
    });
    const { stdout } = await cli(["plan", "-", "--json"], { stdin, today: "2027-03-01" });
    const plan = JSON.parse(stdout) as Plan;
    const last = plan.plantings[0]?.stages.at(-1)?.to;
    if (ends === "season") expect(last).toBe("2027-12-15");
    else expect(last).toBe(plan.garden.frost?.firstAutumn?.day);
  }
});
