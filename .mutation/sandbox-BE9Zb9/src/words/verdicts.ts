/** What can be expected of a feed for a planting, and why. */
// @ts-nocheck

import type {
  CannotTell,
  DecidingFact,
  FeedingVerdict,
  Judgement,
  Range,
} from "../calcium/index.js";
import {
  type Amounts,
  calciumIn,
  decimal,
  fullDate,
  rateMeasures,
  type SoilKind,
} from "../garden/index.js";
import { grouped } from "../values.js";
import { figures } from "./figures.js";
import { cropWords, stageWords } from "./plants.js";
import { routeNames } from "./routes.js";

type LimeFirst = Extract<Judgement, { readonly kind: "lime-first" }>;

/** In a few words, for a row or a title. */
export const verdictTitles: Readonly<Record<Judgement["kind"], string>> = {
  "unlikely-whatever-the-soil": "unlikely to help, whatever the soil",
  "lime-first": "lime first",
  "unlikely-soil-has-enough": "unlikely to help: the soil has enough",
  "unlikely-water-covers-it": "unlikely to help: the water covers it",
  "might-help": "might help",
  "cannot-tell": "cannot tell",
};

const inRow: Readonly<Record<Judgement["kind"], string>> = {
  "unlikely-whatever-the-soil": "unlikely",
  "lime-first": "lime first",
  "unlikely-soil-has-enough": "unlikely: soil has enough",
  "unlikely-water-covers-it": "unlikely: water covers it",
  "might-help": "might help",
  "cannot-tell": "cannot tell",
};

/** `might help`, `cannot tell`; by its route where routes differ. */
export function verdictsInRow(verdicts: readonly FeedingVerdict[]): string {
  const texts = new Set(verdicts.map(({ judgement }) => inRow[judgement.kind]));
  if (texts.size <= 1) return [...texts].join("");
  return verdicts.map(({ route, judgement }) => `${route}: ${inRow[judgement.kind]}`).join("; ");
}

/** `Soil drench against blossom-end rot: might help. ...` */
export function verdictWords(verdict: FeedingVerdict, amounts: Amounts): string {
  return `${verdictInShort(verdict)} ${becauseOf(verdict.judgement, amounts)}`;
}

/** `Soil drench against blossom-end rot: might help.` */
export function verdictInShort({ route, disorder, judgement }: FeedingVerdict): string {
  return `${routeNames[route].title} against ${disorder}: ${verdictTitles[judgement.kind]}.`;
}

function becauseOf(judgement: Judgement, amounts: Amounts): string {
  switch (judgement.kind) {
    case "unlikely-whatever-the-soil":
      return judgement.reason;
    case "lime-first":
      return limeFirst(judgement, amounts);
    case "unlikely-soil-has-enough": {
      const { calciumPpm, extractName, enoughPpm, enoughIsFromMemory, ph } = judgement;
      const limit = `${figures(enoughPpm)} ppm are enough${enoughIsFromMemory ? " (a limit from memory)" : ""}`;
      return `The soil test found ${figures(calciumPpm)} ppm of calcium by ${extractName}, where ${limit}, at pH ${figures(ph)}.`;
    }
    case "unlikely-water-covers-it":
      return `In a usual season the water brings ${gramsBetween(judgement.waterG)} of calcium, and the planting takes up ${gramsBetween(judgement.needG)}.`;
    case "might-help": {
      const { soil, waterMgPerL, stages } = judgement;
      const span = `in ${stages.map(stageWords).join(", ")}`;
      return `${poorSoils[soil]}, the water brings only ${mgBetween(waterMgPerL, amounts)}, and no soil test says otherwise: ${span} it may be worth a try, after even watering.`;
    }
    case "cannot-tell":
      return reasonsNotToTell(judgement);
  }
}

function limeFirst({ ph, limedOn, besideSour = [] }: LimeFirst, amounts: Amounts): string {
  const sour = `At pH ${figures(ph)} the soil was too sour`;
  if (limedOn !== undefined)
    return `${sour}, and it has been limed since, on ${fullDate(limedOn, amounts)}: test it again before you lime or feed.`;
  return besideSour.length === 0
    ? `At pH ${figures(ph)} the soil is too sour: lime it as its test asks, no feed makes up for that.`
    : `At pH ${figures(ph)} the soil is too sour for it, and right for ${besideSour.join(", ")} in the same bed: don't lime there, grow it in another bed; no feed makes up for that.`;
}

