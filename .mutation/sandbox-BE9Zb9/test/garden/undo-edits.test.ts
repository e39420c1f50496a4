// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { day } from "../../src/dates.js";
import type { GardenEdit, NewLogEntry } from "../../src/garden/garden-edit.js";
import { readYaml } from "../../src/garden/read.js";
import { editGarden } from "../../src/garden/write-garden.js";
import { problemLine } from "../../src/problem.js";

const entry: NewLogEntry = { on: day("2027-06-12"), planting: "toms", stock: "30 mL" };
const sign = { on: day("2027-06-13"), planting: "toms", sign: "tipburn" };
const seen = { stage: "flowering", on: day("2027-06-14") } as const;
const batch = { id: "B9", made: day("2027-06-01"), volume: "1 L" };
const toLog: GardenEdit = { kind: "add-to-log", entries: [entry, { ...entry, planting: "late" }] };
const toSigns: GardenEdit = { kind: "add-to-signs", signs: [sign] };
const toSeen: GardenEdit = { kind: "add-to-seen", planting: "toms", seen };
const listed: GardenEdit = { kind: "list-batch", batch };
const acidIn: GardenEdit = { kind: "set-in-batch", id: "B1", key: "acid_in", value: "2027-05-03" };

function edit(text: string, edits: readonly GardenEdit[]): ReturnType<typeof editGarden> {
  const source = readYaml(text, "garden.yaml");
  return source.ok ? editGarden(source.value, edits) : source;
}

function edited(text: string, edits: readonly GardenEdit[]): { text: string; undo: GardenEdit[] } {
  const result = edit(text, edits);
  if (!result.ok) throw new Error(`${result.problems.map(problemLine).join("\n")}\n${text}`);
  // As it comes back from the state folder.
  const undo = JSON.parse(JSON.stringify(result.value.undo)) as GardenEdit[];
  return { text: result.value.source.text, undo };
}

function refusal(text: string, edits: readonly GardenEdit[]): string {
  const result = edit(text, edits);
  if (result.ok) throw new Error(`it was written:\n${result.value.source.text}`);
  return result.problems.map((problem) => `${problem.code} ${problemLine(problem)}`).join("\n");
}

describe("a sign, and a stage", () => {
  test("go to the end of their lists", () => {
    const text =
      "beds:\n  - id: south\n    plantings:\n      - id: toms # six\n        crop: tomato\n";
    expect(edited(text, [toSeen, toSigns]).text).toBe(
      `${text}        seen:\n          - { stage: flowering, on: 2027-06-14 }\n` +
        "signs:\n  - { on: 2027-06-13, planting: toms, sign: tipburn }\n",
    );
  });

  test.each([
    [
      "beds: [{ id: south, plantings: [{ id: late }, { id: toms, crop: tomato }] }]\n",
      "beds: [{ id: south, plantings: [{ id: late }, { id: toms, crop: tomato, seen: [{ stage: flowering, on: 2027-06-14 }] }] }]\n",
    ],
    [
      "beds:\n- plantings: []\n- plantings:\n  - seen: [{ stage: vegetative, on: 2027-05-01 }] # first\n    id: toms\n",
      "beds:\n- plantings: []\n- plantings:\n  - seen: [{ stage: vegetative, on: 2027-05-01 }, { stage: flowering, on: 2027-06-14 }] # first\n    id: toms\n",
    ],
  ])("a stage is seen in %j", (text, after) => {
    expect(edited(text, [toSeen]).text).toBe(after);
  });

  test("are refused where the file is laid out otherwise, with the line to write", () => {
    expect(refusal("signs: none\n", [toSigns])).toBe(
      "sign-layout garden.yaml:1:1: the signs are written in a way that nothing can be added to without changing more: write it yourself under `signs:`: - { on: 2027-06-13, planting: toms, sign: tipburn }",
    );
    const text = "beds:\n  - plantings: &p [{ id: toms }]\n  - plantings: *p\n";
    expect(refusal(text, [toSeen])).toContain(
      "write it yourself into planting toms: `seen: [{ stage: flowering, on: 2027-06-14 }]`",
    );
    expect(refusal("beds: []\n", [toSeen])).toContain("seen-layout garden.yaml:1:1:");
  });
});

