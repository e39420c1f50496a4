// @ts-nocheck
import { describe, expect, test } from "vitest";
import { isRuleFile } from "../../src/serve/garden-source.js";
import { spanOfToday } from "../../src/serve/today.js";
import { todayAt } from "../../src/garden/zones.js";

describe("a YAML file among gardens", () => {
  test.each([
    ["version: 1\nrules:\n  - id: mine\n", true],
    ["rules: [{ id: mine }]", true],
    ["rules: # mine\n  - id: a\n", true],
    ["rules:\r\n  - id: a\r\n", true],
    ["rules: my-rules.yaml\nbeds: []\n", false],
    ["garden: x\nbeds:\nrules:\n", false],
    ["broken", false],
    ["", false],
  ])("%j is a rule file: %s", (text, isRules) => {
    expect(isRuleFile(text)).toBe(isRules);
  });
});

describe("today in the garden's zone", () => {
  test.each([
    ["2027-06-12T22:59:59Z", "Europe/Dublin", "2027-06-12"],
    ["2027-06-12T23:00:00Z", "Europe/Dublin", "2027-06-13"],
    ["2027-06-12T11:59:59Z", "Pacific/Auckland", "2027-06-12"],
    ["2027-06-12T12:00:00Z", "Pacific/Auckland", "2027-06-13"],
    ["2027-06-12T09:59:59Z", "Pacific/Honolulu", "2027-06-11"],
  ])("at %s in %s is %s", (at, zone, today) => {
    expect(todayAt(Date.parse(at), zone)).toBe(today);
  });

  test("lasts 23 or 25 hours when clocks change, and begins later where midnight is left out", () => {
    const hours = (at: string, zone: string): number => {
      const { fromMs, untilMs } = spanOfToday(zone, { nowMs: Date.parse(at) });
      return (untilMs - fromMs) / 3_600_000;
    };
    expect(hours("2027-03-28T12:00:00Z", "Europe/Dublin")).toBe(23);
    expect(hours("2027-10-31T12:00:00Z", "Europe/Dublin")).toBe(25);
    expect(hours("2027-06-12T12:00:00Z", "Europe/Dublin")).toBe(24);
    for (const at of ["2027-03-27T22:30:00Z", "2027-03-28T22:30:00Z", "2027-10-30T23:30:00Z"]) {
      const { fromMs, untilMs } = spanOfToday("Africa/Cairo", { nowMs: Date.parse(at) });
      const day = todayAt(Date.parse(at), "Africa/Cairo");
      expect([fromMs, untilMs - 1].map((ms) => todayAt(ms, "Africa/Cairo"))).toEqual([day, day]);
      expect([fromMs - 1, untilMs].map((ms) => todayAt(ms, "Africa/Cairo"))).not.toContain(day);
    }
  });
});
