/** Gardens for tests, valid as they stand: a test states only what differs. */
// @ts-nocheck

import { stringify } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import type { Day } from "../../src/dates.js";
import type { PlaceSources } from "../../src/garden-place.js";
import { decodeText } from "../../src/garden/decode.js";
import type { Garden, Planting } from "../../src/garden/garden.js";
import { readYaml } from "../../src/garden/read.js";
import { validateGarden } from "../../src/garden/validate.js";
import { dayOfFile } from "../../src/log/records.js";
import { gardenOfText, planOfGarden } from "../../src/plan-garden.js";
import { type Problem, problemLine, type Result } from "../../src/problem.js";
import { readRules } from "../../src/rules/read-rules.js";
import type { FeedRule } from "../../src/rules/rule.js";
import type { Plan } from "../../src/season/season-plan.js";
import { loadTables } from "../../src/tables.js";
import { given } from "../../src/values.js";

/** Keys of a garden file, right or wrong; `undefined` takes a key away. */
export type GardenDiffers = { readonly [K in keyof GardenFile]?: unknown };
export type PlantingDiffers = Readonly<Record<string, unknown>>;

/** Six tomatoes in one bed, planted out in May; fed on any day from a 10 L can. */
const usualPlanting = {
  id: "toms",
  crop: "tomato",
  plants: 6,
  transplanted: "2027-05-20",
  water: "2 L per plant",
};

const usualGarden = {
  version: 1,
  garden: "Weir Cottage",
  timezone: "Europe/Dublin",
  season: { from: "2027-03-01", to: "2027-10-31" },
  can: "10 L",
  feeding: { days: ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] },
  beds: [{ id: "south", plantings: [usualPlanting] }],
};

/** A bottle of the strength for which rates are written, so that the cans get the rules' own mL. */
export const referenceBottle: Pick<GardenDiffers, "stock"> = {
  stock: {
    batches: [
      { id: "R", made: "2027-02-01", volume: "9 L", strength: "17.75 g/L", use_by: "2027-10-31" },
    ],
  },
};

export function gardenText(differs: GardenDiffers = {}): string {
  return stringify({ ...usualGarden, ...differs });
}

/** `beds` with the usual planting in one bed, or with what differs in several plantings of it. */
export function planted(...plantings: readonly PlantingDiffers[]): Pick<GardenDiffers, "beds"> {
  return {
    beds: [{ id: "south", plantings: plantings.map((p) => ({ ...usualPlanting, ...p })) }],
  };
}

/** Bytes or text of a garden file -> garden. */
export function readGarden(file: string | Uint8Array): Result<Garden> {
  const bytes = typeof file === "string" ? new TextEncoder().encode(file) : file;
  const text = decodeText(bytes, "garden.yaml");
  if (!text.ok) return text;
  const source = readYaml(text.value, "garden.yaml");
  return source.ok ? validateGarden(source.value, loadTables()) : source;
}

export function aGarden(differs: GardenDiffers = {}): Garden {
  return orThrow(readGarden(gardenText(differs)));
}

export function aPlanting(differs: PlantingDiffers = {}): Planting {
  const planting = aGarden(planted(differs)).beds[0]?.plantings[0];
  if (planting === undefined) throw new Error("a garden without a planting");
  return planting;
}

/** The grower's own rule file as text -> rules. */
export function readOwnRules(text: string): Result<FeedRule[]> {
  const tables = loadTables();
  const source = readYaml(text, "my-rules.yaml");
  return source.ok
    ? readRules(source.value, tables, { units: tables.units, amounts: "metric" }, true)
    : source;
}

/**
 * The whole way from the file to the plan, as the commands go it; today is the file's own day. Sources
 * of its place are given by hand: `{ normals: await loadNormals() }`.
 */
export function planFile(
  file: string | Uint8Array,
  ownRules?: string,
  today?: Day,
  sources: PlaceSources = {},
): Result<Plan> {
  const bytes = typeof file === "string" ? new TextEncoder().encode(file) : file;
  const text = decodeText(bytes, "garden.yaml");
  if (!text.ok) return text;
  const tables = loadTables();
  const read = gardenOfText(text.value, "garden.yaml", tables);
  if (!read.ok) return read;
  return planOfGarden(read.value, given({ ownRules, ...sources }), tables, {
    today: today ?? dayOfFile(read.value.garden),
  });
}

export function aSeason(
  differs: GardenDiffers = {},
  ownRules?: string,
  sources?: PlaceSources,
): Plan {
  return orThrow(planFile(gardenText(differs), ownRules, undefined, sources));
}

/** What is wrong with a file that ought to be wrong. */
export function problemsOf(file: string | Uint8Array, ownRules?: string): readonly Problem[] {
  const plan = planFile(file, ownRules);
  if (plan.ok) throw new Error("the garden has no problems");
  return plan.problems;
}

/** `code line:column` of each problem. */
export function placesOf(file: string | Uint8Array, ownRules?: string): string[] {
  return problemsOf(file, ownRules).map(({ code, at }) => `${code} ${at.line}:${at.column}`);
}

/** The days on which a planting is fed. */
export function daysFed(plan: Plan, planting = "toms"): string[] {
  return plan.rounds
    .filter((round) =>
      round.beds.some((bed) =>
        bed.mixes.some((mix) => mix.feedings.some((feeding) => feeding.planting === planting)),
      ),
    )
    .map((round) => round.day);
}

function orThrow<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map(problemLine).join("\n"));
  return result.value;
}
