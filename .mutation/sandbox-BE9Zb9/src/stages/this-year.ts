/** What was written of a perennial in an earlier year says nothing of this one. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { fullDate, type Planting } from "../garden/index.js";
import { given } from "../values.js";
import { plantingLife } from "./planting-life.js";
import type { Place } from "./place.js";
import { lifeSpan } from "./stage-span.js";

/**
 * The planting without the bloom, and the stages seen, of years that ended before the season, and
 * what was left out, in words for the grower. An annual lives once: all that was seen of it counts.
 */
export function ofThisYear(
  planting: Planting,
  crop: Crop,
  place: Place,
): { planting: Planting; assumptions: readonly string[] } {
  if (!crop.perennial) return { planting, assumptions: [] };
  const { bloom, seen, removed, ...bare } = planting;
  const isPast = (record: Pick<Planting, "bloom" | "seen">): boolean => {
    const span = lifeSpan(plantingLife({ ...bare, ...record }, crop, place).spans);
    return span !== undefined && span.to < place.season.from;
  };
  const pastBloom = bloom !== undefined && isPast({ bloom, seen: [] }) ? bloom : undefined;
  const pastSeen = seen.filter((sighting) => isPast({ seen: [sighting] }));
  const left = [
    ...(pastBloom === undefined ? [] : [`\`bloom: ${pastBloom}\``]),
    ...pastSeen.map(
      ({ stage, on }) => `${stage} seen on ${fullDate(on, place.amounts ?? "metric")}`,
    ),
  ];
  if (left.length === 0) return { planting, assumptions: [] };
  return {
    planting: {
      ...bare,
      ...given({ bloom: pastBloom === undefined ? bloom : undefined, removed }),
      seen: seen.filter((sighting) => !pastSeen.includes(sighting)),
    },
    assumptions: [
      `${planting.id}: ${left.join(", ")}: of an earlier year, so it says nothing of this season`,
    ],
  };
}
