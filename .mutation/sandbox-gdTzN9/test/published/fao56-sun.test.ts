/**
 * Worked examples of FAO Irrigation and Drainage Paper 56 (Allen and others 1998). Sun and day length
 * are the program's; what is made of them is in the support. Tolerances are half of the last digit
 * printed, where the paper itself rounds on the way a whole one.
 */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import {
  declinationRad,
  extraterrestrialMjM2,
  inverseRelativeDistance,
  sunsetAngleRad,
} from "../../src/climate/sun.js";
import { dayLengthH } from "../../src/climate/index.js";
import { day } from "../../src/dates.js";
import * as fao from "../support/fao56.js";

/** Off by no more than `by`. */
function near(value: number, printed: number, by: number): void {
  expect(Math.abs(value - printed), `${value} for ${printed}`).toBeLessThanOrEqual(by);
}

describe("FAO-56 Example 7: degrees and minutes to radians", () => {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;

  test("Bangkok, 13 degrees 44 minutes north, is 0.240", () => {
    near(radians(fao.latitude(13, 44)), 0.24, 5e-4);
  });

  test("from memory: Rio de Janeiro, 22 degrees 54 minutes south, is -0.400, and has the winter's short day in June", () => {
    const rio = fao.latitude(-22, 54);
    near(radians(rio), -0.4, 5e-4);
    expect(dayLengthH(day("2027-06-21"), rio)).toBeLessThan(11);
    expect(dayLengthH(day("2027-12-21"), rio)).toBeGreaterThan(13);
  });
});

describe("FAO-56 Example 8: 20 degrees south on 3 September, day 246", () => {
  const third = day("2027-09-03");

  test("inverse relative distance of earth and sun is 0.985", () => {
    near(inverseRelativeDistance(third), 0.985, 5e-4);
  });
  test("declination is 0.120 rad", () => {
    near(declinationRad(third), 0.12, 5e-4);
  });
  test("sunset angle is 1.527 rad", () => {
    near(sunsetAngleRad(third, -20), 1.527, 5e-4);
  });
  test("extraterrestrial radiation is 32.2 MJ/m2/day", () => {
    near(extraterrestrialMjM2(third, -20), 32.2, 0.05);
  });
  test("that is 13.1 mm/day of evaporation", () => {
    near(0.408 * extraterrestrialMjM2(third, -20), 13.1, 0.05);
  });
});

test("FAO-56 Example 9: 20 degrees south on 3 September has 11.7 hours of daylight", () => {
  near(dayLengthH(day("2027-09-03"), -20), 11.7, 0.05);
});

describe("FAO-56 Example 10: Rio de Janeiro in May, 7.1 hours of sunshine", () => {
  const [may, rio] = [day("2027-05-15"), fao.latitude(-22, 54)];

  test("extraterrestrial radiation is 25.1 MJ/m2/day", () => {
    near(extraterrestrialMjM2(may, rio), 25.1, 0.05);
  });
  test("daylight lasts 10.9 hours", () => {
    near(dayLengthH(may, rio), 10.9, 0.05);
  });
  test("solar radiation is 14.5 MJ/m2/day", () => {
    near(fao.solarMjM2(may, rio, 7.1), 14.5, 0.05);
  });
  test("Examples 11 and 12 go on: clear sky 18.8, net longwave 3.5 MJ/m2/day", () => {
    const clearSky = fao.clearSkyMjM2(may, { latitudeDeg: rio, heightM: 0 });
    near(clearSky, 18.8, 0.05);
    const air = { minC: 19.1, maxC: 25.1, vapourKPa: 2.1 };
    near(fao.netLongwaveMjM2(air, fao.solarMjM2(may, rio, 7.1), clearSky), 3.5, 0.05);
  });
});

test("FAO-56 Example 13: soil heat of April between means of 14.1 and 18.8 degC is 0.33 MJ/m2/day", () => {
  near(fao.soilHeatMjM2(14.1, 18.8), 0.33, 0.005);
});

test("FAO-56 Example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m", () => {
  near(fao.windAt2M(3.2, 10), 2.4, 0.05);
});

describe("FAO-56 Example 15: Lyon in July, 14.8 to 26.6 degC", () => {
  const [july, lyon] = [day("2027-07-15"), fao.latitude(45, 43)];

  test("extraterrestrial radiation is 40.6 MJ/m2/day", () => {
    near(extraterrestrialMjM2(july, lyon), 40.6, 0.05);
  });
  test("solar radiation from the day's range is 22.3 MJ/m2/day", () => {
    near(fao.solarFromRangeMjM2(july, lyon, { minC: 14.8, maxC: 26.6 }), 22.3, 0.05);
  });
});