describe("what is taken back", () => {
  const text = [
    "log: # mine",
    "  - { on: 2027-06-01 } # first",
    "stock:",
    "  batches:",
    "    - { id: B1, volume: 1 L, shells_out: 2027-05-01 }",
    "",
  ].join("\n");

  test("goes from between what came later, and every comment stays", () => {
    const written = edited(text, [toLog]);
    const later: NewLogEntry = { on: day("2027-06-20"), planting: "toms" };
    const more = edited(written.text, [{ kind: "add-to-log", entries: [later] }]).text;
    const noted = more.replace("late, stock: 30 mL }", "late, stock: 30 mL } # more rain");
    expect(edited(noted, written.undo).text).toBe(
      text.replace("# first\n", "# first\n  # more rain\n  - { on: 2027-06-20, planting: toms }\n"),
    );
  });

  test("of entries that no longer stand together, each", () => {
    const written = edited(text, [toLog]);
    const between = written.text.replace(
      "  - { on: 2027-06-12, planting: late",
      "  - { on: 2027-06-15 }\n$&",
    );
    expect(parse(edited(between, written.undo).text)).toMatchObject({
      log: [{ on: "2027-06-01" }, { on: "2027-06-15" }],
    });
  });

  test("of entries that are alike is the last", () => {
    const one: GardenEdit = { kind: "add-to-log", entries: [entry] };
    const twice = edited(edited(text, [one]).text, [one]);
    expect(edited(twice.text, twice.undo).text).toBe(edited(text, [one]).text);
  });

  test.each<[string, readonly GardenEdit[], string, string]>([
    ["entries", [toLog], "30 mL", "31 mL"],
    ["a sign", [toSigns], "tipburn", "blackheart"],
    [
      "a batch that has had another step since",
      [listed],
      "made: 2027-06-01",
      "made: 2027-06-01, thrown_away: 2027-07-01",
    ],
    ["a step", [acidIn], "acid_in: 2027-05-03", "acid_in: 2027-05-04"],
    ["a step that is gone", [acidIn], ", acid_in: 2027-05-03", ""],
  ])("is refused where it has changed: %s", (_, edits, from, to) => {
    const written = edited(text, edits);
    const changed = written.text.replace(from, to);
    expect(changed).not.toBe(written.text);
    const told = refusal(changed, written.undo);
    expect(told).toMatch(
      /^changed-since garden\.yaml:\d+:\d+: what was written there has been changed/,
    );
  });

  test("of a stage whose planting is gone is refused", () => {
    const beds = "beds:\n  - plantings:\n      - { id: toms }\n";
    const { undo } = edited(beds, [toSeen]);
    expect(refusal(beds.replace("toms", "tomatoes"), undo)).toContain(
      "changed-since garden.yaml:1:1: what was written there has been changed since, so it was not taken back: take out yourself what you no longer want: { stage: flowering, on: 2027-06-14 } of planting toms",
    );
  });

  test("can be written again", () => {
    const written = edited(text, [toLog, acidIn]);
    const taken = edited(written.text, written.undo);
    expect(taken.text).toBe(text);
    expect(edited(taken.text, taken.undo).text).toBe(written.text);
  });
});

const comment = fc.constantFrom("", " # so", " # a, b: [c]");
const listIn = (key: string, indent: string, item: string): fc.Arbitrary<readonly string[]> =>
  fc
    .tuple(fc.constantFrom("none", "bare", "empty", "flow", "lines", "long", "block"), comment)
    .map(([how, c]) => {
      switch (how) {
        case "none":
          return [];
        case "bare":
          return [`${indent}${key}:${c}`];
        case "empty":
          return [`${indent}${key}:  []${c}`];
        case "flow":
          return [`${indent}${key}: [ { ${item} }, ]${c}`];
        case "long":
          return [`${indent}${key}: [`, `${indent}    { ${item} }${c}`, `${indent}  ]`];
        case "lines":
          return [`${indent}${key}:${c}`, `${indent}- { ${item} }${c}`, "", "# below"];
        case "block":
          return [
            `${indent}${key}:`,
            `${indent}  - ${item.replaceAll(", ", `${c}\n${indent}    `)}`,
          ];
      }
    });
