// @ts-nocheck
import { describe, expect, test } from "vitest";
import { aGarden, gardenText, placesOf, problemsOf } from "../support/a-garden.js";

const location = { latitude: 53.1, longitude: -6.2 };
const means = Array.from({ length: 12 }, () => 10);
const climate = { source: "own", temperature: "C", max: means, min: means } as const;

describe("the weather files of a garden", () => {
  test("are named as they are written", () => {
    const weather = { seen: "weather.csv", forecast: "weather/next week.csv" };
    expect(aGarden({ location, weather }).weather).toEqual(weather);
    const own = { location: { latitude: 53.1 }, climate, weather: { seen: "a.txt" } };
    expect(aGarden(own).weather).toEqual({ seen: "a.txt" });
    expect(aGarden({ location }).weather).toBeUndefined();
  });

  test.each([
    "/etc/weather.csv",
    "../weather.csv",
    "a/../../b.csv",
    "~/b.csv",
    "C:\\b.csv",
    "a\\b.csv",
  ])("do not lie at %s", (path) => {
    const text = gardenText({ location, weather: { seen: "a.csv", forecast: path } });
    const line = text.split("\n").findIndex((one) => one.includes("forecast:")) + 1;
    expect(problemsOf(text)).toMatchObject([
      {
        code: "weather-file",
        at: { line, column: "  forecast: ".length + 1 },
        message: `\`${path}\` does not lie beside the garden file or below it`,
      },
    ]);
  });

  test("without a climate for the days after them are a problem, once", () => {
    const weather = { seen: "weather.csv", forecast: "next.csv" };
    for (const differs of [{}, { location: { latitude: 53.1 } }])
      expect(problemsOf(gardenText({ ...differs, weather }))).toMatchObject([
        { code: "weather-without-climate", mend: expect.stringContaining("longitude") as string },
      ]);
    expect(problemsOf(gardenText({ location, climate: "off", weather }))).toMatchObject([
      { code: "weather-without-climate", mend: "remove `climate: off`, or `weather`" },
    ]);
  });

  test("that name none are told by the schema alone", () => {
    expect(placesOf(gardenText({ location, weather: {} }))).toEqual([
      expect.stringMatching(/^schema-minProperties /),
    ]);
  });
});
