/** Where the calcium of a planting comes from, each part a whole phrase with its arithmetic. */
// @ts-nocheck

import {
  type AmendedCalcium,
  type CalciumAmount,
  exactly,
  type PlantingCalcium,
  type PublishedNeed,
  type Range,
  scaled,
  type SoilCalcium,
  summed,
  type WaterCalcium,
} from "../calcium/index.js";
import {
  type Amounts,
  calciumIn,
  fullDate,
  rateMeasures,
  squareFeetPerM2,
} from "../garden/index.js";
import { figures } from "./figures.js";
import { seasonWater } from "./season-water.js";
import { between, gramsBetween, percentBetween, verdictWords } from "./verdicts.js";

/** `30 to 64 g in all, 5 to 11 g a plant, 8 to 17 g per m2`, as far as each is known. */
export function amountOfCalcium(
  { wholeG, perPlantG, perM2G }: CalciumAmount,
  amounts: Amounts,
): string {
  return [
    wholeG && `${gramsBetween(wholeG)} in all`,
    perPlantG && `${gramsBetween(perPlantG)} a plant`,
    perM2G && gramsOnGround(perM2G, amounts),
  ]
    .filter((text) => text !== undefined)
    .join(", ");
}

/** `8 to 17 g per m2` */
function gramsOnGround(perM2G: Range, amounts: Amounts): string {
  if (amounts !== "us") return `${gramsBetween(perM2G)} per m2`;
  return `${gramsBetween(scaled(perM2G, 1 / squareFeetPerM2))} per ft2`;
}

/** What it takes up, by whose figures, and how far they carry. */
export function takenUp(need: PublishedNeed | undefined, amounts: Amounts): string {
  if (need === undefined) return "unknown: no figure of it, or of a near kin, was found";
  const { borrowedFrom, isWeak } = need;
  return [
    amountOfCalcium(need, amounts),
    ...(borrowedFrom === undefined ? [] : [`by figures of ${borrowedFrom}`]),
    ...(isWeak ? ["from a weak source"] : []),
  ].join("; ");
}

/** `1450 mg in a kg x 240 kg of soil = 348 g per m2`, as deep as the sample was. */
function onSoilOfGround(calciumPpm: number, perM2G: Range, amounts: Amounts): string {
  const grams = amounts === "us" ? scaled(perM2G, 1 / squareFeetPerM2) : perM2G;
  const soilKg = calciumPpm === 0 ? undefined : scaled(grams, 1000 / calciumPpm);
  const times =
    soilKg === undefined
      ? ""
      : `${figures(calciumPpm)} mg in a kg x ${between(soilKg)} kg of soil = `;
  return `${times}${gramsOnGround(perM2G, amounts)}, as deep as the sample`;
}

/** A stock, counted in no sum. */
export function heldBySoil(soil: SoilCalcium, amounts: Amounts): string {
  const { test, extractName, perM2G, takenPercent, isOld } = soil;
  const found = [
    test.calciumPpm === undefined
      ? undefined
      : `${figures(test.calciumPpm)} ppm of calcium by ${extractName ?? "an extract"}`,
    test.ph === undefined
      ? undefined
      : `pH ${figures(test.ph)} in ${test.phIn === "water" ? "water" : "calcium chloride"}`,
  ].filter((text) => text !== undefined);
  return [
    `test of ${fullDate(test.on, amounts)}: ${found.join(", ")}`,
    ...(perM2G && test.calciumPpm !== undefined
      ? [`that is ${onSoilOfGround(test.calciumPpm, perM2G, amounts)}`]
      : []),
    ...(takenPercent ? [`of which the crop takes ${percentBetween(takenPercent)}`] : []),
    ...(isOld ? ["an old test: worth repeating"] : []),
  ].join("; ");
}

