/** Shapes of `constants.yaml`, and the few sums that every chemical step needs from it. */
// @ts-nocheck


export interface Sourced {
  readonly value: number;
  readonly source: string;
}

/** The dissolved building blocks. Their order is that of the solver's columns and means nothing else. */
export const componentKeys = ["H", "Ca", "Cit", "Ac", "CO3"] as const;
export type ComponentKey = (typeof componentKeys)[number];
/** mol of each building block. */
export type ComponentMol = Readonly<Record<ComponentKey, number>>;

/** How many of each building block; water counts apart, as the solvent. */
export type Composition = Readonly<Partial<Record<ComponentKey | "H2O", number>>>;

export const solidKeys = ["calcite", "calciumCitrate", "calciumAcetate"] as const;
export type SolidKey = (typeof solidKeys)[number];
/** What comes out of the liquid white; calcite is the shell. */
export const crystalKeys = ["calciumCitrate", "calciumAcetate"] as const satisfies SolidKey[];
export type Crystal = (typeof crystalKeys)[number];

/** What is not dissolved. Each holds a building block that none before it does: see {@link pivotOf}. */
export const phaseKeys = ["carbonDioxide", ...solidKeys] as const;
export type PhaseKey = (typeof phaseKeys)[number];

export type SubstanceKey =
  | "water"
  | "calciumCarbonate"
  | "citricAnhydrous"
  | "citricMonohydrate"
  | "aceticAcid"
  | "calciumCitrateTetrahydrate"
  | "calciumAcetate"
  | "calciumAcetateMonohydrate"
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
  readonly components: Readonly<
    Record<ComponentKey, { readonly name: string; readonly word: string; readonly charge: number }>
  >;
  readonly species: readonly (Reaction & { readonly name: string })[];
  readonly phases: Readonly<Record<PhaseKey, Reaction>>;
  readonly volumes: Rows<
    | "boundAcidHydrogenMlPerMol"
    | "calciumCitrateGPerMl"
    | "calciumAcetateGPerMl"
    | "vinegarGPerMlAt5Percent"
  > & { readonly dissolvedMlPerMol: Rows<Exclude<ComponentKey, "H">> };
  readonly kitchen: Rows<
    | "shellPurity"
    | "citricPerTablespoonG"
    | "shellPowderPerTablespoonG"
    | "shellCrushedPerTablespoonG"
    | "roomC"
    | "vinegarLargestPercent"
    | "vinegarStrongPercent"
    | "vinegarKitchenPercent"
    | "roomM3"
    | "roomCarbonDioxideShare"
  >;
  readonly practice: Rows<
    | "citricAnhydrousGPerLWater"
    | "shellExcess"
    | "foamLPerGasL"
    | "strainingLossShare"
    | "meshPassesShare"
    | "clothPassesShare"
    | "washWaterShare"
    | "targetReachedShare"
    | "canPhLow"
    | "canPhHigh"
  >;
}

/** The constants with what is summed up once: molar masses, and what the solver's matrices take. */
export interface Chemistry extends Omit<ChemistryData, "phases"> {
  readonly gPerMol: Readonly<Record<SubstanceKey, number>>;
  /** The components themselves, then the species formed from them. */
  readonly solutes: readonly Solute[];
  readonly phases: Readonly<Record<PhaseKey, Reaction & Counts & { readonly pivot: number }>>;
}

/** A composition for the solver: per column, and water apart. */
export interface Counts {
  readonly counts: readonly number[];
  readonly waterCount: number;
}

export interface Solute extends Omit<Reaction, "source">, Counts {
  readonly name: string;
  readonly charge: number;
}

/** Molar masses (g/mol) from the atomic weights, charges from the components. */
export function prepareChemistry(data: ChemistryData): Chemistry {
  const gPerMol = recordOf(Object.keys(data.substances) as SubstanceKey[], (key) =>
    Object.entries(data.substances[key].atoms).reduce(
      (sum, [element, count]) => sum + count * data.atomicWeights[element as Element].value,
      0,
    ),
  );
  const basis = componentKeys.map((key) => ({
    name: data.components[key].name,
    of: { [key]: 1 },
    logK: 0,
    enthalpyKjPerMol: 0,
  }));
  const solutes = [...basis, ...data.species].map(
    ({ name, of, logK, enthalpyKjPerMol }): Solute => ({
      name,
      of,
      logK,
      enthalpyKjPerMol,
      charge: componentKeys.reduce((sum, c) => sum + (of[c] ?? 0) * data.components[c].charge, 0),
      ...countsOf(of),
    }),
  );
  const phases = recordOf(phaseKeys, (key) => ({
    ...data.phases[key],
    ...countsOf(data.phases[key].of),
    pivot: pivotOf(key, data.phases),
  }));
  return { ...data, gPerMol, solutes, phases };
}

/** Amounts by building block as the solver's columns have them. */
export function columnsOf(of: Composition): number[] {
  return componentKeys.map((key) => of[key] ?? 0);
}

function countsOf(of: Composition): Counts {
  return { counts: columnsOf(of), waterCount: of.H2O ?? 0 };
}

/**
 * The column whose activity a phase settles when it is there: the last of its building blocks that
 * no phase before it holds, so that its others are settled when its own turn comes.
 */
function pivotOf(key: PhaseKey, phases: ChemistryData["phases"]): number {
  const before = phaseKeys.slice(0, phaseKeys.indexOf(key));
  const pivot = componentKeys.findLastIndex(
    (c) => c in phases[key].of && !before.some((earlier) => c in phases[earlier].of),
  );
  if (pivot < 0) throw new Error(`${key} holds no building block of its own`);
  return pivot;
}

export function recordOf<Key extends string, T>(
  keys: readonly Key[],
  value: (key: Key, index: number) => T,
): Readonly<Record<Key, T>> {
  // Object.fromEntries would cost the solver a twentieth of its time.
  const record = {} as Record<Key, T>;
  keys.forEach((key, i) => (record[key] = value(key, i)));
  return record;
}
