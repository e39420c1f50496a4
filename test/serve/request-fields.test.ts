import fc from "fast-check";
import { describe, expect, onTestFinished, test, vi } from "vitest";
import { httpDate, parseHttpDate } from "../../src/serve/http-date.js";
import { nextModifiedS } from "../../src/serve/representation.js";
import { acceptsGzip, isUnchanged } from "../../src/serve/request-fields.js";

const changedS = Date.UTC(2027, 5, 1, 6) / 1000;
const now = { etag: '"abc"', modifiedS: changedS, nowS: changedS + 3600 };

describe("If-None-Match", () => {
  test.each([
    ['"abc"', true],
    ['W/"abc"', true],
    ["*", true],
    [" * ", true],
    ['"x", "abc"', true],
    ['"x",W/"y" , W/"abc"', true],
    [', ,"abc"', true],
    ['"a,b","abc"', true],
    ['"x"', false],
    ["abc", false],
    ['"ABC"', false],
    ['"abc', false],
    ['w/"abc"', false],
    ['"x" "abc"', false],
    ['"x, "abc"', false],
    ['W/ "abc"', false],
    ["", false],
    ['*, "x"', false],
  ])("%s: unchanged is %s", (ifNoneMatch, unchanged) => {
    expect(isUnchanged({ "if-none-match": ifNoneMatch }, now)).toBe(unchanged);
  });

  test("makes If-Modified-Since count for nothing (RFC 9110 section 13.1.3)", () => {
    const ifModifiedSince = httpDate(changedS);
    expect(isUnchanged({ "if-none-match": '"x"', "if-modified-since": ifModifiedSince }, now)).toBe(
      false,
    );
    expect(isUnchanged({ "if-modified-since": ifModifiedSince }, now)).toBe(true);
  });

  test("is read to its end, and not over and over, in a field as long as a header may be", () => {
    const ifNoneMatch = `${'W/"x",'.repeat(1300)} ,,,, ${" ".repeat(300)}"`;
    const read = vi.spyOn(RegExp.prototype, "exec");
    onTestFinished(() => {
      read.mockRestore();
    });
    expect(isUnchanged({ "if-none-match": ifNoneMatch }, now)).toBe(false);
    // Once for each tag, and once more for what is none.
    expect(read).toHaveBeenCalledTimes(1301);
  });
});

describe("If-Modified-Since", () => {
  test.each([
    ["at the change", httpDate(changedS), true],
    ["after it", httpDate(changedS + 1), true],
    ["a second before it", httpDate(changedS - 1), false],
    ["no date", "yesterday", false],
    ["another zone", httpDate(changedS).replace("GMT", "CET"), false],
    ["no such day", "Thu, 31 Jun 2027 06:00:00 GMT", false],
    ["no such hour", "Tue, 01 Jun 2027 24:00:00 GMT", false],
    ["ISO 8601", "2027-06-01T06:00:00Z", false],
  ])("%s: unchanged is", (_, ifModifiedSince, unchanged) => {
    expect(isUnchanged({ "if-modified-since": ifModifiedSince }, now)).toBe(unchanged);
  });

  test("without conditions everything is sent", () => {
    expect(isUnchanged({}, now)).toBe(false);
  });
});

describe("HTTP dates", () => {
  test.each([
    "Sun, 06 Nov 1994 08:49:37 GMT",
    "Sunday, 06-Nov-94 08:49:37 GMT",
    "Sun Nov  6 08:49:37 1994",
  ])("RFC 9110 section 5.6.7 (from memory): %s is one moment in three forms", (text) => {
    expect(parseHttpDate(text, changedS)).toBe(784_111_777);
  });

  test("a year of two digits more than 50 years ahead is past", () => {
    expect(parseHttpDate("Tuesday, 01-Jun-77 00:00:00 GMT", changedS)).toBe(
      Date.UTC(2077, 5, 1) / 1000,
    );
    expect(parseHttpDate("Wednesday, 01-Jun-78 00:00:00 GMT", changedS)).toBe(
      Date.UTC(1978, 5, 1) / 1000,
    );
  });

  test("written dates read back as the same second", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7_000_000_000 }), (seconds) => {
        expect(parseHttpDate(httpDate(seconds), changedS)).toBe(seconds);
      }),
    );
  });
});

describe("the second of a change", () => {
  test("is now", () => {
    expect(nextModifiedS(undefined, changedS * 1000 + 999)).toBe(changedS);
    expect(nextModifiedS(changedS - 60, changedS * 1000)).toBe(changedS);
  });

  test("is later than that of the change before, within a second or with the clock set back", () => {
    expect(nextModifiedS(changedS, changedS * 1000 + 500)).toBe(changedS + 1);
    expect(nextModifiedS(changedS, (changedS - 3600) * 1000)).toBe(changedS + 1);
  });
});

test.each([
  [undefined, false],
  ["", false],
  ["gzip", true],
  ["GZIP", true],
  ["x-gzip", true],
  ["gzip, deflate, br, zstd", true],
  ["br;q=1.0, gzip;q=0.5, *;q=0", true],
  ["*", true],
  ["gzip;q=0", false],
  ["gzip;q=0.000, *", false],
  ["*;q=0", false],
  ["identity", false],
  ["identity;q=1, gzip;q=0.5", false],
  ["identity;q=0.5, gzip;q=1", true],
  ["deflate", false],
  ["gzipped", false],
  ["gzip ; q=0.1", true],
])("Accept-Encoding %s asks for gzip: %s", (field, gzip) => {
  expect(acceptsGzip(field)).toBe(gzip);
});

test("a field of blanks as long as no header is read through once, and not from each blank on", () => {
  expect(acceptsGzip(`gzip${"\t".repeat(1_000_000)}x`)).toBe(false);
});
