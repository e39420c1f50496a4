/** Watering days, one event for all beds that are watered on it. */
// @ts-nocheck

import { within } from "../dates.js";
import type { Plan } from "../season/index.js";
import { grouped } from "../values.js";
import { bedWaterInFull, isLeftToPour, pouredL, wateringTitle } from "../words/index.js";
import type { UnnamedEvent } from "./calendar-event.js";

/** Other than that of feedings. */
const colors = ["steelblue", "teal"];

/** From today on: what is past was told on its day. Nothing where the garden does not wish for them. */
export function wateringEvents({ garden, watering = [], today }: Plan): UnnamedEvent[] {
  const { amounts, timezone, durationMin, calendar, watering: wishes } = garden;
  if (wishes === undefined) return [];
  const { timeOfDay, remindersMinBefore } = wishes;
  const parts = watering.flatMap(({ bedName, weeks, days }) =>
    days.flatMap(({ day, waterL }) => {
      const week = weeks.find((one) => within(day, one));
      return week !== undefined && isLeftToPour(week, amounts) && day >= today
        ? [{ day, bedName, week, waterL: pouredL(waterL, amounts) }]
        : [];
    }),
  );
  return [...grouped(parts, ({ day }) => day)].map(([day, beds]): UnnamedEvent => {
    const byAmount = [...beds].sort((a, b) => b.waterL - a.waterL);
    return {
      kind: "watering",
      line: "",
      day,
      ...(timeOfDay !== undefined && { time: { timeOfDay, timezone, durationMin } }),
      summary: wateringTitle(byAmount, amounts),
      description: byAmount.map((bed) => bedWaterInFull(bed, amounts)),
      categories: ["Watering"],
      color: colors.find((color) => color !== calendar.color) ?? "",
      remindersMinBefore,
    };
  });
}
