/** What must hold of the plan of any garden, and of all that is made of it. */
import { calendarText } from "../../src/calendar/index.js";
import { gardenPage, labelRows, seasonSheet } from "../../src/outputs/index.js";
import type { Plan } from "../../src/season/index.js";
import { mustBeFit, mustHold } from "./must-hold.js";

/** @param given texts that it was made from, which it may quote */
export function mustBeRightPlan(plan: Plan, ...given: readonly string[]): void {
  const json = JSON.stringify(plan);
  const hole = /.{60}(?::null|\[null|NaN|Infinity).{20}/.exec(json)?.[0];
  if (hole !== undefined && !given.some((text) => /null|NaN|Infinity/.test(text)))
    mustHold(false, "a plan with holes", hole);
  mustSettle(plan, undefined);
}

/** A calendar over an earlier one, then over itself, where no byte changes any more. */
export function mustSettle(plan: Plan, previous: string | undefined, stamp?: string): void {
  const more = stamp === undefined ? {} : { stamp, today: plan.today };
  const first = calendarText(plan, { ...more, ...(previous === undefined ? {} : { previous }) });
  mustHold(first.ok, "no calendar of a plan", first);
  const second = calendarText(plan, { ...more, previous: first.value });
  mustHold(second.ok, "a calendar of ours is not read", second);
  mustHold(second.value === first.value, "a calendar does not settle", {
    differs: firstDifference(first.value, second.value),
  });
}

export function firstDifference(one: string, two: string): string {
  const [a, b] = [one.split("\n"), two.split("\n")];
  const at = a.findIndex((line, i) => line !== b[i]);
  return `line ${at + 1}: ${JSON.stringify(a[at])} became ${JSON.stringify(b[at])}`;
}

/** Sheet, labels and page: slower than the plan itself. */
export function mustBeRightPages(plan: Plan, ...given: readonly string[]): void {
  const pages = [
    seasonSheet(plan, { paper: "a4" }),
    gardenPage(plan, { today: plan.today }),
    JSON.stringify(labelRows(plan)),
  ];
  // Names stand between marks that keep their direction to themselves.
  for (const page of pages)
    mustBeFit(page.replace(/<(script|style)>.*?<\/\1>|[\u2068\u2069]/gs, ""), ...given);
}
