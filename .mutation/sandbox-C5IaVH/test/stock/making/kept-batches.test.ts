// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day, dayNumber } from "../../../src/dates.js";
import type { PublishedBatch } from "../../../src/published/published.js";
import type { BatchChoice } from "../../../src/stock/making/batches-fewest.js";
import { namesFor, publishedChoices } from "../../../src/stock/making/kept-batches.js";
import { aPublishedBatch } from "../../support/a-published.js";
import { usualMaking } from "./making-cases.js";

const today = day("2027-05-01");

function choice(made: string, volumeMl = 1000): BatchChoice {
  const ready = dayNumber(day(made));
  return { slot: { start: ready - 4, acid: ready - 2, ready }, volumeMl };
}

describe("published batches that are not begun", () => {
  const kept = (
    told: readonly PublishedBatch[],
    fresh: readonly BatchChoice[],
    away: Parameters<typeof publishedChoices>[2] = [],
    now = today,
  ) => publishedChoices(told, fresh, away, usualMaking, now);
  const june = aPublishedBatch("2027-06-01");

  test("are kept where they are as few, though other days would be chosen now", () => {
    expect(kept([june], [choice("2027-06-12")])).toEqual([choice("2027-06-01")]);
  });

  test("are not kept where there are more or fewer of them", () => {
    expect(kept([june, aPublishedBatch("2027-07-01")], [choice("2027-06-01")])).toBeUndefined();
    expect(kept([], [choice("2027-06-01")])).toBeUndefined();
  });

  test("are kept up to a tenth more than is needed", () => {
    expect(kept([june], [choice("2027-06-01", 910)])).toBeDefined();
    expect(kept([june], [choice("2027-06-01", 900)])).toBeUndefined();
  });

  test.each([
    ["its beginning is past", {}, [], "2027-05-29"],
    ["it is larger than a batch may be", { volumeMl: 1010 }, [], today],
    ["it would dry too short", { acidIn: day("2027-05-29") }, [], today],
    ["it would react too short", { acidIn: day("2027-05-31") }, [], today],
    [
      "it would stand too long",
      { shellsOut: day("2027-05-12"), acidIn: day("2027-05-14") },
      [],
      today,
    ],
    ["nobody is there for a step", {}, [{ from: day("2027-05-30"), to: day("2027-05-30") }], today],
  ])("are not kept where %s", (_, differs, away, now) => {
    const batch = aPublishedBatch("2027-06-01", differs);
    expect(kept([batch], [choice("2027-06-01", 1010)], away, day(now))).toBeUndefined();
  });

  test("may be begun today", () => {
    expect(kept([june], [choice("2027-06-01")], [], june.shellsOut)).toBeDefined();
    expect(kept([june], [choice("2027-06-01")], [], addDays(june.shellsOut, 1))).toBeUndefined();
  });
});

describe("a batch takes over", () => {
  const [june, july] = [
    aPublishedBatch("2027-06-01"),
    aPublishedBatch("2027-07-01", { number: 2 }),
  ];
  const numbers = (...made: readonly string[]) =>
    namesFor(
      made.map((on) => choice(on)),
      [june, july],
    ).map((batch) => batch?.number);

  test("the name of the published one on its day", () => {
    expect(numbers("2027-06-01", "2027-07-01")).toEqual([1, 2]);
    expect(numbers("2027-07-01")).toEqual([2]);
  });

  test("else the next name that is left, in order of days", () => {
    expect(numbers("2027-06-03", "2027-07-04")).toEqual([1, 2]);
    expect(numbers("2027-06-20", "2027-07-01")).toEqual([1, 2]);
  });

  test("none where all are taken", () => {
    expect(numbers("2027-06-01", "2027-07-01", "2027-08-01")).toEqual([1, 2, undefined]);
  });
});
