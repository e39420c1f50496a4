/** The starting file, with what the core finds wrong beside the answers that it comes from. */
// @ts-nocheck

import { gardenOfText } from "../plan-garden.js";
import { loadTables } from "../tables.js";
import type { Day } from "../dates.js";
import { type Answers, type Field, startingGarden } from "./starting-garden.js";

export interface Started {
  readonly text: string;
  readonly problems: readonly { readonly field: Field; readonly told: string }[];
}

export function checkedStart(answers: Answers, today: Day): Started {
  const tables = loadTables();
  const { text, fields } = startingGarden(answers, today, tables.zoneHalves);
  const read = gardenOfText(text, "garden.yaml", tables);
  if (read.ok) return { text, problems: [] };
  return {
    text,
    problems: read.problems.map(({ at, message, mend }) => ({
      field: fields[at.line - 1] ?? "crops",
      told: `${message}: ${mend}`,
    })),
  };
}
