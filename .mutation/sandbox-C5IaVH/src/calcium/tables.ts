/** Shapes of the room's data files: `uptake.yaml`, `amendments.yaml`, `soil-tests.yaml`, `calcium-limits.yaml`. */
// @ts-nocheck

import type { StageName } from "../crops/index.js";
import type { AmendmentKind, Extract, Fineness, SoilKind } from "../garden/index.js";
import type { Range } from "./range.js";

export interface CalciumTables {
  readonly uptake: UptakeTable;
  readonly amendments: AmendmentTable;
  readonly extracts: readonly ExtractRow[];
  readonly limits: CalciumLimits;
}

type SourceStatus = "read" | "weak source" | "from memory";

interface UptakeTable {
  readonly uptake: readonly UptakeRow[];
  readonly borrowed: readonly { readonly crop: string; readonly from: string }[];
}

export interface UptakeRow {
  readonly crop: string;
  readonly per_plant_g?: Range;
  readonly per_m2_g?: Range;
  readonly source: string;
  readonly source_status: SourceStatus;
}

export interface AmendmentTable {
  readonly amendments: readonly AmendmentRow[];
  readonly finenesses: readonly FinenessRow[];
}

interface AmendmentRow {
  readonly what: AmendmentKind;
  readonly name: string;
  readonly calcium_g_per_kg: Range;
  /** It raises the pH of the soil. */
  readonly limes?: true;
  readonly acts: "by-fineness" | YearShares;
  readonly source: string;
}

interface FinenessRow extends YearShares {
  readonly fineness: Fineness;
}

/** Per cent of all the calcium in it. */
export interface YearShares {
  readonly year_one: Range;
  readonly year_two: Range;
  readonly source: string;
}

export interface ExtractRow {
  readonly extract: Extract;
  readonly name: string;
  readonly measures: "soil" | "liquid";
  /** From there on a soil holds enough; absent where no class is accepted. */
  readonly enough_ppm?: number;
  readonly source: string;
  readonly source_status: SourceStatus;
}

interface Value {
  readonly value: number;
}

export interface CalciumLimits {
  readonly lime_first_ph: Value;
  readonly enough_ph: Value;
  readonly soft_water_hardness_mg_per_l: Value;
  readonly soft_water_calcium_mg_per_l: Value;
  readonly very_hard_water_mg_per_l: Value;
  readonly calcium_in_hardness: Value;
  readonly calcium_share_of_hardness: Range;
  readonly soil_density_kg_per_l: Value;
  readonly soil_depth_cm: Value;
  readonly potting_mix_density_kg_per_l: Range;
  readonly most_season_water_l_per_m2: Value;
  readonly old_test_years: Value;
  readonly new_this_season_days: Value;
  readonly might_help: {
    readonly disorders: readonly string[];
    readonly stages: readonly StageName[];
    readonly soils: readonly SoilKind[];
  };
  readonly soil_decides: { readonly disorders: readonly string[] };
}
