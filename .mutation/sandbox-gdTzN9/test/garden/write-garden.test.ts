// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { day } from "../../src/dates.js";
import type { GardenEdit, NewLogEntry } from "../../src/garden/garden-edit.js";
import { readYaml, type SourceFile } from "../../src/garden/read.js";
import { editGarden } from "../../src/garden/write-garden.js";
import { problemLine } from "../../src/problem.js";

const entry: NewLogEntry = {
  on: day("2027-06-12"),
  planting: "toms",
  stock: "30 mL",
  batch: "B1",
};
const line = "{ on: 2027-06-12, planting: toms, stock: 30 mL, batch: B1 }";

function sourceOf(text: string): SourceFile {
  const source = readYaml(text, "garden.yaml");
  if (!source.ok) throw new Error(source.problems.map(problemLine).join("\n"));
  return source.value;
}

function edited(text: string, ...edits: GardenEdit[]): string {
  const result = editGarden(sourceOf(text), edits);
  if (!result.ok) throw new Error(result.problems.map(problemLine).join("\n"));
  return result.value.source.text;
}

function added(text: string, ...entries: NewLogEntry[]): string {
  return edited(text, {
    kind: "add-to-log",
    entries: entries.length > 0 ? entries : [entry],
  });
}

function refused(text: string, edit: GardenEdit): string {
  const result = editGarden(sourceOf(text), [edit]);
  if (result.ok) throw new Error(`it was written:\n${result.value.source.text}`);
  return result.problems.map((problem) => `${problem.code} ${problemLine(problem)}`).join("\n");
}

