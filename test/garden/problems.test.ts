/** Every kind of problem with its place; how they read is in test/golden/problems.txt. */
import { describe, expect, test } from "vitest";
import { largestGardenBytes } from "../../src/garden/decode.js";
import { problemLine } from "../../src/problem.js";
import { placesOf, problemsOf } from "../support/a-garden.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A good garden: each case puts one line in the place of another. */
const good = `version: 1
garden: Weir Cottage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 9 L
beds:
  - id: south
    plantings:
      - id: toms
        crop: tomato
        plants: 6
        transplanted: 2027-05-20
        water: 2 L per plant
`;

/** The good garden with lines replaced (by what they begin with) and lines at its end. */
function garden(lines: Readonly<Record<string, string>>, ...more: readonly string[]): string {
  const replaced = good
    .trimEnd()
    .split("\n")
    .map((line) => {
      const found = Object.entries(lines).find(([begin]) => line.trim().startsWith(begin));
      return found ? line.replace(/\S.*$/, () => found[1]) : line;
    });
  return [...replaced, ...more].join("\n") + "\n";
}

const cases: readonly [title: string, file: string | Uint8Array, ...places: string[]][] = [
  ["a bare number for the can", garden({ can: "can: 9" }), "schema-type 5:6"],
  ["a crop misspelt", garden({ crop: "crop: tomatoe" }), "unknown-crop 10:15"],
  ["a crop that is no crop", garden({ crop: "crop: quinoa" }), "unknown-crop 10:15"],
  ["part of a crop's name", garden({ crop: "crop: sprouting" }), "unknown-crop 10:15"],
  [
    "a key misspelt",
    garden({ plants: "plnats: 6" }),
    "schema-additionalProperties 11:9",
    "water 13:16",
  ],
  ["a key of elsewhere", garden({ can: "colour: red" }), "schema-additionalProperties 5:1"],
  ["a missing key", garden({ timezone: "" }), "schema-required 1:1"],
  ["another version", garden({ version: "version: 2" }), "schema-const 1:10"],
  ["a number for an id", garden({ "- id: toms": "- id: 7" }), "schema-type 9:13"],
  ["an id with a blank", garden({ "- id: toms": "- id: my toms" }), "schema-pattern 9:13"],
  ["a day that is none", garden({ transplanted: "transplanted: 2027-02-30" }), "date 12:23"],
  ["a date of one digit", garden({ transplanted: "transplanted: 2027-5-20" }), "date 12:23"],
  [
    "a date the other way round",
    garden({ transplanted: "transplanted: 20/05/2027" }),
    "date 12:23",
  ],
  ["a date without a month", garden({ transplanted: "transplanted: 2027" }), "schema-type 12:23"],
  [
    "a season that ends first",
    garden({ season: "season: { from: 2027-10-31, to: 2027-03-01 }" }),
    "ends-before-begin 4:33",
  ],
  [
    "a season of three years",
    garden({ season: "season: { from: 2025-03-01, to: 2027-10-31 }" }),
    "long-season 4:33",
  ],
  [
    "a season without an end",
    garden({ season: "season: { from: 2027-03-01 }" }),
    "schema-required 4:9",
  ],
  ["a zone misspelt", garden({ timezone: "timezone: Europe/Dubln" }), "timezone 3:11"],
  ["only the city of a zone", garden({ timezone: "timezone: Dublin" }), "timezone 3:11"],
  ["a zone that is none", garden({ timezone: "timezone: behind the shed" }), "timezone 3:11"],
  [
    "a hemisphere against its latitude",
    garden({}, "hemisphere: north", "location: { latitude: -37.8 }"),
    "hemisphere 14:13",
  ],
  [
    "a zone that does not tell the hemisphere",
    garden({ timezone: "timezone: Africa/Nairobi" }),
    "hemisphere 3:11",
  ],
  ["a latitude beyond the pole", garden({}, "location: { latitude: 91 }"), "schema-maximum 14:23"],
  ["a weight for a volume", garden({ can: "can: 9 kg" }), "quantity 5:6"],
  ["an unknown unit", garden({ can: "can: 2 buckets" }), "quantity 5:6"],
  ["a decimal comma", garden({ can: "can: 1,5 L" }), "quantity 5:6"],
  ["a can of a swimming pool", garden({ can: "can: 9000 gal" }), "absurd-size 5:6"],
  ["a can of a thimble", garden({ can: "can: 9 mL" }), "absurd-size 5:6"],
  ["more water than anyone carries", garden({ plants: "plants: 9000" }), "absurd-size 9:9"],
  ["half a plant", garden({ plants: "plants: 0.5" }), "schema-type 11:17"],
  ["no plants", garden({ plants: "plants: 0" }), "schema-minimum 11:17"],
  ["water per plant without plants", garden({ plants: "variety: plum" }), "water 13:16"],
  ["water per area without an area", garden({ water: "water: 4 L per m2" }), "water 13:16"],
  [
    "a bed's water per area without any area",
    garden({ water: "name: by the wall", plantings: "water: 4 L per m2\n    plantings:" }),
    "water 8:12",
  ],
  ["water per week", garden({ water: "water: 4 L per week" }), "quantity 13:16"],
  ["a rate without water", garden({ water: "rate: 2.5 mL" }), "quantity 13:15"],
  ["a rate of pure stock", garden({ water: "rate: 1 L per L" }), "absurd-size 13:15"],
  ["an interval of a year", garden({ water: "interval: 52 weeks" }), "absurd-size 13:19"],
  ["a level of nothing", garden({ water: "level: 0" }), "schema-exclusiveMinimum 13:16"],
  ["feed: yes", garden({ water: "feed: yes" }), "schema-enum 13:15"],
  ["a rate beyond the rule's limit", garden({ water: "rate: 7 mL per L" }), "beyond-limit 13:15"],
  ["a level beyond the rule's limit", garden({ water: "level: 2.5" }), "beyond-limit 13:16"],
  [
    "an interval beyond the rule's limit",
    garden({ water: "interval: 5 days" }),
    "beyond-limit 13:19",
  ],
  ["a bed id twice", garden({}, "  - id: south", "    plantings: []"), "duplicate-id 14:9"],
  [
    "a planting id twice",
    garden({}, "      - { id: toms, crop: kale, sown: 2027-04-01 }"),
    "duplicate-id 14:15",
  ],
  [
    "a planting id of another bed",
    garden({}, "  - id: north", "    plantings: [{ id: toms, crop: kale, sown: 2027-04-01 }]"),
    "duplicate-id 15:23",
  ],
  [
    "transplanted before it was sown",
    garden({ plants: "sown: 2027-06-01", water: "water: 9 L" }),
    "date-order 12:23",
  ],
  [
    "planted after the season",
    garden({ transplanted: "transplanted: 2028-05-20" }),
    "date-order 12:23",
  ],
  [
    "planted years before the season",
    garden({ transplanted: "transplanted: 2024-05-20" }),
    "date-order 12:23",
  ],
  ["removed before it was planted", garden({ water: "removed: 2027-05-01" }), "date-order 13:18"],
  [
    "a stage seen before planting",
    garden({ water: "seen: [{ stage: flowering, on: 2027-04-07 }]" }),
    "date-order 13:40",
  ],
  [
    "a stage seen after it was removed",
    garden({
      plants: "removed: 2027-07-01",
      water: "seen: [{ stage: flowering, on: 2027-07-01 }]",
    }),
    "date-order 13:40",
  ],
  [
    "a stage seen after the season",
    garden({ water: "seen: [{ stage: flowering, on: 2028-07-01 }]" }),
    "date-order 13:40",
  ],
  [
    "stages seen in the wrong order",
    garden({
      water: "seen: [{ stage: fruit-set, on: 2027-06-20 }, { stage: flowering, on: 2027-06-25 }]",
    }),
    "date-order 13:40",
  ],
  [
    "a stage seen twice",
    garden({
      water: "seen: [{ stage: flowering, on: 2027-06-20 }, { stage: flowering, on: 2027-06-25 }]",
    }),
    "date-order 13:78",
  ],
  [
    "a stage of another crop",
    garden({ water: "seen: [{ stage: heading, on: 2027-06-20 }]" }),
    "stage-of-other-crop 13:25",
  ],
  [
    "a stage that is none",
    garden({ water: "seen: [{ stage: flowring, on: 2027-06-20 }]" }),
    "schema-enum 13:25",
  ],
  [
    "picked until before planting",
    garden({ water: "picked_until: 2027-05-20" }),
    "date-order 13:23",
  ],
  [
    "picked until after the season",
    garden({ water: "picked_until: 2027-11-20" }),
    "date-order 13:23",
  ],
  [
    "picked until after it was removed",
    garden({ plants: "removed: 2027-09-01", water: "picked_until: 2027-09-10" }),
    "date-order 13:23",
  ],
  [
    "picked until before the harvest was seen",
    garden({
      plants: "seen: [{ stage: harvest, on: 2027-08-01 }]",
      water: "picked_until: 2027-07-20",
    }),
    "date-order 13:23",
  ],
  [
    "picked until of a crop that is picked once",
    garden({ crop: "crop: cabbage", water: "picked_until: 2027-09-10" }),
    "picked-once 13:23",
  ],
  [
    "a habit of a crop that has none",
    garden({ crop: "crop: cabbage", water: "habit: bush" }),
    "habit-of-other-crop 13:16",
  ],
  ["a habit that is none", garden({ water: "habit: vine" }), "schema-enum 13:16"],
  ["a row of another crop", garden({ water: "row: italy-apr" }), "unknown-row 13:14"],
  ["a wish for warmth that is none", garden({ water: "warmth: yes" }), "schema-enum 13:17"],
  ["raised at a bare number", garden({ water: "raised_at: 20" }), "schema-type 13:20"],
  ["raised at no scale", garden({ water: 'raised_at: "20"' }), "quantity 13:20"],
  ["raised in an oven", garden({ water: "raised_at: 68 C" }), "absurd-size 13:20"],
  ["all plants raised in a fridge", garden({}, "raised_at: 40 F"), "absurd-size 14:12"],
  [
    "fed through, and never",
    garden({ plants: "feed: false", water: "through: harvest" }),
    "through-unfed 13:18",
  ],
  ["fed through what is no end", garden({ water: "through: fruit-set" }), "schema-enum 13:18"],
  [
    "a cover of nothing known",
    garden({ plantings: "cover: glas\n    plantings:" }),
    "schema-enum 8:12",
  ],
  [
    "a cover whose kind is not known",
    garden({ plantings: "cover: { kind: plastic }\n    plantings:" }),
    "schema-enum 8:20",
  ],
  [
    "a cover without a kind",
    garden({ plantings: "cover: { warmer: 2 C }\n    plantings:" }),
    "schema-required 8:12",
  ],
  [
    "a cover with a key misspelt",
    garden({ plantings: "cover: { kind: glass, warmth: 2 C }\n    plantings:" }),
    "schema-additionalProperties 8:27",
  ],
  [
    "a cover that ends first",
    garden({
      plantings: "cover: { kind: glass, from: 2027-06-01, to: 2027-05-01 }\n    plantings:",
    }),
    "ends-before-begin 8:49",
  ],
  [
    "a cover after the season",
    garden({ plantings: "cover: { kind: fleece, from: 2028-04-01 }\n    plantings:" }),
    "date-order 8:34",
  ],
  [
    "a cover of years ago",
    garden({ plantings: "cover: { kind: fleece, to: 2025-04-01 }\n    plantings:" }),
    "date-order 8:32",
  ],
  [
    "a cover like an oven",
    garden({ plantings: "cover: { kind: glass, warmer: 20 C }\n    plantings:" }),
    "absurd-size 8:35",
  ],
  ["bloom of an annual", garden({ water: "bloom: 2027-06-20" }), "bloom-of-annual 13:16"],
  ["a planting without a beginning", garden({ transplanted: "variety: plum" }), "no-start 9:9"],
  [
    "an established annual without a stage",
    garden({ transplanted: "established: true" }),
    "no-start 12:22",
  ],
  [
    "a month that is no time to be away",
    garden({}, "feeding: { away: [{ from: 2027-07-24, to: 2027-07-10 }] }"),
    "ends-before-begin 14:43",
  ],
  [
    "a day of the week that is none",
    garden({}, "feeding: { days: [wensday] }"),
    "schema-enum 14:19",
  ],
  [
    "a day of the week twice",
    garden({}, "feeding: { days: [wed, wed] }"),
    "schema-uniqueItems 14:18",
  ],
  ["no day of the week", garden({}, "feeding: { days: [] }"), "schema-minItems 14:18"],
  ["a time of day that is none", garden({}, "feeding: { time: 25:00 }"), "clock 14:18"],
  ["a round of no length", garden({}, "feeding: { duration: 0 min }"), "absurd-size 14:22"],
  ["a round of days", garden({}, "feeding: { duration: 3 days }"), "absurd-size 14:22"],
  ["a colour that is none", garden({}, "calendar: { color: yelowgreen }"), "color 14:20"],
  [
    "a calendar fetched each minute",
    garden({}, "calendar: { refresh: 1 min }"),
    "absurd-size 14:22",
  ],
  [
    "a reminder with two times",
    garden({}, "calendar: { reminders: [{ before: 1 h, at: '08:00' }] }"),
    "reminder 14:25",
  ],
  [
    "a reminder without a time",
    garden({}, "calendar: { reminders: [{ days_before: 1 }] }"),
    "reminder 14:25",
  ],
  [
    "a feed without days",
    garden({}, "feeds: [{ name: nettle, rate: 1 L per 10 L }]"),
    "feed-days 14:9",
  ],
  [
    "a feed with days twice over",
    garden({}, "feeds: [{ name: nettle, rate: 1 L per 10 L, every: 14 days, days: [sun] }]"),
    "feed-days 14:9",
  ],
  [
    "a feed that ends first",
    garden(
      {},
      "feeds: [{ name: nettle, rate: 1 L per 10 L, days: [sun], from: 2027-06-02, to: 2027-06-01 }]",
    ),
    "ends-before-begin 14:80",
  ],
  [
    "a feed for an unknown planting",
    garden({}, "feeds: [{ name: nettle, rate: 1 L per 10 L, days: [sun], for: [tom] }]"),
    "unknown-reference 14:64",
  ],
  [
    "a log entry of an unknown planting",
    garden({}, "log: [{ on: 2027-06-05, planting: tosm }]"),
    "unknown-reference 14:35",
  ],
  [
    "a missed feeding with an amount",
    garden({}, "log: [{ on: 2027-06-12, planting: toms, missed: true, stock: 30 mL }]"),
    "log-missed-stock 14:62",
  ],
  [
    "a missed feeding from a batch",
    garden({}, "log: [{ on: 2027-06-12, missed: true, batch: B1 }]"),
    "log-missed-stock 14:46",
  ],
  [
    "a calendar file elsewhere on the computer",
    garden({}, "calendar: { file: ../weir.ics }"),
    "calendar-file 14:19",
  ],
  [
    "a calendar file that is another file",
    garden({}, "calendar: { file: garden.yaml }"),
    "calendar-file 14:19",
  ],
  [
    "a log entry of an unknown feed",
    garden({}, "log: [{ on: 2027-06-05, feed: nettle }]"),
    "unknown-reference 14:31",
  ],
  [
    "a log entry of bed and planting",
    garden({}, "log: [{ on: 2027-06-05, bed: south, planting: toms }]"),
    "log-target 14:7",
  ],
  [
    "a log entry of a hogshead",
    garden({}, "log: [{ on: 2027-06-05, stock: 300 L }]"),
    "absurd-size 14:32",
  ],
  [
    "a sign on an unknown planting",
    garden({}, "signs: [{ on: 2027-07-02, planting: beans, sign: tipburn }]"),
    "unknown-reference 14:37",
  ],
  [
    "a sign that is none",
    garden({}, "signs: [{ on: 2027-07-02, planting: toms, sign: tipbrun }]"),
    "schema-enum 14:49",
  ],
  [
    "vinegar stronger than any",
    garden({}, "stock: { acid: vinegar, vinegar: 80 % }"),
    "absurd-size 14:34",
  ],
  [
    "vinegar without its unit",
    garden({}, "stock: { acid: vinegar, vinegar: 5 }"),
    "schema-type 14:34",
  ],
  [
    "a batch with a wrong date",
    garden({}, "stock: { batches: [{ id: B1, made: 2027-04-31, volume: 1 L }] }"),
    "date 14:36",
  ],
  [
    "vinegar of 120 percent",
    garden({}, "stock: { acid: vinegar, vinegar: 120 % }"),
    "absurd-size 14:34",
  ],
  ["an acid that is none", garden({}, "stock: { acid: citrik }"), "schema-enum 14:16"],
  [
    "a batch of less than nothing",
    garden({}, "stock: { batches: [{ id: B1, made: 2027-04-01, volume: -1 L }] }"),
    "quantity 14:56",
  ],
  [
    "a batch with more left than was made",
    garden({}, "stock: { batches: [{ id: B1, made: 2027-04-01, volume: 1 L, left: 1100 mL }] }"),
    "batch-left-over-volume 14:67",
  ],
  [
    "a batch to use up before it was made",
    garden(
      {},
      "stock: { batches: [{ id: B1, made: 2027-04-01, volume: 1 L, use_by: 2027-03-31 }] }",
    ),
    "batch-use-by-before-made 14:69",
  ],
  [
    "a batch id twice",
    garden(
      {},
      "stock:",
      "  batches:",
      "    - { id: B1, made: 2027-04-01, volume: 1 L }",
      "    - { id: B1, made: 2027-04-15, volume: 1 L }",
    ),
    "duplicate-batch 17:13",
  ],
  [
    "a batch without a day",
    garden({}, "stock: { batches: [{ id: B1, volume: 1 L }] }"),
    "batch-no-day 14:20",
  ],
  [
    "a batch bottled before its acid was in",
    garden(
      {},
      "stock: { batches: [{ id: B1, acid_in: 2027-04-02, made: 2027-04-01, volume: 1 L }] }",
    ),
    "batch-days 14:57",
  ],
  [
    "a batch bottled and given up",
    garden(
      {},
      "stock: { batches: [{ id: B1, made: 2027-04-01, missed: 2027-04-02, volume: 1 L }] }",
    ),
    "batch-days 14:56",
  ],
  [
    "a batch with something left that is not bottled",
    garden({}, "stock: { batches: [{ id: B1, acid_in: 2027-04-01, volume: 1 L, left: 500 mL }] }"),
    "batch-not-made 14:70",
  ],
  [
    "a batch that stands for no text and no number",
    garden({}, "stock: { batches: [{ id: B1, planned: true, made: 2027-04-01, volume: 1 L }] }"),
    "schema-type 14:39",
  ],
  [
    "a batch of no strength",
    garden({}, "stock: { batches: [{ id: B1, made: 2027-04-01, volume: 1 L, strength: 0 g/L }] }"),
    "absurd-size 14:71",
  ],
  ["a group where a list belongs", garden({ "- id: south": "id: south" }), "yaml 7:7"],
  ["a key without a value", garden({ can: "can:" }), "schema-type 5:1"],
  ["a key given twice", garden({ can: "garden: Another" }), "yaml-key-twice 5:1"],
  ["a list for a whole garden", "- tomato\n- lettuce\n", "schema-type 1:1"],
  ["a tab that indents", garden({}, "feeding:", "\tdays: [wed]"), "yaml 15:1"],
  [
    "a bracket left open",
    garden({ season: "season: { from: 2027-03-01, to: 2027-10-31" }),
    "yaml 5:1",
  ],
  ["a tag", garden({ garden: "garden: !!binary aGk=" }), "yaml 2:9"],
  ["an alias that holds itself", garden({}, "feeding: &f { days: *f }"), "yaml-alias 14:21"],
  ["an alias of nothing", garden({}, "feeding: *f"), "yaml-alias 14:10"],
  ["an empty file", "", "empty 1:1"],
  ["only comments", "# my garden\n", "empty 1:1"],
  ["several documents", `${good}---\n${good}`, "several-documents 14:1"],
  ["a file over 1 MB", new Uint8Array(largestGardenBytes + 1).fill(0x23), "too-large 1:1"],
  ["UTF-16", Uint8Array.from([0xff, 0xfe, 0x76, 0x00]), "not-utf8 1:1"],
  ["Latin-1", Buffer.from("version: 1\ngarden: G\u00e4rten\n", "latin1"), "not-utf8 2:1"],
  ["a picture", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x00]), "not-text 1:1"],
];