const b1 = "id: B1, volume: 1 L, made: 2027-05-01";
const gardenText = fc
  .tuple(
    listIn("log", "", "on: 2027-06-01, planting: late"),
    listIn("signs", "", "on: 2027-06-01, planting: late, sign: tipburn"),
    listIn("seen", "        ", "stage: seedling, on: 2027-05-01"),
    fc.constantFrom(
      [],
      ["stock:", "  keep: fridge # cold"],
      ["stock: { keep: fridge }"],
      ["stock:", "  batches:", `    - { ${b1} } # one`],
      ["stock:", "  batches:", `    - ${b1.replaceAll(", ", "\n      ")}`, "  keep: shelf"],
      [`stock: { batches: [{ ${b1} }], keep: shelf }`],
    ),
    fc.tuple(fc.boolean(), fc.boolean(), fc.constantFrom("\n", "\r\n"), fc.boolean()),
  )
  .map(([log, signs, seenLines, stock, [isSeenLast, isLogFirst, newline, endsWithNewline]]) => {
    const own = ["        crop: tomato # red", ...seenLines];
    const beds = [
      ...["beds:", "  - id: south", "    plantings:", "      - { id: late }", "      - id: toms"],
      ...(isSeenLast ? own : [...seenLines, "        crop: tomato"]),
    ];
    const lines = isLogFirst
      ? [...log, ...stock, ...beds, ...signs]
      : [...beds, "# between", ...signs, ...stock, ...log];
    return lines.join("\n").replaceAll("\n", newline) + (endsWithNewline ? newline : "");
  });
const anEdit = fc.constantFrom(toLog, toSigns, toSeen, listed, {
  kind: "add-to-log",
  entries: [{ on: day("2027-06-15"), missed: true }],
} as const);
const ofB1 = fc.constantFrom(acidIn, {
  ...{ kind: "set-in-batch", id: "B1", key: "volume", value: "0.9 L" },
} as const);

test("over random layouts: all that was written is taken back, to the byte", () => {
  fc.assert(
    fc.property(gardenText, fc.array(fc.oneof(anEdit, ofB1), { maxLength: 5 }), (text, edits) => {
      const fit = text.includes("B1") ? edits : edits.filter((one) => one.kind !== "set-in-batch");
      // Each by itself, as they are ticked.
      const ticks: { text: string; undo: GardenEdit[] }[] = [];
      for (const one of fit) ticks.push(edited(ticks.at(-1)?.text ?? text, [one]));
      let now = ticks.at(-1)?.text ?? text;
      for (const { undo } of ticks.reverse()) now = edited(now, undo).text;
      expect(now).toBe(text);
    }),
    { numRuns: 1000 },
  );
});

test("over random layouts: one of several is taken back, and the others stay", () => {
  fc.assert(
    fc.property(gardenText, anEdit, anEdit, (text, first, second) => {
      fc.pre(first !== second);
      const one = edited(text, [first]);
      const both = edited(one.text, [second]);
      const only = edited(text, [second]).text;
      const taken = edited(both.text, one.undo).text;
      // What is left empty says nothing.
      const bare = (file: string): unknown =>
        JSON.parse(
          JSON.stringify(parse(file), (_, value: unknown) =>
            Array.isArray(value) && value.length === 0 ? undefined : (value ?? undefined),
          ).replace(/,?"stock":\{\}/, ""),
        );
      expect(bare(taken)).toEqual(bare(only));
      expect(taken.match(/#[^\r\n]*/g)?.sort()).toEqual(text.match(/#[^\r\n]*/g)?.sort());
    }),
    { numRuns: 500 },
  );
});
