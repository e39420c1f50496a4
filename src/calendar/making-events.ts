/** The stock's own days: shells, acid, straining, using up. All day, for making has no hour. */
import type { Day } from "../dates.js";
import type { Plan, PlanGarden } from "../season/index.js";
import { dayOfStep, makingSteps } from "../stock/index.js";
import {
  type Making,
  useUpCaution,
  useUpInFull,
  useUpSummary,
  visitSummary,
} from "../words/index.js";
import type { UnnamedEvent } from "./calendar-event.js";
import { visitDescription } from "./making-text.js";
import { savingText } from "./saving-text.js";

/**
 * Rows of events are named by the step, not by the batch, whose name moves with its day: so the step
 * of a batch that moves keeps its UID. Batches with the same step on a day share its event.
 */
export function makingEvents(plan: Plan): UnnamedEvent[] {
  const { garden, stock } = plan;
  if (stock === undefined) return [];
  const { batches, discards } = stock.making;
  const recipes = new Map(stock.recipes.map((recipe) => [recipe.batch, recipe]));
  const makings = batches.flatMap((batch): Making[] => {
    const recipe = recipes.get(batch.id);
    return recipe === undefined ? [] : [{ batch, recipe }];
  });
  const saving = savingText(stock.making, plan.today, garden.amounts);
  return [
    ...(saving === undefined
      ? []
      : [{ ...allDay(garden, "making", "save-shells", saving.day), ...saving.text }]),
    ...makingSteps.flatMap((step) =>
      groupedByDay(makings, ({ batch }) => dayOfStep(batch, step)).map(([day, together]) => ({
        ...allDay(garden, "making", step, day),
        summary: visitSummary(step, together, stock.acid, garden.amounts),
        description: visitDescription(step, together, garden.amounts),
      })),
    ),
    ...groupedByDay(discards, ({ doOn }) => doOn).map(([day, together]) => ({
      ...allDay(garden, "use-up", "", day),
      summary: useUpSummary(together, garden.amounts),
      description: [
        ...together.map((discard) => useUpInFull(discard, garden.amounts)),
        useUpCaution,
      ],
    })),
  ];
}

function allDay(
  garden: PlanGarden,
  kind: string,
  line: string,
  day: Day,
): Omit<UnnamedEvent, "summary" | "description"> {
  return {
    kind,
    line,
    day,
    categories: kind === "use-up" ? ["Making", "Use up"] : ["Making"],
    color: "peru",
    remindersMinBefore: allDayReminders(garden),
  };
}

/** 08:00 on the day. Common practice, no source. */
const usualReminderMinBefore = -8 * 60;

/** Reminders of a garden that feeds at a time of day count from that time, which all-day events lack. */
function allDayReminders({ timeOfDay, calendar }: PlanGarden): readonly number[] {
  const own = calendar.remindersMinBefore;
  return timeOfDay === undefined || own.length === 0 ? own : [usualReminderMinBefore];
}

function groupedByDay<T>(items: readonly T[], dayOf: (item: T) => Day): [Day, [T, ...T[]]][] {
  const groups = new Map<Day, [T, ...T[]]>();
  for (const item of items) {
    const day = dayOf(item);
    const group = groups.get(day);
    if (group) group.push(item);
    else groups.set(day, [item]);
  }
  return [...groups];
}
