// @ts-nocheck
import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { keepsRainOut, standsOn, warmerUnder } from "../../src/garden/cover.js";
import { covers } from "../../src/garden/garden.js";
import { loadTables } from "../../src/tables.js";

test("a cover stands on its first and its last day, and without them always", () => {
  const days = ["2027-04-30", "2027-05-01", "2027-05-20", "2027-05-21"].map(day);
  const stands = (span: object) => days.map((on) => standsOn({ kind: "fleece", ...span }, on));
  expect(stands({ from: days[1], to: days[2] })).toEqual([false, true, true, false]);
  expect(stands({ to: days[2] })).toEqual([true, true, true, false]);
  expect(stands({})).toEqual([true, true, true, true]);
});

test("rain comes through fleece alone", () => {
  expect(covers.filter((kind) => !keepsRainOut({ kind }))).toEqual(["fleece"]);
});

test("it is as much warmer as the grower says, else as usual for its kind", () => {
  const { usual } = loadTables();
  expect(warmerUnder({ kind: "glass", warmerC: 5 }, usual)).toBe(5);
  expect(warmerUnder({ kind: "tunnel" }, usual)).toBe(usual.cover_tunnel_warmer_c);
});
