import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linesNeeded, shortened, widthEm } from "../../src/outputs/text-width.js";
import { letters } from "../../src/words/index.js";

const someText = fc.string({ unit: "grapheme", maxLength: 60 });

describe("width", () => {
  test("knows narrow letters from wide ones", () => {
    expect(widthEm("iiii")).toBeLessThan(widthEm("nnnn"));
    expect(widthEm("nnnn")).toBeLessThan(widthEm("WWWW"));
    expect(widthEm("nnnn", "print")).toBeLessThan(widthEm("nnnn"));
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

describe("lines needed", () => {
  test("are one for what fits a line, and more for words that do not", () => {
    expect(linesNeeded("South bed", 20)).toBe(1);
    expect(linesNeeded("South bed", widthEm("South") + 0.01)).toBe(2);
  });

  test("count the pieces of a word longer than a line", () => {
    expect(linesNeeded("n".repeat(100), 20)).toBeGreaterThanOrEqual(
      Math.ceil(widthEm("n".repeat(100)) / 20),
    );
  });

  test("grow when the line gets shorter, and hold the text at every width", () => {
    fc.assert(
      fc.property(someText, fc.integer({ min: 3, max: 40 }), (text, lineEm) => {
        const lines = linesNeeded(text, lineEm);
        expect(lines).toBeGreaterThanOrEqual(linesNeeded(text, lineEm * 2));
        expect(lines * lineEm).toBeGreaterThanOrEqual(widthEm(text.replace(/\s+/g, "")) - 1e-9);
      }),
    );
  });
});
