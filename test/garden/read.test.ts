import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readYaml, type SourceFile } from "../../src/garden/read.js";
import type { FilePath } from "../../src/problem.js";
import { examplePath } from "../support/run-cli.js";

function source(text: string): SourceFile {
  const read = readYaml(text, "garden.yaml");
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join("\n"));
  return read.value;
}

function refusals(text: string): string[] {
  const read = readYaml(text, "garden.yaml");
  return read.ok ? [] : read.problems.map((p) => `${p.code} ${p.at.line}:${p.at.column}`);
}

function words(text: string): string {
  const read = readYaml(text, "garden.yaml");
  return read.ok ? "" : read.problems.map((p) => `${p.message}: ${p.mend}`).join("\n");
}

describe("values", () => {
  test("dates, times and yes stay text; numbers and true do not", () => {
    const text = `{ sown: 2027-05-20, time: 18:30, feed: yes, on: off, n: 1.5, b: true, z: 010 }`;
    expect(source(text).value).toEqual({
      sown: "2027-05-20",
      time: "18:30",
      feed: "yes",
      on: "off",
      n: 1.5,
      b: true,
      z: 10,
    });
  });

  test("keys are text, also when they look like numbers or true", () => {
    expect(source("1: a\ntrue: b\n").value).toEqual({ "1": "a", true: "b" });
  });

  test("the keys of JavaScript's own objects are keys like any other", () => {
    const { value } = source("__proto__: { version: 1 }\nconstructor: 2\n");
    expect(Object.keys(value as object)).toEqual(["__proto__", "constructor"]);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
  });

  test("a %YAML 1.1 line changes nothing", () => {
    expect(source("%YAML 1.1\n---\nfeed: yes\n").value).toEqual({ feed: "yes" });
  });

  test("an alias stands for the value that it names", () => {
    expect(source("a: &w { days: [wed] }\nb: *w\n").value).toEqual({
      a: { days: ["wed"] },
      b: { days: ["wed"] },
    });
  });

  test("Windows and old Macintosh line ends are line ends", () => {
    expect(source("a: 1\r\nb: 2\r\n").value).toEqual({ a: 1, b: 2 });
  });
});

describe("places", () => {
  const text = ["version: 1", "beds:", "  - id: south", "    area:", "    plantings: [{ id: a }]"];
  const at = (path: FilePath, atKey = false): string => {
    const { line, column } = source(text.join("\n")).locate({ path, atKey });
    return `${line}:${column}`;
  };

  test.each<[string, FilePath, string]>([
    ["a value", ["version"], "1:10"],
    ["a value deep inside", ["beds", 0, "plantings", 0, "id"], "5:23"],
    ["a group in a list", ["beds", 0], "3:5"],
    ["a group in brackets", ["beds", 0, "plantings", 0], "5:17"],
    ["an empty value: its key", ["beds", 0, "area"], "4:5"],
    ["what is missing: the group that lacks it", ["beds", 0, "name"], "3:5"],
    ["what is missing deep inside: the nearest that is there", ["beds", 7, "id", "x"], "3:3"],
    ["the whole file", [], "1:1"],
  ])("%s", (_, path, place) => {
    expect(at(path)).toBe(place);
  });

  test("a finding about a key points at the key", () => {
    expect(at(["beds", 0, "plantings"], true)).toBe("5:5");
    expect(at(["beds", 0, "missing"], true)).toBe("3:5");
  });

  test("columns count from 1 behind a byte order mark and wide letters", () => {
    const wide = source("garden: 菜园\nbeds: 1\n");
    expect(wide.locate({ path: ["beds"] })).toEqual({ line: 2, column: 7 });
  });

  test("a place inside an alias is where its value is written", () => {
    const aliased = source("a: &w\n  x: 1\nb: *w\n");
    expect(aliased.locate({ path: ["b", "x"] })).toEqual({ line: 2, column: 6 });
    expect(aliased.locate({ path: ["b"] })).toEqual({ line: 3, column: 4 });
  });

  test("an item that is no group, and a key of a plain text, fall back on what holds them", () => {
    const list = source("beds: [1, 2]\nname: x\n");
    expect(list.locate({ path: ["beds", 1] })).toEqual({ line: 1, column: 11 });
    expect(list.locate({ path: ["name", "deep"] })).toEqual({ line: 2, column: 7 });
    expect(list.locate({ path: ["beds", "key"] })).toEqual({ line: 1, column: 7 });
  });
});

