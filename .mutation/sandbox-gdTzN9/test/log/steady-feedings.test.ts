/** Published feedings that nobody has said anything else of. */
// @ts-nocheck

import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import type { NotGiven } from "../../src/log/past.js";
import { steadyFeedings } from "../../src/log/steady-feedings.js";
import { aPublished, aPublishedMix, aPublishedRound } from "../support/a-published.js";

const fed = ["toms", "more"].map((planting) => ({ planting, crop: "tomato", waterL: 10 }));
const published = aPublished({
  rounds: ["2027-06-12", "2027-06-26"].map((on) =>
    aPublishedRound(on, { mixes: [aPublishedMix({ fed })] }),
  ),
});
const nothing = { notGiven: [], early: [] };
const line = (planting: string, on: string) => ({
  planting,
  route: "drench" as const,
  day: day(on),
});

test("are those of the plantings that are meant, past and to come", () => {
  expect(steadyFeedings(["toms"], published, nothing)).toEqual([
    line("toms", "2027-06-12"),
    line("toms", "2027-06-26"),
  ]);
});

test("are none where nothing was published, or no planting is meant", () => {
  expect(steadyFeedings(["toms"], undefined, nothing)).toEqual([]);
  expect(steadyFeedings([], published, nothing)).toEqual([]);
});

test("are not those that were not given, nor those given on another day", () => {
  const missed: NotGiven = { ...line("toms", "2027-06-12"), bed: "south", why: "log" };
  const told = { notGiven: [missed], early: [line("more", "2027-06-26")] };
  expect(steadyFeedings(["toms", "more"], published, told)).toEqual([
    line("more", "2027-06-12"),
    line("toms", "2027-06-26"),
  ]);
});
