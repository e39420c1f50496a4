import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { day } from "../../src/dates.js";
import { addToLog, type NewLogEntry } from "../../src/garden/write-log.js";
import { problemLine } from "../../src/problem.js";

const entry: NewLogEntry = {
  on: day("2027-06-12"),
  planting: "toms",
  stock: "30 mL",
  batch: "B1",
};
const line = "{ on: 2027-06-12, planting: toms, stock: 30 mL, batch: B1 }";

function added(text: string, ...entries: NewLogEntry[]): string {
  const result = addToLog(text, "garden.yaml", entries.length > 0 ? entries : [entry]);
  if (!result.ok) throw new Error(result.problems.map(problemLine).join("\n"));
  return result.value;
}

function refusal(text: string): string {
  const result = addToLog(text, "garden.yaml", [entry]);
  if (result.ok) throw new Error(`it was written:\n${result.value}`);
  return result.problems.map((problem) => `${problem.code} ${problemLine(problem)}`).join("\n");
}

describe("a list with a line for each entry", () => {
  test("gets one more line, in its own indentation", () => {
    expect(added("log:\n  - { on: 2027-06-01 }\nbeds: []\n")).toBe(
      `log:\n  - { on: 2027-06-01 }\n  - ${line}\nbeds: []\n`,
    );
    expect(added("log:\n- { on: 2027-06-01 }\nbeds: []\n")).toBe(
      `log:\n- { on: 2027-06-01 }\n- ${line}\nbeds: []\n`,
    );
  });

  test("keeps comments, blank lines and what follows", () => {
    const text = [
      "# mine",
      "log: # what I gave",
      "  # June",
      "  - { on: 2027-06-01 } # first truss",
      "",
      "  # to do: peppers",
      "signs: [] # none",
      "",
    ];
    expect(added(text.join("\n"))).toBe(text.toSpliced(4, 0, `  - ${line}`).join("\n"));
  });

  test("whose entries take several lines gets one that does", () => {
    const text = "log:\n  - on: 2027-06-01\n    planting: toms # all six\n\nbeds: []\n";
    expect(added(text)).toBe(
      "log:\n  - on: 2027-06-01\n    planting: toms # all six\n" +
        "  - on: 2027-06-12\n    planting: toms\n    stock: 30 mL\n    batch: B1\n" +
        "\nbeds: []\n",
    );
  });

  test("at the end of a file without a last line break", () => {
    expect(added("log:\n  - { on: 2027-06-01 }")).toBe(`log:\n  - { on: 2027-06-01 }\n  - ${line}`);
  });

  test("whose last value is a block of text", () => {
    expect(added("log:\n  - on: 2027-06-01\n    planting: |-\n      toms\nbeds: []\n")).toBe(
      "log:\n  - on: 2027-06-01\n    planting: |-\n      toms\n" +
        "  - on: 2027-06-12\n    planting: toms\n    stock: 30 mL\n    batch: B1\nbeds: []\n",
    );
  });
});

describe("a list in brackets", () => {
  test("on one line grows on that line", () => {
    expect(added("log: [{ on: 2027-06-01 }] # so far\nbeds: []\n")).toBe(
      `log: [{ on: 2027-06-01 }, ${line}] # so far\nbeds: []\n`,
    );
    expect(added("log: [{ on: 2027-06-01 }, ]\n")).toBe(`log: [{ on: 2027-06-01 }, ${line}, ]\n`);
  });

  test("over several lines gets a line, comments staying with theirs", () => {
    expect(added("log: [\n  { on: 2027-06-01 }, # a\n  { on: 2027-06-02 }  # b, c\n]\n")).toBe(
      `log: [\n  { on: 2027-06-01 }, # a\n  { on: 2027-06-02 },  # b, c\n  ${line}\n]\n`,
    );
  });

  test("with a comma at its end keeps one there", () => {
    expect(added("log: [\n  { on: 2027-06-01 }, # a\n]\n")).toBe(
      `log: [\n  { on: 2027-06-01 }, # a\n  ${line},\n]\n`,
    );
  });

  test("with its bracket behind the last entry", () => {
    expect(added("log: [\n  { on: 2027-06-01 }]\n")).toBe(
      `log: [\n  { on: 2027-06-01 },\n  ${line}]\n`,
    );
  });

  test("that is empty becomes one with lines", () => {
    expect(added("version: 1\nlog: [] # none yet\nbeds: []\n")).toBe(
      `version: 1\nlog: # none yet\n  - ${line}\nbeds: []\n`,
    );
    expect(added("log: [ ]\nbeds: []\n")).toBe(`log: [ ${line}]\nbeds: []\n`);
  });
});

