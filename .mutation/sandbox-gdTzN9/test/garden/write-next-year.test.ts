/** The text of next year's file: what moves, what becomes a comment, and that nothing else changes. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { day } from "../../src/dates.js";
import { type CarriedOver, yearLater } from "../../src/garden/next-year.js";
import { nextYearText } from "../../src/garden/write-next-year.js";

const nothing: CarriedOver = {
  perennials: new Set(),
  growing: new Set(),
  leftMl: new Map(),
  today: day("2027-11-05"),
};

function written(text: string, carried: Partial<CarriedOver> = {}): string {
  const result = nextYearText(text, "garden.yaml", { ...nothing, ...carried });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const season = "season: { from: 2027-03-01, to: 2027-10-31 }\n";
const seasonNext = "season: { from: 2028-03-01, to: 2028-10-31 }\n";
const noBeds = "beds: []\n";

test.each([
  ["2027-03-01", "2028-03-01"],
  ["2028-02-29", "2029-02-28"],
  ["2027-02-28", "2028-02-28"],
])("a year after %s is %s", (on, later) => {
  expect(yearLater(day(on))).toBe(later);
});

describe("dates", () => {
  test("of the season move in the quotes and the layout they have", () => {
    const text = `season: # of tomatoes\n  from: "2028-02-29"\n  to: '2028-10-31' # frost\n${noBeds}`;
    expect(written(text)).toBe(
      `season: # of tomatoes\n  from: "2029-02-28"\n  to: '2029-10-31' # frost\n${noBeds}`,
    );
  });

  test("of feeds move; one for a planting that is gone is a comment", () => {
    const text = `${season}beds:
- { id: a, plantings: [{ id: toms, crop: tomato }] }
feeds:
- { name: wormery, from: 2027-05-01, for: [a] }
- name: seaweed
  to: 2027-09-01
  for: [toms]
`;
    expect(written(text)).toBe(`${seasonNext}beds:
# Of last year, its dates a year later: put back into the list what you grow again.
# - { id: toms, crop: tomato }
- { id: a, plantings: [] }
feeds:
- { name: wormery, from: 2028-05-01, for: [a] }
# Of last year, its dates a year later: take the # off what you grow again.
# - name: seaweed
#   to: 2028-09-01
#   for: [toms]
`);
  });
});

describe("log and signs", () => {
  test("are emptied, and what is written beside them stays", () => {
    const text = `${season}log: # by hand
  # in June
  - { on: 2027-06-05 }
  - on: 2027-06-12 # late

# Seen:
signs: [ { on: 2027-07-02,
    planting: toms } ] # ugh
${noBeds}`;
    expect(written(text)).toBe(
      `${seasonNext}log: [] # by hand\n\n# Seen:\nsigns: [] # ugh\n${noBeds}`,
    );
  });

  test("are emptied in files with Windows line ends and without a last one", () => {
    expect(written(`${season}${noBeds}log:\n  - { on: 2027-06-05 }`.replaceAll("\n", "\r\n"))).toBe(
      `${seasonNext}${noBeds}log: []`.replaceAll("\n", "\r\n"),
    );
  });
});

describe("time away", () => {
  test.each([
    [
      "away: [{ from: 2027-07-10, to: 2027-07-24 }]\n",
      "# away: [{ from: 2028-07-10, to: 2028-07-24 }]\n",
    ],
    [
      "away:\n    - from: 2027-07-10\n      to: 2027-07-24\n",
      "# away:\n  #   - from: 2028-07-10\n  #     to: 2028-07-24\n",
    ],
  ])("is a comment in its lines: %j", (away, comment) => {
    const text = (what: string): string => `feeding:\n  ${what}  days: [wed]\n`;
    expect(written(season + text(away) + noBeds)).toBe(seasonNext + text(comment) + noBeds);
  });

  test("is a comment above the brackets it stands in", () => {
    const text = `feeding: { away: [{ from: 2027-07-10, to: 2027-07-24 }], days: [wed] } # ours\n`;
    expect(written(season + text + noBeds)).toBe(
      `${seasonNext}# away: [{ from: 2028-07-10, to: 2028-07-24 }]\nfeeding: { days: [wed] } # ours\n${noBeds}`,
    );
  });

  test("that is all that feeding says takes it along", () => {
    const text = `feeding:\n  away: [{ from: 2027-07-10, to: 2027-07-24 }]\n`;
    expect(written(season + text + noBeds)).toBe(
      `${seasonNext}# feeding:\n#   away: [{ from: 2028-07-10, to: 2028-07-24 }]\n${noBeds}`,
    );
  });
});

describe("batches", () => {
  const leftMl = new Map([
    ["B1", 0],
    ["B2", 120],
  ]);

  test("say what is left on that day; empty ones are left out", () => {
    const text = `${season}stock:
  batches:
    - { id: B1, made: 2027-05-20, volume: 500 mL } # used
    # measured
    - { id: B2, left: 240 mL, volume: 500 mL, left_on: 2027-06-20 } # good
    - id: B2b
      planned: 2027-11-01
${noBeds}`;
    expect(written(text, { leftMl })).toBe(`${seasonNext}stock:
  batches:
    # measured
    - { id: B2, left: 120 mL, volume: 500 mL, left_on: 2027-11-05 } # good
    - id: B2b
      planned: 2027-11-01
${noBeds}`);
  });

  test("get what they lack behind their last key", () => {
    const block = "stock:\n  batches:\n    - id: B2\n      volume: 500 mL # glass\n";
    expect(written(season + block + noBeds, { leftMl })).toBe(
      `${seasonNext}${block}      left: 120 mL\n      left_on: 2027-11-05\n${noBeds}`,
    );
    const flow = "stock: { batches: [{ id: B1 }, { id: B2, volume: 500 mL }] }\n";
    expect(written(season + flow + noBeds, { leftMl })).toBe(
      `${seasonNext}stock: { batches: [{ id: B2, volume: 500 mL, left: 120 mL, left_on: 2027-11-05 }] }\n${noBeds}`,
    );
  });

  test("of which none is left are an empty list", () => {
    const text = (list: string): string => `${season}stock:\n  batches:${list}\n${noBeds}`;
    expect(parse(written(text("\n    - { id: B1 }"), { leftMl }))).toMatchObject({
      stock: { batches: [] },
    });
    expect(parse(written(text(" [{ id: B1 }]"), { leftMl }))).toMatchObject({
      stock: { batches: [] },
    });
  });
});

describe("plantings", () => {
  const beds = `beds:
  - id: a
    plantings:
      # by the wall
      - seen: [{ stage: flowering, on: 2027-04-28 }]
        id: tree
        crop: apple
        bloom: 2027-04-28 # early
        seen_by: me
      - id: toms # best ones
        crop: tomato

        sown: 2027-03-01
        # days_to_harvest: 70
        seen:
          - { stage: flowering, on: 2027-06-01 }
        removed: 2027-09-30
      - { id: leeks, crop: leek, sown: 2027-08-01 }
`;

  test("that stay keep their place; the others are comments in theirs", () => {
    const carried = { perennials: new Set(["tree"]), growing: new Set(["leeks"]) };
    expect(written(season + beds, carried)).toBe(`${seasonNext}beds:
  - id: a
    plantings:
      # by the wall
      - id: tree
        crop: apple
        bloom: 2028-04-28 # early
        seen_by: me
      # Of last year, its dates a year later: take the # off what you grow again.
      # - id: toms # best ones
      #   crop: tomato

      #   sown: 2028-03-01
      #   # days_to_harvest: 70
      #   removed: 2028-09-30
      - { id: leeks, crop: leek, sown: 2027-08-01 }
`);
  });

  test("without a date but what was seen keep that, a year later", () => {
    const text = `${season}beds:\n  - id: a\n    plantings:\n      - { id: kale, seen: [{ stage: heading, on: 2027-04-28 }] }\n`;
    expect(written(text)).toContain("# - { id: kale, seen: [{ stage: heading, on: 2028-04-28 }] }");
  });

  test("in brackets over several lines are comments above them", () => {
    const text = `${season}beds: [
  { id: a, plantings: [
    { id: toms, sown: 2027-03-01 }, # best
    { id: tree, bloom: 2027-05-01, seen: [] },
    { id: peas, sown: 2027-03-02 },
  ] },
  { id: b, plantings: [{ id: beet, seen: [], sown: 2027-04-01 }] },
]
`;
    expect(written(text, { perennials: new Set(["tree"]) }))
      .toBe(`${seasonNext}# Of last year, its dates a year later: put back into the list what you grow again.
# - { id: toms, sown: 2028-03-01 }
# - { id: peas, sown: 2028-03-02 }
# Of last year, its dates a year later: put back into the list what you grow again.
# - { id: beet, sown: 2028-04-01 }
beds: [
  { id: a, plantings: [
    { id: tree, bloom: 2028-05-01 },
  ] },
  { id: b, plantings: [] },
]
`);
  });

  test("in a file all in brackets", () => {
    const text = `{"season":{"from":"2027-03-01","to":"2027-10-31"},"beds":[{"id":"a","plantings":[{"id":"toms","sown":"2027-03-01"}]}],"log":[{"on":"2027-06-01"}]}`;
    expect(parse(written(text))).toEqual({
      season: { from: "2028-03-01", to: "2028-10-31" },
      beds: [{ id: "a", plantings: [] }],
      log: [],
    });
  });
});

describe("covers", () => {
  test("are put there a year later, but for those that stay on", () => {
    const bed = (id: string, cover: string): string =>
      `- { id: ${id}, cover: ${cover}, plantings: [] }\n`;
    const before = [
      bed("a", "{ kind: fleece, from: 2027-04-01, to: 2027-05-20 }"),
      bed("b", "{ kind: glass, from: 2027-04-01 }"),
      bed("c", "{ kind: tunnel, from: 2027-10-01, to: 2028-04-15 }"),
      bed("d", "tunnel"),
    ];
    const after = [
      bed("a", "{ kind: fleece, from: 2028-04-01, to: 2028-05-20 }"),
      ...before.slice(1),
    ];
    expect(written(`${season}beds:\n${before.join("")}`)).toBe(
      `${seasonNext}beds:\n${after.join("")}`,
    );
  });
});

test("the last pick moves with the planting that one may choose again", () => {
  const text = `${season}beds:\n  - id: a\n    plantings:\n      - { id: toms, transplanted: 2027-05-20, picked_until: 2027-10-10 }\n`;
  expect(written(text)).toContain(
    "# - { id: toms, transplanted: 2028-05-20, picked_until: 2028-10-10 }",
  );
  expect(written(text, { growing: new Set(["toms"]) })).toContain("picked_until: 2027-10-10");
});

test("a file whose layout stands in the way is refused with a mend", () => {
  const text = `${season}log: &given\n  - { on: 2027-06-05 }\nsigns: *given\n${noBeds}`;
  const result = nextYearText(text, "garden.yaml", nothing);
  expect(result.ok ? [] : result.problems).toEqual([
    expect.objectContaining({ code: "next-year-layout", file: "garden.yaml" }),
  ]);
});
