/** The project's data files as they stand, for tests. */
// @ts-nocheck

import { readFileSync } from "node:fs";
import { parse } from "yaml";
import {
  cropCatalogue,
  type CropCatalogue,
  type CropRow,
  type LifeCourseRow,
  type StageLengthRow,
  type WarmthRow,
} from "../../src/crops/catalogue.js";
import type { StageName } from "../../src/crops/crop.js";
import { parseQuantity, parseRate } from "../../src/garden/quantity.js";
import { parseTemperature } from "../../src/garden/temperature.js";
import type { Evidence } from "../../src/rules/rule.js";
import type { UnitKind, UnitTable } from "../../src/garden/units.js";

export interface RuleRow {
  readonly id: string;
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly stages: readonly StageName[];
  readonly route: "drench" | "foliar";
  readonly disorder: string;
  readonly rate: string;
  readonly calcium: string;
  readonly interval: Readonly<Record<"shortest" | "target" | "longest", string>>;
  readonly first_within: string;
  readonly highest_rate: string;
  readonly stop_before_harvest: string;
  readonly stop_before_last_pick?: string;
  readonly highest_temperature?: string;
  readonly feedings?: number;
  readonly habit?: "bush" | "cordon";
  readonly limits_reason: string;
  readonly evidence: Evidence;
  readonly by_default: boolean;
  readonly reason: string;
  readonly source: string;
}

export interface SignRow {
  readonly key: string;
  readonly name: string;
  readonly also?: readonly string[];
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
  readonly first_in_group?: Readonly<Record<string, readonly string[]>>;
  readonly water_evidence?: readonly { readonly crops?: readonly string[] }[];
  readonly first_advice: readonly string[];
  readonly level_steps: number;
  readonly level_factor: number;
  readonly stages: readonly StageName[];
  readonly holds_days: number;
}

export interface PrintedLengthRow extends StageLengthRow {
  readonly printed_name?: string;
  readonly printed_total_days?: number;
}

/** Data file -> its schema. */
export const dataFiles = {
  "src/crops/crops.yaml": "crops",
  "src/crops/stage-lengths.yaml": "stage-lengths",
  "src/crops/life-courses.yaml": "life-courses",
  "src/crops/warmth.yaml": "warmth",
  "src/rules/rules.yaml": "rules",
  "src/rules/signs.yaml": "signs",
  "src/garden/units.yaml": "units",
  "src/watering/crop-coefficients.yaml": "crop-coefficients",
} as const;

function text(path: string): string {
  return readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
}

export function readData(path: keyof typeof dataFiles): unknown {
  return parse(text(path));
}

export function readSchema(name: string): Record<string, unknown> {
  return JSON.parse(text(`schemas/${name}.schema.json`)) as Record<string, unknown>;
}

export const cropRows = (readData("src/crops/crops.yaml") as { crops: CropRow[] }).crops;
export const lengthRows = (
  readData("src/crops/stage-lengths.yaml") as { stage_lengths: PrintedLengthRow[] }
).stage_lengths;
export const courseRows = (
  readData("src/crops/life-courses.yaml") as { life_courses: LifeCourseRow[] }
).life_courses;
export const warmthRows = (readData("src/crops/warmth.yaml") as { warmth: WarmthRow[] }).warmth;
export const ruleRows = (readData("src/rules/rules.yaml") as { rules: RuleRow[] }).rules;
export const signRows = (readData("src/rules/signs.yaml") as { signs: SignRow[] }).signs;
export const units = (readData("src/garden/units.yaml") as { units: UnitTable }).units;

export const catalogue: CropCatalogue = cropCatalogue({
  crops: cropRows,
  stageLengths: lengthRows,
  lifeCourses: courseRows,
  warmth: warmthRows,
});

/** The row of that key; a test that names a row that is gone fails with its name. */
export function ruleRow(id: string): RuleRow {
  const row = ruleRows.find((r) => r.id === id);
  if (row === undefined) throw new Error(`rules.yaml has no rule ${id}`);
  return row;
}

/** Keys of the crops that a rule or sign row is for. */
export function cropsOf(row: {
  readonly crops?: readonly string[];
  readonly groups?: readonly string[];
}): CropRow[] {
  return cropRows.filter(
    (crop) => row.crops?.includes(crop.key) === true || row.groups?.includes(crop.group) === true,
  );
}

/** Amount in the base unit of its kind, read as the program reads it. */
export function amount(quantity: string, kind: UnitKind): number {
  const parsed = parseQuantity(quantity, kind, { units, amounts: "metric" });
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

export function rateMlPerL(rate: string): number {
  const parsed = parseRate(rate, { units, amounts: "metric" });
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

export function temperatureC(text: string): number {
  const parsed = parseTemperature(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
}

export const days = (duration: string): number => amount(duration, "time");
