/** Shape of `units.yaml`: what a grower may write behind a number. */
import { grouped } from "../values.js";
import type { Amounts } from "./garden.js";

export type UnitKind =
  | "volume"
  | "mass"
  | "length"
  | "area"
  | "time"
  | "hardness"
  | "concentration"
  | "soil-content"
  | "density";

export interface Unit {
  /** As we print it. */
  readonly unit: string;
  /** Spellings that are understood. */
  readonly names: readonly string[];
  readonly kind: UnitKind;
  /** A name shared by two systems means the one of the garden's amounts. */
  readonly system: "any" | "us" | "imperial";
  /** Times this gives the base unit: L, g, m, m2, days, mg/L as CaCO3, mg/L, mg/kg, kg/L. */
  readonly factor: number;
}

export type UnitTable = readonly Unit[];

/** Finds a unit by a spelling, of one kind or any; in a metric garden a shared name is the US one. */
export function findUnit(
  name: string,
  units: UnitTable,
  amounts: Amounts,
  kind?: UnitKind,
): Unit | undefined {
  const bySpelling = known.get(units) ?? unitsBySpelling(units);
  known.set(units, bySpelling);
  const all = bySpelling.get(spelling(name)) ?? [];
  const found = kind === undefined ? all : all.filter((u) => u.kind === kind);
  const preferred = amounts === "imperial" ? "imperial" : "us";
  return found.find((u) => u.system === preferred) ?? found[0];
}

const known = new WeakMap<UnitTable, ReadonlyMap<string, readonly Unit[]>>();

function unitsBySpelling(units: UnitTable): ReadonlyMap<string, readonly Unit[]> {
  const spelt = units.flatMap((unit) =>
    [...new Set(unit.names.map(spelling))].map((name) => ({ name, unit })),
  );
  return new Map(
    [...grouped(spelt, ({ name }) => name)].map(([name, those]) => [
      name,
      those.map(({ unit }) => unit),
    ]),
  );
}

/** Full stops, case and doubled blanks do not matter: `fl. oz.` is `fl oz`. */
function spelling(name: string): string {
  return name.toLowerCase().replaceAll(".", "").replace(/\s+/g, " ").trim();
}
