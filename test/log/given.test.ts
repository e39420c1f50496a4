import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { type FeedingCourse, feedingCourses } from "../../src/days/courses.js";
import type { Garden } from "../../src/garden/garden.js";
import { asScheduled, givenFeedings, resumed } from "../../src/log/given.js";
import { matchRules } from "../../src/rules/match.js";
import { plantingLife } from "../../src/stages/planting-life.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, planted } from "../support/a-garden.js";

const tables = loadTables();
const today = day("2027-07-01");

function coursesOf(garden: Garden): FeedingCourse[] {
  return garden.beds.flatMap((bed) =>
    bed.plantings.flatMap((planting) => {
      const crop = tables.catalogue.crops.find(({ key }) => key === planting.crop);
      if (crop === undefined) throw new Error(`no crop ${planting.crop}`);
      const life = plantingLife(planting, crop, garden);
      const { spans } = matchRules(planting, crop, life, tables.builtInRules);
      return feedingCourses(planting, spans, garden.season);
    }),
  );
}

const twoOfABed = (log: readonly object[]): Garden =>
  aGarden({
    ...planted({ water: "12 L" }, { id: "chillies", crop: "chili", water: "6 L" }),
    stock: { batches: [{ id: "B1", made: "2027-05-10", volume: "500 mL" }] },
    log,
  });

describe("an entry for a bed", () => {
  const garden = twoOfABed([{ on: "2027-06-20", bed: "south", stock: "45 mL", batch: "B1" }]);
  test("is shared out by water among those that are fed", () => {
    expect(givenFeedings(garden, coursesOf(garden), today)).toEqual([
      { planting: "toms", day: "2027-06-20", stockMl: 30, batch: "B1" },
      { planting: "chillies", day: "2027-06-20", stockMl: 15, batch: "B1" },
    ]);
  });
});

test("entries after today, and those of other feeds, gave nothing yet", () => {
  const garden = aGarden({
    feeds: [{ name: "seaweed", days: ["wed"], rate: "5 mL per L" }],
    log: [
      { on: "2027-06-20", feed: "seaweed" },
      { on: "2027-07-02", planting: "toms" },
    ],
  });
  expect(givenFeedings(garden, coursesOf(garden), today)).toEqual([]);
});

describe("a course", () => {
  const garden = aGarden();
  const courses = coursesOf(garden);
  const [course] = courses;
  if (course === undefined) throw new Error("tomatoes are fed");
  const on = (d: string, more: object = {}) => ({ planting: "toms", day: day(d), ...more });

  test("goes on from the last day given, whatever the order", () => {
    const given = [on("2027-06-24"), on("2027-06-20")];
    expect(resumed(courses, given)[0]?.course.lastFed).toBe("2027-06-24");
  });

  test("is not moved by what another route or planting got", () => {
    const given = [on("2027-06-24", { route: "foliar" }), { ...on("2027-06-24"), planting: "no" }];
    expect(resumed(courses, given)).toEqual(courses);
  });

  test("takes several entries of a day as one feeding, with the bottles of each", () => {
    const given = [
      on("2027-06-20", { stockMl: 20, batch: "B1" }),
      on("2027-06-20", { stockMl: 10, batch: "B2" }),
    ];
    const { feedings, strays } = asScheduled(given, courses, () => true);
    expect(strays).toEqual([]);
    expect(feedings).toMatchObject([
      {
        course: course.course.id,
        day: "2027-06-20",
        logged: {
          stockMl: 30,
          pours: [
            { batch: "B1", ml: 20 },
            { batch: "B2", ml: 10 },
          ],
        },
      },
    ]);
  });

  test("keeps an entry for what does not grow, and tells of it", () => {
    const { feedings, strays } = asScheduled([on("2027-06-20")], courses, () => false);
    expect(feedings).toHaveLength(1);
    expect(strays).toEqual([on("2027-06-20")]);
  });
});
