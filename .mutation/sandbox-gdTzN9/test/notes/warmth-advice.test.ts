/** What warmth leaves open is told, once for each planting. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import type { StageName } from "../../src/crops/crop.js";
import { day } from "../../src/dates.js";
import { warmthAdvice } from "../../src/notes/warmth-advice.js";
import type { StageSpan, StageWarmth } from "../../src/stages/stage-span.js";
import { loadTables } from "../../src/tables.js";
import { aPlan, aPlantingInPlan } from "../support/a-plan.js";

const warmth: Omit<StageWarmth, "day"> = {
  calendar: day("2027-06-17"),
  isFollowed: true,
  degreeDays: 281,
  baseC: 7,
  after: "planting out on 2027-05-20",
  sources: ["a table"],
};

function stage(name: StageName, by: Partial<StageWarmth> | undefined): StageSpan {
  const span = { from: day("2027-06-17"), to: day("2027-06-30"), bbch: "61-69", origin: "a test" };
  return by === undefined
    ? { stage: name, ...span }
    : { stage: name, ...span, warmth: { ...warmth, ...by } };
}

const reached = { day: day("2027-06-20") };
const cold = { isFollowed: false };
const advice = (...stages: StageSpan[]) =>
  warmthAdvice(aPlan({ plantings: [aPlantingInPlan({ stages })] }));

describe("stages that warmth does not bring before the season ends", () => {
  test("are named together, with what to go by", () => {
    const told = advice(
      stage("flowering", reached),
      stage("fruit-set", cold),
      stage("ripening", cold),
    );
    expect(told).toMatchObject([{ code: "not-reached-by-warmth", plantings: ["toms"] }]);
    expect(told[0]?.message).toMatch(
      /^toms \(tomato\): fruit set, ripening not reached by warmth here .* \(`seen:`\)$/,
    );
  });

  test("are not told where no stage follows warmth, nor those of which warmth says nothing", () => {
    expect(advice(stage("flowering", { ...reached, ...cold }), stage("ripening", cold))).toEqual(
      [],
    );
    expect(advice(stage("flowering", reached), stage("ripening", undefined))).toEqual([]);
  });
});

describe("stages that warmth would move too far", () => {
  test("are named together, with the day of the first", () => {
    const held = { day: day("2027-08-01"), isHeldBack: true as const };
    const told = advice(
      stage("flowering", held),
      stage("fruit-set", { ...held, day: day("2027-08-09") }),
    );
    expect(told).toMatchObject([{ code: "warmth-held-back", plantings: ["toms"] }]);
    expect(told[0]?.message).toContain(
      `flowering, fruit set further than ${loadTables().climate.most_shift_days} days from the calendar (flowering to 1 Aug)`,
    );
  });

  test("are none where warmth has its way", () => {
    expect(advice(stage("flowering", reached))).toEqual([]);
  });
});
