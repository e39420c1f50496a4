/** Bottle labels as a grower prints them, on large sheets and on small. */
// @ts-nocheck

import { expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, examplePath, scratchFile } from "../support/run-cli.js";

const today = "2027-06-16";

/** Words as they are read. */
async function said(...argv: readonly string[]): Promise<string> {
  const { code, stdout, stderr } = await cli(argv, { today });
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout
    .replace(/<style>[^]*<\/style>/, "")
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll(/\s+/g, " ");
}

test("a US garden's are for letter paper and hold all cautions, unless another sheet is asked for", async () => {
  const file = examplePath("shared-garden");
  const usual = await said("labels", file);
  expect(usual).toContain("(4 x 2 in) on US letter");
  expect(usual).toMatch(/Plant feed, not for drinking\. .* or when it smells or gasses again\./);
  expect(await said("labels", file, "--paper", "a4")).toContain("63.5x72 mm on A4");
});

test("small ones have few words, and say that the season sheet has the rest", async () => {
  const file = examplePath("shared-garden");
  const small = await said("labels", file, "--size", "45.7x25.4");
  expect(small).toContain("the season sheet has all cautions, and what each bed gets");
  expect(small).toContain("Shake well. Plant feed. Not for drinking. Keep from children.");
  const sheet = await said("sheet", file);
  expect(sheet).toContain("mouldy, smells or gasses again");
  expect(sheet).toMatch(/food, children and animals/);
});

test("tell the year of the day until which a bottle is good, and the can before the sprayer", async () => {
  const bottle = { id: "late", made: "2027-06-10", volume: "1 L", use_by: "2028-01-10" };
  const text = await said(
    "labels",
    scratchFile(
      "garden.yaml",
      gardenText({
        stock: { batches: [bottle] },
        beds: [
          { id: "tree", plantings: [{ id: "apple", crop: "apple", plants: 1 }] },
          {
            id: "south",
            plantings: [{ id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" }],
          },
        ],
      }),
    ),
    "--batch",
    "late",
  );
  expect(text).toContain("Use by 10 January 2028");
  expect(text).toMatch(/mL per full \S+ L can: tomato .*mL per full \S+ L sprayer: apple/);
});
