/** Gardens of our own invention, from garden files to whole plans, stock and all. */
import { addDays, day, earlier, type Day } from "../../src/dates.js";
import { readYaml, validateGarden, type Garden } from "../../src/garden/index.js";
import type { BottleInHand } from "../../src/outputs/index.js";
import { planSeason } from "../../src/plan.js";
import { problemLine } from "../../src/problem.js";
import type { CanMix, Plan, Pour } from "../../src/season-plan.js";
import { planStock } from "../../src/stock/batches.js";
import type { MakingProblem } from "../../src/stock/making-problem.js";
import { loadTables } from "../../src/tables.js";

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
stock: { acid: citric, keep: fridge, bottles: 500 mL, shells_per_week: 10 }
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
garden: "<b>Bob & Sons'</b> \\u202ehome 🏡"
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

export function planOf(yaml: string): Plan {
  const tables = loadTables();
  const source = readYaml(yaml, "garden.yaml");
  const garden = source.ok ? validateGarden(source.value, tables) : source;
  if (!garden.ok) throw new Error(garden.problems.map(problemLine).join("\n"));
  return seasonOf(garden.value);
}

function seasonOf(garden: Garden): Plan {
  const tables = loadTables();
  const plan = planSeason(garden, {
    catalogue: tables.catalogue,
    rules: tables.builtInRules,
    referenceStockGPerL: tables.referenceStockGPerL,
  });
  if (!plan.ok) throw new Error(plan.problems.map(({ message }) => message).join("\n"));
  return plan.value;
}

/** A bottle that keeps into the middle of the season. */
export const bottleB1: BottleInHand = {
  id: "B1",
  madeOn: day("2027-05-08"),
  useBy: day("2027-07-07"),
  leftMl: 200,
  strengthGPerL: 20,
};

export interface StockDiffers {
  readonly today?: Day;
  readonly inHand?: readonly BottleInHand[];
  readonly perWeek?: number;
}

/** The plan with its stock planned by the program's own planner, each mix poured from its bottles. */
export function withStock(plan: Plan, differs: StockDiffers = {}): Plan {
  const { today = day("2027-05-20"), inHand = [bottleB1], perWeek = 10 } = differs;
  const mixes = plan.rounds
    .filter((round) => round.day >= today)
    .flatMap((round) =>
      round.beds.flatMap(({ bed, mixes: ofBed }) =>
        ofBed.map((mix) => ({ id: needId(round.day, bed, mix), day: round.day, mix })),
      ),
    );
  const problem: MakingProblem = {
    today,
    season: plan.garden.season,
    away: [],
    needs: mixes.map(({ id, day: on, mix }) => ({
      id,
      day: on,
      calciumMg: mix.calciumMgPerL * mix.waterL,
      mostMl: mix.exactStockMl * 2,
    })),
    bottles: inHand.map(({ madeOn, ...bottle }) => ({ ...bottle, readyOn: madeOn ?? today })),
    making: {
      dryDays: 1,
      reactionDays: 3,
      longestStandDays: 14,
      shelfLifeDays: 60,
      largestMl: 4000,
      smallestMl: 250,
      stepMl: 10,
      stepShare: 0.01,
      bottleMl: 500,
      strengthGPerL: 20,
    },
    shells: { perWeek, inHand: 4, gPerShell: 5.5, gPerL: 60 },
  };
  const making = planStock(problem);
  const poured = (on: Day, bed: string, mix: CanMix): CanMix => {
    const pours = making.draws
      .filter(({ need }) => need === needId(on, bed, mix))
      .map(({ batch, ml, strengthGPerL }): Pour => ({ batch, ml, strengthGPerL }));
    return {
      ...mix,
      tapCalciumMgPerL: 48,
      clearCalciumMgPerL: mix.calciumMgPerL * 0.06,
      ...(pours.length === 0 ? {} : { pours }),
    };
  };
  return {
    ...plan,
    rounds: plan.rounds.map((round) => ({
      ...round,
      beds: round.beds.map((bed) => ({
        ...bed,
        mixes: bed.mixes.map((mix) => poured(round.day, bed.bed, mix)),
      })),
    })),
    stock: {
      making,
      acid: "citric",
      keep: "fridge",
      pour: "shaken",
      bottleMl: 500,
      newStrengthGPerL: 20,
      newClearStrengthGPerL: 1.2,
      newPh: 6.4,
    },
  };
}

function needId(on: Day, bed: string, mix: CanMix): string {
  return `${on} ${bed} ${mix.route} ${mix.rateMlPerL}`;
}

/** Half-way through a season. */
export function midSeason({ garden }: Plan): Day {
  return earlier(addDays(garden.season.from, 110), garden.season.to);
}
