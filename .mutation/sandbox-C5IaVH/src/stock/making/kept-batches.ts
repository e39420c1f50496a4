/** Published batches that are not begun yet: kept where they still do as well as new ones. */
// @ts-nocheck

import {
  type Day,
  dayFromNumber,
  dayNumber,
  daysBetween,
  type DaySpan,
  within,
} from "../../dates.js";
import type { PublishedBatch } from "../../published/index.js";
import type { WayOfMaking } from "../making-rules.js";
import type { BatchChoice } from "./batches-fewest.js";

/** What is made may be so much more than it need be before published batches are changed: our choice. */
const keptShare = 1.1;

/**
 * @param fresh the batches that would be chosen today
 * @returns the published ones as choices, where there are as many, each can still be made on its days,
 *   and little more is made; what they cover is for the caller to see
 */
export function publishedChoices(
  told: readonly PublishedBatch[],
  fresh: readonly BatchChoice[],
  away: readonly DaySpan[],
  making: WayOfMaking,
  today: Day,
): readonly BatchChoice[] | undefined {
  const volumeOf = (batches: readonly { readonly volumeMl: number }[]): number =>
    batches.reduce((sum, { volumeMl }) => sum + volumeMl, 0);
  const canBeMade = ({ shellsOut, acidIn, made, volumeMl }: PublishedBatch): boolean =>
    shellsOut >= today &&
    volumeMl <= making.largestMl &&
    daysBetween(shellsOut, acidIn) >= making.dryDays &&
    daysBetween(acidIn, made) >= making.reactionDays &&
    daysBetween(acidIn, made) <= making.longestStandDays &&
    ![shellsOut, acidIn, made].some((day) => away.some((span) => within(day, span)));
  const isAsGood =
    told.length === fresh.length &&
    told.every(canBeMade) &&
    volumeOf(told) <= volumeOf(fresh) * keptShare;
  return isAsGood ? told.map(choiceOf) : undefined;
}

function choiceOf({ shellsOut, acidIn, made, volumeMl }: PublishedBatch): BatchChoice {
  const slot = { start: dayNumber(shellsOut), acid: dayNumber(acidIn), ready: dayNumber(made) };
  return { slot, volumeMl };
}

/** Where the choice is a published one, its name; the others take over names in the order of their days. */
export function namesFor(
  choices: readonly BatchChoice[],
  told: readonly PublishedBatch[],
): readonly (PublishedBatch | undefined)[] {
  const open = [...told];
  const same = choices.map(({ slot }) => {
    const i = open.findIndex(({ made }) => made === dayFromNumber(slot.ready));
    return i === -1 ? undefined : open.splice(i, 1)[0];
  });
  return same.map((batch) => batch ?? open.shift());
}
