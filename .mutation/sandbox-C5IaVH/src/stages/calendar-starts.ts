/** First days of stages by the calendar, moved by what was seen. */
// @ts-nocheck

import type { Crop } from "../crops/index.js";
import { addDays, type Day, daysBetween, earlier, later } from "../dates.js";
import { type Amounts, type Planting, shortDate } from "../garden/index.js";
import { given } from "../values.js";

export interface Start {
  readonly day: Day;
  /** Why it is not where the lengths put it. */
  readonly moved?: string;
}

/** Each stage seen begins when it was seen, and moves all that come after it as far. */
export function movedBySightings(
  planting: Planting,
  crop: Crop,
  computed: readonly Day[],
  amounts: Amounts = "metric",
): Start[] {
  let shiftDays = 0;
  let moved: string | undefined;
  // A stage that was seen lasts a day at least, however short the variety's life is reckoned.
  let earliest: Day | undefined;
  const starts = computed.map((day, i): Start => {
    const stage = crop.course.stages[i]?.stage;
    const sighting = planting.seen.find((seen) => seen.stage === stage);
    if (sighting) {
      shiftDays = daysBetween(day, sighting.on);
      earliest = addDays(sighting.on, 1);
      const seen = `seen on ${shortDate(sighting.on, amounts)}`;
      moved = `counted from ${sighting.stage} ${seen}`;
      return { day: sighting.on, moved: seen };
    }
    const shifted = addDays(day, shiftDays);
    return {
      day: earliest === undefined ? shifted : later(shifted, earliest),
      ...given({ moved }),
    };
  });
  // A stage seen early cuts short, or leaves out, the stages before it.
  for (let i = starts.length - 2; i >= 0; i--) {
    const [start, next] = [starts[i] as Start, starts[i + 1] as Start];
    starts[i] = { ...start, day: earlier(start.day, next.day) };
  }
  return starts;
}
