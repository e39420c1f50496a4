/** Temperatures as growers write them: degrees Fahrenheit are no multiple of degrees Celsius, so no unit of `units.yaml`. */
// @ts-nocheck

import { inBaseUnit } from "../climate/index.js";
import { commaMend } from "../suggest.js";
import type { Parsed } from "./quantity.js";

/** `20 C`, `68 °F`, `-2 degrees C` -> degC. */
export function parseTemperature(text: string): Parsed<number> {
  const read = parseDegrees(text, "20 C or 68 F");
  if (!read.ok) return read;
  const { degrees, isFahrenheit } = read.value;
  return { ok: true, value: isFahrenheit ? inBaseUnit.F(degrees) : degrees };
}

/** By how much warmer: `2 C`, `4 F` -> degC; 4 F are 2.2 C. */
export function parseTemperatureDifference(text: string): Parsed<number> {
  const read = parseDegrees(text, "2 C or 4 F");
  if (!read.ok) return read;
  const { degrees, isFahrenheit } = read.value;
  return { ok: true, value: isFahrenheit ? (degrees * 5) / 9 : degrees };
}

function parseDegrees(
  text: string,
  example: string,
): Parsed<{ readonly degrees: number; readonly isFahrenheit: boolean }> {
  const plain = text.normalize("NFKC").replace(/[−–]/g, "-").trim();
  const comma = commaMend(plain);
  if (comma !== undefined)
    return { ok: false, message: `\`${text}\` has a comma in the number`, mend: comma };
  const mend = `write it like ${example}`;
  const [, number, unit = ""] = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(.*)$/.exec(plain) ?? [];
  if (number === undefined)
    return { ok: false, message: `\`${text}\` is no temperature with a unit`, mend };
  const scale = /^(?:°|º|deg(?:rees?)?\.?)?\s*(c|f|celsius|centigrade|fahrenheit)$/i.exec(
    unit,
  )?.[1];
  if (scale !== undefined)
    return {
      ok: true,
      value: { degrees: Number(number), isFahrenheit: /^f/i.test(scale) },
    };
  return /^(?:°|º|deg(?:rees?)?\.?)?$/i.test(unit)
    ? { ok: false, message: `\`${text}\` is not said to be C or F`, mend }
    : { ok: false, message: `the unit \`${unit}\` is none of temperature`, mend };
}
