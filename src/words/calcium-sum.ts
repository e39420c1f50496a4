/** Where the calcium of a planting comes from, each part a whole phrase with its arithmetic. */
import type {
  AmendedCalcium,
  CalciumAmount,
  PlantingCalcium,
  PublishedNeed,
  Range,
  SoilCalcium,
  WaterCalcium,
} from "../calcium/index.js";
import { type Amounts, calciumIn, rateMeasures, squareFeetPerM2 } from "../garden/index.js";
import { fullDate } from "./days.js";
import { figures } from "./figures.js";
import { between, gramsBetween, percentBetween } from "./verdicts.js";

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
  const { low, high } = perM2G;
  return `${gramsBetween({ low: low / squareFeetPerM2, high: high / squareFeetPerM2 })} per ft2`;
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
    `test of ${fullDate(test.on)}: ${found.join(", ")}`,
    ...(perM2G ? [`that is ${gramsOnGround(perM2G, amounts)} as deep as the sample`] : []),
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
export function broughtByAmendment(amended: AmendedCalcium): string {
  const { on, name, amountG, thisSeason, nextSeason } = amended;
  const what = `${figures(amountG)} g of ${name} on ${fullDate(on)}`;
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
  const known = sums.flatMap(({ water, feed }) =>
    water?.wholeG && feed.wholeG && feed.wholeG.high > 0
      ? [{ waterG: water.wholeG, feedG: feed.wholeG.high }]
      : [],
  );
  if (known.length === 0) return undefined;
  const total = (pick: (one: (typeof known)[number]) => number): number =>
    known.reduce((sum, one) => sum + pick(one), 0);
  const waterG = { low: total((one) => one.waterG.low), high: total((one) => one.waterG.high) };
  const feedG = total((one) => one.feedG);
  const times = { low: waterG.low / feedG, high: waterG.high / feedG };
  return `In the season your water brings ${gramsBetween(waterG)} of calcium to what is fed, ${between(times)} times the ${gramsBetween({ low: feedG, high: feedG })} of the feed`;
}
