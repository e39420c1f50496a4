/** A planting that got another id keeps what was published of it. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { Garden } from "../garden/index.js";
import { grouped } from "../values.js";
import type { Published } from "./published.js";

export interface Renamed {
  readonly from: string;
  readonly to: string;
}

/**
 * Ids that vanished from the garden file while just one new id has the same bed and crop.
 *
 * @returns also the published state with the new ids in it
 */
export function withNewIds(
  published: Published,
  garden: Garden,
  today: Day,
): { published: Published; renamed: readonly Renamed[] } {
  const told = new Map(
    published.rounds.flatMap(({ day, mixes }) =>
      mixes.flatMap(({ bed, fed }) =>
        fed.map(
          ({ planting, crop }) => [planting, { id: planting, bed, crop, last: day }] as const,
        ),
      ),
    ),
  );
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  const present = new Set(plantings.map(({ id }) => id));
  const place = ({ bed, crop }: { bed: string; crop: string }): string => `${bed}/${crop}`;
  const vanished = grouped(
    [...told.values()].filter(({ id }) => !present.has(id)),
    place,
  );
  const fresh = grouped(
    plantings.filter(({ id }) => !told.has(id)),
    place,
  );
  const renamed = [...vanished].flatMap(([where, olds]): Renamed[] => {
    const news = fresh.get(where);
    // One that went before was not to be fed any more when the calendar was last written.
    const justGone = olds.filter(({ last }) => last >= today);
    const [old, ...others] = justGone.length > 0 ? justGone : olds;
    if (old === undefined || news === undefined || news.length + others.length > 1) return [];
    return [{ from: old.id, to: news[0].id }];
  });
  if (renamed.length === 0) return { published, renamed };
  const newId = new Map(renamed.map(({ from, to }) => [from, to]));
  const rounds = published.rounds.map((round) => ({
    ...round,
    mixes: round.mixes.map((mix) => ({
      ...mix,
      fed: mix.fed.map((one) => ({ ...one, planting: newId.get(one.planting) ?? one.planting })),
    })),
  }));
  return { published: { ...published, rounds }, renamed };
}
