// @ts-nocheck
import { describe, expect, test } from "vitest";
import { gardenOfText } from "../../src/plan-garden.js";
import type { Problem } from "../../src/problem.js";
import { loadTables } from "../../src/tables.js";

const season = "season: { from: 2027-03-01, to: 2027-10-31 }";
const garden = `version: 1
garden: Weir Cottage
timezone: Europe/Dublin
${season}
can: 9 L
beds:
  - id: south
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20 }
`;

function problemsOf(text: string): readonly Problem[] {
  const read = gardenOfText(text, "garden.yaml", loadTables());
  return read.ok ? [] : read.problems;
}

function fixed(text: string, { at, fix }: Problem): string {
  const lines = text.split("\n");
  const line = lines[at.line - 1] ?? "";
  if (fix?.to.line !== at.line) throw new Error("no fix on its line");
  lines[at.line - 1] = line.slice(0, at.column - 1) + fix.text + line.slice(fix.to.column - 1);
  return lines.join("\n");
}

describe("a mend that is one change makes the file right", () => {
  test.each<[what: string, slip: [right: string, wrong: string], mended?: string]>([
    ["a crop", ["crop: tomato", "crop: tomatoe"]],
    ["a crop in quotes", ["crop: tomato", 'crop: "tomatoe"']],
    ["a key", ["can:", "cna:"]],
    ["a time zone", ["Europe/Dublin", "Europe/Dubln"]],
    ["a city alone", ["Europe/Dublin", "Dublin"]],
    ["a missing unit", ["can: 9 L", "can: 9"]],
    ["a comma", ["can: 9 L", "can: 9,5 L"], "can: 9.5 L"],
    ["a date", ["2027-05-20", "2027-5-20"]],
    ["a word", ["can: 9 L", "amounts: metrics"], "amounts: metric"],
    ["an id", ["id: south", "id: south bed"], "id: south-bed"],
    ["a true word", ["plants: 6", "feed: ture"], "feed: true"],
    ["a colour", ["can: 9 L", "calendar: { color: tomatoo }"], "calendar: { color: tomato }"],
    [
      "an id elsewhere",
      ["can: 9 L", "log: [{ on: 2027-06-05, planting: tons }]"],
      "log: [{ on: 2027-06-05, planting: toms }]",
    ],
    ["US measures", ["can: 9 L", "amounts: us\ncan: 2"], "amounts: us\ncan: 2 gal"],
    ["degrees", ["can: 9 L", "raised_at: 20"], "raised_at: 20 C"],
    ["a latitude", ["can: 9 L", 'location: { latitude: "53,3" }'], "location: { latitude: 53.3 }"],
  ])("%s", (_, [right, wrong], mended = right) => {
    const text = garden.replace(right, wrong);
    const [problem, ...more] = problemsOf(text);
    if (problem === undefined) throw new Error("no problem");
    expect(more.filter(({ at }) => at.line !== problem.at.line)).toEqual([]);
    expect(fixed(text, problem)).toBe(garden.replace(right, mended));
    expect(problemsOf(fixed(text, problem))).toEqual([]);
  });
});

describe("no change is offered", () => {
  test.each([
    ["where two units may be meant", "source_water: { hardness: 120 }"],
    ["of imperial gardens, whose cans are of both", "amounts: imperial\ncan: 2"],
    ["where nothing is near", "timezones: 3\ncolour: red"],
    ["for a key that stands there already", "can: 9 L\ncann: 9 L"],
    ["for a day that may be any", "feeding: { away: [{ from: 2027-02-30, to: 2027-03-04 }] }"],
  ])("%s", (_, lines) => {
    const problems = problemsOf(garden.replace("can: 9 L", lines));
    expect(problems).not.toEqual([]);
    const lastLine = problems.filter(({ message }) => !message.includes("timezones"));
    for (const { fix } of lastLine) expect(fix).toBeUndefined();
  });
});
