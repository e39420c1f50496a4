/**
 * FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith), 1998, Table 11, "Lengths of
 * crop development stages for various planting periods and climatic regions (days)". Rows as printed:
 * initial / development / mid / late / total, month of planting, region. The second block was read in
 * the transcription of the pyfao56 library (Thorp and others, USDA Agricultural Research Service).
 */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { addDays, type Day, parseDay } from "../../src/dates.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { catalogue, lengthRows } from "../data/data-files.js";

const read = `
tomato            35 40 50 30 155  4,5       California
tomato            25 40 60 30 155  1         California desert
tomato            30 40 45 30 145  4,5       Mediterranean
sweet-pepper      30 35 40 20 125  4,5,6     Europe
sweet-pepper      30 40 110 30 210 10        arid
eggplant          30 40 40 20 130  10        arid
zucchini          25 35 25 15 100  4,12      Mediterranean
pumpkin           20 30 30 20 100  3,8       Mediterranean
watermelon        20 30 30 30 110  4         Italy
cucumber          20 30 40 15 105  6,7,8     arid
cantaloupe        30 45 35 10 120  1         California
sweet-melon       25 35 40 20 120  5         Mediterranean
lettuce           20 30 15 10 75   4         Mediterranean
lettuce           30 40 25 10 105  11,12,1   Mediterranean
lettuce           35 50 45 10 140  2         Mediterranean
cabbage           40 60 50 15 165  9         California desert
cauliflower       35 50 40 15 140  9         California desert
broccoli          35 45 40 15 135  9         California desert
cabbage           20 30 20 10 80   4         Mediterranean
cauliflower       30 35 90 40 195  10,11     Mediterranean
celery            25 40 95 20 180  10        semi-arid
celery            25 40 45 15 125  4         Mediterranean
carrot            30 40 60 20 150  2,3       Mediterranean
carrot            20 30 30 20 100  10,11,12,1 arid
potato            25 30 45 30 130  5         continental
potato            45 30 70 20 165  4,5       Idaho
peanut            25 35 45 25 130  -         West Africa
peanut            35 45 35 25 140  5,6       Mediterranean
`;

const transcribed = `
tomato            30 40 40 25 135  1         arid
tomato            35 45 70 30 180  10,11     arid
eggplant          30 45 40 25 140  5,6       Mediterranean
zucchini          20 30 25 15 90   5,6       Mediterranean
pumpkin           25 35 35 25 120  6         Europe
watermelon        10 20 20 30 80   5,6,7,8   Near East
cucumber          25 35 50 20 130  11,2      arid
cantaloupe        10 60 25 25 120  8         California
sweet-melon       30 30 50 30 140  3         California
lettuce           25 35 30 10 100  10,11     arid
cabbage           25 35 25 10 95   2         Mediterranean
celery            30 55 105 20 210 1         semi-arid
carrot            30 50 90 30 200  10        California desert
potato            30 35 50 30 145  4         Europe
peanut            35 35 35 35 140  5         high latitudes
green-bean        20 30 30 10 90   2,3       California
green-bean        15 25 25 10 75   8,9       California
broad-bean        15 25 35 15 90   5         Europe
pea               15 25 35 15 90   5         Europe
pea               20 30 35 15 100  3,4       Mediterranean
onion             15 25 70 40 150  4         Mediterranean
spring-onion      25 30 10 5 70    4,5       Mediterranean
beetroot          15 25 20 10 70   4,5       Mediterranean
radish            5 10 15 5 35     3,4       Mediterranean
spinach           20 30 40 10 100  11        arid
sweet-potato      20 30 60 40 150  4         Mediterranean
sweetcorn         20 25 25 10 80   5,6       Mediterranean
sunflower         25 35 45 25 130  4,5       Mediterranean
artichoke         40 40 250 30 360 4         California
leaf-lettuce      25 35 30 10 100  10,11     arid
kohlrabi          25 35 25 10 95   2         Mediterranean
collard           25 35 25 10 95   2         Mediterranean
pak-choi          25 35 25 10 95   2         Mediterranean
`;

type PrintedRow = [crop: string, days: string, months: string, region: string];

function rows(block: string): PrintedRow[] {
  return block
    .trim()
    .split("\n")
    .map((line) => {
      const [, crop, days, months, region] =
        /^(\S+)\s+(\d+ \d+ \d+ \d+ \d+)\s+(\S+)\s+(.*)$/.exec(line) ?? [];
      if (!crop || !days || !months || !region) throw new Error(`not a row: ${line}`);
      return [crop, days, months, region];
    });
}

describe.each([
  ["as printed", read],
  ["as transcribed", transcribed],
])("FAO-56 Table 11, %s", (_, block) => {
  test.each(rows(block))("%s: %s, planted in %s, %s", (crop, days, months, region) => {
    const found = lengthRows.filter(
      (row) =>
        row.crop === crop &&
        row.region.startsWith(region) &&
        (row.planted_months.join() || "-") === months,
    );
    expect(
      found.map((row) =>
        [
          row.initial_days,
          row.development_days,
          row.mid_days,
          row.late_days,
          row.printed_total_days,
        ].join(" "),
      ),
    ).toContain(days);
    expect(found.every((row) => row.source.includes("Table 11"))).toBe(true);
  });
});

test("FAO-56 chapter 6: mid-season, and with it flowering, begins 70 days after tomato is sown in April or May (30 + 40, Mediterranean)", () => {
  const tomato = catalogue.crops.find((crop) => crop.key === "tomato");
  if (tomato === undefined) throw new Error("no tomato");
  const sown = parseDay("2027-04-10") as Day;
  const season = { from: parseDay("2027-03-01") as Day, to: parseDay("2027-10-31") as Day };
  const { spans } = plantingLife(
    {
      id: "t",
      name: "t",
      bed: "b",
      crop: "tomato",
      cropWord: "word",
      waterL: 1,
      sprayL: 1,
      sprayIsUsual: true,
      level: 1,
      sown,
      seen: [],
      feed: "by-rule",
      path: [],
    },
    tomato,
    { hemisphere: "north", season },
  );
  const from = (stage: string): string | undefined => spans.find((s) => s.stage === stage)?.from;
  expect(from("flowering")).toBe(addDays(sown, 70));
  // Late season begins 115 days after planting. The table's crop ends on day 145; a garden's is
  // picked as long as it bears.
  expect(from("harvest")).toBe(addDays(sown, 115));
  expect(spans.at(-1)).toMatchObject({ stage: "harvest", to: season.to });
});
