/** Soil, its test and what was dug into a bed. */
// @ts-nocheck

import type { Amendment as AmendmentFile, Soil as SoilFile } from "../compiled/garden-file.js";
import type { DaySpan } from "../dates.js";
import { given } from "../values.js";
import type { Entry } from "./fields.js";
import {
  type Amendment,
  amendmentKinds,
  extracts,
  grades,
  mulches,
  type Soil,
  soilKinds,
  type SoilTest,
} from "./soil.js";
import type { Bounds } from "./quantity.js";

const calciumBounds: Bounds = { least: 1, most: 100_000, words: "1 to 100,000 ppm" };
const depthBounds: Bounds = { least: 0.02, most: 1, words: "2 cm to 1 m" };
const densityBounds: Bounds = { least: 0.05, most: 2, words: "0.05 to 2 kg/L" };

/** What the file says of soil here; nothing where it says nothing. */
export function validateSoil(entry: Entry<SoilFile>, season: DaySpan | undefined): Soil {
  return given({
    kind: entry.among(soilKinds, "kind"),
    mulch: entry.among(mulches, "mulch"),
    test: entry.raw.test === undefined ? undefined : validateTest(entry.inner("test"), season),
  });
}

type TestFile = NonNullable<SoilFile["test"]>;

function validateTest(entry: Entry<TestFile>, season: DaySpan | undefined): SoilTest | undefined {
  const { raw } = entry;
  if (raw.calcium !== undefined && raw.extract === undefined)
    entry.report({
      code: "soil-test",
      path: entry.at("calcium"),
      atKey: true,
      message: "the calcium of a soil test means nothing without its extract",
      mend: `add what the report names, \`extract: mehlich-3\` (${extracts.join(", ")})`,
    });
  if (raw.calcium === undefined && raw.ph === undefined)
    entry.report({
      code: "soil-test",
      path: entry.path,
      message: "the soil test has neither calcium nor pH",
      mend: "add `calcium: 850 ppm`, or `ph: 6.3`, as the report has it",
    });
  const depthM = entry.quantity("depth", "length", depthBounds);
  const values = given({
    extract: entry.among(extracts, "extract"),
    calciumPpm: entry.quantity("calcium", "soil-content", calciumBounds),
    ph: entry.number("ph"),
    depthCm: depthM === undefined ? undefined : depthM * 100,
    densityKgPerL: entry.quantity("density", "density", densityBounds),
  });
  const on = dayBySeasonsEnd(entry, season, "a soil test");
  return on && { on, phIn: raw.ph_in === "cacl2" ? "cacl2" : "water", ...values };
}

/** @param areaM2 of the bed */
export function validateAmendments(
  entries: readonly Entry<AmendmentFile>[],
  areaM2: number | undefined,
  season: DaySpan | undefined,
): Amendment[] {
  return entries.flatMap((entry) => {
    const on = dayBySeasonsEnd(entry, season, "an amendment");
    const what = entry.among(amendmentKinds, "what");
    const amount = entry.spread("amount");
    if (amount?.per === "m2" && areaM2 === undefined)
      entry.report({
        code: "amendment",
        path: entry.at("amount"),
        message: "the amount is for an area, but the area of the bed is not given",
        mend: "add `area: 4 m2` to the bed, or write the amount for the whole bed, like `500 g`",
      });
    if (on === undefined || what === undefined || amount === undefined) return [];
    const amountG = amount.per === "m2" ? amount.grams * (areaM2 ?? 1) : amount.grams;
    return [{ on, what, amountG, ...given({ fineness: entry.among(grades, "fineness") }) }];
  });
}

/** May be of any year before: lime of three years ago still tells. */
function dayBySeasonsEnd(entry: Entry<{ on: string }>, season: DaySpan | undefined, what: string) {
  const on = entry.day("on");
  if (on !== undefined && season !== undefined && on > season.to)
    entry.report({
      code: "outside-season",
      path: entry.at("on"),
      message: `${what} on ${on} lies after the season, which ends on ${season.to}`,
      mend: "mend the year of one of the two",
    });
  return on;
}
