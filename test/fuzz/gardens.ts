/** Garden files: read, validated, planned, and all that is made of the plan. */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { addDays } from "../../src/dates.js";
import { decodeText } from "../../src/garden/index.js";
import { dayOfFile } from "../../src/log/index.js";
import { gardenOfText, planOfGarden } from "../../src/plan-garden.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import type { Dice } from "../live/player/dice.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeRightProblems, mustHold } from "./must-hold.js";
import { mustBeRightPages, mustBeRightPlan } from "./season-holds.js";
import { smallGardens } from "./small-gardens.js";
import { spoilBytes, spoilText, type Spices } from "./spoil-text.js";
import { spoiltJson } from "./spoil-value.js";

export interface GardenInput {
  readonly bytes: Uint8Array;
  readonly today: number;
  /** Planning is ten times the work of reading, the pages as much again. */
  readonly isPlanned: boolean;
  readonly isShown: boolean;
}

const schema = new URL("../../schemas/garden.schema.json", import.meta.url);

/** Words of the garden file's schema: its keys, its choices, the examples. */
export function wordsOfGardens(): string[] {
  const quoted = readFileSync(schema, "utf8").matchAll(/"([^"\\]{1,40})"/g);
  const words = [...quoted].map(([, word]) => word ?? "");
  return [...new Set([...words, "constructor", "__proto__", "toString", "null", "~", "yes", "<<"])];
}

/** Most by its text, some by its value, now and then nothing but noise. */
export function spoiltYaml(base: string, dice: Dice, spices: Spices): string {
  const way = dice.next();
  if (way < 0.75) return spoilText(base, dice, spices);
  if (way < 0.98) return spoiltJson(parsed(base), dice, parsed(dice.pick(spices.others)));
  const noise = Array.from({ length: dice.between(0, 60) }, () => dice.between(0, 0x24f));
  return String.fromCodePoint(...noise);
}

const values = new Map<string, unknown>();

function parsed(base: string): unknown {
  if (!values.has(base)) values.set(base, parse(base));
  return values.get(base);
}

/** Short ones more often: reading is most of the work, and its time goes with the length. */
function shorter(one: string, two: string): string {
  return one.length < two.length ? one : two;
}

async function begin(): Promise<Hunting<GardenInput>> {
  const tables = loadTables();
  const normals = await loadNormals();
  const others = smallGardens();
  const spices = { words: wordsOfGardens(), others };
  return {
    make: (dice) => ({
      bytes: spoilBytes(
        spoiltYaml(shorter(dice.pick(others), dice.pick(others)), dice, spices),
        dice,
      ),
      today: dice.between(-30, 200),
      isPlanned: dice.chance(0.08),
      isShown: dice.chance(0.2),
    }),
    shown: ({ bytes }) => bytes,
    check: ({ bytes, today, isPlanned, isShown }) => {
      const given = new TextDecoder().decode(bytes);
      const text = decodeText(bytes, "garden.yaml");
      const read = text.ok ? gardenOfText(text.value, "garden.yaml", tables) : text;
      if (!read.ok) {
        mustBeRightProblems(read.problems, { "garden.yaml": given });
        return "refused";
      }
      if (!isPlanned) return "accepted";
      const { garden } = read.value;
      const day = today < 0 ? dayOfFile(garden) : addDays(garden.season.from, today);
      const planned = (): ReturnType<typeof planOfGarden> =>
        planOfGarden(read.value, { normals }, tables, { today: day });
      const plan = planned();
      if (!plan.ok) {
        mustBeRightProblems(plan.problems, { "garden.yaml": given });
        return "refused";
      }
      mustBeRightPlan(plan.value, given);
      if (isShown) {
        mustHold(
          JSON.stringify(planned()) === JSON.stringify(plan),
          "a garden is planned in two ways",
        );
        mustBeRightPages(plan.value, given);
      }
      return "accepted";
    },
  };
}

export const gardens = aKind({ name: "gardens", share: 300, begin });
