/** What is to be done for the stock, and when. */
import type { Day } from "../dates.js";
import { counted, decimal, gramsText, totalStockText } from "../garden/index.js";
import type { Plan, SeasonStock } from "../season/index.js";
import type { PlannedBatch } from "../stock/index.js";
import { figures, fullDate, shortDate } from "../words/index.js";
import { html, type Html, nameHtml } from "./html.js";

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
          return { day, words: html`${mixingWords(stock, batch)}: ${id}` };
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

/** Amounts as they are weighed and poured, where the recipe is known. */
function mixingWords({ recipes }: SeasonStock, { id, shellG }: PlannedBatch): string {
  const recipe = recipes.find(({ batch }) => batch === id);
  if (recipe === undefined) return "Crush the shells and add the acid in an open vessel";
  const { acidG, vinegarMl, waterMl, vesselL } = recipe;
  const liquid =
    vinegarMl === undefined
      ? `${gramsText(acidG ?? 0)} of citric acid in ${decimal(waterMl, 0)} mL of water`
      : `${decimal(vinegarMl, 0)} mL of vinegar`;
  return `Crush the shells; stir ${gramsText(shellG)} of them bit by bit into ${liquid}, in an open vessel of ${figures(vesselL)} L at the least`;
}
