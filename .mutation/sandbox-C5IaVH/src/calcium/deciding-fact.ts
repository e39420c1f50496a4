/** Where nothing can be told: which single fact, found out, would change that. */
// @ts-nocheck

import type { SoilTest } from "../garden/index.js";
import type { FeedRule } from "../rules/index.js";
import { given } from "../values.js";
import { type CalciumFacts, type DecidingFact, type Judgement, judged } from "./judgement.js";
import { extractOf } from "./soil.js";
import type { CalciumTables } from "./tables.js";

type Tables = Pick<CalciumTables, "extracts" | "limits">;

/** The judgement with the fact that would decide it, the cheapest to find out first. */
export function judgement(rule: FeedRule, facts: CalciumFacts, tables: Tables): Judgement {
  const found = judged(rule, facts, tables);
  if (found.kind !== "cannot-tell") return found;
  const known = supposed(facts, tables).find(({ others }) =>
    others.some((other) => judged(rule, { ...facts, ...other }, tables).kind !== "cannot-tell"),
  );
  return { ...found, ...given({ decidedBy: known?.fact }) };
}

interface Supposed {
  readonly fact: DecidingFact;
  /** What it might turn out to be, at its extremes; none where it is known. */
  readonly others: readonly Partial<CalciumFacts>[];
}

function supposed({ soil, water, usualWaterL, areaM2 }: CalciumFacts, tables: Tables): Supposed[] {
  const { limits } = tables;
  const { test, kind } = soil;
  const hasSource = water.calciumMgPerL !== undefined || water.hardnessMgPerL !== undefined;
  const withTest = (other: Partial<SoilTest>): Partial<CalciumFacts> => ({
    soil: { ...soil, test: { ...(test ?? aTest), ...other } },
  });
  const ph = test?.phIn === "water" ? (test.ph ?? limits.enough_ph.value) : limits.enough_ph.value;
  const anyCalcium = [0, Infinity].map((calciumPpm) =>
    withTest({ extract: "mehlich-3", calciumPpm, ph, phIn: "water" }),
  );
  const mostL = areaM2 && areaM2 * limits.most_season_water_l_per_m2.value;
  return [
    {
      fact: "water-hardness",
      others: hasSource
        ? []
        : [0, limits.very_hard_water_mg_per_l.value].map((hardnessMgPerL) => ({
            water: { hardnessMgPerL },
          })),
    },
    {
      fact: "ph-in-water",
      others:
        test === undefined
          ? []
          : phsInWater(test, limits).map((value) => withTest({ ph: value, phIn: "water" })),
    },
    {
      fact: "watering",
      others: usualWaterL === undefined && mostL !== undefined ? [{ usualWaterL: mostL }] : [],
    },
    {
      fact: "soil-kind",
      others:
        kind === undefined
          ? limits.might_help.soils.map((one) => ({ soil: { ...soil, kind: one } }))
          : [],
    },
    { fact: "soil-test", others: test && hasClass(test, tables) ? [] : anyCalcium },
  ];
}

/** One in calcium chloride may be that of a soil to be limed, too. */
function phsInWater({ ph, phIn }: SoilTest, limits: CalciumTables["limits"]): number[] {
  if (ph === undefined) return [limits.enough_ph.value];
  return phIn === "cacl2" ? [limits.enough_ph.value, limits.lime_first_ph.value] : [];
}

/** Only the keys that no supposition sets. */
const aTest: SoilTest = { on: "0001-01-01" as SoilTest["on"], phIn: "water" };

function hasClass(test: SoilTest, { extracts }: Tables): boolean {
  return extractOf(test, extracts)?.enough_ppm !== undefined;
}
