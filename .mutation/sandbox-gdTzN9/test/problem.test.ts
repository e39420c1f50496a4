// @ts-nocheck
import { expect, test } from "vitest";
import { inFileOrder, type Problem, problemLine } from "../src/problem.js";

function aProblem(file: string, line: number, column: number): Problem {
  return { code: "date", file, at: { line, column }, message: "no date", mend: "write one" };
}

test("a problem prints as file:line:column: what is wrong: how to mend it", () => {
  expect(problemLine(aProblem("garden.yaml", 12, 7))).toBe("garden.yaml:12:7: no date: write one");
});

test("problems stand in the order of files, lines and columns; equals keep theirs", () => {
  const [first, second] = [aProblem("a.yaml", 9, 1), { ...aProblem("a.yaml", 9, 1), code: "b" }];
  const unsorted = [
    aProblem("b.yaml", 1, 1),
    aProblem("a.yaml", 10, 2),
    first,
    second,
    aProblem("a.yaml", 10, 1),
  ];
  expect(
    inFileOrder(unsorted).map(({ file, at, code }) => `${file}:${at.line}:${at.column} ${code}`),
  ).toEqual([
    "a.yaml:9:1 date",
    "a.yaml:9:1 b",
    "a.yaml:10:1 date",
    "a.yaml:10:2 date",
    "b.yaml:1:1 date",
  ]);
  expect(unsorted[0]?.file).toBe("b.yaml");
});
