/** What a season's water brings of calcium beside a season's feed. */
import type { Garden } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { seasonWater, seasonWaterWords } from "../words/index.js";
import type { Advice } from "./advice-type.js";

/** Water that brings as much calcium as the feed makes the feed pointless; where it is not known it is asked for. */
export function waterAdvice({ sourceWater, beds }: Garden, { calcium }: Plan): Advice[] {
  const { calciumMgPerL, hardnessMgPerL } = sourceWater ?? {};
  // Alkalinity alone says too little of the calcium to advise on.
  if (calciumMgPerL === undefined && hardnessMgPerL === undefined) return [];
  const water = seasonWater(calcium);
  const { known, waterG, feedG } = water;
  const isSilent = new Set(
    beds
      .filter(({ watering }) => watering === undefined)
      .flatMap(({ plantings }) => plantings.map(({ id }) => id)),
  );
  const asked = water.unknown.filter((id) => isSilent.has(id));
  return [
    ...(known.length > 0 && waterG.low >= feedG
      ? [
          {
            code: "water-brings-calcium",
            plantings: known,
            message: `in the season ${seasonWaterWords(water)}: even watering does more than the feed`,
          },
        ]
      : []),
    ...(asked.length > 0
      ? [
          {
            code: "ask-watering",
            plantings: asked,
            message: `${asked.join(", ")}: write \`watering: auto\`, or an amount like \`watering: 25 L per m2\`, on the bed, to see what your water brings of calcium beside the feed`,
          },
        ]
      : []),
  ];
}
