/** What every part of the validation works with. */
import type { CropCatalogue } from "../crops/index.js";
import type { SchemaCheck } from "../schema-check.js";
import type { Garden } from "./garden.js";
import type { ZoneHalves } from "./hemisphere.js";
import type { UnitTable } from "./units.js";
import type { EggSizeRow } from "./egg-sizes.js";
import type { Usual } from "./usual.js";

/** What a garden file is checked against; `loadTables` has it. */
export interface GardenTables {
  /** Check against `schemas/garden.schema.json`. */
  readonly gardenCheck: SchemaCheck;
  readonly units: UnitTable;
  readonly usual: Usual;
  readonly eggSizes: readonly EggSizeRow[];
  readonly catalogue: CropCatalogue;
  /** CSS3 colour names. */
  readonly cssColors: ReadonlySet<string>;
  readonly zoneHalves: ZoneHalves;
}

export interface Validation {
  readonly tables: GardenTables;
  readonly amounts: Garden["amounts"];
  /** Tells the grower of a default that was used. */
  readonly assume: (assumption: string) => void;
}
