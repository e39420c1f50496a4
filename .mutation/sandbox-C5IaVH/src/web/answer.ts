/** What the worker answers: all of it from the pure core. */
// @ts-nocheck

import { knownZone, todayAt } from "../garden/index.js";
import { planView } from "../outputs/index.js";
import type { Answered, Ask } from "./messages.js";
import { planned } from "./planned.js";

export async function answerTo({ writing, wish }: Ask): Promise<Answered> {
  if (wish.kind === "start") {
    const { checkedStart } = await import("./checked-start.js");
    const today = todayAt(writing.nowMs, knownZone(wish.answers.timezone) ?? "UTC");
    return { kind: "started", started: checkedStart(wish.answers, today) };
  }
  // As a command that writes a calendar where there is none yet.
  const isForCalendar = wish.kind === "make" && wish.what.kind === "calendar";
  const made = await planned(isForCalendar ? { calendar: "", ...writing } : writing);
  if (!made.ok) return { kind: "problems", problems: made.problems };
  const { garden, plan, wanted } = made.value;
  if (wish.kind === "make") {
    const { makeOf } = await import("./make.js");
    return makeOf(wish.what, made.value, writing);
  }
  const reasons = wish.withReasons
    ? (await import("./reasons.js")).reasonsView(plan, plan.today)
    : [];
  const view = planView(plan, plan.today);
  return { kind: "plan", view, reasons, wanted, garden: garden.name };
}
