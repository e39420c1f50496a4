/** The second step of a plan: on which days each planting is fed. */
// @ts-nocheck

import { type FeedDays, keepingGaps, otherFeedDays } from "./cans/index.js";
import type { PlaceWeather } from "./climate/index.js";
import type { Day } from "./dates.js";
import {
  allowedDays,
  chooseDays,
  type FeedingCourse,
  feedingCourses,
  forecastHarm,
  holding,
  keepDays,
  movedByForecast,
  type Schedule,
  stretched,
  type ThreatenedRound,
  threatenedRounds,
  together,
} from "./days/index.js";
import type { Garden } from "./garden/index.js";
import {
  firstPublished,
  keepsLog,
  lessMissed,
  notToday,
  type Past,
  pastOf,
  reopened,
  resumed,
  settledToday,
  standingAsPlanned,
  standingAsTold,
  steadyFeedings,
} from "./log/index.js";
import type { NeedTables, PlantingNeed } from "./planting-needs.js";
import type { Published } from "./published/index.js";
import type { RoundMove } from "./season/index.js";
import type { Standing } from "./stock/index.js";

export interface FeedingDays {
  /** As they are from the garden alone, and as they go on from what was given. */
  readonly courses: readonly FeedingCourse[];
  readonly ahead: readonly FeedingCourse[];
  readonly past: Past;
  /** Days on which anything could be fed since the season was planned. */
  readonly couldFeed: readonly Day[];
  readonly schedule: Schedule;
  /** Rounds that the forecast moves, and those that stay on a day on which it would harm them. */
  readonly moves: readonly RoundMove[];
  readonly threatened: readonly ThreatenedRound[];
  readonly otherFeeds: FeedDays;
  /** As it would be without its moves; absent where it has none. */
  readonly stayed?: FeedingDays;
}

interface Known {
  readonly published: Published | undefined;
  readonly standing: Standing;
  readonly place: PlaceWeather | undefined;
  /** Above the fewest, to keep published days. */
  readonly extraRounds: number;
  readonly tables: NeedTables;
  /** On which there will be nothing to pour. */
  readonly dryDays: readonly Day[];
}

/**
 * What was published or written down is past, today's round is settled, the rest is chosen, and what
 * the forecast would harm moves.
 */
export function feedingDays(
  garden: Garden,
  needs: readonly PlantingNeed[],
  { published, standing, place, extraRounds, tables, dryDays }: Known,
  today: Day,
): FeedingDays {
  const isPastTold = published !== undefined || keepsLog(garden);
  const seasonDays = allowedDays(garden);
  const isDry = new Set(dryDays);
  const allowed = seasonDays.filter((day) => (!isPastTold || day >= today) && !isDry.has(day));
  const usual = needs.flatMap((n) => feedingCourses(n.planting, n.match.spans, garden.season));
  const past = pastOf(garden, usual, published, today, standing.canPour);
  const otherFeeds = otherFeedDays(garden, seasonDays, past.given, published, today);
  const apart = (those: readonly FeedingCourse[]): FeedingCourse[] =>
    keepingGaps(those, otherFeeds, allowed);
  const since = published && (firstPublished(published, garden.season) ?? today);
  const untoldTo = since ?? (isPastTold ? today : undefined);
  const standOn = isPastTold ? standingAsTold(past, untoldTo) : standingAsPlanned(apart, allowed);
  // What the garden file has stopped no sign opens again.
  const open = needs.filter(({ stoppedBy }) => stoppedBy === undefined);
  const courses = reopened(usual, open, standOn, garden.season);
  const moving = place && place.days.size > 0 ? needs.filter(({ life }) => life.isByWarmth) : [];
  const ids = moving.map(({ planting }) => planting.id);
  const steady = steadyFeedings(ids, published, past);
  const begun = notToday(apart(stretched(courses, steady, today)), past.notGiven, today);
  const owed = lessMissed(begun, { past, untoldTo, allowed, today });
  const ahead = resumed(owed, past.given);
  const settled = settledToday(ahead, past.todays, today);
  const held = holding(settled.after, steady, allowed, today);
  const problem = { allowedDays: allowed, courses: held.map(({ course }) => course) };
  const chosen = chooseDays(keepDays(problem, ahead, published, extraRounds, today));
  const harmOf = forecastHarm(garden.beds, place, tables);
  const terms = { harmOf, allowed, published, held: ids, today };
  const couldFeed = since === undefined ? allowed : seasonDays.filter((day) => day >= since);
  const daysWith = (days: Schedule, moves: readonly RoundMove[]): FeedingDays => {
    const schedule = together([settled.schedule, days]);
    const threatened = threatenedRounds(schedule, held, harmOf, today);
    return { courses, ahead, past, couldFeed, schedule, moves, threatened, otherFeeds };
  };
  const stayed = daysWith(chosen, []);
  const { schedule: moved, moves } = movedByForecast(chosen, held, terms);
  return moves.length === 0 ? stayed : { ...daysWith(moved, moves), stayed };
}
