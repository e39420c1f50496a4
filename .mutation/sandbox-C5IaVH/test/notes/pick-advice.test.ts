// @ts-nocheck
import { expect, test } from "vitest";
import { pickAdvice } from "../../src/notes/pick-advice.js";
import { aGarden, aSeason, type GardenDiffers, planted } from "../support/a-garden.js";

const toldOf = (differs: GardenDiffers): readonly string[] =>
  pickAdvice(aGarden(differs), aSeason(differs)).flatMap(({ plantings }) => plantings);

const early = { transplanted: "2027-04-10" };

test("a harvest of five months to the season's end asks for the last pick", () => {
  const season = { from: "2027-03-01", to: "2027-11-30" };
  const beds = planted(early, { id: "late", transplanted: "2027-07-20" });
  expect(toldOf({ season, ...beds })).toEqual(["toms"]);
  expect(pickAdvice(aGarden({ season, ...beds }), aSeason({ season, ...beds }))[0]?.message).toBe(
    "toms: taken as picked for more than 150 days, to the season's end on 30 Nov, and fed accordingly: write the day of the last pick (`picked_until:`) where they tire sooner",
  );
});

test("it is not asked for where the grower has said it, where it is short, or where it ends otherwise", () => {
  const season = { from: "2027-03-01", to: "2027-11-30" };
  expect(toldOf({ season, ...planted({ ...early, picked_until: "2027-11-30" }) })).toEqual([]);
  expect(toldOf({ season, ...planted({ ...early, removed: "2027-11-20" }) })).toEqual([]);
  expect(toldOf({ season, ...planted({}) })).toEqual([]);
});
