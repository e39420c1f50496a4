// @ts-nocheck
import { expect, test } from "vitest";
import { knownZone, suggestZone } from "../../src/garden/zones.js";

test.each([
  ["Europe/Dublin", "Europe/Dublin"],
  ["europe/dublin", "Europe/Dublin"],
  ["UTC", "UTC"],
  ["Etc/GMT+5", "Etc/GMT+5"],
  ["US/Pacific", "US/Pacific"],
])("%s is a zone", (name, zone) => {
  expect(knownZone(name)).toBe(zone);
});

test("older names are valid whatever this Node calls the zone", () => {
  for (const name of ["Asia/Calcutta", "Asia/Kolkata", "Europe/Kiev", "America/Buenos_Aires"])
    expect(knownZone(name), name).toBeDefined();
});

test.each(["Dublin", "GMT+2", "+02:00", "Europe/Atlantis", "CET or so", "", "toString"])(
  "`%s` is none",
  (name) => {
    expect(knownZone(name)).toBeUndefined();
  },
);

test.each([
  ["Europe/Dubln", "Europe/Dublin"],
  ["Dublin", "Europe/Dublin"],
  ["new york", "America/New_York"],
  ["Europe/Melbourne", "Australia/Melbourne"],
])("behind %s stands %s", (name, zone) => {
  expect(suggestZone(name)).toBe(zone);
});

test("nothing is suggested for what is near no zone", () => {
  expect(suggestZone("behind the shed")).toBeUndefined();
});