const poorSoils: Readonly<Record<SoilKind, string>> = {
  "potting-mix": "Potting mix holds little calcium",
  sand: "Sand holds little calcium",
  loam: "The soil holds little calcium",
  clay: "The soil holds little calcium",
};

const whyNot: Readonly<Record<CannotTell, string>> = {
  "spray-goes-past-the-soil":
    "A spray goes past the roots, so neither soil nor water tells, and no trial of this feed is known",
  "trials-disagree": "Trials disagree on whether it helps",
  "cause-unclear":
    "What looks like this disorder may be another, such as mould, which no feed mends",
  "no-class-of-extract":
    "Nobody has a limit for calcium by this extract of the soil test, as for Mehlich-3, modified Morgan and ammonium acetate",
  "ph-in-cacl2": "The pH of the soil test is in calcium chloride, and the limits are in water",
  "ph-not-known": "The soil test found much calcium, but names no pH",
  "much-calcium-but-sour":
    "The soil test found much calcium, but at a pH at which roots may not get at it",
  "dug-in-covers-it":
    "What was dug in may bring this season as much as the planting takes up at the most",
  "no-trial": "No trial is known in which more calcium in soil or water mended this",
  "soil-not-known":
    "Only potting mix and sand are known to run short, and the kind of soil is not told",
  "soil-not-poor": "Only potting mix and sand are known to run short, and this is neither",
  "water-not-known": "What the water brings is not known",
  "water-not-soft": "The water brings calcium too",
};

/** What a grower can find out, as an end of a sentence. */
export const decides: Readonly<Record<DecidingFact, string>> = {
  "water-hardness": "the hardness of your water may decide it (`source_water:`)",
  "ph-in-water": "the pH of the soil in water may decide it (`ph:` of the test)",
  watering: "how much you water may decide it (`watering: auto`)",
  "soil-kind": "the kind of soil may decide it (`soil: { kind: sand }`)",
  "soil-test": "a soil test may decide it (`soil: { test: ... }`)",
};

/** So many can be named one by one. */
const mostNames = 6;

/** The plantings by id, or by their crops where they are many. */
export function namesOf(
  those: readonly { readonly planting: string; readonly cropName: string }[],
): string {
  const ids = [...new Set(those.map(({ planting }) => planting))];
  const crops = [...new Set(those.map(({ cropName }) => cropWords(cropName)))];
  return ids.length <= mostNames ? ids.join(", ") : `${ids.length} plantings (${crops.join(", ")})`;
}

interface Unsure {
  readonly planting: string;
  readonly cropName: string;
  readonly judgement: Extract<Judgement, { kind: "cannot-tell" }>;
}

/** Why it cannot be told whether the feed helps, and what would decide it, for all such plantings. */
export function cannotTellWords(those: readonly Unsure[]): string {
  const groups = grouped(those, ({ judgement }) => reasonsNotToTell(judgement));
  const parts = [...groups].map(([why, some]) => `For ${namesOf(some)}: ${why}`);
  return `Whether the feed helps cannot be told. ${parts.join(" ")}`;
}

function reasonsNotToTell({ why, decidedBy }: Unsure["judgement"]): string {
  return decidedBy === undefined ? `${whyNot[why]}.` : `${whyNot[why]}; ${decides[decidedBy]}.`;
}

/** `5 to 12.3 g`, or one figure where both are the same. */
export function gramsBetween(range: Range): string {
  return `${between(range)} g`;
}

/** Of calcium in a litre, or a gallon. */
function mgBetween({ low, high }: Range, amounts: Amounts): string {
  const mg = { low: calciumIn(amounts, low), high: calciumIn(amounts, high) };
  const [from, to] = [decimal(mg.low, 0), decimal(mg.high, 0)];
  return `${from === to ? from : `${from} to ${to}`} mg of it in a ${rateMeasures[amounts].waterWord}`;
}

/** `3 to 9 %` */
export function percentBetween(range: Range): string {
  return `${between(range)} %`;
}

/** Two figures are more than any of it is sure of. */
export function between({ low, high }: Range): string {
  const [from, to] = [twoFigures(low), twoFigures(high)];
  return from === to ? from : `${from} to ${to}`;
}

function twoFigures(value: number): string {
  return value >= 10 ? decimal(value, 0) : String(Number(value.toPrecision(2)));
}
