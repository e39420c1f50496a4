/** The stock's own days: shells, acid, straining, using up. All day, for making has no hour. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, totalStockText } from "../garden/index.js";
import type { Plan, PlanGarden, StockJob } from "../season/index.js";
import {
  batchName,
  dayOfStep,
  type Discard,
  type MakingStep,
  makingSteps,
  type StockPlan,
  visitOf,
} from "../stock/index.js";
import { grouped } from "../values.js";
import {
  afterVisit,
  capital,
  jobTitle,
  keepShellsSummary,
  type Making,
  savingCaution,
  shellsTitle,
  shellsForBatch,
  useUpCaution,
  useUpInFull,
  visitSummary,
  writeStepDown,
  writeThrownAway,
} from "../words/index.js";
import { allDayReminders, type UnnamedEvent } from "./calendar-event.js";
import { warningLines } from "./told.js";

/**
 * Rows of events are named by the step, not by the batch, whose name moves with its day: so the step
 * of a batch that moves keeps its UID. Batches with the same step on a day share its event.
 */
export function makingEvents(plan: Plan): UnnamedEvent[] {
  // What is past was told on its day.
  return allMakingEvents(plan).filter(({ day }) => day >= plan.today);
}

function allMakingEvents({ garden, stock, today }: Plan): UnnamedEvent[] {
  if (stock === undefined) return [];
  const { amounts } = garden;
  const makings = stock.making.batches.flatMap((batch): Making[] => {
    const recipe = stock.recipes.find((r) => r.batch === batch.id);
    return recipe === undefined ? [] : [{ batch, recipe }];
  });
  return [
    ...savingShells(garden, stock.making, today),
    ...makingSteps.flatMap((step) =>
      [...grouped(makings, ({ batch }) => dayOfStep(batch, step))].map(([day, together]) => ({
        ...allDay(garden, "making", step, day),
        summary: visitTitle(step, day, together, amounts),
        description: [
          visitSummary(step, together, stock.acid, amounts),
          ...visitDescription(step, together, amounts),
        ],
      })),
    ),
    ...[...grouped(stock.making.discards, ({ doOn }) => doOn)].map(([day, together]) => ({
      ...allDay(garden, "use-up", "", day),
      summary: useUpTitle(day, together, amounts),
      description: [
        ...together.map((discard) => useUpInFull(discard, amounts)),
        ...together.map(({ batch }) => writeThrownAway(batch)),
        useUpCaution,
      ],
    })),
  ];
}

/** From when to keep shells, what for, and what their shortage costs; nothing where neither matters. */
function savingShells(
  garden: PlanGarden,
  { shells, batches, shortages }: StockPlan,
  today: Day,
): UnnamedEvent[] {
  const { shortage, saveFrom, eggs } = shells;
  if (saveFrom === undefined && shortage === undefined) return [];
  const lost = shortages.find(({ reason }) => reason === "shells");
  const day = saveFrom ?? shortage?.neededFrom ?? lost?.day ?? batches[0]?.startOn ?? today;
  return [
    {
      ...allDay(garden, "making", "save-shells", day),
      summary: shellsTitle(eggs, shortage?.missingShells, saveFrom !== undefined),
      description: [
        keepShellsSummary(eggs, shortage?.missingShells ?? 0, saveFrom),
        ...batches.map((batch) => `- ${shellsForBatch(batch, garden.amounts)}`),
        ...(shortage === undefined ? [] : warningLines(shortage)),
        savingCaution,
      ],
    },
  ];
}

function visitTitle(
  step: MakingStep,
  day: Day,
  [first, ...others]: readonly [Making, ...Making[]],
  amounts: Amounts,
): string {
  const job = ({ batch }: Making): StockJob => ({ kind: "visit", day, step, batch });
  return jobTitle([job(first), ...others.map(job)], amounts);
}

function useUpTitle(
  day: Day,
  [first, ...others]: readonly [Discard, ...Discard[]],
  amounts: Amounts,
): string {
  const job = (discard: Discard): StockJob => ({ kind: "use-up", day, discard });
  return jobTitle([job(first), ...others.map(job)], amounts);
}

/** The recipe's steps at a visit to each batch, what comes after, and what to mind. */
function visitDescription(
  visit: MakingStep,
  makings: readonly Making[],
  amounts: Amounts,
): readonly string[] {
  const stepsOf = ({ recipe }: Making) => recipe.steps.filter(({ key }) => visitOf[key] === visit);
  const cautions = makings.flatMap(stepsOf).flatMap((step) => step.cautions);
  return [
    ...makings.flatMap((making) => [
      `${capital(batchName(making.batch.id))} (${totalStockText(making.batch.volumeMl, amounts)}):`,
      ...stepsOf(making).map(({ text }) => `- ${text}`),
      `- ${afterVisit(visit, making.batch, amounts)}`,
      `- ${writeStepDown(visit, making.batch.id)}`,
      "",
    ]),
    ...[...new Set(cautions)].map((caution) => `Mind: ${caution}`),
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
