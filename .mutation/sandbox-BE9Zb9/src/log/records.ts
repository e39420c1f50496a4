/** What the garden file has written down of its days: log, signs, bottles. */
// @ts-nocheck

import { addDays, type Day, type DaySpan, later } from "../dates.js";
import { type BatchBegun, type Garden, shortDay } from "../garden/index.js";
import type { Finding } from "../problem.js";
import type { Published } from "../published/index.js";
import type { PlanWarning } from "../season/index.js";
import { batchName } from "../stock/index.js";
import { didYouMean } from "../suggest.js";
import { given } from "../values.js";

/** A grower who logs anything at all keeps a log: what is not in it was not given. */
export function keepsLog(garden: Garden): boolean {
  return garden.log.some((entry) => entry.feed === undefined);
}

/** Stock is started well ahead of a season: common practice, no source. */
const leadDays = 60;

/**
 * The day that the file itself speaks of: for a calendar that is the same whenever it is made. The
 * latest day of anything in hand, given or seen, or else well before the season.
 */
export function dayOfFile(garden: Garden): Day {
  const told = [
    ...garden.log.map((entry) => entry.on),
    ...garden.signs.map((sign) => sign.on),
    ...garden.stock.batches.flatMap(({ made, leftOn, thrownAway }) => [
      made,
      leftOn ?? made,
      thrownAway ?? made,
    ]),
    ...garden.stock.begun.flatMap(({ shellsOut, acidIn }) =>
      [shellsOut ?? [], acidIn ?? []].flat(),
    ),
    ...garden.stock.dropped.map(({ on }) => on),
  ];
  return told.reduce(later, dayBefore(garden.season));
}

/** Well before a season. */
export function dayBefore(season: DaySpan): Day {
  return addDays(season.from, -leadDays);
}

/** The garden as its file would have stood on a day: without what was given, seen or made later. */
export function gardenOn(garden: Garden, day: Day): Garden {
  return {
    ...garden,
    stock: { ...garden.stock, ...batchesOn(garden.stock, day) },
    log: garden.log.filter(({ on }) => on <= day),
    signs: garden.signs.filter(({ on }) => on <= day),
  };
}

type Batches = Pick<Garden["stock"], "batches" | "begun" | "dropped">;

function batchesOn({ batches, begun, dropped }: Batches, day: Day): Batches {
  const upTo = (done: Day | undefined): Day | undefined =>
    done !== undefined && done <= day ? done : undefined;
  const underWay = [...batches.filter(({ made }) => made > day), ...begun].map(
    ({ id, planned, shellsOut, acidIn, volumeMl, acid, keep, path }): BatchBegun => ({
      id,
      ...given({ planned, shellsOut: upTo(shellsOut), acidIn: upTo(acidIn) }),
      ...{ volumeMl, acid, keep, path },
    }),
  );
  return {
    batches: batches
      .filter(({ made }) => made <= day)
      .map(({ leftOn, thrownAway, ...batch }) => ({
        ...batch,
        ...given({ leftOn: upTo(leftOn), thrownAway: upTo(thrownAway) }),
        ...(leftOn !== undefined && leftOn > day ? { leftMl: batch.volumeMl } : {}),
      })),
    begun: underWay.filter(({ shellsOut, acidIn }) => (shellsOut ?? acidIn) !== undefined),
    dropped: dropped.filter(({ on }) => on <= day),
  };
}

/** Bottles that the log pours from and that neither the file nor the calendar knows. */
export function unknownBatches(
  { amounts, log, season, stock }: Garden,
  published: Published | undefined,
): PlanWarning[] {
  const told = published?.batches ?? [];
  const dropped = new Set(stock.dropped.map(({ id }) => id));
  const known = [...stock.batches, ...stock.begun, ...told].map(({ id }) => id);
  const bottled = new Set(known.filter((id) => !dropped.has(id)));
  return log.flatMap(({ on, batch, bed, planting }) => {
    if (batch === undefined || bottled.has(batch)) return [];
    const isDropped = dropped.has(batch);
    const said = shortDay(on, amounts, season.from);
    return [
      {
        code: "batch-unknown",
        ...given({ planting, bed }),
        day: on,
        message: isDropped
          ? `the log of ${said} pours from ${batchName(batch)}, which was never bottled`
          : `the log of ${said} pours from ${batchName(batch)}, which is not listed; it is taken off no bottle`,
        mend: isDropped
          ? "correct `batch` there, or give its day with `made` under `stock: { batches: ... }`"
          : didYouMean(
              batch,
              bottled,
              "list it under `stock: { batches: ... }`, or correct `batch` there",
            ),
      },
    ];
  });
}

/** What cannot have been given or seen yet. */
export function futureRecords(garden: Garden, today: Day): Finding[] {
  const kinds = [
    { records: garden.log.filter(({ missed }) => !missed), code: "log-in-future", done: "given" },
    { records: garden.log.filter(({ missed }) => missed), code: "log-in-future", done: "missed" },
    { records: garden.signs, code: "sign-in-future", done: "seen" },
  ];
  return kinds.flatMap(({ records, code, done }) =>
    records
      .filter(({ on }) => on > today)
      .map(({ on, path }) => ({
        code,
        path: [...path, "on"],
        message: `${done} on ${on}, which is after today, ${today}`,
        mend: `give the day it was ${done}; what is to come is planned, not written down here`,
      })),
  );
}
