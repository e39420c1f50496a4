/** Feedings of calcium and of other feeds as events: one a round, or one a bed. */
import { within } from "../dates.js";
import { type Amounts, routes } from "../garden/index.js";
import {
  type BedRound,
  isWrittenDown,
  type OtherFeedMix,
  type Plan,
  type PlanWatering,
  type Round,
  type SaidInLog,
} from "../season/index.js";
import { given, grouped } from "../values.js";
import {
  feedTitle,
  isShortOrLate,
  type NewBottle,
  otherFeedsTitle,
  roundOfWeek,
  routeNames,
} from "../words/index.js";
import { gardenUid, uidOf, type UnnamedEvent } from "./calendar-event.js";
import { descriptionOf } from "./description.js";
import type { Told } from "./told.js";

/** What one event is about: a round, or one bed of it. */
interface Trip {
  readonly round: Round;
  /** Bed of the event where it is one a bed. */
  readonly bed?: { readonly id: string; readonly name: string };
  readonly beds: readonly BedRound[];
  readonly feeds: readonly OtherFeedMix[];
}

export interface FeedingEvents {
  readonly events: readonly UnnamedEvent[];
  /** What no event of its day could tell. */
  readonly untold: readonly Told[];
}

/** Whether the events of a round are one, or one a bed. */
export type Grouping = (
  round: Pick<Round, "day" | "standsFor">,
) => Plan["garden"]["calendar"]["group"];

export function feedingEvents(plan: Plan, told: readonly Told[], groupOf: Grouping): FeedingEvents {
  const trips = plan.rounds.flatMap((round): Trip[] =>
    groupOf(round) === "bed"
      ? tripsByBed(round)
      : [{ round, beds: round.beds, feeds: round.feeds ?? [] }],
  );
  const byDay = grouped(told, ({ day }) => day);
  const said = new Set<Told>();
  const known = {
    nameOf: new Map(plan.plantings.map(({ id, name }) => [id, name])),
    wateringOf: new Map((plan.watering ?? []).map((one) => [one.bed, one])),
  };
  const events = trips.map((trip) => {
    const here = (byDay.get(trip.round.day) ?? []).filter(
      ({ bed, code }) =>
        trip.bed === undefined ||
        (bed === undefined
          ? !code.startsWith("stock-short-") || isShort(trip.beds)
          : bed === trip.bed.id),
    );
    for (const item of here) said.add(item);
    return tripEvent(plan, known, trip, here);
  });
  return { events, untold: told.filter((item) => !said.has(item)) };
}

function tripsByBed(round: Round): Trip[] {
  const feeds = round.feeds ?? [];
  const names = new Map([...round.beds, ...feeds].map(({ bed, bedName }) => [bed, bedName]));
  return [...names].map(([id, name]) => ({
    round,
    bed: { id, name },
    beds: round.beds.filter(({ bed }) => bed === id),
    feeds: feeds.filter(({ bed }) => bed === id),
  }));
}

/** Of the whole plan, by the ids of plantings and beds. */
interface Known {
  readonly nameOf: ReadonlyMap<string, string>;
  readonly wateringOf: ReadonlyMap<string, PlanWatering>;
}