function refusal(text: string): string {
  return refused(text, { kind: "add-to-log", entries: [entry] });
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

describe("entries taken from the end of the log", () => {
  const taken = (text: string, count = 1): string => edited(text, { kind: "take-from-log", count });

  test("go with their lines; comments stay", () => {
    const text = [
      "log: # what I gave",
      "  - { on: 2027-06-01 } # first truss",
      "  # half of it",
      "  - on: 2027-06-02 # late",
      "    planting: toms",
      "  - { on: 2027-06-02 }",
      "# the end",
      "",
    ];
    expect(taken(text.join("\n"))).toBe(text.toSpliced(5, 1).join("\n"));
    expect(taken(text.join("\n"), 2)).toBe(text.toSpliced(3, 3, "  # late").join("\n"));
    expect(taken(text.join("\n"), 3)).toBe(
      "log: [] # what I gave\n  # first truss\n  # half of it\n  # late\n# the end\n",
    );
  });

  test("leave a file without a last line break without one", () => {
    expect(taken("log:\n  - { on: 2027-06-01 }\n  - { on: 2027-06-02 }")).toBe(
      "log:\n  - { on: 2027-06-01 }",
    );
    expect(taken("log:\r\n  - { on: 2027-06-01 }")).toBe("log: []");
  });

  test("of a list in brackets go with their commas", () => {
    expect(taken("log: [{ on: 2027-06-01 }, { on: 2027-06-02 }] # all\n")).toBe(
      "log: [{ on: 2027-06-01 }] # all\n",
    );
    expect(taken("log: [{ on: 2027-06-01 }]\n")).toBe("log: []\n");
    expect(taken("log: [\n  { on: 2027-06-01 }, # a\n  { on: 2027-06-02 } # b, c\n]\n")).toBe(
      "log: [\n  { on: 2027-06-01 } # a\n  # b, c\n]\n",
    );
    expect(taken("log: [\n  { on: 2027-06-01 },\n  { on: 2027-06-02 },\n]\n")).toBe(
      "log: [\n  { on: 2027-06-01 },\n]\n",
    );
  });
});

describe("a batch", () => {
  const b1 = { id: "B1", shells_out: day("2027-06-01"), volume: "500 mL" };
  const b1Line = "{ id: B1, shells_out: 2027-06-01, volume: 500 mL }";
  const listed = (text: string): string => edited(text, { kind: "list-batch", batch: b1 });

  test.each([
    ["at the end of a file without stock", "beds: []\n", "beds: []\nstock:\n  batches:\n    - %\n"],
    [
      "under stock with nothing in it",
      "stock:\nbeds: []\n",
      "stock:\n  batches:\n    - %\nbeds: []\n",
    ],
    [
      "behind the other keys of stock",
      "stock:\n  keep: fridge # cold\n\nbeds: []\n",
      "stock:\n  keep: fridge # cold\n  batches:\n    - %\n\nbeds: []\n",
    ],
    [
      "behind the other batches",
      "stock:\n  batches:\n  - { id: B0 } # old\n  keep: fridge\n",
      "stock:\n  batches:\n  - { id: B0 } # old\n  - %\n  keep: fridge\n",
    ],
    [
      "in a list that is empty",
      "stock:\n  batches: [] # none\n  keep: fridge\n",
      "stock:\n  batches: # none\n    - %\n  keep: fridge\n",
    ],
    [
      "in braces",
      "stock: { keep: fridge } # my own\n",
      "stock: { keep: fridge, batches: [%] } # my own\n",
    ],
    ["in empty braces", "stock: {}\n", "stock: {batches: [%]}\n"],
    [
      "in brackets",
      "stock: { batches: [{ id: B0 }], keep: fridge }\n",
      "stock: { batches: [{ id: B0 }, %], keep: fridge }\n",
    ],
    ["in a file in braces", "{ beds: [] }\n", "{ beds: [], stock: { batches: [%] } }\n"],
  ])("is listed %s", (_, before, after) => {
    expect(listed(before)).toBe(after.replace("%", b1Line));
  });

  const set = (text: string, key: "acid_in" | "made" | "volume", value?: string): string =>
    edited(text, {
      kind: "set-in-batch",
      id: "B1",
      key,
      ...(value === undefined ? {} : { value }),
    });
  const file = (batch: string): string => `stock:\n  batches:\n    - { id: B0 }\n${batch}`;

  test("gets the day of a step behind the steps before, in braces and in lines", () => {
    expect(set(file(`    - ${b1Line} # mine\n`), "acid_in", "2027-06-02")).toBe(
      file(
        "    - { id: B1, shells_out: 2027-06-01, acid_in: 2027-06-02, volume: 500 mL } # mine\n",
      ),
    );
    expect(
      set(
        file("    - volume: 500 mL\n      id: B1 # mine\n      acid: citric\n"),
        "made",
        "2027-06-05",
      ),
    ).toBe(
      file(
        "    - volume: 500 mL\n      id: B1 # mine\n      made: 2027-06-05\n      acid: citric\n",
      ),
    );
  });

  test("has a value changed where it stands", () => {
    expect(set(file(`    - ${b1Line}\n`), "volume", "480 mL")).toBe(
      file("    - { id: B1, shells_out: 2027-06-01, volume: 480 mL }\n"),
    );
    expect(set(file('    - id: B1\n      volume: "1 L" # about\n'), "volume", "0.9 L")).toBe(
      file("    - id: B1\n      volume: 0.9 L # about\n"),
    );
  });

  test("loses the day of a step, and no comment", () => {
    const made = "{ id: B1, acid_in: 2027-06-02, made: 2027-06-05, volume: 500 mL }";
    expect(set(file(`    - ${made}\n`), "made")).toBe(
      file("    - { id: B1, acid_in: 2027-06-02, volume: 500 mL }\n"),
    );
    expect(set(file("    - { id: B1, volume: 1 L, made: 2027-06-05 }\n"), "made")).toBe(
      file("    - { id: B1, volume: 1 L }\n"),
    );
    const lines = "    - id: B1\n      made: 2027-06-05 # late\n      volume: 1 L\n";
    expect(set(file(lines), "made")).toBe(file("    - id: B1\n      # late\n      volume: 1 L\n"));
    expect(set(file("    - made: 2027-06-05\n      id: B1\n"), "made")).toBe(
      file("    - id: B1\n"),
    );
  });

  test("is taken out, comments left", () => {
    const out = (text: string): string => edited(text, { kind: "unlist-batch", id: "B1" });
    expect(out(file(`    - ${b1Line} # mine\n    - { id: B2 }\n`))).toBe(
      file("    # mine\n    - { id: B2 }\n"),
    );
    expect(out(`stock:\n  batches:\n    - ${b1Line}\n  keep: fridge\n`)).toBe(
      "stock:\n  batches: []\n  keep: fridge\n",
    );
    expect(out(`stock: { batches: [${b1Line}, { id: B2 }] }\n`)).toBe(
      "stock: { batches: [{ id: B2 }] }\n",
    );
  });

  test("several edits are made one after the other", () => {
    const text = edited(
      "beds: []\n",
      { kind: "add-to-log", entries: [entry] },
      { kind: "list-batch", batch: b1 },
      { kind: "set-in-batch", id: "B1", key: "made", value: "2027-06-05" },
    );
    expect(text).toBe(
      `beds: []\nlog:\n  - ${line}\nstock:\n  batches:\n` +
        "    - { id: B1, shells_out: 2027-06-01, made: 2027-06-05, volume: 500 mL }\n",
    );
  });

  test.each<[string, string, GardenEdit, string]>([
    [
      "listed where batches stand elsewhere too",
      "stock: &s\n  batches: [{ id: B0 }]\nbeds: *s\n",
      { kind: "list-batch", batch: b1 },
      `write it yourself under \`stock: { batches: ... }\`: - ${b1Line}`,
    ],
    [
      "changed where it is an alias",
      "beds: &b { id: B1, volume: 1 L }\nstock: { batches: [*b] }\n",
      { kind: "set-in-batch", id: "B1", key: "made", value: "2027-06-05" },
      "write it yourself into batch B1: `made: 2027-06-05`",
    ],
    [
      "changed that is not there",
      "stock: { batches: [] }\n",
      { kind: "set-in-batch", id: "B1", key: "made", value: "2027-06-05" },
      "write it yourself into batch B1",
    ],
    [
      "robbed of a day that stands elsewhere too",
      "stock:\n  batches:\n    - &b { id: B1, made: 2027-06-05 }\nbeds: *b\n",
      { kind: "set-in-batch", id: "B1", key: "made" },
      "take `made` out of batch B1 yourself",
    ],
  ])("is not %s, and the line to write by hand is given", (_, text, edit, mend) => {
    expect(refused(text, edit)).toContain("batch-layout garden.yaml:");
    expect(refused(text, edit)).toContain(mend);
  });
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

// Batches in lines and in braces, comments anywhere.
const step = fc.constantFrom("shells_out", "acid_in", "made");
const batchPairs = fc
  .tuple(fc.uniqueArray(step, { maxLength: 3 }), fc.boolean(), fc.array(comment, { minLength: 6 }))
  .map(([steps, isVolumeFirst, comments]) => {
    const pairs = [...steps.map((key) => `${key}: 2027-05-01`), "volume: 1 L"];
    return { pairs: isVolumeFirst ? pairs.reverse() : pairs, comments };
  });
const batchesText = fc
  .tuple(
    fc.array(fc.tuple(batchPairs, fc.boolean(), filler), { minLength: 1, maxLength: 3 }),
    fc.constantFrom("", "  "),
    fc.constantFrom("\n", "\r\n"),
    fc.boolean(),
  )
  .map(([batches, inset, newline, endsWithNewline]) => {
    const lines = batches.flatMap(([{ pairs, comments }, isFlow, after], i) => {
      const all = [`id: B${i + 1}`, ...pairs];
      const between = after === "" ? [] : [after];
      return isFlow
        ? [`  ${inset}- { ${all.join(", ")} }${comments[0] ?? ""}`, ...between]
        : [
            ...all.map(
              (pair, k) => `  ${inset}${k === 0 ? "- " : "  "}${pair}${comments[k] ?? ""}`,
            ),
            ...between,
          ];
    });
    return (
      ["stock:", "  batches:", ...lines, "  keep: fridge", "beds: []"].join(newline) +
      (endsWithNewline ? newline : "")
    );
  });
const commentsIn = (text: string): string[] => text.match(/#[^\r\n]*/g) ?? [];

test("over random layouts: what was written is taken out again, and every comment stays", () => {
  fc.assert(
    fc.property(fileText, batchesText, step, (text, withBatches, key) => {
      const taken = edited(added(text), { kind: "take-from-log", count: 1 });
      expect(parse(taken)).toEqual({ ...(parse(text) as object), ...logOf(text) });
      expect(commentsIn(taken)).toEqual(commentsIn(text));

      const before = parse(withBatches) as { stock: { batches: Record<string, string>[] } };
      const set = edited(withBatches, {
        kind: "set-in-batch",
        id: "B1",
        key,
        value: "2027-06-01",
      });
      expect(commentsIn(set)).toEqual(commentsIn(withBatches));
      const batch = (file: string): Record<string, string> | undefined =>
        (parse(file) as typeof before).stock.batches.find(({ id }) => id === "B1");
      expect(batch(set)).toEqual({ ...before.stock.batches[0], [key]: "2027-06-01" });
      const unset = edited(set, { kind: "set-in-batch", id: "B1", key });
      expect(commentsIn(unset)).toEqual(commentsIn(withBatches));
      expect(batch(unset)).not.toHaveProperty(key);
      if (before.stock.batches[0]?.[key] === undefined) expect(unset).toBe(withBatches);
      const unlisted = edited(withBatches, { kind: "unlist-batch", id: "B1" });
      expect(commentsIn(unlisted)).toEqual(commentsIn(withBatches));
      expect(batch(unlisted)).toBeUndefined();
    }),
    { numRuns: 500 },
  );
});

function logOf(text: string): { readonly log: unknown } {
  return { log: (parse(text) as { log?: unknown }).log ?? [] };
}
