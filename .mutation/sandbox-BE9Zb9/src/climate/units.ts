/** Units of temperature and rain -> degC and mm. */
// @ts-nocheck

import type { WeatherUnit } from "./weather-forms.js";

export const inBaseUnit: Readonly<Record<WeatherUnit, (value: number) => number>> = {
  C: (value) => value,
  "0.1 C": (value) => value / 10,
  F: (value) => ((value - 32) * 5) / 9,
  mm: (value) => value,
  "0.1 mm": (value) => value / 10,
  in: (value) => value * 25.4,
};
