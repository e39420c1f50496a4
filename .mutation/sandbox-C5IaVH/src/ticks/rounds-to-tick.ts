/** Rounds that can be ticked, bed by bed. */
// @ts-nocheck

import { type Day, within } from "../dates.js";
import { type Amounts, type Garden, type NewLogEntry, vesselOf } from "../garden/index.js";
import { entriesOfDay, entriesOfPublished, isOpen } from "../log/index.js";
import type { CanMix, OtherFeedMix, Plan, Round } from "../season/index.js";
import { byText, given, grouped } from "../values.js";
import { capital, fillOfWater, missingStock, nameInText, stockInRow } from "../words/index.js";
import type { SaidOfRounds } from "./said-of-rounds.js";
import type { BedToTick, RoundToTick } from "./sheet.js";
import { standingOfRound } from "./standing.js";
import { feedAsBed, type TickedEntry } from "./tick.js";
import { daysToTick } from "./window.js";

interface BedOfDay {
  readonly day: Day;
  readonly bed: BedToTick;
  readonly isMissed?: true;
}

/** Of the last four weeks and the next two, and at the least the next one. */
export function roundsToTick(garden: Garden, plan: Plan, said: SaidOfRounds): RoundToTick[] {
  const shown = daysToTick(plan.today);
  const next = plan.rounds.find((round) => round.day >= plan.today && !isDone(round))?.day;
  const isShown = (day: Day): boolean => within(day, shown) || day === next;
  const told = plan.rounds
    .filter(({ day }) => isShown(day))
    .flatMap((round) => bedsOf(plan, round));
  const known = new Set(told.map(keyOf));
  const others = [...missedBeds(plan), ...silentBeds(garden, plan)].filter(
    (one) => isShown(one.day) && !known.has(keyOf(one)),
  );
  return [...grouped([...told, ...others], ({ day }) => day)]
    .sort(([a], [b]) => byText(a, b))
    .map(([day, those]) => {
      const beds = those.map(({ bed }) => bed);
      const standing = standingOfRound(garden, { day, beds: beds.map(({ bed }) => bed) }, said);
      return { ...standing, day, state: stateOf(those), beds };
    });
}

function keyOf({ day, bed }: BedOfDay): string {
  return `${day} ${bed.bed}`;
}

function isDone({ beds, feeds = [] }: Round): boolean {
  return [...beds.flatMap(({ mixes }) => mixes), ...feeds].every((mix) => !isOpen(mix));
}

function stateOf(beds: readonly BedOfDay[]): RoundToTick["state"] {
  const done = beds.filter(({ bed }) => bed.isDone);
  if (done.length === 0) return "open";
  if (done.length < beds.length) return "in part";
  return done.every(({ isMissed }) => isMissed) ? "missed" : "given";
}

/** The beds of a round under the day that each was told for, and the other feeds of its day. */
function bedsOf(plan: Plan, round: Round): BedOfDay[] {
  const bedOf = new Map(plan.plantings.map(({ id, bed }) => [id, bed]));
  const entries = grouped(entriesOfDay(plan, round.day), ({ planting }) =>
    bedOf.get(planting ?? ""),
  );
  const beds = round.beds.flatMap(({ bed, bedName, mixes }) =>
    [...grouped(mixes, ({ standsFor = round.day }) => standsFor)].map(([day, those]): BedOfDay => {
      const open = those.filter(isOpen);
      const toTick = open.length > 0 ? open : those;
      const isOver = open.length === 0;
      const own = isOver ? [] : (entries.get(bed) ?? []).map(withoutDay);
      const lines = toTick.flatMap((mix) => linesOf(mix, plan.garden.amounts));
      return { day, bed: { bed, name: bedName, isDone: isOver, lines, entries: own } };
    }),
  );
  const feeds = [...grouped(round.feeds ?? [], ({ feed }) => feed)].map(
    ([feed, those]): BedOfDay => {
      const isOver = !those.some(isOpen);
      const [bed, lines] = [feedAsBed(feed), those.flatMap(feedLines)];
      const entries = isOver ? [] : [{ feed }];
      return { day: round.day, bed: { bed, name: feed, isDone: isOver, lines, entries } };
    },
  );
  return [...beds, ...feeds];
}

function withoutDay({ planting, stock, batch, route }: NewLogEntry): TickedEntry {
  return given({ planting, stock, batch, route });
}

function linesOf({ fills, route, feedings, shortMl }: CanMix, amounts: Amounts): string[] {
  const names = feedings.map(({ name }) => nameInText(name)).join(", ");
  const lines = fills.map(
    (fill) => `${fillOfWater(fill, vesselOf(route))}: ${stockInRow(fill)}, for ${names}`,
  );
  return shortMl === undefined ? lines : [...lines, capital(missingStock(shortMl, amounts))];
}

function feedLines({ bedName, fills }: OtherFeedMix): string[] {
  return fills.map(
    (fill) => `${nameInText(bedName)}: ${fillOfWater(fill, "can")}: ${stockInRow(fill)}`,
  );
}

/** What the log says was not given. */
function missedBeds({ missed = [] }: Plan): BedOfDay[] {
  return missed
    .filter(({ why }) => why === "log")
    .map(({ day, bed, bedName }) => ({
      ...{ day, isMissed: true },
      bed: { bed, name: bedName, isDone: true, lines: [], entries: [] },
    }));
}

/** Rounds of which nobody said anything, in a garden whose silence counts as not given. */
function silentBeds({ unlogged, beds }: Garden, plan: Plan): BedOfDay[] {
  if (unlogged === "given") return [];
  const names = new Map(beds.map(({ id, name }) => [id, name]));
  const told = plan.published.rounds.filter(({ day, first }) => first <= day && day < plan.today);
  return told
    .filter(({ day }) => within(day, daysToTick(plan.today)))
    .flatMap((round) =>
      [...new Set(round.mixes.map(({ bed }) => bed))].map((bed): BedOfDay => ({
        day: round.day,
        bed: {
          ...{ bed, name: names.get(bed) ?? bed, isDone: false, lines: [] },
          entries: entriesOfPublished(plan, round, bed).map(withoutDay),
        },
      })),
    );
}
