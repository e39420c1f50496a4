/** Earlier plans, `plan --json`, that a new one goes on from. */
import { publishedInPlan } from "../../src/cli/earlier-files.js";
import { addDays } from "../../src/dates.js";
import { planOfGarden } from "../../src/plan-garden.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import { type Kept, keptGardens } from "./calendars.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeRightProblems, mustHold } from "./must-hold.js";
import { mustBeRightPlan } from "./season-holds.js";
import { spoilText } from "./spoil-text.js";
import { spoiltJson } from "./spoil-value.js";

interface PlanInput {
  readonly kept: Kept;
  readonly text: string;
  readonly later: number;
  readonly isPlanned: boolean;
}

/** What of an earlier plan is looked at. */
function toldBy({ plan }: Kept): object {
  const { planVersion, garden, published } = plan;
  return { planVersion, garden: { id: garden.id }, published };
}

async function begin(): Promise<Hunting<PlanInput>> {
  const tables = loadTables();
  const normals = await loadNormals();
  const kept = keptGardens(25, tables, normals);
  const others = kept.map((one) => JSON.stringify(toldBy(one)));
  return {
    make: (dice) => {
      const one = dice.pick(kept);
      const plan = toldBy(one);
      const text = dice.chance(0.25)
        ? spoilText(JSON.stringify(plan), dice, {
            words: ["null", "true", "1e9", "rounds"],
            others,
          })
        : spoiltJson(plan, dice, toldBy(dice.pick(kept)));
      return { kept: one, text, later: dice.between(0, 150), isPlanned: dice.chance(0.15) };
    },
    shown: ({ text }) => text,
    check: ({ kept: { read, today }, text, later, isPlanned }) => {
      const told = publishedInPlan("plan.json", text, read.garden.id);
      if (told === undefined) return "refused";
      const texts = { "plan.json": text, "garden.yaml": read.source.text };
      if (!told.ok) {
        mustBeRightProblems(told.problems, texts);
        return "refused";
      }
      if (!isPlanned) return "accepted";
      const options = { today: addDays(today, later), published: told.value };
      const plan = planOfGarden(read, { normals }, tables, options);
      mustHold(plan.ok, "no plan goes on from what was published", plan);
      mustBeRightPlan(plan.value, text);
      return "accepted";
    },
  };
}

export const keptPlans = aKind({ name: "kept-plans", share: 60, begin });
