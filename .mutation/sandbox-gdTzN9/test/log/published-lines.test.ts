// @ts-nocheck
import { describe, expect, test } from "vitest";
import { publishedLines } from "../../src/log/published-lines.js";
import { aGarden, type GardenDiffers, planted } from "../support/a-garden.js";
import { aPublished, aPublishedMix, aPublishedRound } from "../support/a-published.js";

const published = aPublished({
  rounds: ["2027-06-05", "2027-06-19"].map((on) =>
    aPublishedRound(on, {
      mixes: [
        aPublishedMix({
          fed: [
            { planting: "toms", crop: "tomato", waterL: 12 },
            { planting: "chillies", crop: "chili", waterL: 6 },
          ],
          pours: [{ batch: "B1", ml: 30 }, { ml: 15 }],
        }),
        aPublishedMix({ route: "foliar", pours: [] }),
      ],
    }),
  ),
});
const linesIn = (differs: GardenDiffers, of = published) => publishedLines(of, aGarden(differs));
const preventedIn = (differs: GardenDiffers) =>
  linesIn(differs)[0]?.feedings.map(({ prevented }) => prevented);

test("there is one for each planting and route, with its share of the cans", () => {
  const lines = linesIn({});
  expect(lines.map(({ planting, route }) => `${planting}/${route}`)).toEqual([
    "toms/drench",
    "chillies/drench",
    "toms/foliar",
  ]);
  expect(lines[0]?.feedings).toEqual(
    ["2027-06-05", "2027-06-19"].map((on) => ({
      day: on,
      waterL: 12,
      pours: [{ batch: "B1", ml: 20 }, { ml: 10 }],
      mix: `${on}/0`,
    })),
  );
});

test("cans of which no water is known are shared out alike", () => {
  const [mix] = published.rounds[0]?.mixes ?? [];
  const fed = (mix?.fed ?? []).map((one) => ({ ...one, waterL: 0 }));
  const dry = aPublished({
    rounds: [aPublishedRound("2027-06-05", { mixes: [aPublishedMix({ ...mix, fed })] })],
  });
  expect(linesIn({}, dry)[0]?.feedings[0]?.pours).toEqual([{ batch: "B1", ml: 15 }, { ml: 7.5 }]);
});

test("a planting that the garden file no longer has is told apart", () => {
  const lines = linesIn({});
  expect(lines.map(({ of }) => of?.id)).toEqual(["toms", undefined, "toms"]);
});

test("a planting is in the bed where it stands now", () => {
  const [bed] = planted({}).beds as object[];
  expect(linesIn({ beds: [{ ...bed, id: "north" }] })[0]?.bed).toBe("north");
});

test("what was first told after its day is left out", () => {
  const late = aPublished({ rounds: [aPublishedRound("2027-06-05", { first: "2027-06-06" })] });
  expect(linesIn({}, late)).toEqual([]);
});

describe("a day is prevented by", () => {
  test("an absence over it, its first and last day included", () => {
    const away = (from: string, to: string) => preventedIn({ feeding: { away: [{ from, to }] } });
    expect(away("2027-06-05", "2027-06-18")).toEqual(["away", undefined]);
    expect(away("2027-06-06", "2027-06-19")).toEqual([undefined, "away"]);
  });

  test("a planting that was removed before it, not on it", () => {
    expect(preventedIn(planted({ removed: "2027-06-18" }))).toEqual([undefined, "removed"]);
    expect(preventedIn(planted({ removed: "2027-06-19" }))).toEqual([undefined, undefined]);
  });

  test("a planting that was set out after it, not on it", () => {
    expect(preventedIn(planted({ transplanted: "2027-06-06" }))).toEqual([
      "not-yet-planted",
      undefined,
    ]);
    expect(preventedIn(planted({ transplanted: "2027-06-05" }))).toEqual([undefined, undefined]);
  });
});
