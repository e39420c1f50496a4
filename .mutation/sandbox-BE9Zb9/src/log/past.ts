/**
 * The past: as published unless told otherwise. A published round whose day is past and of which the
 * log is silent was given as planned, amounts and bottles included; the log, and what the garden file
 * says of absences and plants, tell what differed.
 */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { FeedingCourse } from "../days/index.js";
import type { Garden, LogEntry, Planting, Route } from "../garden/index.js";
import type { Published, PublishedPour } from "../published/index.js";
import type { FedLine } from "../season/index.js";
import type { Taken } from "../stock/index.js";
import { given, grouped } from "../values.js";
import { claimedDays } from "./claims.js";
import { type GivenFeeding, isOpen } from "./given.js";
import { dayBefore } from "./records.js";
import {
  type CanPour,
  type LineFeeding,
  type PublishedLine,
  publishedLines,
} from "./published-lines.js";

export interface Past {
  /** Written down up to today, and published before today. */
  readonly given: readonly GivenFeeding[];
  /** Published for today and not written down yet: it stays today. */
  readonly todays: readonly { readonly planting: string; readonly route: Route }[];
  /** Published for a later day, and written down already. */
  readonly early: readonly FedLine[];
  /** Published up to today, and not given all the same. */
  readonly notGiven: readonly NotGiven[];
  /** Stock that left the bottles. */
  readonly taken: readonly Taken[];
  /** Published days before today of which the log says nothing. */
  readonly silentDays: readonly Day[];
}

export interface NotGiven {
  readonly planting: string;
  readonly bed: string;
  readonly route: Route;
  readonly day: Day;
  readonly why: "log" | NonNullable<LineFeeding["prevented"]>;
}

/**
 * @param published undefined for a garden whose calendar nobody keeps: then the log alone tells
 * @param canPour whether a bottle could be poured from on a day: a batch may have been begun later than
 *   it was told, or have broken before; any could unless given
 */
export function pastOf(
  garden: Garden,
  courses: readonly FeedingCourse[],
  published: Published | undefined,
  today: Day,
  canPour?: CanPour,
): Past {
  const entries = garden.log.filter((entry) => entry.feed === undefined && entry.on <= today);
  const lines = published === undefined ? [] : publishedLines(published, garden, canPour);
  const judged = lines.map((line) => judgedLine(line, entries, courses, today));
  const claims = grouped(
    judged.flatMap(({ claims: own }) => own),
    ({ entry }) => entry,
  );
  const written = entries
    .filter((entry) => entry.missed === undefined)
    .map((entry) => writtenDown(entry, claims.get(entry) ?? [], garden, courses));
  const silent = judged.flatMap((one) => one.silent);
  const isCounted = ({ day }: LineFeeding): boolean => day < today && garden.unlogged === "given";
  const counted = silent.filter(({ feeding }) => isCounted(feeding));
  // What an earlier season gave came out of bottles that may still be there, and that is all.
  const since = dayBefore(garden.season);
  const ofSeason = counted.filter(({ feeding }) => feeding.day >= since);
  return {
    given: [
      ...written.flatMap((one) => one.given).filter(({ day }) => day >= since),
      ...ofSeason.flatMap(({ line, feeding }) =>
        line.of === undefined
          ? []
          : feedingsOf(line, feeding, feeding.pours, { asPublished: true, mix: feeding.mix }),
      ),
    ],
    todays: silent
      .filter(({ line, feeding }) => feeding.day === today && line.of !== undefined)
      .map(({ line: { planting, route } }) => ({ planting, route })),
    early: judged.flatMap((one) => one.early),
    notGiven: judged.flatMap((one) => one.notGiven),
    taken: [
      ...written.flatMap((one) => one.taken),
      ...counted.flatMap(({ feeding: { day, pours } }) => takenBy(day, pours)),
    ],
    silentDays: [...new Set(ofSeason.map(({ feeding }) => feeding.day))].sort(),
  };
}

