import { describe, expect, test } from "vitest";
import { replyWith } from "../../src/serve/reply.js";
import { inflater, renewed, representation } from "../../src/serve/representation.js";

const nowMs = Date.UTC(2027, 5, 1, 6);

describe("what an address answers", () => {
  test("has a tag of its content alone, and another for each coding", () => {
    const one = representation("calendar", "a", 1);
    const same = representation("calendar", "a", 2);
    const other = representation("calendar", "b", 1);
    const tags = ({ coded }: typeof one): string[] => Object.values(coded).map(({ etag }) => etag);
    expect(tags(same)).toEqual(tags(one));
    expect(new Set([...tags(one), ...tags(other)]).size).toBe(4);
  });

  test("stays the same one while its content does", () => {
    const first = renewed(undefined, "<p>1", nowMs);
    expect(renewed(first, "<p>1", nowMs + 5000)).toBe(first);
    expect(renewed(first, "<p>2", nowMs + 5000).modifiedS).toBe(nowMs / 1000 + 5);
  });

  test("two changes within a second are told apart by date, too", () => {
    const first = renewed(undefined, "<p>1", nowMs);
    const second = renewed(first, "<p>2", nowMs + 400);
    const inflate = inflater(1000);
    const date = (shown: typeof first): string => {
      const { headers } = replyWith(shown, {}, nowMs + 500, inflate);
      return headers[headers.indexOf("Last-Modified") + 1] ?? "";
    };
    expect(date(second)).toBe(date(first));
    const asked = { "if-modified-since": date(first) };
    expect(replyWith(first, asked, nowMs + 500, inflate).status).toBe(304);
    expect(replyWith(second, asked, nowMs + 500, inflate).status).toBe(200);
  });

  test("plain bytes are kept up to a limit, those used last", () => {
    const shown = ["a", "b", "c"].map((c) => representation("page", c.repeat(1000), 1));
    const [a, b, c] = shown as [(typeof shown)[0], (typeof shown)[0], (typeof shown)[0]];
    const inflate = inflater(2500);
    const firstA = inflate(a);
    const firstB = inflate(b);
    expect(firstA.toString()).toBe("a".repeat(1000));
    expect(inflate(a)).toBe(firstA);
    inflate(c);
    expect(inflate(a)).toBe(firstA);
    expect(inflate(b)).not.toBe(firstB);
    const large = representation("page", "d".repeat(9000), 1);
    expect(inflate(large)).not.toBe(inflate(large));
  });
});