describe("a file without a log", () => {
  test("gets one at its end", () => {
    expect(added("version: 1\nbeds: [] # none\n\n# the end\n")).toBe(
      `version: 1\nbeds: [] # none\n\n# the end\nlog:\n  - ${line}\n`,
    );
    expect(added("version: 1")).toBe(`version: 1\nlog:\n  - ${line}`);
  });

  test("gets it before the mark that ends the document", () => {
    expect(added("---\nversion: 1\n...\n")).toBe(`---\nversion: 1\nlog:\n  - ${line}\n...\n`);
  });

  test("that is indented as a whole gets it there", () => {
    expect(added("  version: 1\n  beds: []\n")).toBe(
      `  version: 1\n  beds: []\n  log:\n    - ${line}\n`,
    );
  });

  test("that is one map in braces gets it inside", () => {
    expect(added("{ version: 1, beds: [] } # all\n")).toBe(
      `{ version: 1, beds: [], log: [${line}] } # all\n`,
    );
    expect(added("{\n  version: 1, # one\n}\n")).toBe(
      `{\n  version: 1, log: [${line}], # one\n}\n`,
    );
  });

  test("but with the bare key gets entries under it", () => {
    expect(added("log: # later\nbeds: []\n")).toBe(`log: # later\n  - ${line}\nbeds: []\n`);
    expect(added("version: 1\nlog:")).toBe(`version: 1\nlog:\n  - ${line}`);
  });
});

test("lines end as the file's lines do", () => {
  expect(added("version: 1\r\nlog:\r\n  - { on: 2027-06-01 }\r\nbeds: []\r\n")).toBe(
    `version: 1\r\nlog:\r\n  - { on: 2027-06-01 }\r\n  - ${line}\r\nbeds: []\r\n`,
  );
});

test("names that YAML would read as something else are quoted", () => {
  const odd = { on: day("2027-06-12"), planting: "007", bed: "a, b", feed: "yes: no # x" };
  expect(parse(added("version: 1\n", odd))).toEqual({ version: 1, log: [odd] });
});

test("several entries go in in their order", () => {
  const second = { ...entry, planting: "peppers" };
  expect(parse(added("log: []\n", entry, second))).toEqual({ log: [entry, second] });
});

test.each([
  ["an alias", "feeds: &a [{ on: 2027-06-01 }]\nlog: *a\n"],
  ["a list that stands elsewhere too", "log: &a\n  - { on: 2027-06-01 }\nsigns: *a\n"],
  ["a text", "version: 1\nlog: none yet\n"],
])("%s for a log is refused, with the line to write by hand", (_, text) => {
  expect(refusal(text)).toContain("log-layout garden.yaml:");
  expect(refusal(text)).toContain(`write it yourself: - ${line}`);
});

test("a file that cannot be read is refused with what is wrong in it", () => {
  expect(refusal("version: [1\n")).toContain("yaml garden.yaml:");
});

// Random files: keys around the log, its layout, comments and line ends are all drawn.
const comment = fc.constantFrom("", " # so", " # a, b: [c]", "  # {");
const word = fc.constantFrom("toms", "south wall", "'it''s'", '"a # b"', "12", "~", "2027-01-01");
const flowEntry = fc
  .tuple(fc.constantFrom("2027-05-01", "'2027-05-02'"), fc.option(word))
  .map(([on, name]) => (name === null ? `{ on: ${on} }` : `{on: ${on}, planting: ${name}}`));
