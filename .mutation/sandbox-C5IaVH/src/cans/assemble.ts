/** Demands and the bottles they are poured from -> rounds with beds, cans and amounts. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Garden, totalOf } from "../garden/index.js";
import type { BedRound, CanMix, OtherFeedMix, Round, SaidInLog } from "../season/index.js";
import { given } from "../values.js";
import type { CanDemand } from "./demands.js";
import { fillsMl } from "./fills.js";
import type { Poured } from "./poured.js";

export type TapCalcium = Pick<CanMix, "tapCalciumMgPerL" | "tapCalciumAtMost">;

export function assembleRounds(
  garden: Garden,
  demands: readonly CanDemand[],
  pouredFor: (demand: CanDemand) => Poured,
  tapCalcium: TapCalcium,
  feeds: ReadonlyMap<Day, readonly OtherFeedMix[]>,
): Round[] {
  const days = new Set([...demands.map((demand) => demand.day), ...feeds.keys()]);
  return [...days].sort().map((day): Round => {
    const here = demands.filter((demand) => demand.day === day);
    const beds = garden.beds.flatMap((bed): BedRound[] => {
      const mixes = here
        .filter((d) => d.bed === bed.id)
        .map((d) => mixOf(d, pouredFor(d), tapCalcium));
      return mixes.length === 0 ? [] : [{ bed: bed.id, bedName: bed.name, mixes }];
    });
    const mixes = beds.flatMap((bed) => bed.mixes);
    const { timeOfDay } = garden.feeding;
    const others = feeds.get(day) ?? [];
    const shortMl = totalOf(mixes.map((mix) => mix.shortMl ?? 0));
    const isGiven = [...mixes, ...others].every((mix) => mix.given);
    const isSilent = mixes.length > 0 && mixes.every((mix) => mix.asPublished);
    const standsFor = mixes.find((mix) => mix.standsFor !== undefined)?.standsFor;
    return {
      day,
      ...given({ timeOfDay }),
      ...(isGiven ? { given: true as const } : {}),
      ...(isSilent ? { asPublished: true as const } : {}),
      ...given({ standsFor, log: saidOf(garden, day) }),
      beds,
      ...(others.length === 0 ? {} : { feeds: others }),
      waterL: totalOf(mixes.map((mix) => mix.waterL)),
      stockMl: totalOf(mixes.map((mix) => mix.stockMl)),
      ...(shortMl > 0 ? { shortMl } : {}),
    };
  });
}

function saidOf({ log }: Garden, day: Day): Round["log"] {
  const entries = log.filter(({ on, round }) => on === day || round === day);
  return entries.length === 0 ? undefined : entries.map((entry) => withoutPath(entry));
}

function withoutPath(entry: Garden["log"][number]): SaidInLog {
  const { on, missed, round, planting, bed, stockMl, batch, route, feed } = entry;
  return { on, ...given({ missed, round, planting, bed, stockMl, batch, route, feed }) };
}

function mixOf(
  { route, waterL, feedings, given: logged }: CanDemand,
  { rateMlPerL, fills, shortMl, pours, calciumMgPerL, clearCalciumMgPerL, can }: Poured,
  tapCalcium: TapCalcium,
): CanMix {
  return {
    route,
    rateMlPerL,
    feedings,
    waterL,
    exactStockMl: rateMlPerL * waterL,
    stockMl: logged?.stockMl ?? fillsMl(fills),
    ...given({ shortMl }),
    ...(logged === undefined ? {} : { given: true as const }),
    ...given({ asPublished: logged?.asPublished, standsFor: logged?.standsFor }),
    calciumMgPerL,
    ...tapCalcium,
    clearCalciumMgPerL,
    ...given({ can }),
    ...(pours.length === 0 ? {} : { pours }),
    fills,
  };
}
