/** Gardens on a day in the middle of their season. */
// @ts-nocheck

import { planGarden, type PlanGardenOptions } from "../../src/plan-garden.js";
import { type Problem, problemLine } from "../../src/problem.js";
import type { CanMix, Feeding, Plan, Round } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import {
  type GardenDiffers,
  gardenText,
  planted,
  type PlantingDiffers,
} from "../support/a-garden.js";

type More = Pick<PlanGardenOptions, "published" | "extraRounds" | "ownRules" | "normals">;

/** Tomatoes that are fed from the middle of June to the middle of August, every 10 to 18 days. */
export function growing(...plantings: readonly PlantingDiffers[]): Pick<GardenDiffers, "beds"> {
  return planted(
    ...plantings.map((p) => ({ transplanted: "2027-04-10", days_to_harvest: 140, ...p })),
  );
}

export function planOn(today: string, differs: GardenDiffers = {}, more: More = {}): Plan {
  const plan = planGarden(textOf(differs), loadTables(), { today, ...more });
  if (!plan.ok) throw new Error(plan.problems.map(problemLine).join("\n"));
  return plan.value;
}

export function problemsOn(today: string, differs: GardenDiffers): readonly Problem[] {
  const plan = planGarden(textOf(differs), loadTables(), { today });
  if (plan.ok) throw new Error("the garden has no problems");
  return plan.problems;
}

function textOf(differs: GardenDiffers): string {
  return gardenText({ ...growing({}), ...differs });
}

export interface Fed {
  readonly day: string;
  readonly feeding: Feeding;
  readonly mix: CanMix;
  readonly round: Round;
}

export function fedOf(plan: Plan, planting = "toms"): Fed[] {
  return plan.rounds.flatMap((round) =>
    round.beds.flatMap((bed) =>
      bed.mixes.flatMap((mix) =>
        mix.feedings
          .filter((feeding) => feeding.planting === planting)
          .map((feeding) => ({ day: round.day, feeding, mix, round })),
      ),
    ),
  );
}

export function givenDays(plan: Plan, planting = "toms"): string[] {
  return fedOf(plan, planting)
    .filter(({ mix }) => mix.given)
    .map(({ day }) => day);
}

export function aheadDays(plan: Plan, planting = "toms"): string[] {
  return fedOf(plan, planting)
    .filter(({ mix }) => !mix.given)
    .map(({ day }) => day);
}

export function intervalOf(plan: Plan, planting = "toms"): Plan["rules"][number]["interval"] {
  const id = plan.plantings.find((p) => p.id === planting)?.rules[0];
  const rule = plan.rules.find((r) => r.id === id);
  if (rule === undefined) throw new Error(`no rule feeds ${planting}`);
  return rule.interval;
}
