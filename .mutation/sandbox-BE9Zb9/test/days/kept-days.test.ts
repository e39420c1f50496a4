/** Published days, given to the next plan to keep. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { parse, stringify } from "yaml";
import { readFileSync } from "node:fs";
import { daysTold } from "../../src/calendar/earlier-calendar.js";
import { addDays, type Day } from "../../src/dates.js";
import { planGarden } from "../../src/plan-garden.js";
import type { Published } from "../../src/published/published.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { daysFed } from "../support/a-garden.js";
import { earlierOf, textOf } from "../support/calendars.js";

interface Edited {
  readonly feeding: { days?: string[] };
  readonly beds: { readonly plantings: { id: string; transplanted?: string }[] }[];
}
const text = readFileSync(new URL("../../examples/back-garden.yaml", import.meta.url), "utf8");
const tables = loadTables();

function planOf(edit: (garden: Edited) => void, published?: Published): Plan {
  const garden = parse(text) as Edited;
  edit(garden);
  const options = { today: "2027-03-01", ...(published === undefined ? {} : { published }) };
  const plan = planGarden(stringify(garden), tables, options);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.value;
}

const anyDay = (garden: Edited): void => {
  garden.feeding.days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
};
/** Sets one planting out later. */
const later =
  (id: string, days: number) =>
  (garden: Edited): void => {
    anyDay(garden);
    for (const planting of garden.beds.flatMap((bed) => bed.plantings))
      if (planting.id === id && planting.transplanted !== undefined)
        planting.transplanted = addDays(planting.transplanted as Day, days);
  };

describe("an earlier plan kept", () => {
  const before = planOf(anyDay);
  const fed = before.plantings.filter((p) => p.fed).map((p) => p.id);
  const othersMoved = (plan: Plan, changed: string): string[] =>
    fed.filter((id) => id !== changed && daysFed(plan, id).join() !== daysFed(before, id).join());

  test("one planting set out two weeks sooner moves feedings of others, unless their days are kept", () => {
    const sooner = later("cukes", -14);
    expect(othersMoved(planOf(sooner), "cukes")).not.toEqual([]);
    const kept = planOf(sooner, before.published);
    expect(othersMoved(kept, "cukes")).toEqual([]);
    expect(daysFed(kept, "cukes")).not.toEqual(daysFed(before, "cukes"));
  });

  test("costs no round, and over many edits keeps far more feedings than planning afresh", () => {
    let [afresh, keeping] = [0, 0];
    for (const id of fed)
      for (const days of [-7, 9]) {
        const free = planOf(later(id, days));
        const kept = planOf(later(id, days), before.published);
        expect(kept.totals.rounds, `${id} ${days}`).toBe(free.totals.rounds);
        // Fewer rounds than before are worth moving others for.
        if (free.totals.rounds < before.totals.rounds) continue;
        afresh += othersMoved(free, id).length;
        keeping += othersMoved(kept, id).length;
      }
    expect(keeping).toBeLessThan(afresh / 4);
  });

  test("changes nothing where nothing has changed", () => {
    expect(planOf(anyDay, before.published).rounds).toEqual(before.rounds);
  });

  test("of a calendar its days alone", () => {
    const told = daysTold(earlierOf(textOf(before)));
    expect(told.rounds.map(({ day }) => day)).toEqual(before.rounds.map(({ day }) => day));
    const kept = planOf(later("cukes", -14), told);
    expect(othersMoved(kept, "cukes")).toEqual([]);
  });
});
