/** What the garden file has written down of its days: log, signs, bottles. */
import { addDays, type Day, type DaySpan, later } from "../dates.js";
import type { Garden } from "../garden/index.js";
import type { Finding } from "../problem.js";

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
    ...garden.stock.batches.flatMap(({ made, leftOn }) => [made, leftOn ?? made]),
  ];
  return told.reduce(later, dayBefore(garden.season));
}

/** Well before a season. */
export function dayBefore(season: DaySpan): Day {
  return addDays(season.from, -leadDays);
}

/** The garden as its file would have stood on a day: without what was given, seen or made later. */
export function gardenOn(garden: Garden, day: Day): Garden {
  const batches = garden.stock.batches
    .filter(({ made }) => made <= day)
    .map(({ leftOn, ...batch }) =>
      leftOn === undefined
        ? batch
        : leftOn <= day
          ? { ...batch, leftOn }
          : { ...batch, leftMl: batch.volumeMl },
    );
  return {
    ...garden,
    stock: { ...garden.stock, batches },
    log: garden.log.filter(({ on }) => on <= day),
    signs: garden.signs.filter(({ on }) => on <= day),
  };
}

/** What cannot have been given or seen yet. */
export function futureRecords(garden: Garden, today: Day): Finding[] {
  const kinds = [
    { records: garden.log, code: "log-in-future", done: "given" },
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
