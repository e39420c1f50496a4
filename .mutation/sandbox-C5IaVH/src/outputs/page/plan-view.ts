/** The parts of a garden's page for a reader whose day is known, each to be put in by itself. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import { daysAway } from "../../garden/index.js";
import type { Plan } from "../../season/index.js";
import { bedLines, askedDays, nextAsks, noRound, stillAsks, todayAsks } from "../../words/index.js";
import { section } from "../document.js";
import { html, type Html } from "../html.js";
import { pictureDefs } from "../picture/index.js";
import { agendaSection } from "./agenda-section.js";
import { makingSection } from "./making-section.js";
import { nextSection } from "./next-section.js";
import { seasonSection } from "./season-section.js";
import {
  assumptionsSection,
  generalCautions,
  notesSection,
  warningsSection,
} from "./told-sections.js";
import { partsOf, type ViewPart } from "./view-part.js";
import { weekWater } from "./water-section.js";

export interface PlanView {
  /** What the day asks for, or the next day that asks for something. */
  readonly firstLine: string;
  readonly parts: readonly ViewPart[];
}

/** What a grower looks at while writing: the next round, the season, its days and its stock. */
export function planView(made: Plan, today: Day): PlanView {
  const plan = { ...made, today };
  const lines = bedLines(plan);
  return {
    firstLine: firstLine(plan),
    parts: partsOf({
      marks: html`<svg class="defs" width="0" height="0" aria-hidden="true">${pictureDefs()}</svg>`,
      unplanted: unplanted(plan),
      next: nextSection(plan, lines, today),
      weeks: weekWater(plan, today),
      warnings: warningsSection(plan),
      season: seasonSection(plan, { today }),
      rounds: agendaSection(plan, lines, today),
      making: makingSection(plan),
      notes: notesSection(plan),
      assumptions: assumptionsSection(plan),
      cautions: html`<section aria-label="Cautions">${generalCautions}</section>`,
    }),
  };
}

function firstLine(plan: Plan): string {
  const { garden, today } = plan;
  const [first] = askedDays(plan, today);
  if (today > garden.season.to)
    return first === undefined ? noRound(plan) : `${noRound(plan)}. ${stillAsks(first.asks)}`;
  if (first === undefined) return noRound(plan);
  if (first.day === today) return todayAsks(first.asks, today, garden.amounts);
  return `${nextAsks(first, garden.amounts, today)} (${daysAway(today, first.day)})`;
}

function unplanted(plan: Plan): Html | undefined {
  if (plan.plantings.length > 0) return undefined;
  return section(
    "unplanted",
    "Nothing to plan yet",
    html`<p>Give the beds plantings, each with its crop.</p>`,
  );
}