describe("FAO-56 Example 17: Bangkok in April", () => {
  const april = day("2027-04-15");
  const place = { latitudeDeg: fao.latitude(13, 44), heightM: 2 };
  const air = { minC: 25.6, maxC: 34.8, vapourKPa: 2.85, windMS: 2 };

  test("slope of vapour pressure at 30.2 degC is 0.246, psychrometric constant 0.0674 kPa/degC", () => {
    near(fao.slopeKPaPerC(30.2), 0.246, 5e-4);
    // The paper carries on with the pressure of the sea, 101.3 kPa.
    near(fao.psychrometricKPaPerC(2), 0.0674, 1e-4);
  });
  test("mean saturation is 4.42 kPa", () => {
    near(fao.meanSaturationKPa(air.minC, air.maxC), 4.42, 0.005);
  });
  test("from memory: extraterrestrial radiation is 38.06, with 8.5 hours of sunshine solar radiation 22.65 MJ/m2/day", () => {
    near(extraterrestrialMjM2(april, place.latitudeDeg), 38.06, 0.01);
    near(fao.solarMjM2(april, place.latitudeDeg, 8.5), 22.65, 0.01);
  });
  test("from memory: daylight lasts 12.31 hours", () => {
    near(dayLengthH(april, place.latitudeDeg), 12.31, 0.005);
  });
  test("net radiation is 14.33 MJ/m2/day", () => {
    const solar = fao.solarMjM2(april, place.latitudeDeg, 8.5);
    const longwave = fao.netLongwaveMjM2(air, solar, fao.clearSkyMjM2(april, place));
    near(fao.netShortwaveMjM2(solar) - longwave, 14.33, 0.01);
  });
  test("soil heat after a March of 29.2 degC is 0.14 MJ/m2/day", () => {
    near(fao.soilHeatSoFarMjM2(29.2, 30.2), 0.14, 0.005);
  });
  test("reference evapotranspiration is 5.72 mm/day", () => {
    const solarMjM2 = fao.solarMjM2(april, place.latitudeDeg, 8.5);
    near(
      fao.penmanMonteithMm(april, place, air, { solarMjM2, soilHeatMjM2: 0.14 }),
      5.72,
      // The paper carries rounded numbers on.
      0.01,
    );
  });
});

describe("FAO-56 Example 18: Uccle (Brussels), 6 July", () => {
  const sixth = day("2027-07-06");
  const place = { latitudeDeg: fao.latitude(50, 48), heightM: 100 };
  const humidity = { minC: 12.3, maxC: 21.5, leastPercent: 63, mostPercent: 84 };
  const air = { ...humidity, vapourKPa: fao.vapourKPa(humidity), windMS: fao.windAt2M(2.78, 10) };

  test("wind of 2.78 m/s at 10 m is 2.078 m/s at 2 m", () => {
    near(air.windMS, 2.078, 0.002);
  });
  test("vapour pressure is 1.409 kPa, of 1.997 at saturation", () => {
    near(air.vapourKPa, 1.409, 5e-4);
    near(fao.meanSaturationKPa(12.3, 21.5), 1.997, 5e-4);
  });
  test("slope is 0.122, psychrometric constant 0.0666 kPa/degC", () => {
    near(fao.slopeKPaPerC(16.9), 0.122, 5e-4);
    near(fao.psychrometricKPaPerC(100), 0.0666, 5e-5);
  });
  test("extraterrestrial radiation is 41.09 MJ/m2/day, 30.90 under a clear sky", () => {
    near(extraterrestrialMjM2(sixth, place.latitudeDeg), 41.09, 0.005);
    near(fao.clearSkyMjM2(sixth, place), 30.9, 0.005);
  });
  test("from memory: daylight lasts 16.1 hours", () => {
    near(dayLengthH(sixth, place.latitudeDeg), 16.1, 0.05);
  });
  test("9.25 hours of sunshine give 22.07 MJ/m2/day", () => {
    near(fao.solarMjM2(sixth, place.latitudeDeg, 9.25), 22.07, 0.01);
  });
  test("net radiation is 13.28 MJ/m2/day", () => {
    const solar = fao.solarMjM2(sixth, place.latitudeDeg, 9.25);
    const longwave = fao.netLongwaveMjM2(air, solar, fao.clearSkyMjM2(sixth, place));
    near(fao.netShortwaveMjM2(solar) - longwave, 13.28, 0.01);
  });
  test("reference evapotranspiration is 3.9 mm/day", () => {
    const solarMjM2 = fao.solarMjM2(sixth, place.latitudeDeg, 9.25);
    near(fao.penmanMonteithMm(sixth, place, air, { solarMjM2, soilHeatMjM2: 0 }), 3.9, 0.05);
  });
});

describe("FAO-56 Example 20: Lyon in July, with nothing known but 14.8 and 26.6 degC", () => {
  const july = day("2027-07-15");
  const place = { latitudeDeg: 45.72, heightM: 200 };
  const air = { minC: 14.8, maxC: 26.6, vapourKPa: fao.saturationKPa(14.8), windMS: 2 };

  test("vapour pressure at the night's temperature is 1.68 kPa", () => {
    near(air.vapourKPa, 1.68, 0.005);
  });
  test("extraterrestrial radiation is 40.55 MJ/m2/day", () => {
    near(extraterrestrialMjM2(july, place.latitudeDeg), 40.55, 0.005);
  });
  test("reference evapotranspiration by equation 6 is 4.6 mm/day", () => {
    const solarMjM2 = fao.solarFromRangeMjM2(july, place.latitudeDeg, air);
    near(fao.penmanMonteithMm(july, place, air, { solarMjM2, soilHeatMjM2: 0 }), 4.6, 0.05);
  });
});
