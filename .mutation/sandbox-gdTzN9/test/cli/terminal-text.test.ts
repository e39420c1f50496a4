// @ts-nocheck
import stringWidth from "string-width";
import { describe, expect, test } from "vitest";
import { table, tables } from "../../src/cli/terminal-text.js";

const rows = [
  [
    "South bed",
    "1 can of 9 L",
    "23 mL",
    "toms (tomato, fruit growth), peppers (pepper, flowering)",
  ],
  ["", "1 part can of 3 L", "8 mL", ""],
];

describe("a table", () => {
  test("wraps its last column where there is room", () => {
    expect(table(rows, "  ", 80)).toBe(
      [
        "  South bed  1 can of 9 L       23 mL  toms (tomato, fruit growth), peppers",
        "                                       (pepper, flowering)",
        "             1 part can of 3 L  8 mL",
      ].join("\n"),
    );
  });

  test("puts its last column below where there is none", () => {
    expect(table(rows, "  ", 40)).toBe(
      [
        "  South bed  1 can of 9 L       23 mL",
        "      toms (tomato, fruit growth),",
        "      peppers (pepper, flowering)",
        "             1 part can of 3 L  8 mL",
      ].join("\n"),
    );
  });

  test.each([30, 40, 60, 80, 100])("stays within %i columns", (width) => {
    const lines = table(rows, "  ", width).split("\n");
    expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(width);
  });

  test("stays aligned where all of it is short enough", () => {
    expect(
      table(
        [
          ["a", "b"],
          ["cc", "d"],
        ],
        "",
        6,
      ),
    ).toBe("a   b\ncc  d");
  });
});

test("several tables have the same columns", () => {
  const [first, second] = tables([[["a", "b"]], [["longer", "c"]]], "", 80);
  expect([first, second]).toEqual(["a       b", "longer  c"]);
});
