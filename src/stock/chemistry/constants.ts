/** Shapes of `constants.yaml`, and the few sums that every chemical step needs from it. */

export interface Sourced {
  readonly value: number;
  readonly source: string;
}

/** The dissolved building blocks, in the order of every vector of amounts. */
export const componentKeys = ["H", "Ca", "Cit", "Ac", "CO3"] as const;
export type ComponentKey = (typeof componentKeys)[number];

/** How many of each building block; water counts apart, as the solvent. */
export type Composition = Readonly<Partial<Record<ComponentKey | "H2O", number>>>;

export type SubstanceKey =
  | "water"
  | "calciumCarbonate"
  | "citricAnhydrous"
  | "citricMonohydrate"
  | "aceticAcid"
  | "calciumCitrateTetrahydrate"
  | "calciumAcetate"
  | "carbonDioxide"
  | "calcium"
  | "magnesium";

export type Element = "H" | "C" | "O" | "Ca" | "Mg";

export interface Reaction {
  readonly of: Composition;
  /** At 25 degC and zero ionic strength. */
  readonly logK: number;
  readonly enthalpyKjPerMol: number;
  readonly source: string;
}

type Rows<Key extends string> = Readonly<Record<Key, Sourced>>;

/** `constants.yaml` as it is read. */
export interface ChemistryData {
  readonly physical: Rows<
    | "gasConstantJPerMolK"
    | "avogadroPerMol"
    | "boltzmannJPerK"
    | "elementaryChargeC"
    | "vacuumPermittivityFPerM"
    | "atmospherePa"
    | "airLogPco2Atm"
    | "waterActivitySlopeKgPerMol"
    | "daviesSlopeKgPerMol"
  >;
  readonly atomicWeights: Rows<Element>;
  readonly substances: Readonly<
    Record<
      SubstanceKey,
      { readonly name: string; readonly atoms: Readonly<Partial<Record<Element, number>>> }
    >
  >;
  readonly components: readonly {
    readonly key: ComponentKey;
    readonly name: string;
    readonly charge: number;
  }[];
  readonly species: readonly (Reaction & { readonly name: string })[];
  readonly phases: Readonly<Record<"carbonDioxide" | "calcite" | "calciumCitrate", Reaction>>;
  readonly volumes: Rows<
    | "calciumIonMlPerMol"
    | "citrateIonMlPerMol"
    | "acetateIonMlPerMol"
    | "carbonateAsHydrogenMlPerMol"
    | "boundAcidHydrogenMlPerMol"
    | "calciumCitrateGPerMl"
    | "vinegarGPerMlAt5Percent"
  >;
  readonly kitchen: Rows<
    | "shellPurity"
    | "shellPerEggG"
    | "citricPerTablespoonG"
    | "shellPowderPerTablespoonG"
    | "roomC"
    | "vinegarLargestPercent"
  >;
  readonly practice: Rows<
    | "citricAnhydrousGPerLWater"
    | "shellExcess"
    | "foamRise"
    | "strainingLossShare"
    | "canPhLow"
    | "canPhHigh"
  >;
}

/** The constants with what is summed up once: molar masses, and the species as vectors. */
export interface Chemistry extends ChemistryData {
  readonly gPerMol: Readonly<Record<SubstanceKey, number>>;
  /** The components themselves, then the species formed from them. */
  readonly solutes: readonly Solute[];
}

export interface Solute {
  readonly name: string;
  readonly charge: number;
  /** Per component, in the order of {@link componentKeys}. */
  readonly counts: readonly number[];
  readonly waterCount: number;
  readonly logK: number;
  readonly enthalpyKjPerMol: number;
}

/** Molar masses (g/mol) from the atomic weights, charges from the components. */
export function prepareChemistry(data: ChemistryData): Chemistry {
  const gPerMol = Object.fromEntries(
    Object.entries(data.substances).map(([key, { atoms }]) => [
      key,
      Object.entries(atoms).reduce(
        (sum, [element, count]) => sum + count * data.atomicWeights[element as Element].value,
        0,
      ),
    ]),
  ) as Record<SubstanceKey, number>;
  const chargeOf = new Map(data.components.map((c) => [c.key, c.charge]));
  const charges = componentKeys.map((key) => chargeOf.get(key) ?? 0);
  const basis = data.components.map((c) => ({
    name: c.name,
    of: { [c.key]: 1 },
    logK: 0,
    enthalpyKjPerMol: 0,
  }));
  const solutes = [...basis, ...data.species].map((s): Solute => {
    const counts = countsOf(s.of);
    return {
      name: s.name,
      charge: counts.reduce((sum, n, j) => sum + n * (charges[j] ?? 0), 0),
      counts,
      waterCount: waterCountOf(s.of),
      logK: s.logK,
      enthalpyKjPerMol: s.enthalpyKjPerMol,
    };
  });
  return { ...data, gPerMol, solutes };
}

export function countsOf(of: Composition): number[] {
  return componentKeys.map((key) => of[key] ?? 0);
}

export function waterCountOf(of: Composition): number {
  return of.H2O ?? 0;
}
