/** What is to be done for the stock, and when, marked up. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Plan, stockJobs } from "../season/index.js";
import { given } from "../values.js";
import { jobCommand, jobInFull } from "../words/index.js";
import { batchHtml, html, type Html } from "./html.js";

export interface MakingJob {
  readonly day: Day;
  readonly words: Html;
  /** The line to type when it is done, where it is a step of a batch. */
  readonly command?: string;
}

export function makingJobs({ stock, ...plan }: Plan): readonly MakingJob[] {
  if (stock === undefined) return [];
  return stockJobs({ stock, ...plan }).map((job) => ({
    day: job.day,
    words: jobInFull(html, job, { stock, ...plan }, batchHtml),
    ...given({ command: jobCommand(job) }),
  }));
}
