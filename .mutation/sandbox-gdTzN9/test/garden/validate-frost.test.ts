// @ts-nocheck
import { describe, expect, test } from "vitest";
import { aGarden, gardenText, readGarden } from "../support/a-garden.js";

function problemsOf(text: string): { message: string; mend: string; line: number }[] {
  const read = readGarden(text);
  if (read.ok) throw new Error("no problems");
  return read.problems.map(({ message, mend, at }) => ({ message, mend, line: at.line }));
}

const withFrost = (lines: string): string => `${gardenText()}frost:\n${lines}`;
const lineOfFrost = gardenText().split("\n").length;

test("month and day are kept as they are, quoted or not", () => {
  const unquoted = readGarden(withFrost("  last: 04-28\n  first: 10-20\n"));
  expect(unquoted.ok && unquoted.value.frost).toEqual({ last: "04-28", first: "10-20" });
  expect(aGarden({ frost: { last: "04-28" } }).frost).toEqual({ last: "04-28" });
  expect(aGarden()).not.toHaveProperty("frost");
});

describe("what is no day of every year", () => {
  test.each([
    ["4-28", "write month and day, 04-28"],
    ["2027-04-28", "write month and day, 04-28"],
    ["04/28", "write month and day, 04-28"],
    ["02-29", "write month and day, like 04-28"],
    ["13-01", "write month and day, like 04-28"],
    ["end of April", "write month and day, like 04-28"],
  ])("%s is refused: %s", (written, mend) => {
    expect(problemsOf(withFrost(`  last: ${written}\n`))).toEqual([
      { message: `\`${written}\` is no day of every year`, mend, line: lineOfFrost + 1 },
    ]);
  });

  test("a number is told once, by the schema", () => {
    const [problem, ...more] = problemsOf(withFrost("  last: 4.28\n"));
    expect(problem?.message).toContain("4.28");
    expect(more).toEqual([]);
  });
});

describe("what no place of that half of the earth can have", () => {
  test("is told with its place and a mend", () => {
    expect(problemsOf(withFrost("  last: 10-20\n  first: 04-28\n"))).toEqual([
      {
        message:
          "a last frost on 10-20 and a first frost on 04-28 cannot be in the northern half of the earth",
        mend: "`last` is the last frost before the summer and `first` the first one after it: swap or mend the days",
        line: lineOfFrost + 1,
      },
    ]);
  });

  test.each([
    [{ last: "08-01" }, "Europe/Dublin", false],
    [{ first: "05-03" }, "Europe/Dublin", false],
    [{ last: "12-01", first: "12-20" }, "Europe/Dublin", false],
    [{ last: "03-01", first: "01-06" }, "Europe/Dublin", true],
    [{ last: "07-10", first: "08-20" }, "Europe/Dublin", true],
    [{ last: "10-05", first: "05-03" }, "Australia/Hobart", true],
    [{ last: "04-28", first: "10-20" }, "Australia/Hobart", false],
    [{ first: "04-01" }, "Australia/Hobart", true],
  ])("%j in %s: %s", (frost, timezone, isFine) => {
    const beds = [{ id: "south", plantings: [] }];
    expect(readGarden(gardenText({ frost, timezone, beds })).ok).toBe(isFine);
  });
});
