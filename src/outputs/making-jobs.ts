/** What is to be done for the stock, and when. */
import type { Day } from "../dates.js";
import type { Plan } from "../season/index.js";
import { byText } from "../values.js";
import {
  keepShells,
  openBottle,
  stepCommand,
  throwAwayCommand,
  useUpJob,
  visitJob,
} from "../words/index.js";
import { html, type Html, nameHtml } from "./html.js";

export interface MakingJob {
  readonly day: Day;
  readonly words: Html;
  /** The line to type when it is done, where it is a step of a batch. */
  readonly command?: string;
}

/** By day: saving shells, the visits of each batch, bottles to open, stock to use up or throw away. */
export function makingJobs({ stock, garden, today }: Plan): readonly MakingJob[] {
  if (stock === undefined) return [];
  const { making } = stock;
  const { amounts } = garden;
  const { saveFrom: day, eggs } = making.shells;
  const saving = day === undefined ? [] : [{ day, words: html`${keepShells(eggs)}` }];
  const visits = making.batches.flatMap((batch) =>
    batch.steps.map(({ step, day }) => ({
      day,
      words: visitJob(html, step, batch, nameHtml(batch.id), stock, amounts),
      command: stepCommand(step, batch.id),
    })),
  );
  const changes = making.changes
    .filter(({ from }) => from !== undefined)
    .map(({ day, to }) => ({ day, words: openBottle(html, nameHtml(to)) }));
  const discards = making.discards.map((discard) => ({
    day: discard.useUpBy < today ? today : discard.doOn,
    words: useUpJob(html, discard, nameHtml(discard.batch), amounts, today),
    command: throwAwayCommand(discard.batch),
  }));
  // Several feedings of one day may change to the same bottle.
  const opened = new Map(changes.map((job) => [`${job.day} ${job.words.markup}`, job])).values();
  return [...saving, ...visits, ...opened, ...discards].sort((a, b) => byText(a.day, b.day));
}
