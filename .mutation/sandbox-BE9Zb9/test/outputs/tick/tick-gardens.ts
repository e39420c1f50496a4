/** Sheets of gardens, and a view with ids that can be told from each other. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { day } from "../../../src/dates.js";
import type { TickView } from "../../../src/outputs/tick/tick-view.js";
import { gardenOfText, planGarden } from "../../../src/plan-garden.js";
import { problemLine } from "../../../src/problem.js";
import { loadNormals, loadTables } from "../../../src/tables.js";
import { tickSheet } from "../../../src/ticks/tick-sheet.js";
import type { TickSheet } from "../../../src/ticks/sheet.js";

export function exampleText(name: string): string {
  return readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), "utf8");
}

/** Nothing grows there. */
export const emptyGarden = `
version: 1
garden: Bare ground
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 9 L
beds: [{ id: herbs, plantings: [] }]
`;

export interface Ticking {
  readonly sheet: TickSheet;
  readonly view: TickView;
}

export async function tickingOn(
  today: string,
  text: string,
  differs: Partial<TickView> = {},
): Promise<Ticking> {
  const tables = loadTables();
  const read = gardenOfText(text, "garden.yaml", tables);
  const plan = planGarden(text, tables, { today, normals: await loadNormals() });
  if (!read.ok || !plan.ok)
    throw new Error((plan.ok ? [] : plan.problems).map(problemLine).join("\n"));
  const { garden } = read.value;
  let ids = 0;
  return {
    sheet: tickSheet(garden, plan.value, tables),
    view: {
      title: garden.name,
      address: "weir",
      timezone: garden.timezone,
      today: day(today),
      lately: [],
      newFormId: () => String(++ids).padStart(22, "0"),
      mayWorkOffline: true,
      problems: [],
      filePage: "weir/file",
      ...differs,
    },
  };
}
