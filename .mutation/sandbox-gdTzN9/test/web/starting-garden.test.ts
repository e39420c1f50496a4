// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, weekdays } from "../../src/dates.js";
import { gardenOfText } from "../../src/plan-garden.js";
import { loadTables } from "../../src/tables.js";
import { checkedStart } from "../../src/web/checked-start.js";
import type { Answers, CropAnswer } from "../../src/web/starting-garden.js";

const tomatoes: CropAnswer = {
  crop: "tomato",
  plants: "6",
  start: "transplanted",
  on: "2027-05-20",
};
const north: Answers = {
  name: "Hill plot",
  timezone: "Europe/Dublin",
  half: "",
  latitude: "53.3",
  longitude: "-6.3",
  amounts: "metric",
  can: "9 L",
  days: ["wed", "sat"],
  crops: [tomatoes, { crop: "green bean", plants: "", start: "sown", on: "2027-05-10" }],
  acid: "citric",
  keep: "fridge",
  bottles: "500 mL",
  shells: "10",
};
const south: Answers = {
  ...north,
  timezone: "Pacific/Auckland",
  latitude: "",
  longitude: "",
  crops: [
    { ...tomatoes, on: "2026-11-10" },
    { crop: "apple", plants: "2", start: "established", on: "" },
  ],
};
const us: Answers = {
  ...north,
  timezone: "America/Chicago",
  latitude: "41.6",
  longitude: "-93.6",
  amounts: "us",
  can: "2 gal",
  bottles: "1 pt",
};
const today = day("2027-02-01");

describe("a file from five questions", () => {
  test.each([
    ["in the north", north, today, "season: { from: 2027-03-01, to: 2027-10-31 }"],
    ["in the south", south, today, "season: { from: 2026-09-01, to: 2027-04-30 }"],
    ["in the south in autumn", { ...south, crops: [] }, day("2027-04-01"), "from: 2027-09-01"],
    ["in US measures", us, today, "can: 2 gal"],
    ["of no place", { ...north, latitude: "", longitude: "" }, today, "# location:"],
    [
      "of two plantings of a crop",
      { ...north, crops: [tomatoes, tomatoes] },
      today,
      "id: tomato-2",
    ],
    [
      "of a half that is said",
      { ...north, timezone: "UTC", latitude: "", longitude: "", half: "south", crops: [] } as const,
      today,
      "hemisphere: south",
    ],
  ])("%s is a garden without a problem, with comments", (_, answers, on, part) => {
    const { text, problems } = checkedStart(answers, on);
    expect(problems).toEqual([]);
    expect(text).toContain(part);
    expect(text.match(/^ *# /gm)?.length).toBeGreaterThan(7);
  });

  test.each<[answer: Partial<Answers>, field: string, told: RegExp]>([
    [{ name: " " }, "name", /`garden` is empty/],
    [{ timezone: "Europe/Dubln" }, "timezone", /did you mean `Europe\/Dublin`/],
    [{ latitude: "53,3" }, "latitude", /a comma in the number/],
    [{ longitude: "200" }, "longitude", /too large/],
    [{ can: "9" }, "can", /without a unit/],
    [{ can: "" }, "can", /is not a number with a unit/],
    [{ days: [] }, "days", /is empty/],
    [{ shells: "many" }, "shells", /a number|whole/],
    [{ crops: [{ ...tomatoes, crop: "tomatoe" }] }, "crops.0.crop", /did you mean `tomato`/],
    [{ crops: [tomatoes, { ...tomatoes, on: "" }] }, "crops.1.on", /no date/],
    [{ crops: [tomatoes, { ...tomatoes, plants: "six" }] }, "crops.1.plants", /number/],
    [{ crops: [{ ...tomatoes, start: "established" }] }, "crops.0.start", /stage that was seen/],
  ])("%j is told beside its question", (answer, field, told) => {
    const { problems } = checkedStart({ ...north, ...answer }, today);
    expect(problems).toEqual([{ field, told: expect.stringMatching(told) as string }]);
  });

  const typed = fc.oneof(
    fc.string(),
    fc.constantFrom("", "9", "9 L", "1,5 L", "a: b", "# x", "- y", "53.3", "true", "~"),
  );
  const days = fc.oneof(
    typed,
    fc
      .date({ min: new Date("2026-01-01"), max: new Date("2028-12-31"), noInvalidDate: true })
      .map((d) => d.toISOString().slice(0, 10)),
  );
  const answersOf: fc.Arbitrary<Answers> = fc.record({
    name: typed,
    timezone: fc.oneof(typed, fc.constantFrom("Europe/Dublin", "Pacific/Auckland", "UTC")),
    half: fc.constantFrom("", "north", "south"),
    latitude: typed,
    longitude: typed,
    amounts: fc.constantFrom("metric", "us", "imperial"),
    can: typed,
    days: fc.subarray([...weekdays]),
    crops: fc.array(
      fc.record({
        crop: fc.oneof(typed, fc.constantFrom("tomato", "apple", "lady's finger")),
        plants: typed,
        start: fc.constantFrom("sown", "transplanted", "established"),
        on: days,
      }),
      { maxLength: 4 },
    ),
    acid: fc.constantFrom("citric", "vinegar"),
    keep: fc.constantFrom("fridge", "shelf"),
    bottles: typed,
    shells: typed,
  });

  test("whatever is answered, the file is a garden, or what is wrong stands beside its question", () => {
    fc.assert(
      fc.property(answersOf, (answers) => {
        const { text, problems } = checkedStart(answers, today);
        const read = gardenOfText(text, "garden.yaml", loadTables());
        expect(problems.length).toBe(read.ok ? 0 : read.problems.length);
        // What is typed is a value and never more than that: it breaks no line of the file.
        if (!read.ok) expect(read.problems.map(({ code }) => code)).not.toContain("yaml");
        for (const { field } of problems) {
          const [name = "", at, key] = field.split(".");
          expect(Object.keys(answers)).toContain(name);
          if (at !== undefined) expect(answers.crops[Number(at)]).toHaveProperty(key ?? "");
        }
      }),
      { seed: 13, numRuns: 400 },
    );
  });
});
