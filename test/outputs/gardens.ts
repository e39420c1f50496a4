/** Gardens of our own invention, from garden files to whole plans, stock and all. */
import { readFileSync } from "node:fs";
import { addDays, day, type Day } from "../../src/dates.js";
import { readYaml } from "../../src/garden/read.js";
import { validateGarden } from "../../src/garden/validate.js";
import { planGarden } from "../../src/plan-garden.js";
import { planSeason } from "../../src/plan.js";
import { problemLine } from "../../src/problem.js";
import type { Plan, Round } from "../../src/season/season-plan.js";
import { loadNormals, loadTables } from "../../src/tables.js";

export const weirCottage = `
version: 1
garden: Weir Cottage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
location: { latitude: 53.3, elevation: 20 m }
amounts: metric
can: 9 L
source_water: { hardness: 120 mg/L }
feeding: { days: [wed, sat], time: "18:30", away: [{ from: 2027-07-10, to: 2027-07-24 }] }
stock: { acid: citric, keep: fridge, bottles: 500 mL, shells_per_week: 10, batches: [{ id: B1, made: 2027-05-08, volume: 500 mL, left: 300 mL }] }
beds:
  - id: south
    name: South bed
    area: 4 m2
    plantings:
      - { id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20, water: 2 L per plant }
      - { id: lett, crop: lettuce, sown: 2027-04-01, water: 6 L }
      - { id: bas, crop: basil, sown: 2027-05-01, plants: 4 }
  - id: apple
    name: Apple tree
    plantings:
      - { id: app, crop: apple, plants: 1, days_to_harvest: 130 }
  - id: peppers
    name: Glasshouse
    plantings:
      - { id: pep, crop: pepper, plants: 8, transplanted: 2027-05-10, water: 1.5 L per plant }
`;

/** US measures; names that are long, run right to left, or are made of pictures and markup. */
export const oddNames = `
version: 1
garden: "<b>Bob & Sons'</b> \\u05d1\\u05d9\\u05ea home 🏡"
timezone: America/Denver
season: { from: 2027-04-01, to: 2027-10-15 }
amounts: us
can: 2 gal
feeding: { days: [sat] }
beds:
  - id: long
    name: The bed behind the old greenhouse where the big water butt used to stand before the storm took it away
    plantings:
      - { id: long-toms, name: "Grandmother's very old and very large yellow tomato whose seeds came in an envelope without a name", crop: tomato, plants: 7, transplanted: 2027-05-25, water: 0.5 gal per plant }
  - id: rtl
    name: حديقة الخضروات الجنوبية
    plantings:
      - { id: rtl-pep, name: פלפל אדום מתוק, crop: pepper, plants: 12, transplanted: 2027-05-25, water: 0.3 gal per plant }
  - id: emoji
    name: 🍅🍅🍅👩‍🌾
    plantings:
      - { id: emoji-apple, name: 🍏, crop: apple, plants: 1 }
  - id: hostile
    name: "<script>alert(1)</script>"
    plantings:
      - { id: nobreak, name: "x\\" onmouseover=\\"alert(1)\\" ${"unbroken".repeat(12)}", crop: celery, plants: 20, transplanted: 2027-05-20, water: 0.1 gal per plant }
`;

/** Nothing in it is ever fed. */
export const nothingFed = `
version: 1
garden: Bare ground
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 9 L
beds: [{ id: herbs, plantings: [{ id: bas, crop: basil, plants: 4, sown: 2027-05-01 }] }]
`;

/** Sixty beds, every other crop in turn. */
export function sixtyBeds(): string {
  const crops = ["tomato", "pepper", "lettuce", "celery", "basil", "eggplant"];
  const beds = Array.from({ length: 60 }, (_, i) => {
    const crop = crops[i % crops.length] ?? "";
    const month = i % 2 === 0 ? "05-15" : "06-01";
    return `  - { id: b${i + 1}, name: Bed ${i + 1}, plantings: [{ id: p${i + 1}, crop: ${crop}, plants: ${4 + (i % 9)}, transplanted: 2027-${month}, water: 1 L per plant }] }`;
  });
  return `version: 1
garden: Long Field
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 10 L
source_water: { hardness: 320 mg/L }
feeding: { days: [wed, sat] }
beds:
${beds.join("\n")}
`;
}

export function planOf(yaml: string, today = "2027-05-15"): Plan {
  const tables = loadTables();
  const source = readYaml(yaml, "garden.yaml");
  const garden = source.ok ? validateGarden(source.value, tables) : source;
  if (!garden.ok) throw new Error(garden.problems.map(problemLine).join("\n"));
  const plan = planSeason(
    garden.value,
    { ...tables, rules: tables.builtInRules },
    { today: day(today) },
  );
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return plan.value;
}

/** The example of a back garden, which tells all of its water and soil, by the climate of its place. */
export async function wateredBackGarden(): Promise<Plan> {
  const text = readFileSync(new URL("../../examples/back-garden.yaml", import.meta.url), "utf8");
  const plan = planGarden(text, loadTables(), {
    today: "2027-06-14",
    normals: await loadNormals(),
  });
  if (!plan.ok) throw new Error(plan.problems.map(problemLine).join("\n"));
  return plan.value;
}

/** The same plan as if the stock had not been planned. */
export function withoutStock(plan: Plan): Plan {
  const { stock, ...rest } = plan;
  return stock === undefined ? plan : rest;
}

/** The third round of a plan, as no day is the only right one, and two days before it. */
export function thirdRound({ rounds }: Plan): { round: Round; today: Day } {
  const round = rounds[2];
  if (round === undefined) throw new Error("no third round");
  return { round, today: addDays(round.day, -2) };
}
