/** A grower's own rules beside a good garden. */
import { readFileSync } from "node:fs";
import { planGarden } from "../../src/plan-garden.js";
import { readYaml } from "../../src/garden/index.js";
import { readRules } from "../../src/rules/index.js";
import { loadTables } from "../../src/tables.js";
import { gardenText, planted } from "../support/a-garden.js";
import { goodRules } from "../support/any-text.js";
import { aKind, type Hunting } from "./kind.js";
import { spoiltYaml, wordsOfGardens } from "./gardens.js";
import { mustBeRightProblems } from "./must-hold.js";
import { mustBeRightPlan } from "./season-holds.js";

interface RuleInput {
  readonly rules: string;
  readonly isPlanned: boolean;
}

const file = "own.yaml";
const examples = new URL("../../examples/orchard-rules.yaml", import.meta.url);
const schema = new URL("../../schemas/rules.schema.json", import.meta.url);

const garden = gardenText({
  ...planted({}, { id: "cukes", crop: "cucumber", plants: 2, water: "3 L" }),
  season: { from: "2027-05-01", to: "2027-08-31" },
  rules: file,
});

function begin(): Hunting<RuleInput> {
  const tables = loadTables();
  const others = [
    goodRules,
    goodRules.replace("my-tomatoes", "two"),
    readFileSync(examples, "utf8"),
  ];
  const quoted = readFileSync(schema, "utf8").matchAll(/"([^"\\]{1,40})"/g);
  const words = [...[...quoted].map(([, word]) => word ?? ""), ...wordsOfGardens()];
  return {
    make: (dice) => ({
      rules: spoiltYaml(dice.pick(others), dice, { words, others }),
      isPlanned: dice.chance(0.15),
    }),
    shown: ({ rules }) => rules,
    check: ({ rules, isPlanned }) => {
      const texts = { [file]: rules, "garden.yaml": garden };
      const source = readYaml(rules, file);
      const context = { units: tables.units, amounts: "metric" } as const;
      const read = source.ok ? readRules(source.value, tables, context, true) : source;
      if (!read.ok) {
        mustBeRightProblems(read.problems, texts);
        return "refused";
      }
      if (!isPlanned) return "accepted";
      const plan = planGarden(garden, tables, { today: "2027-05-01", ownRules: rules });
      if (!plan.ok) {
        mustBeRightProblems(plan.problems, texts);
        return "refused";
      }
      mustBeRightPlan(plan.value, rules);
      return "accepted";
    },
  };
}

export const ruleFiles = aKind({ name: "rules", share: 110, begin });
