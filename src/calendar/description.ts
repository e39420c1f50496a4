import { type Amounts, litersPerImperialGallon, litersPerUsGallon } from "../garden/index.js";
import type { BedRound, CanFill, CanMix, Feeding, OtherFeedMix } from "../season/index.js";
import { cautionsFor, otherFeedCaution, type PourStyle, stageWords } from "../words/index.js";

/** What is done on one trip, or in one bed of it. */
export interface TripFacts {
  readonly beds: readonly BedRound[];
  readonly feeds: readonly OtherFeedMix[];
  /** Bottles poured from for the first time, another having been in use before. */
  readonly newBottles: readonly NewBottle[];
  /** Lines of warnings and notes. */
  readonly told: readonly string[];
  /** It has been done: the log holds it. */
  readonly given: boolean;
}

export interface NewBottle {
  readonly batch: string;
  readonly strengthGPerL: number;
  /** Strength of the bottle before it, where it is known. */
  readonly wasGPerL?: number;
}

export interface TripWords {
  readonly amounts: Amounts;
  readonly nameOf: (planting: string) => string;
  /** How the garden pours its stock. */
  readonly pour?: PourStyle;
}

/** The whole truth of a trip: plain text lines. */
export function descriptionOf(facts: TripFacts, words: TripWords): string[] {
  const { beds, feeds, newBottles, told, given } = facts;
  const mixes = beds.flatMap((bed) => bed.mixes);
  return [
    ...(given ? ["Given: the log holds it.", ""] : []),
    ...(newBottles.length > 0 ? [...newBottles.map(newBottleLine), ""] : []),
    ...beds.flatMap((bed) => [
      `${bed.bedName}:`,
      ...bed.mixes.flatMap((mix) => mixLines(mix, given, words)),
      "",
    ]),
    ...(beds.length > 0 ? [totalLine(mixes, words.amounts)] : []),
    ...(beds.length > 0 && feeds.length > 0 ? ["Other feeds, each in cans of its own:"] : []),
    ...feeds.flatMap((feed) => feedLines(feed, words)),
    ...told,
    ...(given ? [] : cautionsFor(mixes, words.pour)),
    ...(feeds.length > 0 ? [otherFeedCaution] : []),
  ];
}

function newBottleLine({ batch, strengthGPerL, wasGPerL }: NewBottle): string {
  const line = `New bottle: ${batch}, ${number(strengthGPerL)} g of calcium to the litre`;
  if (wasGPerL === undefined) return line;
  const same = number(wasGPerL) === number(strengthGPerL);
  return same
    ? `${line}, as in the one before`
    : `${line}, ${number(wasGPerL)} g in the one before: mL differ`;
}

function mixLines(mix: CanMix, given: boolean, { amounts, pour }: TripWords): string[] {
  const how = mix.route === "foliar" ? "Leaf spray" : "Soil drench";
  return [
    `${how}, ${number(mix.rateMlPerL)} mL of stock to the litre`,
    ...mix.fills.map((fill) => `- ${fillLine(fill, mix.route, "stock")}`),
    ...bottleLines(mix),
    `- ${calciumLine(mix, pour)}`,
    ...mix.feedings.map((feeding) => `- ${feedingLine(feeding, given, amounts)}`),
    ...evidenceLines(mix),
  ];
}

function fillLine(fill: CanFill, route: CanMix["route"], liquid: string): string {
  const vessel = `${route === "foliar" ? "sprayer" : "can"}${fill.count === 1 ? "" : "s"}`;
  const ml = / mL$/.test(fill.stockText) ? "" : ` (${number(fill.stockMl)} mL)`;
  const each = fill.count === 1 ? "" : " each";
  return `${fill.count} ${fill.full ? "full" : "part"} ${vessel}: ${fill.stockText}${ml} of ${liquid} in ${fill.waterText} of water${each}`;
}

function bottleLines({ pours = [] }: CanMix): string[] {
  const [first] = pours;
  if (first === undefined) return [];
  if (pours.length === 1) return [`- from bottle ${first.batch}`];
  return [`- ${pours.map(({ batch, ml }) => `${number(ml)} mL from bottle ${batch}`).join(", ")}`];
}

/** Less than this short of the shaken stock, the clear one is as good. */
const clearIsAsGood = 0.95;

function calciumLine(mix: CanMix, pour: PourStyle | undefined): string {
  const { calciumMgPerL, clearCalciumMgPerL, tapCalciumMgPerL } = mix;
  const short =
    pour !== "clear" &&
    clearCalciumMgPerL !== undefined &&
    clearCalciumMgPerL < clearIsAsGood * calciumMgPerL
      ? ` (poured clear only ${number(clearCalciumMgPerL)} mg)`
      : "";
  const tap = tapCalciumMgPerL === undefined ? "" : `, ${number(tapCalciumMgPerL)} mg from the tap`;
  return `calcium in each litre: ${number(calciumMgPerL)} mg from the stock${short}${tap}`;
}

function feedingLine(feeding: Feeding, given: boolean, amounts: Amounts): string {
  const name =
    feeding.name === feeding.cropName ? feeding.name : `${feeding.name} (${feeding.cropName})`;
  const { earliest, latest } = feeding.window;
  const days = earliest === latest ? earliest : `${earliest} to ${latest}`;
  const due = given
    ? ""
    : feeding.inWindow
      ? `, due ${days}`
      : `, due ${days}, which this day misses`;
  return `${name}: ${waterText(feeding.waterL, amounts)}; ${stageWords(feeding.stage)}; feeding ${feeding.number}${due}`;
}

function evidenceLines(mix: CanMix): string[] {
  const words = {
    disputed: "Trials disagree on whether this helps",
    "advised-against": "Trials found that this does not help; it is here because you asked for it",
  };
  return Object.entries(words).flatMap(([evidence, text]) => {
    const names = mix.feedings.filter((f) => f.evidence === evidence).map(({ name }) => name);
    return names.length === 0 ? [] : [`- ${text}: ${names.join(", ")}`];
  });
}

function feedLines(mix: OtherFeedMix, { nameOf }: TripWords): string[] {
  return [
    `${mix.bedName}: ${mix.feed}, ${number(mix.rateMlPerL)} mL to the litre`,
    ...mix.fills.map((fill) => `- ${fillLine(fill, "drench", mix.feed)}`),
    `- for ${mix.plantings.map(nameOf).join(", ")}`,
    ...(mix.openedSince === undefined
      ? []
      : [`- from a bottle opened on ${mix.openedSince} or later`]),
  ];
}

function totalLine(mixes: readonly CanMix[], amounts: Amounts): string {
  const sum = (of: (mix: CanMix) => number) => mixes.reduce((total, mix) => total + of(mix), 0);
  const stockMl = sum((mix) => mix.stockMl);
  return `In all: ${number(stockMl)} mL of stock, ${waterText(
    sum((mix) => mix.waterL),
    amounts,
  )} of water`;
}

const litresIn = { metric: 1, us: litersPerUsGallon, imperial: litersPerImperialGallon };

function waterText(waterL: number, amounts: Amounts): string {
  return `${number(waterL / litresIn[amounts])} ${amounts === "metric" ? "L" : "gal"}`;
}

/** Stock is measured to the millilitre or the quarter teaspoon, water to the tenth of a litre. */
function number(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 2 : 1)));
}
