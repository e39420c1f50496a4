import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  hiddenIn,
  legible,
  legibleMessage,
  legibleWord,
  mended,
  onOneLine,
  quoted,
} from "../src/legible.js";

describe("what hides in a text", () => {
  test("is the same in a text of plain letters and in one that is looked at by class", () => {
    const letters = Array.from({ length: 0x2100 }, (_, code) => String.fromCharCode(code));
    const hides = (text: string): boolean => hiddenIn(text) !== undefined;
    expect(letters.filter((letter) => hides(letter) !== hides(`Ω${letter}`))).toEqual([]);
  });

  test.each([
    ["a control character", "a\u001bb", "a\\u001bb"],
    ["delete", "a\u007f", "a\\u007f"],
    ["a control character of the second set", "a\u009b31m", "a\\u009b31m"],
    ["an override", "a\u202eb", "a\\u202eb"],
    ["an embedding", "\u202ab", "\\u202ab"],
    ["marks of direction", "\u200e\u200f\u061c", "\\u200e\\u200f\\u061c"],
    ["isolates that name a direction", "\u2066a\u2067", "\\u2066a\\u2067"],
    ["other line breaks", "a\u2028b\u2029c", "a\\u2028b\\u2029c"],
    ["half a letter", "a\ud83cb", "a\\ud83cb"],
    ["a joiner between Latin letters", "to\u200dma\u200cto", "to\\u200dma\\u200cto"],
    ["a break without width", "9 L\u200b", "9 L\\u200b"],
    ["a byte order mark within", "a\ufeffb", "a\\ufeffb"],
    ["a soft hyphen", "Kohl\u00adrabi", "Kohl\\u00adrabi"],
    ["a letter that is drawn as a blank", "a\u3164", "a\\u3164"],
    ["tags", "a\u{e0041}", "a\\udb40\\udc41"],
  ])("is shown: %s", (_, text, shown) => {
    expect(hiddenIn(text)).toBeDefined();
    expect(legible(text)).toBe(shown);
    // The same letters to whoever reads it as JSON.
    expect(JSON.parse(`"${shown}"`)).toBe(text);
  });

  test.each([
    ["Hebrew", "עגבניות"],
    ["Arabic", "طماطم"],
    ["Persian with its joiner", "نمی‌خواهم"],
    ["Hindi with its joiners", "क्‍ष and क्‌ष"],
    ["Khmer with breaks without width", "ខ្មែរ\u200bសួស្តី"],
    ["emoji of several", "👩‍🌾 ❤️ 👩🏽‍🌾 🏳️‍🌈"],
    ["a flag with its tags", "🏴\u{e0067}\u{e0062}\u{e0073}\u{e0063}\u{e0074}\u{e007f}"],
    ["Chinese with a selected form", "葛\u{e0100}"],
    ["lines and tabs", "a\n\tb\r\nc"],
  ])("is not %s", (_, text) => {
    expect(hiddenIn(text)).toBeUndefined();
    expect(legible(text)).toBe(text);
  });

  test("is told with its place", () => {
    expect(hiddenIn("ab\u202ec\u202e")).toEqual({ at: 2, letter: "\u202e" });
  });

  test("leaves nothing hidden in what is printed but isolates, which end with their line", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const shown = legible(text);
        expect(hiddenIn(shown.replace(/[\u2068\u2069]/g, ""))).toBeUndefined();
        expect(shown).not.toMatch(/\r(?!\n)/);
        expect(legible(shown)).toBe(shown);
      }),
    );
  });
});

test("a name within a line shows its line breaks too", () => {
  expect(legibleWord("a\nb\tc\r\n")).toBe("a\\u000ab\\u0009c\\u000d\\u000a");
});

test("on one line runs of blanks are one, and a blank of another kind stays", () => {
  expect(onOneLine(" South\n  wall \t A\u00a01\n")).toBe("South wall A\u00a01");
});

test("what an earlier version took is mended as a grower would", () => {
  expect(mended(" Nettle\n  tea\u202e ")).toBe("Nettle tea");
  expect(mended("\u202e")).toBe("\u202e");
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      expect(mended(mended(text))).toBe(mended(text));
    }),
  );
});

describe("a value in a message", () => {
  test("is cut behind a hundred letters, never within one", () => {
    expect(quoted("x".repeat(100))).toBe("x".repeat(100));
    expect(quoted("x".repeat(101))).toBe(`${"x".repeat(97)}...`);
    expect(quoted(`${"x".repeat(96)}🍅${"x".repeat(9)}`)).toBe(`${"x".repeat(96)}...`);
    expect(quoted("a".repeat(10_000_000))).toHaveLength(100);
  });

  test("is cut wherever it stands between backticks", () => {
    expect(legibleMessage(`\`${"x".repeat(500)}\` is no date, like \`2027-05-01\``)).toBe(
      `\`${"x".repeat(97)}...\` is no date, like \`2027-05-01\``,
    );
    expect(legibleMessage("y".repeat(5000))).toHaveLength(1003);
  });
});
