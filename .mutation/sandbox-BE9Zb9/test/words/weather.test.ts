// @ts-nocheck
import { expect, test } from "vitest";
import { rainText } from "../../src/words/weather.js";

test("rain is told in the garden's measures", () => {
  expect([12.7, 18.4].map((mm) => rainText(mm, "metric"))).toEqual(["13 mm", "18 mm"]);
  expect(rainText(12.7, "us")).toBe("0.5 in");
  expect(rainText(12.7, "imperial")).toBe("13 mm");
});
