import { expect, test } from "vitest";
import { rainText, temperatureText } from "../../src/words/weather.js";

test("rain and temperatures are told in the garden's measures", () => {
  expect([12.7, 18.4].map((mm) => rainText(mm, "metric"))).toEqual(["13 mm", "18 mm"]);
  expect(rainText(12.7, "us")).toBe("0.5 in");
  expect(rainText(12.7, "imperial")).toBe("13 mm");
  expect(temperatureText(26.67, "us")).toBe("80 F");
  expect(temperatureText(26.67, "metric")).toBe("27 C");
});
