/** The shells that a household has for batches: counted since they were to be kept, else as usual. */
// @ts-nocheck

import { addDays, type Day } from "../dates.js";
import { type Garden, shortDay, totalOf } from "../garden/index.js";
import type { Published } from "../published/index.js";
import {
  type planStock,
  type Recipe,
  shellsFor,
  shellsSinceLastBatch,
  type Standing,
} from "../stock/index.js";
import { given } from "../values.js";

/**
 * @param leadDays from setting shells out to dry to straining
 */
export function shellSupply(
  garden: Garden,
  usual: Recipe,
  gPerShell: number,
  leadDays: number,
  published: Published | undefined,
  standing: Standing,
  today: Day,
): { supply: Parameters<typeof planStock>[0]["shells"]; assumptions: string[] } {
  const { shellsPerWeek: perWeek, shellsInHand, batches } = garden.stock;
  const gPerL = (usual.shellG * 1000) / usual.makesMl;
  const keptFrom = published?.shells?.day;
  if (keptFrom !== undefined && keptFrom <= today) {
    // What was begun since the count began has taken its shells.
    const used = [
      ...batches.flatMap(({ shellsOut, made, volumeMl }) => ({
        startOn: shellsOut ?? addDays(made, -leadDays),
        volumeMl,
      })),
      ...standing.underWay,
    ].filter(({ startOn }) => startOn >= keptFrom);
    const { eggs } = shellsFor(totalOf(used.map(({ volumeMl }) => volumeMl)), { gPerShell, gPerL });
    const inHand = (shellsInHand ?? 0) - eggs;
    return {
      supply: { ...given({ perWeek }), inHand, keptFrom, gPerShell, gPerL },
      assumptions: [],
    };
  }
  const since = shellsSinceLastBatch(perWeek ?? 0, batches, leadDays, today);
  const isAssumed = perWeek !== undefined && shellsInHand === undefined;
  return {
    supply: { ...given({ perWeek }), inHand: shellsInHand ?? since, gPerShell, gPerL },
    assumptions: isAssumed
      ? [
          `${since} eggshells in hand on ${shortDay(today, garden.amounts)} (\`stock: { shells_in_hand: ... }\`)`,
        ]
      : [],
  };
}
