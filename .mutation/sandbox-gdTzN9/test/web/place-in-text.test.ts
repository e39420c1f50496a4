// @ts-nocheck
import { describe, expect, test } from "vitest";
import { placeInText } from "../../src/web/editor/place-in-text.js";

/** `|` is the cursor. */
function placeAt(marked: string) {
  const { path, at, from, taken } = placeInText(marked.replace("|", ""), marked.indexOf("|"));
  return { path: path.join(" "), at, typed: marked.slice(from, marked.indexOf("|")), taken };
}

const beds = `version: 1
beds:
  - id: south
    plantings:
      - id: toms
        crop: tomato
      - id: beans
`;

describe("where the cursor stands", () => {
  test.each<[what: string, text: string, path: string, at: "key" | "value", typed: string]>([
    ["in an empty file", "|", "", "key", ""],
    ["at a key of the file", "version: 1\nti|", "", "key", "ti"],
    ["at a value", "timezone: Eur|", "timezone", "value", "Eur"],
    ["at a value of two words", "garden: Weir Cot|", "garden", "value", "Weir Cot"],
    ["in a group", "season:\n  fr|", "season", "key", "fr"],
    ["at a planting's key", `${beds}        cr|`, "beds [] plantings []", "key", "cr"],
    [
      "at a planting's value",
      `${beds}        crop: be|`,
      "beds [] plantings [] crop",
      "value",
      "be",
    ],
    ["at a new planting", `${beds}      - |`, "beds [] plantings []", "key", ""],
    ["at a new bed", `${beds}  - |`, "beds []", "key", ""],
    ["at a bed's key behind its plantings", `${beds}    ar|`, "beds []", "key", "ar"],
    ["at a key of the file behind all", `${beds}c|`, "", "key", "c"],
    ["at a list right under its key", "beds:\n- id: south\n  ar|", "beds []", "key", "ar"],
    ["behind such a list", "beds:\n- id: south\nc|", "", "key", "c"],
    ["behind a comment", "season:\n  # the year\n  to: 2|", "season to", "value", "2"],
    ["between braces", "season: { fr|", "season", "key", "fr"],
    ["at a value between braces", "season: { from: 20|", "season from", "value", "20"],
    ["at a second key", "season: { from: 2027-03-01, t| }", "season", "key", "t"],
    ["between brackets", "feeding:\n  days: [wed, s|", "feeding days []", "value", "s"],
    ["in braces in brackets", "log: [{ on: 2027-06-01, pl|", "log []", "key", "pl"],
    ["in braces over lines", "log:\n  - { on: 2027-06-01,\n      pl|", "log []", "key", "pl"],
    [
      "at a planting in braces",
      `${beds}      - { id: x, crop: t|`,
      "beds [] plantings [] crop",
      "value",
      "t",
    ],
    ["behind a bracket that is closed", "feeding: { days: [wed] }\nc|", "", "key", "c"],
    ["behind a bracket that never is", "feeding: { days: [wed\ncan: 9|", "can", "value", "9"],
    ["behind a brace in quotes", 'garden: "a { b"\nc|', "", "key", "c"],
    ["behind a brace in a comment", "version: 1 # {\nc|", "", "key", "c"],
    ["at a word of a list in lines", "feeding:\n  days:\n    - w|", "feeding days []", "key", "w"],
  ])("%s", (_, text, path, at, typed) => {
    const place = placeAt(text);
    expect({ path: place.path, at: place.at, typed: place.typed }).toEqual({ path, at, typed });
  });

  test.each([
    ["of the same group alone", `${beds}        |`, ["id"]],
    [
      "above and below",
      "version: 1\n|\ngarden: A\nbeds:\n  - id: x\n",
      ["version", "garden", "beds"],
    ],
    ["behind the dash", "beds:\n  - |\n    area: 4 m2\n  - id: b\n", ["area"]],
    ["between braces", "season: { from: 1, | , to: { a: 1 } }", ["from", "to"]],
  ])("knows the keys that are there, %s", (_, text, taken) => {
    expect([...placeAt(text).taken].sort()).toEqual([...taken].sort());
  });

  test("never fails, whatever stands in the text", () => {
    const text = `${beds}feeding: { days: [wed, "sat], time: '18:30' } # { [\nlog: [{ on: }, {]\n- - -: x\n\t{`;
    for (let i = 0; i <= text.length; i++) expect(placeInText(text, i).from).toBeLessThanOrEqual(i);
  });
});
