/** Rounds that the forecast moved, and those that it would harm where they are. */
// @ts-nocheck

import type { Day } from "../dates.js";
import type { ThreatenedRound } from "../days/index.js";
import { type Amounts, type Garden, shortDay, vesselOf } from "../garden/index.js";
import type { ForecastHarm, Published } from "../published/index.js";
import type { PlanNote, PlanWarning } from "../season/index.js";
import { degreesText, rainText } from "../words/index.js";

/** Of rounds from today on. As it was told on the day they were moved: the forecast of today may be another. */
export function movedNotes({ rounds }: Published, amounts: Amounts, today: Day): PlanNote[] {
  return rounds.flatMap(({ day, moved }): PlanNote[] => {
    if (moved === undefined || day < today) return [];
    const { from, harm, part } = moved;
    const what = part ? "a part of this round is" : "this round is";
    const message = `${shortDay(day, amounts)}: ${what} moved from ${shortDay(from, amounts)}: ${expectedThen(harm, amounts)}`;
    return [{ code: "weather", day, message, advice: [] }];
  });
}

function expectedThen(harm: ForecastHarm, amounts: Amounts): string {
  const on = shortDay(harm.on, amounts);
  if (harm.kind === "rain") return `${rainText(harm.mm, amounts)} of rain was forecast for ${on}`;
  const [maxC, limitC] = [harm.maxC, harm.limitC].map((c) => degreesText(c, amounts));
  return `up to ${maxC} was expected on ${on}, and leaves may burn above ${limitC}`;
}

/** Once for each round and kind of harm. */
export function forecastWarnings(
  threatened: readonly ThreatenedRound[],
  { beds, amounts }: Garden,
): PlanWarning[] {
  const nameOf = new Map(beds.map(({ id, name }) => [id, name]));
  return threatened.map(({ day, harm, courses, all }): PlanWarning => {
    const names = new Set(courses.map(({ planting }) => nameOf.get(planting.bed)));
    const whose = courses.length === all.length ? "" : ` (${[...names].join(", ")})`;
    if (harm.kind === "heat") {
      const [maxC, limitC] = [harm.maxC, harm.limitC].map((c) => degreesText(c, amounts));
      return {
        code: "heat-forecast",
        day,
        message: `up to ${maxC} is expected on ${shortDay(day, amounts)}, the day of a round${whose}: leaves that are sprayed above ${limitC} may burn`,
        mend: "spray in the cool of the morning or the evening, or on another day and write that down",
      };
    }
    const isSprayed = courses.every(({ route }) => vesselOf(route) === "sprayer");
    const when =
      harm.on === day
        ? "the day of a round"
        : `the day after the round of ${shortDay(day, amounts)}`;
    return {
      code: "rain-forecast",
      day,
      message: `${rainText(harm.mm, amounts)} of rain is forecast for ${shortDay(harm.on, amounts)}, ${when}${whose}`,
      mend: `feed after the rain and write that down, or leave the round and expect some of it washed ${isSprayed ? "off" : "down"}`,
    };
  });
}