interface OnLine {
  readonly line: PublishedLine;
  readonly feeding: LineFeeding;
}

interface Claim extends OnLine {
  readonly entry: LogEntry;
  /** Another entry of that day has told the amount of this feeding. */
  readonly isFurther: boolean;
}

interface JudgedLine {
  readonly claims: readonly Claim[];
  readonly silent: readonly OnLine[];
  readonly early: readonly FedLine[];
  readonly notGiven: readonly NotGiven[];
}

/** Silence is judged for each planting and route by itself; what is said of a bed is said of all in it. */
function judgedLine(
  line: PublishedLine,
  entries: readonly LogEntry[],
  courses: readonly FeedingCourse[],
  today: Day,
): JudgedLine {
  const { planting, bed, route, feedings } = line;
  const own = entries.filter(
    (entry) =>
      (entry.route === undefined || entry.route === route) &&
      (entry.planting === undefined
        ? entry.bed === undefined || entry.bed === bed
        : entry.planting === planting),
  );
  const byDay = [...grouped(own, ({ on, round }) => `${on} ${round ?? ""}`).values()];
  const claimants = byDay.map((ofDay) => ({
    ...given({ round: ofDay[0].round }),
    on: ofDay[0].on,
    ofDay,
  }));
  const claimed = claimedDays(
    claimants,
    feedings.map(({ day }) => day),
    shortestGapDays(line, courses) / 2,
  );
  const tellers = new Map([...claimed].map(([claimant, day]) => [day, claimant.ofDay]));
  const notGiven = (day: Day, why: NotGiven["why"]): NotGiven[] => [
    { planting, bed, route, day, why },
  ];
  return {
    claims: feedings.flatMap((feeding) =>
      (tellers.get(feeding.day) ?? [])
        .filter(({ missed }) => missed === undefined)
        .map((entry, i) => ({ line, feeding, entry, isFurther: i > 0 })),
    ),
    silent: feedings
      .filter(({ day, prevented }) => day <= today && prevented === undefined && !tellers.has(day))
      .map((feeding) => ({ line, feeding })),
    early: feedings
      .filter(({ day }) => day > today && tellers.has(day))
      .map(({ day }) => ({ planting, route, day })),
    notGiven: feedings.flatMap(({ day, prevented }) => {
      const ofDay = tellers.get(day);
      if (ofDay?.every(({ missed }) => missed) === true) return notGiven(day, "log");
      return ofDay === undefined && prevented !== undefined && day <= today
        ? notGiven(day, prevented)
        : [];
    }),
  };
}

function shortestGapDays(
  { planting, route }: PublishedLine,
  courses: readonly FeedingCourse[],
): number {
  const gaps = courses
    .filter((course) => course.planting.id === planting && course.route === route)
    .flatMap(({ course }) => course.phases.map(({ shortestDays }) => shortestDays));
  return gaps.length === 0 ? 0 : Math.min(...gaps);
}

interface WrittenDown {
  readonly given: readonly GivenFeeding[];
  readonly taken: readonly Taken[];
}

/** An entry in the light of the published feedings it stands for; what it leaves out is as published. */
function writtenDown(
  entry: LogEntry,
  claims: readonly Claim[],
  garden: Garden,
  courses: readonly FeedingCourse[],
): WrittenDown {
  const { on, stockMl, batch, path } = entry;
  if (claims.length === 0) {
    const taken =
      stockMl === undefined ? [] : [{ day: on, ml: stockMl, ...given({ batch }), path }];
    return { given: unannounced(entry, garden, courses), taken };
  }
  const shares = sharesByWater(
    stockMl,
    claims.map(({ feeding }) => feeding.waterL),
  );
  const poured = claims.map(({ line, feeding, isFurther }, i) => {
    const pours = isFurther && stockMl === undefined ? [] : poursOf(feeding, shares?.[i], batch);
    const differs = {
      day: on,
      ...(feeding.day === on ? {} : { standsFor: feeding.day }),
      ...(stockMl === undefined ? { mix: feeding.mix } : {}),
    };
    return { pours, given: feedingsOf(line, feeding, pours, differs) };
  });
  const pours = poured.flatMap((one) => one.pours);
  return {
    given: poured.flatMap((one) => one.given),
    taken: [...grouped(pours, (pour) => pour.batch)].flatMap(([from, parts]) => {
      const ml = parts.reduce((sum, pour) => sum + pour.ml, 0);
      if (stockMl === undefined) return takenBy(on, [{ ...given({ batch: from }), ml }]);
      return [{ day: on, ...given({ batch: from }), ml, path }];
    }),
  };
}

