/** The published rounds, planting by planting and route by route. */
// @ts-nocheck

import { type Day, within } from "../dates.js";
import type { Garden, Planting, Route } from "../garden/index.js";
import type { Published, PublishedPour } from "../published/index.js";
import { grouped } from "../values.js";

export type CanPour = (batch: string, day: Day) => boolean;

/** One planting, one route. */
export interface PublishedLine {
  readonly planting: string;
  /** Absent where the garden file no longer has it. */
  readonly of?: Planting;
  readonly bed: string;
  readonly route: Route;
  /** By day. */
  readonly feedings: readonly LineFeeding[];
}

export interface LineFeeding {
  readonly day: Day;
  /** Its share of the cans it was in. */
  readonly waterL: number;
  readonly pours: readonly PublishedPour[];
  /** Names those cans: plantings that shared them have it alike. */
  readonly mix: string;
  /** What the garden file says of the day beside the log: why it was not given. */
  readonly prevented?: "away" | "removed" | "not-yet-planted" | "no-stock";
}

/**
 * Only rounds that were published by their day: what was never told did not happen by it.
 *
 * @param canPour whether a bottle could be poured from on a day
 */
export function publishedLines(
  published: Published,
  garden: Garden,
  canPour: CanPour = () => true,
): PublishedLine[] {
  const isThere = ({ batch, missing }: PublishedPour, day: Day): boolean =>
    missing === undefined && (batch === undefined || canPour(batch, day));

  const plantings = new Map(
    garden.beds.flatMap((bed) => bed.plantings.map((planting) => [planting.id, planting])),
  );
  const told = published.rounds
    .filter(({ day, first }) => first <= day)
    .flatMap(({ day, mixes }) =>
      mixes.flatMap(({ bed, route, fed, pours }, n) => {
        const mixL = fed.reduce((sum, { waterL }) => sum + waterL, 0);
        return fed.map(({ planting, waterL }) => ({
          planting,
          bed,
          route,
          day,
          waterL,
          mix: `${day}/${n}`,
          pours: pours.map((pour) => ({
            ...pour,
            ml: mixL === 0 ? pour.ml / fed.length : (pour.ml * waterL) / mixL,
          })),
        }));
      }),
    );
  return [...grouped(told, ({ planting, route }) => `${planting}/${route}`).values()].map(
    ([first, ...rest]) => {
      const { planting, bed, route } = first;
      const of = plantings.get(planting);
      return {
        planting,
        ...(of === undefined ? {} : { of }),
        bed: of?.bed ?? bed,
        route,
        feedings: [first, ...rest].map(({ day, waterL, pours, mix }) => {
          const hasStock = pours.length === 0 || pours.some((pour) => isThere(pour, day));
          const prevented = whatPrevented(garden, of, day) ?? (hasStock ? undefined : "no-stock");
          return { day, waterL, pours, mix, ...(prevented === undefined ? {} : { prevented }) };
        }),
      };
    },
  );
}

function whatPrevented(
  { feeding }: Garden,
  planting: Planting | undefined,
  day: Day,
): LineFeeding["prevented"] {
  if (feeding.away.some((span) => within(day, span))) return "away";
  if (planting?.removed !== undefined && planting.removed < day) return "removed";
  if (planting?.transplanted !== undefined && planting.transplanted > day) return "not-yet-planted";
  return undefined;
}
