/** What several outputs ask of a plan. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Vessel, vesselOf } from "../garden/index.js";
import type { CanMix, Plan, Round } from "../season/index.js";
import { vesselsIn } from "../words/index.js";

/** The first round on or after the day that is not given yet; the first of all when no day is given. */
export function nextRound(plan: Plan, today?: Day): Round | undefined {
  return plan.rounds.find(
    ({ day, given }) => today === undefined || (day >= today && given !== true),
  );
}

export function mixesOf(round: Round): readonly CanMix[] {
  return round.beds.flatMap(({ mixes }) => mixes);
}

export function allMixes(plan: Plan): readonly CanMix[] {
  return plan.rounds.flatMap(mixesOf);
}

/** How often it is filled, part fills among them. */
export function fillCount(mixes: readonly CanMix[], vessel: Vessel): number {
  const those = mixes.filter(({ route }) => vesselOf(route) === vessel);
  return vesselsIn(those.flatMap(({ fills }) => fills));
}

/** Stock to bring from each bottle, in the order of pouring. */
export function stockByBatch(mixes: readonly CanMix[]): readonly [string, number][] {
  const ml = new Map<string, number>();
  for (const pour of mixes.flatMap((mix) => mix.pours ?? []))
    ml.set(pour.batch, (ml.get(pour.batch) ?? 0) + pour.ml);
  return [...ml];
}
