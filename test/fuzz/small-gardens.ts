/** Small good gardens that between them use all keys: what the hunt spoils. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { parse, stringify } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import { gardenText } from "../support/a-garden.js";
import { anyGarden } from "../support/arbitrary-garden.js";

const examples = new URL("../../examples/", import.meta.url);

function exampleGardens(): GardenFile[] {
  return readdirSync(examples)
    .filter((name) => name.endsWith(".yaml") && !name.endsWith("rules.yaml"))
    .map((name) => parse(readFileSync(new URL(name, examples), "utf8")) as GardenFile);
}

/** One garden for each bed: that bed with two of its plantings at the most, and what speaks of them. */
function cutDown(garden: GardenFile): GardenFile[] {
  return garden.beds.map((whole) => {
    const bed = { ...whole, plantings: whole.plantings.slice(0, 2) };
    const ids = bed.plantings.map(({ id }) => id);
    const isHere = (one: { planting?: string; bed?: string }): boolean =>
      one.bed === undefined ? ids.includes(one.planting ?? "") : one.bed === bed.id;
    const cut = structuredClone<GardenFile>({ ...garden, beds: [bed] });
    delete cut.rules;
    if (cut.log) cut.log = cut.log.filter(isHere);
    if (cut.signs) cut.signs = cut.signs.filter(isHere);
    for (const feed of cut.feeds ?? []) delete feed.for;
    return cut;
  });
}

/** With what no other has. */
const ofAllSorts = `# of all sorts
version: 1
id: gate-plot
garden: Gate plot
timezone: Europe/Dublin
season: { from: 2027-04-01, to: 2027-08-31 }
location: { latitude: 53.1, longitude: -6.2, elevation: 40 m }
can: 9 L
sprayer: 2 L
source_water: { hardness: 90 mg/L }
feeding: { days: [sat, sun], time: "18:30", away: [{ from: 2027-07-03, to: 2027-07-05 }] }
calendar: { reminders: [{ before: 30 min }], group: bed, color: seagreen }
watering: { days: [tue, fri], calendar: true }
stock:
  shells_per_week: 10
  bottles: 500 mL
  batches:
    - { id: B1, made: 2027-04-20, volume: 500 mL }
    - { id: B2, shells_out: 2027-05-20, acid_in: 2027-05-22, volume: 1 L }
beds:
  - id: south
    name: South bed
    area: 4 m2
    cover: { kind: tunnel, warmer: 4 C }
    soil: { kind: loam, mulch: straw }
    amendments: [{ on: 2027-02-01, what: limestone, amount: 500 g }]
    watering: auto
    plantings:
      - id: toms
        crop: tomato
        plants: 6
        transplanted: 2027-04-20
        water: 2 L per plant
        seen: [{ stage: flowering, on: 2027-06-05 }]
      - { id: cos, crop: lettuce, sown: 2027-04-02, plants: 12 }
feeds:
  - { name: nettle, rate: 1 L per 10 L, every: 14 days }
log:
  - { on: 2027-06-12, planting: toms, stock: 30 mL, batch: B1 }
  - { on: 2027-06-13, feed: nettle }
  - { on: 2027-06-19, missed: true }
signs:
  - { on: 2027-06-20, planting: toms, sign: blossom-end-rot }
`;

const samples = 150;

function isSmall({ beds, season }: GardenFile): boolean {
  const plantings = beds.reduce((sum, bed) => sum + bed.plantings.length, 0);
  const days = (Date.parse(season.to) - Date.parse(season.from)) / 86_400_000;
  return plantings > 0 && plantings <= 2 && days < 260;
}

export function smallGardens(): string[] {
  return [
    gardenText(),
    ofAllSorts,
    ...exampleGardens()
      .flatMap(cutDown)
      .map((garden) => stringify(garden)),
    ...fc
      .sample(anyGarden, { numRuns: samples, seed: 20270301 })
      .filter(isSmall)
      .map((garden) => stringify(garden)),
  ];
}
