// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shortened, widthEm } from "../../src/outputs/text-width.js";
import { letters } from "../../src/words/index.js";

const someText = fc.string({ unit: "grapheme", maxLength: 60 });

describe("width", () => {
  test("knows narrow letters from wide ones", () => {
    expect(widthEm("iiii")).toBeLessThan(widthEm("nnnn"));
    expect(widthEm("nnnn")).toBeLessThan(widthEm("WWWW"));
    expect(widthEm("nnnn", "print")).toBeLessThan(widthEm("nnnn"));
  });

  test("takes a space that may not break for a space", () => {
    expect(widthEm("6\u00a0August")).toBe(widthEm("6 August"));
  });

  test("takes an emoji of several characters for one letter", () => {
    expect(widthEm("👩‍🌾")).toBe(widthEm("🍅"));
  });
});

describe("shortening", () => {
  test("leaves alone what fits", () => {
    expect(shortened("South bed", 20)).toBe("South bed");
  });

  test("never makes a text wider than asked, nor cuts a letter in two", () => {
    fc.assert(
      fc.property(someText, fc.double({ min: 2, max: 30, noNaN: true }), (text, mostEm) => {
        const short = shortened(text, mostEm);
        expect(widthEm(short)).toBeLessThanOrEqual(Math.max(mostEm, widthEm("…")) + 1e-9);
        const kept = letters(short.replace(/…$/, ""));
        expect(letters(text).slice(0, kept.length).join("").startsWith(kept.join(""))).toBe(true);
      }),
    );
  });
});
