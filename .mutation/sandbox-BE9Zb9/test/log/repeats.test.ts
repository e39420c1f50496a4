// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { NewLogEntry } from "../../src/garden/garden-edit.js";
import { heldAlready } from "../../src/log/repeats.js";
import { aGarden, planted } from "../support/a-garden.js";

const on = day("2027-06-12");
function held(logged: object, entry: Omit<NewLogEntry, "on">, fed = ["toms", "more"]): number {
  const garden = aGarden({
    ...planted({}, { id: "more" }, { id: "basil", crop: "basil" }),
    feeds: [{ name: "nettle", every: "14 days", rate: "5 mL per L" }],
    log: [{ on, ...logged }],
  });
  return heldAlready({ on, ...entry }, garden, fed).length;
}

describe("an entry is held already where the log speaks of", () => {
  test.each<[object, Omit<NewLogEntry, "on">]>([
    [{ planting: "toms" }, { planting: "toms" }],
    [{ bed: "south" }, { planting: "toms" }],
    [{}, { planting: "toms" }],
    [{ planting: "toms" }, { bed: "south" }],
    [{ planting: "toms" }, {}],
    [{ planting: "toms", route: "drench" }, { planting: "toms" }],
    [{ planting: "toms", missed: true }, { planting: "toms" }],
    [{ on: "2027-06-13", round: "2027-06-12", planting: "toms" }, { planting: "toms" }],
    [{ planting: "toms" }, { planting: "toms", round: on }],
    [{ feed: "nettle" }, { feed: "nettle", bed: "south" }],
  ])("%j: %j", (logged, entry) => {
    expect(held(logged, entry)).toBe(1);
  });
});

describe("an entry is new where the log speaks of", () => {
  test.each<[object, Omit<NewLogEntry, "on">]>([
    [{ planting: "more" }, { planting: "toms" }],
    [{ on: "2027-06-13", planting: "toms" }, { planting: "toms" }],
    [
      { planting: "toms", route: "drench" },
      { planting: "toms", route: "foliar" },
    ],
    [{ feed: "nettle" }, { planting: "toms" }],
    [{ planting: "basil" }, { bed: "south" }],
  ])("%j: %j", (logged, entry) => {
    expect(held(logged, entry)).toBe(0);
  });

  test("plantings that are never fed, unless all are such", () => {
    expect(held({ planting: "basil" }, { bed: "south" }, [])).toBe(1);
  });
});
