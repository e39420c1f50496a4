/** The gardens that are played: invented ones, the examples, and any that is valid. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { parse } from "yaml";
import { addDays, day, type Day, type DaySpan, weekdays } from "../../../src/dates.js";
import { anyPlannedGarden } from "../../support/arbitrary-garden.js";
import { examplePath, examples } from "../../support/run-cli.js";
import { Dice } from "./dice.js";

/** As much of a garden file as a player reads or writes. */
export interface GardenDraft {
  id?: string;
  season: DaySpan;
  feeding?: { days?: string[]; away?: DaySpan[] };
  calendar?: { group?: string; file?: string };
  stock?: { acid?: string; batches?: BatchDraft[] };
  unlogged?: "given" | "not-given";
  beds: BedDraft[];
  feeds?: { name: string; for?: string[] }[];
  log?: EntryDraft[];
  signs?: { on: Day; planting: string; sign: string }[];
}

export interface BedDraft {
  id: string;
  plantings: PlantingDraft[];
}

export interface PlantingDraft {
  id: string;
  crop: string;
  plants?: number;
  sown?: Day;
  transplanted?: Day;
  removed?: Day;
  interval?: string;
  water?: string;
  seen?: readonly { readonly stage: string; readonly on: Day }[];
}

export interface BatchDraft {
  id: string;
  planned?: string | number;
  shells_out?: Day;
  acid_in?: Day;
  made?: Day;
  thrown_away?: Day;
  missed?: Day;
  volume: string;
  left?: string;
  left_on?: Day;
}

export interface EntryDraft {
  on: Day;
  missed?: true;
  round?: Day;
  planting?: string;
  bed?: string;
  stock?: string;
  batch?: string;
  route?: string;
  feed?: string;
}

/** Half of them invented, a quarter the examples, a quarter of any kind. */
export function gardenOf(seed: number): GardenDraft {
  const dice = new Dice(seed, 1);
  const kind = seed % 4;
  const garden = kind === 2 ? anExample(seed) : kind === 3 ? anyOne(seed) : invented(dice);
  const isSubscribedFile = dice.chance(0.8);
  return {
    ...garden,
    id: garden.id ?? "played",
    calendar: { ...garden.calendar, ...(isSubscribedFile ? { file: "garden.ics" } : {}) },
    ...(dice.chance(0.1) ? { unlogged: "not-given" as const } : {}),
  };
}

function anExample(seed: number): GardenDraft {
  const name = examples[Math.floor(seed / 4) % examples.length] ?? examples[0];
  return parse(readFileSync(examplePath(name), "utf8")) as GardenDraft;
}

function anyOne(seed: number): GardenDraft {
  const [one] = fc.sample(anyPlannedGarden, { seed, numRuns: 1 });
  return structuredClone(one) as unknown as GardenDraft;
}

const northern = ["Europe/Dublin", "America/Chicago", "Asia/Kathmandu"];
const southern = ["Pacific/Auckland", "Australia/Lord_Howe", "America/Sao_Paulo"];
const crops = ["tomato", "sweet pepper", "cucumber", "courgette", "celery", "pumpkin"];
const others = ["watermelon", "strawberry", "apple", "potato", "eggplant", "fennel", "carrot"];

function invented(dice: Dice): GardenDraft {
  const isSouthern = dice.chance(0.3);
  const from = day(isSouthern ? "2027-09-01" : "2027-03-01");
  const season = { from, to: addDays(from, dice.between(180, 260)) };
  const isUs = dice.chance(0.3);
  const count = dice.between(1, 3);
  return {
    version: 1,
    garden: "Weir Cottage",
    timezone: dice.pick(isSouthern ? southern : northern),
    season,
    ...(isUs ? { amounts: "us", can: "2 gal" } : { can: dice.pick(["9 L", "5 L", "10 L"]) }),
    feeding: {
      days: weekdays.filter(() => dice.chance(0.3)).concat(dice.pick(weekdays)),
      ...(dice.chance(0.5) ? { time: "18:30" } : {}),
      ...(dice.chance(0.3) ? { away: [awayFrom(dice, addDays(from, dice.between(60, 150)))] } : {}),
    },
    calendar: dice.chance(0.4) ? { group: "bed" } : {},
    stock: {
      ...(dice.chance(0.3) ? { acid: "vinegar" } : {}),
      keep: dice.pick(["fridge", "shelf"]),
      bottles: dice.pick(["250 mL", "500 mL", "1 L"]),
      ...(dice.chance(0.5) ? { shells_per_week: dice.between(2, 20) } : {}),
      ...(dice.chance(0.3)
        ? {
            batches: [{ id: "B1", made: addDays(from, -20), volume: dice.pick(["500 mL", "1 L"]) }],
          }
        : {}),
    },
    beds: Array.from({ length: count }, (_, b) => ({
      id: `bed-${b + 1}`,
      plantings: Array.from({ length: dice.between(1, 3) }, (__, p) =>
        inventedPlanting(dice, `p${b + 1}.${p + 1}`, addDays(from, dice.between(20, 90))),
      ),
    })),
    ...(dice.chance(0.4) ? { feeds: [otherFeed(dice)] } : {}),
  } as unknown as GardenDraft;
}

export function inventedPlanting(dice: Dice, id: string, on: Day): PlantingDraft {
  const crop = dice.pick(dice.chance(0.8) ? crops : others);
  const planted = crop === "apple" ? {} : crop === "carrot" ? { sown: on } : { transplanted: on };
  const wishes = ["drench", "foliar", "both", true];
  return {
    id,
    crop,
    plants: dice.between(1, 12),
    ...planted,
    water: dice.pick(["2 L per plant", "6 L", "0.5 gal per plant"]),
    ...(dice.chance(0.3) ? { feed: dice.pick(wishes) } : {}),
    ...(dice.chance(0.2) ? { interval: "14 days" } : {}),
  };
}

export function awayFrom(dice: Dice, from: Day): DaySpan {
  return { from, to: addDays(from, dice.between(3, 14)) };
}

function otherFeed(dice: Dice): object {
  return dice.pick([
    { name: "nettle", rate: "1 L per 10 L", every: "14 days" },
    { name: "salts", rate: "2 mL per L", days: ["sun"], holds: ["sulfate"], gap: "2 days" },
  ]);
}