function tripEvent(plan: Plan, known: Known, trip: Trip, told: readonly Told[]): UnnamedEvent {
  const { garden, stock } = plan;
  const { round, bed, beds, feeds } = trip;
  const { day, timeOfDay, standsFor } = round;
  const said = saidInLog(plan, trip);
  const happened = whatHappened(trip, said);
  const done = happened === "logged" && isWrittenDown(round);
  const newBottles = newBottlesOf(plan, trip);
  const used = new Set(beds.flatMap(({ mixes }) => mixes.map(({ route }) => route)));
  return {
    kind: beds.length > 0 ? "feeding" : "feed",
    line: bed?.id ?? "",
    day,
    ...(timeOfDay !== undefined && {
      time: { timeOfDay, timezone: garden.timezone, durationMin: garden.durationMin },
    }),
    summary: titleOf(trip, garden.amounts, done),
    description: descriptionOf(
      {
        ...{ beds, feeds, newBottles, water: waterOf(plan, known, trip) },
        ...{ told: told.flatMap(({ lines }) => lines), given: done },
      },
      {
        amounts: garden.amounts,
        nameOf: (planting) => known.nameOf.get(planting) ?? planting,
        ...given({ pour: stock?.pour }),
      },
    ),
    categories: [
      ...(beds.length > 0 ? ["Feeding"] : []),
      ...routes.filter((route) => used.has(route)).map((route) => routeNames[route].title),
      ...(feeds.length > 0 ? ["Other feed"] : []),
    ],
    color: garden.calendar.color,
    ...given({ happened, standsFor }),
    ...(happened === "logged" ? { logId: uidOf(JSON.stringify(said), gardenUid(garden.id)) } : {}),
    remindersMinBefore:
      happened === "as-published" || done ? [] : garden.calendar.remindersMinBefore,
  };
}

/** What the cans are of the week's water of each bed whose watering is told. */
function waterOf(
  { garden }: Plan,
  { wateringOf }: Known,
  { round, beds }: Trip,
): ReadonlyMap<string, string> {
  return new Map(
    beds.flatMap((bed) => {
      const told = wateringOf.get(bed.bed);
      const week = told?.weeks.find((one) => within(round.day, one));
      return told && week ? [[bed.bed, roundOfWeek(bed, told.by, week, garden.amounts)]] : [];
    }),
  );
}

/** What the log says of a trip: of the whole round, or of its bed. */
function saidInLog({ plantings }: Plan, { round: { log = [] }, bed }: Trip): readonly SaidInLog[] {
  if (log.length === 0) return [];
  const bedOf = new Map(plantings.map((planting) => [planting.id, planting.bed]));
  return log.filter((entry) => {
    const there = entry.bed ?? (entry.planting && bedOf.get(entry.planting));
    return bed === undefined || there === undefined || there === bed.id;
  });
}

/** A log entry that tells of a part of a trip tells of the trip. */
function whatHappened(
  { round, beds, feeds }: Trip,
  said: readonly SaidInLog[],
): UnnamedEvent["happened"] {
  if (said.length > 0) return "logged";
  const parts = [...beds.flatMap(({ mixes }) => mixes), ...feeds];
  if (round.asPublished || parts.every((part) => part.asPublished)) return "as-published";
  return round.given || parts.some((part) => part.given) ? "logged" : undefined;
}

function titleOf({ bed, beds, feeds }: Trip, amounts: Amounts, isGiven: boolean): string {
  const [mix, ...mixes] = beds.flatMap((one) => one.mixes);
  const [feed, ...others] = feeds;
  const facts = { given: isGiven, ...given({ bed: bed?.name }) };
  if (mix !== undefined) {
    const all = [mix, ...mixes] as const;
    const marked = isShortOrLate({ mixes: all, given: isGiven });
    return feedTitle(all, amounts, { ...facts, feeds: feed !== undefined, marked });
  }
  if (feed === undefined) throw new RangeError("a trip without a feed");
  return otherFeedsTitle([feed, ...others], amounts, facts);
}

function isShort(beds: readonly BedRound[]): boolean {
  return beds.some(({ mixes }) => mixes.some(({ shortMl }) => shortMl !== undefined));
}

/** Bottles that a trip is the first to pour from, where another was in use before. */
function newBottlesOf({ stock }: Plan, { round, beds }: Trip): NewBottle[] {
  const changes = stock?.making.changes ?? [];
  const pours = beds.flatMap(({ mixes }) => mixes.flatMap((mix) => mix.pours ?? []));
  const poured = new Set(pours.map(({ batch }) => batch));
  const bottles = changes
    .filter(({ day, from, to }) => day === round.day && from !== undefined && poured.has(to))
    .map(({ to, strengthGPerL, wasGPerL }): [string, NewBottle] => {
      return [to, { batch: to, strengthGPerL, ...given({ wasGPerL }) }];
    });
  return [...new Map(bottles).values()];
}
