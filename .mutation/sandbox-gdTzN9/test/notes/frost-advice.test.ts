// @ts-nocheck
import { describe, expect, test } from "vitest";
import type { PlaceClimate } from "../../src/climate/climate.js";
import { type FrostEstimate, frostOf } from "../../src/climate/frost.js";
import { day, type Day } from "../../src/dates.js";
import type { Cover, Garden } from "../../src/garden/garden.js";
import { frostAdvice } from "../../src/notes/frost-advice.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { given } from "../../src/values.js";
import { placeClimate, temperate } from "../climate/a-climate.js";
import { aGarden, type GardenDiffers, gardenText, planFile, planted } from "../support/a-garden.js";

const { catalogue, frost } = loadTables();

// The last frost is on 20 April in the median, and after 10 May in one spring of ten.
const dublin = placeClimate({ latitudeDeg: 53.3, longitudeDeg: -6.3 });

/** That of spring alone, unless it is autumn that is asked for. */
function withFrost(plan: Plan, estimate: FrostEstimate | undefined, isAutumn = false): Plan {
  const { lastSpring, firstAutumn } = estimate?.around(plan.garden.season) ?? {};
  const known = estimate && {
    ...given(isAutumn ? { firstAutumn } : { lastSpring }),
    ...(estimate.allYear ? { allYear: true as const } : {}),
  };
  return { ...plan, garden: { ...plan.garden, ...given({ frost: known }) } };
}

function adviceFor(
  differs: GardenDiffers,
  climate: PlaceClimate | undefined = dublin,
  cover?: Cover,
): ReturnType<typeof frostAdvice> {
  const plan = planFile(gardenText(differs));
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  const garden = aGarden(differs);
  const covered: Garden =
    cover === undefined
      ? garden
      : { ...garden, beds: garden.beds.map((bed) => ({ ...bed, cover })) };
  return frostAdvice(
    covered,
    withFrost(plan.value, frostOf(climate, garden.frost, frost)),
    catalogue,
  );
}

const out = (transplanted: string): GardenDiffers => planted({ transplanted });

describe("a tender crop", () => {
  test("that is planted out before the one-in-ten day is told the day, that it is an estimate, and what to do", () => {
    expect(adviceFor(out("2027-05-01"))).toEqual([
      {
        plantings: ["toms"],
        message:
          "toms: planted out on 1 May, and in one spring of ten frost comes after 10 May: keep fleece at hand, or wait (the last frost is on 20 Apr by an estimate from simulation: the median, with 13 days of scatter from year to year, and 9 days off at 12 places with published dates (Europe); `frost: { last: ... }` takes your own day)",
      },
    ]);
  });

  test("that is planted out after it is told nothing", () => {
    expect(adviceFor(out("2027-05-10"))).toHaveLength(1);
    expect(adviceFor(out("2027-05-11"))).toEqual([]);
  });

  test("is held against the grower's own day where there is one", () => {
    const own = { frost: { last: "05-25" }, ...out("2027-05-20") };
    expect(adviceFor(own).map(({ message }) => message)).toEqual([
      "toms: planted out on 20 May, before the last frost of spring on 25 May (your own day, `frost:`): keep fleece at hand, or wait",
    ]);
    expect(adviceFor({ ...own, frost: { last: "04-10" }, ...out("2027-05-01") })).toEqual([]);
  });

  test("that is sown outdoors is held against it by its day of sowing, one raised indoors by its planting out", () => {
    const bean = { id: "beans", crop: "green bean", transplanted: undefined };
    const [told] = adviceFor(planted({ ...bean, sown: "2027-04-25" }));
    expect(told?.message).toMatch(
      /^beans: sown on 25 Apr, .* 10 May: keep fleece at hand for what is up by then, or wait/,
    );
    expect(adviceFor(planted({ sown: "2027-03-10", transplanted: "2027-05-20" }))).toEqual([]);
  });

  test("is not told to wait when it is out, nor told at all when the frost is over", () => {
    const plan = planFile(gardenText(out("2027-05-01")));
    if (!plan.ok) throw new Error("no plan");
    const toldOn = (today: Day) =>
      frostAdvice(
        aGarden(out("2027-05-01")),
        { ...withFrost(plan.value, frostOf(dublin, undefined, frost)), today },
        catalogue,
      ).map(({ message }) => message.includes("or wait"));
    expect([
      toldOn(day("2027-04-30")),
      toldOn(day("2027-05-01")),
      toldOn(day("2027-05-11")),
    ]).toEqual([[true], [false], []]);
  });

  test("shares its advice with others that go out on the same day", () => {
    const [one, ...more] = adviceFor(
      planted(
        { transplanted: "2027-05-01" },
        { id: "peppers", crop: "pepper", transplanted: "2027-05-01" },
      ),
    );
    expect(one?.plantings).toEqual(["toms", "peppers"]);
    expect(one?.message).toMatch(/^toms, peppers: planted out on/);
    expect(more).toEqual([]);
  });

  test("needs none under a cover that stands until then", () => {
    expect(adviceFor(out("2027-05-01"), dublin, { kind: "glass" })).toEqual([]);
    expect(adviceFor(out("2027-05-01"), dublin, { kind: "fleece", to: day("2027-05-10") })).toEqual(
      [],
    );
    expect(
      adviceFor(out("2027-05-01"), dublin, { kind: "fleece", to: day("2027-05-05") }),
    ).toHaveLength(1);
    expect(
      adviceFor(out("2027-05-01"), dublin, { kind: "fleece", from: day("2027-05-04") }),
    ).toHaveLength(1);
  });

  test("is advised of frost in any month where the place has it", () => {
    const polar = placeClimate({ minC: temperate.map((c) => c - 12), latitudeDeg: 78 });
    expect(adviceFor(out("2027-06-10"), polar)[0]?.message).toBe(
      "toms: planted out on 10 Jun, where frost is to be expected in any month, by an estimate from the mean minimum temperature: grow it under glass or keep fleece at hand",
    );
    expect(adviceFor(out("2027-06-10"), polar, { kind: "glass" })).toEqual([]);
  });
});

