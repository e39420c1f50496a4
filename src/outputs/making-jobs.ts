/** What is to be done for the stock, and when. */
import type { Day } from "../dates.js";
import { totalStockText } from "../garden/index.js";
import type { Plan } from "../season-plan.js";
import { html, nameHtml, type Html } from "./html.js";
import { counted, fullDate, shortDate } from "./words.js";

export interface MakingJob {
  readonly day: Day;
  readonly words: Html;
}

/** By day: saving shells, the visits of each batch, bottles to open, stock to use up or throw away. */
export function makingJobs({ stock, garden }: Plan): readonly MakingJob[] {
  if (stock === undefined) return [];
  const { making } = stock;
  const amount = (ml: number) => totalStockText(ml, garden.amounts);
  const { saveFrom, eggs } = making.shells;
  const saving =
    saveFrom === undefined
      ? []
      : [{ day: saveFrom, words: html`Keep every eggshell from now on: ${eggs} are needed` }];
  const visits = making.batches.flatMap((batch) =>
    batch.steps.map(({ step, day }): MakingJob => {
      const id = nameHtml(batch.id);
      switch (step) {
        case "dry-shells":
          return {
            day,
            words: html`Boil ${counted(batch.eggs, "eggshell")} and set them out to dry, for ${id}`,
          };
        case "add-acid":
          return { day, words: html`Crush the shells and add the acid in an open vessel: ${id}` };
        case "strain":
          return {
            day,
            words: html`Strain and bottle ${id}: ${amount(batch.volumeMl)} in
            ${counted(batch.bottles, "bottle")}; label ${batch.bottles === 1 ? "it" : "them"}, use
            by ${fullDate(batch.useBy)}`,
          };
      }
    }),
  );
  const changes = making.changes
    .filter(({ from }) => from !== undefined)
    .map(({ day, to }) => ({ day, words: html`Open bottle ${nameHtml(to)}` }));
  const discards = making.discards.map(({ doOn, useUpBy, batch, ml }) => ({
    day: doOn,
    words:
      doOn > useUpBy
        ? html`Throw away what is left of ${nameHtml(batch)} (${amount(ml)}): its use-by day was
          ${shortDate(useUpBy)}`
        : html`Use up or throw away what is left of ${nameHtml(batch)} (${amount(ml)}), by
          ${shortDate(useUpBy)}`,
  }));
  return [...saving, ...visits, ...dedupedByDayAndWords(changes), ...discards].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : 0,
  );
}

/** Several feedings of one day may change to the same bottle. */
function dedupedByDayAndWords(jobs: readonly MakingJob[]): readonly MakingJob[] {
  return [...new Map(jobs.map((job) => [`${job.day} ${job.words.markup}`, job])).values()];
}