const filler = fc.constantFrom("", "# a line of its own", "  # indented");
const otherKey = (key: string): fc.Arbitrary<readonly string[]> =>
  fc.oneof(
    fc.tuple(word, comment).map(([value, c]) => [`${key}: ${value}${c}`]),
    fc.tuple(word, comment).map(([value, c]) => [`${key}:${c}`, `  - ${value}`, `  - x: ${value}`]),
    comment.map((c) => [`${key}: [1,${c}`, "  2 ]"]),
    fc.constant([`${key}: |`, "    some text", "", "    more of it"]),
  );
const blockLog = fc
  .tuple(
    fc.constantFrom("", "  ", "    "),
    fc.array(
      fc.tuple(
        fc.oneof(
          flowEntry.map((e) => [e]),
          word.map((w) => [`on: 2027-05-03`, `  planting: ${w}`]),
        ),
        comment,
        filler,
      ),
      { minLength: 1, maxLength: 4 },
    ),
    comment,
  )
  .map(([indent, entries, c]) => [
    `log:${c}`,
    ...entries.flatMap(([lines, behind, after]) => [
      ...lines.map((l, i) => `${indent}${i === 0 ? "- " : ""}${l}`).slice(0, -1),
      `${indent}${lines.length === 1 ? "- " : ""}${lines.at(-1) ?? ""}${behind}`,
      ...(after === "" ? [] : [after]),
    ]),
  ]);
const flowLog = fc
  .tuple(fc.array(fc.tuple(flowEntry, comment), { maxLength: 4 }), fc.boolean(), fc.boolean())
  .map(([entries, hasLines, endsWithComma]) => {
    const comma = (i: number): string => (i < entries.length - 1 || endsWithComma ? "," : "");
    if (entries.length === 0) return ["log: []"];
    return hasLines
      ? ["log: [", ...entries.map(([e, c], i) => `    ${e}${comma(i)}${c}`), "  ]"]
      : [`log: [${entries.map(([e], i) => e + comma(i)).join(" ")} ]`];
  });
const logLines = fc.oneof(blockLog, flowLog, fc.constant(["log:"]), fc.constant([]));
const fileText = fc
  .tuple(
    fc.uniqueArray(fc.constantFrom("garden", "can", "season", "beds", "signs"), { minLength: 1 }),
    fc.nat(5),
    logLines,
    fc.array(otherKey("k"), { minLength: 5, maxLength: 5 }),
    filler,
    fc.constantFrom("\n", "\r\n"),
    fc.boolean(),
  )
  .map(([keys, place, log, values, between, newline, endsWithNewline]) => {
    const blocks = keys.map((key, i) => (values[i] ?? []).map((l) => l.replace(/^k:/, `${key}:`)));
    const at = Math.min(place, blocks.length);
    const lines = [...blocks.slice(0, at).flat(), between, ...log, ...blocks.slice(at).flat()];
    return lines.join(newline) + (endsWithNewline ? newline : "");
  });

test("over random layouts: the entry is added, and no other line changes", () => {
  fc.assert(
    fc.property(fileText, (text) => {
      const before = parse(text) as { log?: unknown[] | null };
      const after = added(text);
      expect(parse(after)).toEqual({ ...before, log: [...(before.log ?? []), entry] });
      const left = after.split(/\r?\n/);
      const lost = text.split(/\r?\n/).filter((l) => {
        const at = left.indexOf(l);
        if (at !== -1) left.splice(at, 1);
        return at === -1;
      });
      // Only a list in brackets changes a line: its own, or that of the last entry, for the comma.
      expect(lost.length).toBeLessThanOrEqual(/^log: \[/m.test(text) ? 1 : 0);
      if (text.includes("\r\n")) expect(after.replaceAll("\r\n", "")).not.toContain("\n");
    }),
    { numRuns: 500 },
  );
});