/** Of the amount written down, or all that was published, from the bottle written down or those published. */
function poursOf(
  { pours }: LineFeeding,
  ml: number | undefined,
  batch: string | undefined,
): readonly PublishedPour[] {
  const publishedMl = pours.reduce((sum, pour) => sum + pour.ml, 0);
  const totalMl = ml ?? publishedMl;
  if (batch !== undefined || publishedMl === 0) return [{ ...given({ batch }), ml: totalMl }];
  return pours.map((pour) => ({ ...pour, ml: (pour.ml * totalMl) / publishedMl }));
}

function feedingsOf(
  { planting, route }: PublishedLine,
  { day, waterL }: LineFeeding,
  pours: readonly PublishedPour[],
  differs: Partial<GivenFeeding>,
): GivenFeeding[] {
  const feeding = { planting, route, day, waterL, ...differs };
  if (pours.length === 0) return [feeding];
  return pours.map(({ batch, ml }) => ({ ...feeding, stockMl: ml, ...given({ batch }) }));
}

function takenBy(day: Day, pours: readonly PublishedPour[]): Taken[] {
  return pours
    .filter(({ missing }) => missing === undefined)
    .map(({ batch, ml }) => ({ day, ml, ...given({ batch }) }));
}

/**
 * What stands for no published feeding is one more. An entry for a bed, or for the whole round, speaks
 * of the plantings there that were due to be fed around that day; when none was, of those that are fed
 * at some time, and else of all.
 */
function unannounced(
  entry: LogEntry,
  garden: Garden,
  courses: readonly FeedingCourse[],
): GivenFeeding[] {
  const plantings = plantingsOf(entry, garden, courses);
  const shares = sharesByWater(
    entry.stockMl,
    plantings.map(({ waterL }) => waterL),
  );
  return plantings.map((planting, i): GivenFeeding => ({
    planting: planting.id,
    day: entry.on,
    ...given({ stockMl: shares?.[i], batch: entry.batch, route: entry.route }),
  }));
}

/** Undefined where there is nothing to share, or nothing to share it by. */
function sharesByWater(
  stockMl: number | undefined,
  watersL: readonly number[],
): readonly number[] | undefined {
  const totalL = watersL.reduce((sum, waterL) => sum + waterL, 0);
  if (stockMl === undefined || totalL === 0) return undefined;
  return watersL.map((waterL) => (stockMl * waterL) / totalL);
}

function plantingsOf(
  entry: LogEntry,
  garden: Garden,
  courses: readonly FeedingCourse[],
): Planting[] {
  const all = garden.beds.flatMap((bed) => bed.plantings);
  if (entry.planting !== undefined) return all.filter((p) => p.id === entry.planting);
  const there = all.filter((p) => entry.bed === undefined || p.bed === entry.bed);
  const fed = (isMeant: (course: FeedingCourse) => boolean): Planting[] => {
    const ids = new Set(courses.filter(isMeant).map(({ planting }) => planting.id));
    return there.filter((p) => ids.has(p.id));
  };
  const choices = [fed((course) => isOpen(course, entry.on)), fed(() => true), there];
  return choices.find((plantings) => plantings.length > 0) ?? [];
}
