// @ts-nocheck
import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { gardenPage } from "../../src/outputs/page/page.js";
import { indexPage, problemPage } from "../../src/serve/plain-page.js";
import { pagePolicy, withPolicy } from "../../src/serve/security-headers.js";
import { aPlan } from "../support/a-plan.js";

const hashOf = (text: string): string => createHash("sha256").update(text).digest("base64");

describe("the Content-Security-Policy of a page", () => {
  test("W3C CSP level 3 section 6.7.2 (from memory): the hash of its own example", () => {
    expect(pagePolicy("<script>alert('Hello, world.');</script>")).toContain(
      "script-src 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='",
    );
  });

  test("lets each inline block through by its hash and nothing else", () => {
    const policy = pagePolicy(
      "<style>a{}</style><STYLE media=print>b{}</STYLE >\n<script>1</script>",
    );
    expect(policy.split("; ")).toEqual([
      "default-src 'none'",
      `style-src 'sha256-${hashOf("a{}")}' 'sha256-${hashOf("b{}")}'`,
      `script-src 'sha256-${hashOf("1")}'`,
      "img-src data:",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ]);
  });

  test("a page without blocks may have none", () => {
    expect(pagePolicy("<p>style</p>")).toContain("style-src 'none'; script-src 'none'");
  });

  test("holds for our pages: no inline styles or handlers beside the blocks, nothing from elsewhere", () => {
    const name = `<script>alert(1)</script>"'&`;
    const problem = {
      code: "x",
      file: name,
      at: { line: 1, column: 1 },
      message: name,
      mend: name,
    };
    const links = { webcal: "webcal://192.0.2.1/x.ics", http: "http://192.0.2.1/x.ics" };
    const view = { today: day("2027-06-01"), problems: [problem], subscribe: links };
    const entry = { title: name, page: name, calendar: name, hasProblems: true };
    for (const page of [
      gardenPage(aPlan({ garden: { name } }), view),
      indexPage([entry]),
      problemPage(name, [problem]),
    ]) {
      expect(page).not.toContain("alert(1)</script>");
      expect(page).not.toMatch(/<[^>]*\s(?:style|on[a-z]+)=/i);
      expect(page).not.toMatch(/\s(?:src|href)="(?!data:|#|http:\/\/192\.0\.2\.1|webcal:|&lt;)/);
      const blocks = [...page.matchAll(/<(style|script)[^>]*>/g)].length;
      expect(pagePolicy(page).match(/'sha256-/g)?.length).toBe(blocks);
    }
  });
});

test.each([
  ["the garden's page", gardenPage(aPlan())],
  ["the index", indexPage([])],
])("%s carries the same policy within it, before any block, once", (_, page) => {
  const own = withPolicy(page);
  const [before = "", after = ""] = own.split(
    '<meta http-equiv="Content-Security-Policy" content="',
  );
  expect(after.split('"')[0]).toBe(pagePolicy(page).replace("; frame-ancestors 'none'", ""));
  expect(before).toMatch(/<meta charset="utf-8"(?: \/)?>\s*$/);
  expect(before).not.toMatch(/<(style|script)/);
  expect(pagePolicy(own)).toBe(pagePolicy(page));
});

test("the index lists gardens by title and says which have problems", () => {
  const entry = (title: string, hasProblems = false) => {
    const name = title.toLowerCase();
    return { title, page: name, calendar: `${name}.ics`, hasProblems };
  };
  const page = indexPage([entry("Weir"), entry("Abbey", true)]);
  expect(page.indexOf("Abbey")).toBeLessThan(page.indexOf("Weir"));
  expect(page).toContain(`<a href="weir.ics">calendar</a></li>`);
  expect(page.match(/has a problem/g)).toHaveLength(1);
  expect(indexPage([])).toContain("There are none yet.");
});
