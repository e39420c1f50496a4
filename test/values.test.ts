import { expect, test } from "vitest";
import { remembering } from "../src/values.js";

test("a step that remembers is done once for like arguments, and begins anew when it is full", () => {
  const done: number[] = [];
  const twice = remembering(2, String, (n: number) => {
    done.push(n);
    return 2 * n;
  });
  expect([1, 1, 2, 1].map(twice)).toEqual([2, 2, 4, 2]);
  expect(done).toEqual([1, 2]);
  expect([3, 1].map(twice)).toEqual([6, 2]);
  expect(done).toEqual([1, 2, 3, 1]);
});