test("a hardy crop needs none, nor a place without frost, nor one that is not known", () => {
  const kale = planted({ id: "kale", crop: "kale", transplanted: "2027-04-01" });
  expect(adviceFor(kale)).toEqual([]);
  const nairobi = placeClimate({ minC: temperate.map((c) => c + 15), latitudeDeg: -1.3 });
  expect(adviceFor(out("2027-04-01"), nairobi)).toEqual([]);
  const plan = planFile(gardenText(out("2027-04-01")));
  expect(plan.ok && frostAdvice(aGarden(out("2027-04-01")), plan.value, catalogue)).toEqual([]);
});

describe("what is to stand into the autumn", () => {
  function autumnAdvice(differs: GardenDiffers, climate = dublin, today?: Day): string[] {
    const plan = planFile(gardenText(differs), undefined, today);
    if (!plan.ok) throw new Error("no plan");
    const garden = aGarden(differs);
    const told = withFrost(plan.value, frostOf(climate, garden.frost, frost), true);
    return frostAdvice(garden, told, catalogue).map(({ message }) => message);
  }
  const season = { from: "2027-03-01", to: "2027-12-15" };

  test("is told the day of the first frost where the estimate is too rough to end it", () => {
    const [told, ...others] = autumnAdvice({ season, ...out("2027-05-20") });
    expect(others).toEqual([]);
    expect(told).toMatch(
      /^toms: planned to stand until 15 Dec, and in half of the years frost has come by \d+ (Oct|Nov|Dec) \(an estimate from simulation: .*\): `frost: \{ first: ... \}` or `picked_until` ends it sooner$/,
    );
  });

  test("is not told where it ends before, or the frost is past", () => {
    const early = {
      season,
      ...planted({ transplanted: "2027-05-20", picked_until: "2027-09-30" }),
    };
    expect(autumnAdvice(early)).toEqual([]);
    expect(autumnAdvice({ season, ...out("2027-05-20") }, dublin, day("2027-12-10"))).toEqual([]);
  });

  test("ends with the grower's own day, and nothing is to be said", () => {
    expect(autumnAdvice({ season, frost: { first: "10-20" }, ...out("2027-05-20") })).toEqual([]);
  });
});
