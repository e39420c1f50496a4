/** What a season asks for, in the order of days: rounds, and jobs for the stock. */
// @ts-nocheck

import { type Day } from "../dates.js";
import type { Discard, MakingStep, PlannedBatch } from "../stock/index.js";
import { byText, grouped } from "../values.js";
import type { Plan, Round } from "./season-plan.js";

/** Something to do for the stock on a day. */
export type StockJob =
  | { readonly kind: "save-shells"; readonly day: Day; readonly eggs: number }
  | {
      readonly kind: "visit";
      readonly day: Day;
      readonly step: MakingStep;
      readonly batch: PlannedBatch;
    }
  /** Of that batch, another having been in use before. */
  | { readonly kind: "open-bottle"; readonly day: Day; readonly batch: string }
  | { readonly kind: "use-up"; readonly day: Day; readonly discard: Discard };

export interface AgendaDay {
  readonly day: Day;
  readonly round?: Round;
  readonly jobs: readonly StockJob[];
}

/** By day; what should have been thrown away before today is a job of today. */
export function stockJobs({ stock, today }: Pick<Plan, "stock" | "today">): readonly StockJob[] {
  if (stock === undefined) return [];
  const { batches, changes, discards, shells } = stock.making;
  const saving: StockJob[] =
    shells.saveFrom === undefined
      ? []
      : [{ kind: "save-shells", day: shells.saveFrom, eggs: shells.eggs }];
  const visits = batches.flatMap((batch) =>
    batch.steps.map(({ step, day }): StockJob => ({ kind: "visit", day, step, batch })),
  );
  const openings = changes
    .filter(({ from }) => from !== undefined)
    .map(({ day, to }): StockJob => ({ kind: "open-bottle", day, batch: to }));
  // Several feedings of one day may change to the same bottle.
  const opened = [...grouped(openings, (job) => JSON.stringify(job)).values()].map(([job]) => job);
  const leftOver = discards.map((discard): StockJob => {
    const day = discard.useUpBy < today ? today : discard.doOn;
    return { kind: "use-up", day, discard };
  });
  return [...saving, ...visits, ...opened, ...leftOver].sort((a, b) => byText(a.day, b.day));
}

/** Every day on which there is something to do, by day. */
export function agendaOf(plan: Plan): readonly AgendaDay[] {
  const days = new Map<Day, AgendaDay>(
    plan.rounds.map((round) => [round.day, { day: round.day, round, jobs: [] }]),
  );
  for (const [day, jobs] of grouped(stockJobs(plan), (job) => job.day))
    days.set(day, { ...days.get(day), day, jobs });
  return [...days.values()].sort((a, b) => byText(a.day, b.day));
}