describe("a slip in any one line of a garden file", () => {
  const lines = readFileSync(examplePath("back-garden"), "utf8").split("\n");

  test.each<[string, (line: string) => string]>([
    ["a quote left open", (line) => line.replace(/: (\S)/, ': "$1')],
    ["a bracket left open", (line) => line.replace(/: (\S)/, ": [$1")],
    ["a brace left open", (line) => line.replace(/: (\S)/, ": {$1")],
    ["a brace not closed", (line) => line.replace(/ \}$/, "")],
    ["a blank too many", (line) => ` ${line}`],
    ["a blank too few", (line) => line.replace(/^ /, "")],
    ["no colon", (line) => line.replace(":", "")],
    ["no blank behind the colon", (line) => line.replace(": ", ":")],
    ["a dash too many", (line) => line.replace(/^( *)/, "$1- ")],
    ["a tab", (line) => `\t${line}`],
  ])("is told once: %s", (_, slip) => {
    const broken = lines.flatMap((line, i) => {
      if (/^\s*(?:#|$)/.test(line) || slip(line) === line) return [];
      const read = readYaml(lines.toSpliced(i, 1, slip(line)).join("\n"), "garden.yaml");
      if (read.ok || read.problems[0]?.code !== "yaml") return [];
      const [problem, ...others] = read.problems;
      expect(others).toEqual([]);
      // Where a quote of a later line closes it, that line is the one told.
      const at = problem.at.line - 1;
      return at > i && lines[at]?.includes('"') ? [] : [at - i];
    });
    expect(broken.length).toBeGreaterThan(5);
    expect(broken.filter((away) => away < -1 || away > 2)).toEqual([]);
  });
});

describe("what cannot be read", () => {
  test.each([
    ["an empty file", "", "empty 1:1"],
    ["blank lines", "\n\n\n", "empty 1:1"],
    ["only a comment", "# to do\n", "empty 1:1"],
    ["only a document mark", "---\n", "empty 1:1"],
    ["nothing, spelt out", "~\n", "empty 1:1"],
    ["two documents", "a: 1\n---\nb: 2\n", "several-documents 2:1"],
    ["an empty document before the garden", "---\n---\na: 1\n", "several-documents 2:1"],
    ["a key given twice", "a: 1\nb: 2\na: 3\n", "yaml-key-twice 3:1"],
    ["a key given twice deep inside", "x:\n  - { a: 1, a: 2 }\n", "yaml-key-twice 2:13"],
    ["a tab that indents", "a:\n\tb: 1\n", "yaml 2:1"],
    ["a tag", "a: !!binary aGk=\n", "yaml 1:4"],
    ["an own tag", "a: !crop tomato\n", "yaml 1:4"],
    ["a quote left open", 'a: "x\nb: 1\n', "yaml 1:4"],
    ["brackets closed that nobody opened", "a:\n  {\n    b: 1\n  }\n  ],\n  c: 2\n", "yaml 5:3"],
    ["a key that is a list", "? [a, b]\n: 1\n", "yaml 1:3"],
    ["an alias without its anchor", "a: *w\n", "yaml-alias 1:4"],
    ["an alias that holds itself", "a: &a [*a]\n", "yaml-alias 1:8"],
  ])("%s", (_, text, ...expected) => {
    expect(refusals(text)).toEqual(expected);
  });

  test("a key of many lines is told on one", () => {
    expect(words('"a\\nb": 1\n"a\\nb": 2\n')).toBe(
      "the key `a b` is given twice here: keep one of the two",
    );
  });

  test("several slips are all told", () => {
    expect(refusals("a: 1\na: 2\nb: { c: 1, c: 2 }\n")).toEqual([
      "yaml-key-twice 2:1",
      "yaml-key-twice 3:12",
    ]);
  });

  test("the words speak of the file, not of the parser", () => {
    expect(words("a:\n\tb: 1\n")).toContain("a tab is used to indent: indent with spaces");
    expect(words("a: 1\n  b: 2\n")).toContain(
      "a key stands where none can be: check the indentation of this line",
    );
    expect(words("a: !crop tomato\n")).toBe(
      "a YAML tag (!name) means nothing here: remove the tag",
    );
    expect(words("? [a, b]\n: 1\n")).toContain("a key is not text: write the key as a word");
    expect(words("x:\n   a: 1\n  b: 2\n")).toContain("indented differently from its neighbours");
    expect(words("beds: [\n")).toBe(
      "a bracket opened before this is not closed with ]: write the ], or set its further lines in",
    );
    expect(words("a: b: c\n")).toContain("a key stands where none can be");
  });

  test("a tab is told alone, without the errors that follow from it", () => {
    expect(words("beds:\n\t- id: south\n\t  name: x\n")).not.toContain("a key stands");
    expect(refusals("beds:\n\t- id: south\nx: y: z\n")).toEqual(["yaml 2:1"]);
  });

  test("a calendar given for a garden is called one", () => {
    expect(words("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n")).toBe(
      "this is a calendar, not a garden file: give the garden file",
    );
  });

  test("aliases that unfold to billions of values are refused before they are unfolded", () => {
    const levels = Array.from({ length: 12 }, (_, i) => {
      const below = i === 0 ? "x" : `*l${i - 1}`;
      return `l${i}: &l${i} [${Array.from({ length: 10 }, () => below).join(", ")}]`;
    });
    expect(refusals(levels.join("\n"))).toEqual(["yaml-alias 2:10"]);
  });

  test.each([
    ["brackets", "[".repeat(100_000)],
    ["closed brackets", "[".repeat(20_000) + "]".repeat(20_000)],
    ["dashes", "- ".repeat(20_000)],
    ["groups", Array.from({ length: 3000 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
  ])("thousands of nested %s end in a problem, never in a crash", (_, text) => {
    const read = readYaml(text, "garden.yaml");
    expect(read.ok ? "read" : read.problems[0]?.code).toMatch(/^(yaml|read)$/);
  });

  test("a file of nothing but errors tells the first fifty", () => {
    expect(refusals("a: 1\n".repeat(500))).toHaveLength(50);
  });

  test("a file of twenty thousand keys is searched for repeats, each key looked at once", () => {
    // Compared in pairs they would take minutes.
    const keys = Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join("\n");
    expect(refusals(`${keys}\nk0: 2\n`)).toEqual(["yaml-key-twice 20001:1"]);
  });
});

test.each([
  ["anchors", "&a ".repeat(330_000)],
  ["brackets", "[".repeat(990_000)],
  ["quotes", '"'.repeat(990_000)],
  ["keys", Array.from({ length: 60_000 }, (_, i) => `key${i}: 1`).join("\n")],
])("a megabyte of %s is more than any garden, and is not read", (_, text) => {
  const read = readYaml(text, "garden.yaml");
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual(["too-much"]);
});

test("each of thousands of keys is found in its place", () => {
  const text = Array.from({ length: 4000 }, (_, i) => `key${i}: 1`).join("\n");
  const read = readYaml(text, "garden.yaml");
  const line = read.ok && read.value.locate({ path: ["key3999"], atKey: true }).line;
  expect(line).toBe(4000);
});
