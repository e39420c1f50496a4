// @ts-nocheck
import { describe, expect, test } from "vitest";
import { rateLimit } from "../../src/serve/rate-limit.js";

describe("how often one address may write", () => {
  const limits = { burst: 3, perSecond: 0.5, addresses: 2 };

  test("a burst, then one each so many seconds; others are not held up by it", () => {
    const { waitS } = rateLimit(limits);
    expect([0, 0, 0, 0].map((nowMs) => waitS("a", nowMs))).toEqual([0, 0, 0, 2]);
    expect(waitS("b", 0)).toBe(0);
    expect(waitS("a", 1000)).toBe(1);
    expect(waitS("a", 2000)).toBe(0);
    expect(waitS("a", 2000)).toBe(2);
    // A long time gives the burst again and no more.
    expect([9e6, 9e6, 9e6, 9e6].map((nowMs) => waitS("a", nowMs))).toEqual([0, 0, 0, 2]);
  });

  test("a clock that is set back takes nothing, and gives nothing", () => {
    const { waitS } = rateLimit(limits);
    for (const nowMs of [5000, 5000, 5000]) waitS("a", nowMs);
    expect(waitS("a", 1000)).toBe(2);
    expect(waitS("a", 3000)).toBe(0);
  });

  test("so many addresses are remembered, the longest silent one is let go", () => {
    const { waitS } = rateLimit(limits);
    for (const address of ["a", "a", "a", "b", "a"]) waitS(address, 0);
    waitS("c", 0);
    expect(waitS("a", 0)).toBe(2);
    expect(waitS("b", 0)).toBe(0);
  });
});