describe("each problem stands at its line and column", () => {
  test.each(cases)("%s", (_, file, ...places) => {
    expect(placesOf(file)).toEqual(places);
  });
});

test("the good garden has no problem", () => {
  expect(() => problemsOf(good)).toThrow("the garden has no problems");
  expect(() => problemsOf(utf8(good))).toThrow("the garden has no problems");
});

test("all problems are told at once, down the file", () => {
  const file = garden(
    { can: "can: 9", timezone: "timezone: Dublin", crop: "crop: tomatoe", plants: "plnats: 6" },
    "signs: [{ on: 2027-07-32, planting: tom, sign: tipburn }]",
  );
  expect(placesOf(file)).toEqual([
    "timezone 3:11",
    "schema-type 5:6",
    "unknown-crop 10:15",
    "schema-additionalProperties 11:9",
    "water 13:16",
    "date 14:15",
    "unknown-reference 14:37",
  ]);
});

test("a problem is one line, however many lines or letters the value has", () => {
  const zones = [
    garden({ timezone: 'timezone: "Nowhere\\n/City"' }),
    garden({ timezone: `timezone: ${"x".repeat(100_000)}` }),
  ];
  const [manyLines = "", long = ""] = zones.map((file) => problemsOf(file).map(problemLine).join());
  expect(manyLines).toBe(
    "garden.yaml:3:11: `Nowhere /City` is no time zone: write the IANA name, continent and city, like Europe/Dublin",
  );
  expect(long).toBe(
    `garden.yaml:3:11: \`${"x".repeat(97)}...\` is no time zone: write the IANA name, continent and city, like Europe/Dublin`,
  );
});

test("problems read as file:line:column: what is wrong: how to mend it", async () => {
  const read = cases.map(
    ([title, file]) => `# ${title}\n${problemsOf(file).map(problemLine).join("\n")}\n`,
  );
  await expect(read.join("\n")).toMatchFileSnapshot("../golden/problems.txt");
});
