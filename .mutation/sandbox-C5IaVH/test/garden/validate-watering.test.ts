// @ts-nocheck
import { expect, test } from "vitest";
import type { Garden } from "../../src/garden/garden.js";
import { aGarden, gardenText, planted, readGarden } from "../support/a-garden.js";

const toms = planted({}).beds as [{ id: string; plantings: unknown[] }];
const wishOf = (keys: object): Garden["beds"][number]["watering"] =>
  aGarden({ beds: [{ ...toms[0], ...keys }] }).beds[0]?.watering;

test.each<[string, Garden["beds"][number]["watering"]]>([
  ["auto", "auto"],
  ["Auto", "auto"],
  ["auto a week", "auto"],
  ["25 L per m2", { weeklyMm: 25 }],
  ["25 mm", { weeklyMm: 25 }],
  ["1 inch", { weeklyMm: 25.4 }],
  ["25 mm a week", { weeklyMm: 25 }],
  ["25 mm per week", { weeklyMm: 25 }],
  ["25 L per m2 per week", { weeklyMm: 25 }],
  ["60 L/week", { weeklyL: 60 }],
  ["60 L weekly", { weeklyL: 60 }],
  ["10 L per plant each Week ", { weeklyL: 60 }],
  ["60 L", { weeklyL: 60 }],
  ["10 L per plant", { weeklyL: 60 }],
])("a bed's watering of %s is %j", (watering, wish) => {
  expect(wishOf({ watering })).toEqual(wish);
});

test("a bed that says nothing of it has no watering", () => {
  expect(wishOf({})).toBeUndefined();
});

test("watering days are the feeding days, or twice a week, unless given", () => {
  const days = (differs: object) => aGarden(differs).watering.days;
  expect(days({ feeding: { days: ["wed", "sat"] } })).toEqual(["wed", "sat"]);
  expect(days({ feeding: {} })).toEqual(["mon", "thu"]);
  expect(days({ watering: { days: ["Friday", "tue"] } })).toEqual(["tue", "fri"]);
});

test("they stand in the calendar only when asked, with reminders of their own", () => {
  expect(aGarden().watering).toMatchObject({ inCalendar: false, remindersMinBefore: [-480] });
  const watering = { time: "07:00", calendar: true, reminders: [{ before: "10 min" }] };
  expect(aGarden({ watering }).watering).toMatchObject({
    timeOfDay: "07:00",
    inCalendar: true,
    remindersMinBefore: [10],
  });
  expect(aGarden({ watering: { time: "07:00" } }).watering.remindersMinBefore).toEqual([30]);
});

test("feedings stay as the rules have them unless the grower wishes otherwise", () => {
  expect(aGarden().feedWhen).toBe("always");
  expect(aGarden({ feed_when: "might-help" }).feedWhen).toBe("might-help");
});

test.each<[object, string]>([
  [{ watering: "a lot" }, "`a lot` is not a number with a unit"],
  [
    { watering: 25 },
    "is the number 25 without a unit; write the unit behind the number, like 25 mm",
  ],
  [
    { watering: "10 L per plant", plantings: [{ id: "t", crop: "tomato", sown: "2027-04-01" }] },
    "not all plantings of the bed give their number",
  ],
])("%j is told once", (keys, words) => {
  const read = readGarden(gardenText({ beds: [{ ...toms[0], ...keys }] }));
  const told = read.ok ? [] : read.problems.map(({ message, mend }) => `${message}; ${mend}`);
  expect(told).toHaveLength(1);
  expect(told[0]).toContain(words);
});