/** `599 L x 22 to 32 mg per L = 13 to 19 g` */
export function broughtByWater(
  { waterL, calciumMgPerL: { low, high }, wholeG }: WaterCalcium,
  amounts: Amounts,
): string {
  const { water, waterL: unitL } = rateMeasures[amounts];
  const mg = between({ low: calciumIn(amounts, low), high: calciumIn(amounts, high) });
  const sum = wholeG === undefined ? "" : ` = ${gramsBetween(wholeG)}`;
  return `${figures(waterL / unitL)} ${water} x ${mg} mg per ${water}${sum}`;
}

/** `600 g of ground limestone on 15 November 2026: 0 to 226 g this season, 0 to 90 g in the next` */
export function broughtByAmendment(amended: AmendedCalcium, amounts: Amounts): string {
  const { on, name, amountG, thisSeason, nextSeason } = amended;
  const what = `${figures(amountG)} g of ${name} on ${fullDate(on, amounts)}`;
  if (thisSeason.wholeG === undefined)
    return `${what}, of which nobody knows what this planting has (\`area:\`)`;
  const next = nextSeason?.wholeG;
  return `${what}: ${gramsBetween(thisSeason.wholeG)} this season${next === undefined ? "" : `, ${gramsBetween(next)} in the next`}`;
}

/** `2.1 g, 3.3 to 7.1 % of what it takes up` */
export function broughtByFeed({ feed, sharePercent }: PlantingCalcium): string {
  const grams = gramsBetween(feed.wholeG ?? { low: 0, high: 0 });
  return sharePercent === undefined
    ? grams
    : `${grams}, ${percentBetween(sharePercent)} of what it takes up`;
}

/**
 * A season's water against a season's feed, over the plantings that are fed and of which both are known.
 * Undefined where there is none.
 */
export function waterAgainstFeed(sums: readonly PlantingCalcium[]): string | undefined {
  const { known, waterG, feedG } = seasonWater(sums);
  if (known.length === 0) return undefined;
  const times = between(scaled(waterG, 1 / feedG));
  return `In the season your water brings ${gramsBetween(waterG)} of calcium to what is fed, ${times} times the ${gramsBetween(exactly(feedG))} of the feed`;
}

/** All that the file tells of it, each part with its arithmetic: a title, and what there is to say. */
export function sumInFull(sum: PlantingCalcium, amounts: Amounts): [string, string][] {
  const { need, soil, water, amendments, brought, verdicts } = sum;
  return [
    ["takes up", takenUp(need, amounts)],
    ...(need?.sources ?? []).map((source): [string, string] => ["", source]),
    ...(soil ? [["soil", heldBySoil(soil, amounts)] as [string, string]] : []),
    ...(water ? [["water", broughtByWater(water, amounts)] as [string, string]] : []),
    ...amendments.map((one, i): [string, string] => [
      i === 0 ? "dug in" : "",
      broughtByAmendment(one, amounts),
    ]),
    ["feed", broughtByFeed(sum)],
    ...(brought ? [["together", amountOfCalcium(brought, amounts)] as [string, string]] : []),
    ...verdicts.map((verdict, i): [string, string] => [
      i === 0 ? "verdict" : "",
      `${verdictWords(verdict, amounts)}${verdict.feeds ? "" : " (It is not fed so.)"}`,
    ]),
  ];
}

/** Its parts in g, each as narrow as a column can be; empty where one is not known. */
export function summedInRow(sum: PlantingCalcium): Readonly<Record<string, string>> {
  const { need, soil, water, amendments, feed, sharePercent } = sum;
  const dugIn = amendments.flatMap(({ thisSeason }) => thisSeason.wholeG ?? []);
  const share = sharePercent && `${narrow(sharePercent)} %`;
  return {
    "takes up": need?.wholeG ? narrow(need.wholeG) : "unknown",
    soil: soil?.wholeG ? narrow(soil.wholeG) : "",
    water: water?.wholeG ? narrow(water.wholeG) : "",
    "dug in": dugIn.length === 0 ? "" : narrow(summed(dugIn)),
    feed: narrow(feed.wholeG ?? { low: 0, high: 0 }),
    share: share ?? "",
  };
}

/** `30-64` */
function narrow(range: Range): string {
  return between(range).replace(" to ", "-");
}
