/** Feedings of a plan against what really happened. */
// @ts-nocheck

import { addDays, type Day } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import type { Grower } from "./grower.js";
import {
  daysApart,
  feedingsTold,
  gapsOf,
  lineOf,
  plantingsOf,
  type ToldRound,
  type Truth,
} from "./truth.js";

interface Planned {
  readonly planting: string;
  readonly route: string;
  readonly day: Day;
  readonly isGiven: boolean;
}

export function plannedIn(plan: Plan): Planned[] {
  return plan.rounds.flatMap(({ day, beds }) =>
    beds.flatMap(({ mixes }) =>
      mixes.flatMap(({ route, feedings, given }) =>
        feedings.map(({ planting }) => ({ planting, route, day, isGiven: given === true })),
      ),
    ),
  );
}

/** No planting is fed again before its shortest gap from what really happened. */
export function tooSoon(grower: Grower, plan: Plan, truth: Truth, today: Day): string[] {
  const gapOf = gapsOf(plan, grower.garden);
  const settled = new Set(
    feedingsTold(grower.told)
      .filter(({ day }) => day === today)
      .map((feeding) => lineOf(feeding, feeding.route)),
  );
  const ahead = plannedIn(plan).filter(({ isGiven, day }) => !isGiven && day >= today);
  return ahead.flatMap(({ planting, route, day }) => {
    // Today's round was told before: it stays, whatever is written down of the days before it.
    if (day === today && settled.has(lineOf({ planting }, route))) return [];
    const before = [...truth.fed, ...ahead]
      .filter((one) => one.planting === planting && (one.route ?? route) === route)
      .filter((one) => one.day < day || ("pours" in one && one.day === day));
    const gap = gapOf(planting, route);
    const near = before.find((one) => daysApart(one.day, day) < gap);
    if (near === undefined) return [];
    return [`${planting}/${route} is fed on ${day}, less than ${gap} days after ${near.day}`];
  });
}

/** What was told for today stays, though the file is edited today. */
export function movedToday(
  toldBefore: readonly ToldRound[],
  plan: Plan,
  truth: Truth,
  today: Day,
): string[] {
  const planned = new Set(
    plannedIn(plan)
      .filter(({ day }) => day === today)
      .map((one) => lineOf(one, one.route)),
  );
  const isFed = (id: string): boolean =>
    plan.plantings.some((planting) => planting.id === id && planting.fed);
  const open = new Set(
    truth.silent.filter(({ day }) => day === today).map((f) => lineOf(f, f.route)),
  );
  return feedingsTold(toldBefore)
    .filter(({ day }) => day === today)
    .map((f) => ({ ...f, line: lineOf(f, f.route) }))
    .filter(({ line, planting }) => open.has(line) && isFed(planting) && !planned.has(line))
    .map(({ line }) => `${line} was told for today and is gone`);
}

/** What the program takes as past is what really happened. */
export function otherPast({ garden }: Grower, plan: Plan, truth: Truth, today: Day): string[] {
  const isFed = new Set(plan.plantings.filter(({ fed }) => fed).map(({ id }) => id));
  const isThere = new Set(plantingsOf(garden).map(({ id }) => id));
  const key = ({ planting, day }: { planting: string; day: Day }): string => `${planting} ${day}`;
  const really = new Set(truth.fed.filter(({ planting }) => isThere.has(planting)).map(key));
  const taken = new Set(
    plannedIn(plan)
      .filter(({ isGiven, day }) => isGiven || day < today)
      .map(key),
  );
  return [
    ...[...really]
      .filter((one) => !taken.has(one) && isFed.has(one.split(" ")[0] ?? ""))
      .map((one) => `fed, and the plan does not know: ${one}`),
    ...[...taken].filter((one) => !really.has(one)).map((one) => `never fed, but taken so: ${one}`),
  ];
}

/** A holiday that begins after a day leaves it as it is. */
export function awayOn({ garden }: Grower, day: Day): boolean {
  return (garden.feeding?.away ?? []).some(({ from, to }) => from <= day && day < addDays(to, 1));
}
