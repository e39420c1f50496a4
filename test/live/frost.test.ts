/** Frost in the commands: what `check` says of a tender crop that goes out early. */
import { expect, test } from "vitest";
import { gardenText, planted } from "../support/a-garden.js";
import { cli, scratchFile } from "../support/run-cli.js";

function fileWith(frost: unknown, transplanted = "2027-05-20"): string {
  return scratchFile("garden.yaml", gardenText({ frost, ...planted({ transplanted }) }));
}

test("`check` advises against planting out before the grower's last frost, and stops when it is over", async () => {
  const file = fileWith({ last: "05-28" });
  const before = await cli(["check", file], { today: "2027-03-01" });
  expect(before).toMatchObject({ code: 0 });
  expect(before.stdout.replace(/\s+/g, " ")).toContain(
    "toms: planted out on 2027-05-20, before the last frost of spring on 2027-05-28",
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
