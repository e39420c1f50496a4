/** Water before anything is fed: how much, how evenly, and what it brings of calcium. */
// @ts-nocheck

import type { Amounts, Garden } from "../garden/index.js";
import type { Plan, PlanWatering } from "../season/index.js";
import { grouped } from "../values.js";
import { isLongDry } from "../watering/index.js";
import {
  bedsInWords,
  dryGapWords,
  seasonWater,
  shortfallWords,
  unknownWater,
  waterAgainstFeed,
} from "../words/index.js";
import type { Advice } from "./advice-type.js";

export function waterAdvice(garden: Garden, plan: Plan): Advice[] {
  const { watering = [], calcium } = plan;
  return [
    ...askWatering(garden, plan),
    ...dryGaps(watering, plan),
    ...fallsShort(watering, plan),
    ...leftOut(watering),
    ...waterBringsCalcium(calcium),
  ];
}

const anAmount: Readonly<Record<Amounts, string>> = {
  metric: "25 L per m2",
  imperial: "25 L per m2",
  us: "0.6 gal per ft2",
};

/** Once for the whole garden. */
function askWatering({ beds, amounts }: Garden, { plantings }: Plan): Advice[] {
  const isSilent = new Set(beds.filter((bed) => bed.watering === undefined).map(({ id }) => id));
  const fed = plantings.filter((one) => one.fed);
  const silent = fed.filter(({ bed }) => isSilent.has(bed));
  if (silent.length === 0) return [];
  const names = [...new Set(silent.map(({ bedName }) => bedName))];
  const where =
    silent.length === fed.length ? "the beds" : `the beds (${bedsInWords(names, beds.length)})`;
  return [
    {
      code: "ask-watering",
      plantings: silent.map(({ id }) => id),
      message: `write \`watering: auto\`, or an amount like \`watering: ${anAmount[amounts]}\`, on ${where}: the plan then tells the water of each week, the longest time without any, and what your water brings of calcium beside the feed`,
    },
  ];
}

/** Beds with the same gap in one line. */
function dryGaps(watering: readonly PlanWatering[], { plantings, garden }: Plan): Advice[] {
  const dry = watering.flatMap(({ bed, bedName, dryGap }) =>
    dryGap !== undefined && isLongDry(dryGap)
      ? [{ bed, bedName, text: dryGapWords(dryGap, garden.amounts) }]
      : [],
  );
  return [...grouped(dry, ({ text }) => text)].map(([text, beds]) => ({
    code: "dry-gap",
    plantings: plantings
      .filter(({ bed }) => beds.some((one) => one.bed === bed))
      .map(({ id }) => id),
    message: `${bedsInWords(
      beds.map(({ bedName }) => bedName),
      watering.length,
    )}: ${text}`,
  }));
}

/** An amount that lasts no week in summer is a choice; one of less than half may be a slip. */
function fallsShort(watering: readonly PlanWatering[], { plantings, garden }: Plan): Advice[] {
  return watering.flatMap(({ bed, bedName, shortfall }) =>
    shortfall === undefined
      ? []
      : [
          {
            code: "little-water",
            plantings: plantings.filter((one) => one.bed === bed).map(({ id }) => id),
            message: `${bedName}: ${shortfallWords(shortfall, garden.amounts)}`,
          },
        ],
  );
}

function leftOut(watering: readonly PlanWatering[]): Advice[] {
  const unknown = watering.flatMap((bed) => bed.unknown);
  return [...grouped(unknown, ({ why }) => why)].map(([why, those]) => {
    const plantings = those.map(({ planting }) => planting);
    return {
      code: "water-not-known",
      plantings,
      message: `water of ${unknownWater(plantings, why)}`,
    };
  });
}

/** Water that brings as much calcium as the feed makes the feed pointless. */
function waterBringsCalcium(calcium: Plan["calcium"]): Advice[] {
  const { known, waterG, feedG } = seasonWater(calcium);
  const compared = waterAgainstFeed(calcium);
  if (compared === undefined || waterG.low < feedG) return [];
  return [
    {
      code: "water-brings-calcium",
      plantings: known,
      message: `${compared}: even watering does more than the feed`,
    },
  ];
}
