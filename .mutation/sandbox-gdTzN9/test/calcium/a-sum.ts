/** Verdicts and sums of gardens for tests, without a plan: water and feed are given by hand. */
// @ts-nocheck

import {
  calciumSums,
  type FeedingVerdict,
  feedingVerdicts,
  type PlantingCalcium,
} from "../../src/calcium/index.js";
import { plantingNeeds, type PlantingNeed } from "../../src/planting-needs.js";
import { loadTables } from "../../src/tables.js";
import { aGarden, type GardenDiffers, type PlantingDiffers } from "../support/a-garden.js";

const all = loadTables();
export const tables = { ...all, rules: all.builtInRules };

interface GivenByHand {
  /** L poured on each planting in the season of a usual year, and in this one. */
  readonly waterL?: number;
  /** g of calcium in the cans of each planting. */
  readonly feedG?: number;
}

export function needsOf(differs: GardenDiffers): PlantingNeed[] {
  return plantingNeeds(aGarden(differs), tables, {});
}

export function sumsOf(
  differs: GardenDiffers,
  { waterL, feedG }: GivenByHand = {},
): PlantingCalcium[] {
  const garden = aGarden(differs);
  const needs = plantingNeeds(garden, tables, {});
  const each = (value: number | undefined): Map<string, number> =>
    new Map(value === undefined ? [] : needs.map(({ planting }) => [planting.id, value]));
  const verdicts = feedingVerdicts(garden, needs, each(waterL), tables);
  return calciumSums(garden, needs, verdicts, each(waterL), each(feedG), tables);
}

export function sumOf(differs: GardenDiffers, byHand?: GivenByHand): PlantingCalcium {
  const [sum] = sumsOf(differs, byHand);
  if (sum === undefined) throw new Error("a garden without a planting of a known crop");
  return sum;
}

/** One planting in a bed with what differs of the bed. */
export function bedWith(
  bed: Readonly<Record<string, unknown>>,
  ...plantings: readonly PlantingDiffers[]
): Pick<GardenDiffers, "beds"> {
  const usual = { id: "toms", crop: "tomato", plants: 6, transplanted: "2027-05-20" };
  const those = plantings.length === 0 ? [{}] : plantings;
  return { beds: [{ id: "south", plantings: those.map((p) => ({ ...usual, ...p })), ...bed }] };
}

/** Of the rule that feeds the first planting, or would. */
export function verdictOf(
  differs: GardenDiffers,
  byHand?: GivenByHand,
  route: FeedingVerdict["route"] = "drench",
): FeedingVerdict["judgement"] {
  const found = sumOf(differs, byHand).verdicts.find((verdict) => verdict.route === route);
  if (found === undefined) throw new Error(`no rule gives a ${route}`);
  return found.judgement;
}
