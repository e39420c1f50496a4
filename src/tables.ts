/**
 * The project's own data files, read once: the one place outside the shell that touches files,
 * since they are part of the program as its code is.
 */
import { readFileSync } from "node:fs";
import { parse } from "yaml";
import { cropCatalogue, type CropCatalogue } from "./crops/index.js";
import { type GardenTables, readYaml, type UnitTable, usualValues } from "./garden/index.js";
import type { LabelSheetRow } from "./outputs/index.js";
import { problemLine } from "./problem.js";
import { type FeedRule, readRules, type RuleTables, type Sign } from "./rules/index.js";
import { compileCheck } from "./schema-check.js";
import {
  type ChemistryData,
  type MakingRules,
  prepareChemistry,
  referenceStockGPerL,
  type StockTables,
} from "./stock/index.js";

export interface Tables extends GardenTables, RuleTables, StockTables {
  readonly signs: readonly Sign[];
  readonly builtInRules: readonly FeedRule[];
}

let loaded: Tables | undefined;

/** All tables, checked for how they fit together; throws when our own data is wrong. */
export function loadTables(): Tables {
  loaded ??= readTables();
  return loaded;
}

function readTables(): Tables {
  const catalogue: CropCatalogue = cropCatalogue({
    crops: rows("./crops/crops.yaml", "crops"),
    stageLengths: rows("./crops/stage-lengths.yaml", "stage_lengths"),
    lifeCourses: rows("./crops/life-courses.yaml", "life_courses"),
  });
  const units: UnitTable = rows("./garden/units.yaml", "units");
  const usual = usualValues(rows("./garden/usual.yaml", "usual"));
  const stock: StockTables = {
    chemistry: prepareChemistry(
      parse(readText("./stock/chemistry/constants.yaml")) as ChemistryData,
    ),
    making: parse(readText("./stock/making.yaml")) as MakingRules,
  };
  const ruleTables: RuleTables = {
    rulesCheck: compileCheck(readSchema("rules")),
    catalogue,
    referenceStockGPerL: referenceStockGPerL(stock, usual),
  };
  return {
    ...ruleTables,
    units,
    usual,
    gardenCheck: compileCheck(readSchema("garden")),
    cssColors: new Set(rows<string>("./garden/css-colors.yaml", "names")),
    builtInRules: builtInRules(ruleTables, units),
    signs: rows("./rules/signs.yaml", "signs"),
    ...stock,
  };
}

function builtInRules(tables: RuleTables, units: UnitTable): readonly FeedRule[] {
  const source = readYaml(readText("./rules/rules.yaml"), "rules.yaml");
  const rules = source.ok
    ? readRules(source.value, tables, { units, amounts: "metric" }, false)
    : source;
  if (!rules.ok) throw new Error(rules.problems.map(problemLine).join("\n"));
  return rules.value;
}

/** Only `labels` asks for them. */
export function loadLabelSheets(): readonly LabelSheetRow[] {
  return rows("./outputs/print/label-sheets.yaml", "label_sheets");
}

/** `schemas/<name>.schema.json`. */
export function readSchema(name: string): object {
  return JSON.parse(readText(`../schemas/${name}.schema.json`)) as object;
}

/** The rows of a data file; that they have the shape asked for is proved by `test/data`. */
// eslint-disable-next-line @typescript-eslint/no-unnecessary-type-parameters
function rows<T>(path: string, key: string): readonly T[] {
  const data = parse(readText(path)) as Readonly<Record<string, readonly T[] | undefined>>;
  return data[key] ?? [];
}

function readText(path: string): string {
  return readFileSync(new URL(path, import.meta.url), "utf8");
}
