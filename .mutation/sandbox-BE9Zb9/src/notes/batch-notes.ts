/** What is told of batches that were published: what counts as done, and what is asked about. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, type BatchInHand, pouredText, shortDay } from "../garden/index.js";
import { mixesOf, type PlanWarning, type Round } from "../season/index.js";
import { batchName, type Standing, type StockPlan, type Taken } from "../stock/index.js";

/** Asked once for each bottle that is still poured from, and for each batch known by its day alone. */
export function takenAsMade(
  { taken, guessed }: Standing,
  { draws }: StockPlan,
  amounts: Amounts,
): string[] {
  const poured = new Set(draws.map(({ batch }) => batch));
  return [
    ...taken
      .filter(({ id }) => poured.has(id))
      .map(
        ({ id, made, volumeMl }) =>
          `${batchName(id)} was bottled on ${shortDay(made, amounts)} with ${pouredText(volumeMl, amounts)}, as published (\`feedround log\` with \`--batch ${id} --step made --volume\` and what it came to writes it down)`,
      ),
    ...guessed.map(
      ({ id, published }) =>
        `${batchName(id)} is the published ${batchName(published.id)}, which was to be bottled on ${shortDay(published.made, amounts)} (\`planned: ${published.id}\` in \`batches:\` says so for certain)`,
    ),
  ];
}

/** A batch under way that nothing needs any more is the grower's to stop or to keep. */
export function noLongerNeeded({ batches }: StockPlan, amounts: Amounts): PlanWarning[] {
  return batches
    .filter(({ underWay, serves }) => underWay && serves.length === 0)
    .map(({ id, readyOn }) => ({
      code: "batch-not-needed",
      message: `${batchName(id)} is under way, to be bottled on ${shortDay(readyOn, amounts)}, and no feeding needs it any more`,
      mend: `stop it (\`feedround log\` with \`--batch ${id} --step thrown-away\`), or keep it for beds that are not in the file`,
    }));
}

/** Rounds that could have come sooner wait until a batch can be bottled. */
export function waitsForStock(
  rounds: readonly Round[],
  until: Day | undefined,
  amounts: Amounts,
  today: Day,
): PlanWarning[] {
  if (until === undefined) return [];
  const waiting = mixesOf(rounds.filter(({ day }) => day >= until)).some(({ feedings }) =>
    feedings.some(({ window }) => window.earliest < until),
  );
  if (!waiting) return [];
  return [
    {
      code: "stock-waits",
      day: today,
      message: `no bottle holds enough before ${shortDay(until, amounts)}, when a batch can be bottled at the soonest: rounds wait for it`,
      mend: "begin it at once, or list a bottle in hand under stock",
    },
  ];
}

/** What counts as given came off a bottle unless it was measured since: without the day nobody knows. */
export function leftWithoutDay(
  batches: readonly BatchInHand[],
  taken: readonly Taken[],
): PlanWarning[] {
  return batches
    .filter(
      ({ id, leftMl, volumeMl, leftOn }) =>
        leftMl < volumeMl &&
        leftOn === undefined &&
        taken.some(({ batch, path }) => batch === id && path === undefined),
    )
    .map(({ id }) => ({
      code: "batch-left-when",
      message: `${batchName(id)} has \`left\` without \`left_on\`: published rounds that the log does not tell of come off none of it`,
      mend: "add `left_on` with the day on which you looked",
    }));
}
