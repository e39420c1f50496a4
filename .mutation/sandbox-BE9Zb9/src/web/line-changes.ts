/** Two texts, line by line: what stands in one alone, and two lines around it. */
// @ts-nocheck

import { diffLines } from "diff";

const around = 2;

/** Lines with `−` stand in the first text alone, those with `+` in the second, those with a space in both. */
export function lineChanges(first: string, second: string): string {
  const rows = diffLines(first, second).flatMap(({ added, removed, value }) => {
    const sign = added ? "+" : removed ? "−" : " ";
    return value
      .replace(/\n$/, "")
      .split("\n")
      .map((line) => ({ sign, line }));
  });
  const isNear = (i: number): boolean =>
    rows.slice(Math.max(0, i - around), i + around + 1).some(({ sign }) => sign !== " ");
  return rows
    .flatMap(({ sign, line }, i) => {
      if (isNear(i)) return [`${sign} ${line}`];
      return i === 0 || isNear(i - 1) ? ["  ..."] : [];
    })
    .join("\n");
}
