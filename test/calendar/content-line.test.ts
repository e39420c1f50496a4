import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cleanText,
  foldedLines,
  nameOfLine,
  textOfValue,
  textValue,
  unfoldedLines,
  valueIn,
  valueOfLine,
} from "../../src/calendar/content-line.js";
import { linesOf, octets, readIcs } from "../support/ics.js";

const anyText = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string({
    unit: fc.constantFrom(
      "a",
      "é",
      "水",
      "😀",
      ",",
      ";",
      "\\",
      "\n",
      "\r\n",
      "\u0007",
      "\ud800",
      " ",
    ),
  }),
);

describe("text in a content line", () => {
  it("shows control characters but keeps TAB and line breaks", () => {
    expect(cleanText("a\u0007\u007f\u0085\u202eb\tc\nd")).toBe(
      "a\\u0007\\u007f\\u0085\\u202eb\tc\nd",
    );
  });

  it("shows each lone surrogate and keeps pairs", () => {
    expect(cleanText("x\ud83dy\ude00z😀")).toBe("x\\ud83dy\\ude00z😀");
  });

  it("comes back as it went in, line breaks as LF", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(textOfValue(textValue(text))).toBe(cleanText(text).replace(/\r\n|\r/g, "\n"));
      }),
    );
  });

  it("is read by ical.js as it went in", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const file = foldedLines(["BEGIN:VEVENT", `SUMMARY:${textValue(text)}`, "END:VEVENT"]);
        expect(readIcs(file).getFirstPropertyValue("summary")).toBe(textOfValue(textValue(text)));
      }),
      { examples: [["a\\nb"], ["a, b; c\\"]] },
    );
  });
});

describe("folding", () => {
  it("keeps every physical line within 75 octets, cuts only between code points, and can be undone", () => {
    fc.assert(
      fc.property(fc.array(anyText, { minLength: 1, maxLength: 5 }), (texts) => {
        const lines = texts.map((text) => `DESCRIPTION:${textValue(text + text + text)}`);
        const folded = foldedLines(lines);
        for (const line of linesOf(folded)) {
          expect(octets(line)).toBeLessThanOrEqual(75);
          expect(line).toBe(cleanText(line));
        }
        expect(unfoldedLines(folded)).toEqual(lines);
      }),
    );
  });

  it("leaves a line of 74 octets whole", () => {
    expect(foldedLines(["X".repeat(74)])).toBe(`${"X".repeat(74)}\r\n`);
  });

  it("writes nothing for no lines", () => {
    expect(foldedLines([])).toBe("");
  });
});

describe("reading a content line", () => {
  it.each([
    ["SUMMARY:a: b", "SUMMARY", "a: b"],
    ["DTSTART;TZID=Europe/Dublin:20270612T183000", "DTSTART", "20270612T183000"],
    ['X-A;P="b:c";Q=d:e:f', "X-A", "e:f"],
  ])("%s", (line, name, value) => {
    expect(nameOfLine(line)).toBe(name);
    expect(valueOfLine(line)).toBe(value);
  });

  it("does not take an alarm's property for the event's", () => {
    const lines = ["BEGIN:VEVENT", "BEGIN:VALARM", "DESCRIPTION:alarm", "END:VALARM", "END:VEVENT"];
    expect(valueIn(lines, "DESCRIPTION")).toBeUndefined();
    expect(valueIn(["DESCRIPTION:event", ...lines], "DESCRIPTION")).toBe("event");
  });
});
