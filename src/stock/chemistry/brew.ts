/** A jar of shell, acid and water, in grams as a grower weighs them, and what it comes to rest as. */
import { acidContents, type AcidDose, acidHydrogenMol, acidLeftG, acidTroubles } from "./acid.js";
import { kelvinAt0C, waterDensityKgPerL } from "./activity.js";
import { type Chemistry, componentKeys, solidKeys } from "./constants.js";
import { type Contents, crystalContents, mixed, noMol, pureWater } from "./contents.js";
import type { Equilibrium, Gas } from "./equilibrium-types.js";
import { equilibrate } from "./equilibrium.js";
import { badQuantities, failed, type MixResult, type MixTrouble, trouble } from "./trouble.js";
import { rememberingFor } from "../../values.js";

/** What goes into the jar, by weight, and what gas lies over it. */
export interface BrewInput {
  readonly shellG: number;
  /** Calcium carbonate in the dry shell, 0 to 1. */
  readonly shellPurity: number;
  readonly acid: AcidDose;
  /** Besides what the acid brings. */
  readonly waterG: number;
  readonly temperatureC: number;
  readonly gas: Gas;
  /** Calcium citrate comes out within hours to days; false for the clear liquor before that. Calcium acetate comes out at once. */
  readonly citrateSolidMayForm: boolean;
}

type Taken = "ph" | "ionicStrengthMolPerKg" | "massError" | "chargeError";

/** The jar at rest, all shell, acid and water in it counted; a whole batch. */
export interface Brew extends Pick<Equilibrium, Taken> {
  readonly input: BrewInput;
  readonly equilibrium: Equilibrium;
  readonly calciumDissolvedMgPerKgWater: number;
  readonly calciumDissolvedGPerL: number;
  /** In fine crystals of calcium citrate, or of calcium acetate, that shaking stirs up. */
  readonly calciumInCrystalsG: number;
  readonly crystalsG: number;
  /** Dry shell that found no acid, with its share of what is no carbonate. */
  readonly shellLeftG: number;
  /** Acid not yet spent, as grams of the acid itself (citric: anhydrous). */
  readonly acidLeftG: number;
  /** Given off in all; negative when air gave some. */
  readonly carbonDioxideG: number;
  /** At the temperature of the jar and 1 atm. */
  readonly carbonDioxideL: number;
  /** Clear liquid, without crystals. */
  readonly liquidMl: number;
  readonly crystalsMl: number;
}

/** While it fizzes the liquid stands under carbon dioxide of 1 atm. */
export const fizzing: Gas = { kind: "held", logPco2: 0 };
/** No gas comes or goes. */
export const closedVessel: Gas = { kind: "closed" };

/** Air over the jar or the can: its carbon dioxide is `airLogPco2Atm` of the constants, whose row names the source. */
export function openAir(chemistry: Chemistry): Gas {
  return { kind: "held", logPco2: chemistry.physical.airLogPco2Atm.value };
}

/** Everything that goes into the jar. */
function brewContents(chemistry: Chemistry, input: BrewInput): Contents {
  const carbonateMol = (input.shellG * input.shellPurity) / chemistry.gPerMol.calciumCarbonate;
  const shell = { ...pureWater(0), mol: { ...noMol, Ca: carbonateMol, CO3: carbonateMol } };
  const liquids = mixed(pureWater(input.waterG / 1000), acidContents(chemistry, input.acid));
  return mixed(liquids, shell);
}

/**
 * What the jar comes to rest as. Trouble: negative amounts, purity outside 0 to 1, vinegar stronger
 * than a kitchen's, no water, temperature outside 0 to 100 degC, too little water for the crystals.
 */
export function brewBatch(chemistry: Chemistry, input: BrewInput): MixResult<Brew> {
  return brewedBefore(chemistry, input);
}

const brewedBefore = rememberingFor(500, inputKey, brewed);

/** JSON would take NaN and Infinity for the same. */
function inputKey(input: BrewInput): string {
  return JSON.stringify(input, (_, part: unknown) =>
    typeof part === "number" ? String(part) : part,
  );
}

function brewed(chemistry: Chemistry, input: BrewInput): MixResult<Brew> {
  const problems = inputTroubles(chemistry, input);
  if (problems.length > 0) return failed(...problems);
  const found = equilibrate(chemistry, brewContents(chemistry, input), {
    temperatureC: input.temperatureC,
    gas: input.gas,
    mayForm: solidKeys.filter((key) => key !== "calciumCitrate" || input.citrateSolidMayForm),
  });
  return found.ok ? { ok: true, value: describe(chemistry, input, found.value) } : found;
}

function inputTroubles(chemistry: Chemistry, input: BrewInput): MixTrouble[] {
  const found = badQuantities({ "shell (g)": input.shellG, "water (g)": input.waterG });
  if (!(input.shellPurity >= 0 && input.shellPurity <= 1))
    found.push(
      trouble("not-a-share", `shell purity is ${input.shellPurity}`, "give a share from 0 to 1"),
    );
  return [...found, ...acidTroubles(chemistry, input.acid)];
}

function describe(chemistry: Chemistry, input: BrewInput, equilibrium: Equilibrium): Brew {
  const { gPerMol } = chemistry;
  const { ph, ionicStrengthMolPerKg, massError, chargeError, solidMol } = equilibrium;
  const calciumMol = equilibrium.dissolved.mol.Ca;
  const liquidMl = liquidVolumeMl(chemistry, equilibrium, input.temperatureC);
  const citrateG = solidMol.calciumCitrate * gPerMol.calciumCitrateTetrahydrate;
  const acetateG = solidMol.calciumAcetate * gPerMol.calciumAcetateMonohydrate;
  const carbonateLeftG = solidMol.calcite * gPerMol.calciumCarbonate;
  const outMol = equilibrium.carbonDioxideOutMol;
  const kelvin = input.temperatureC + kelvinAt0C;
  const { gasConstantJPerMolK, atmospherePa } = chemistry.physical;
  const { calciumCitrateGPerMl, calciumAcetateGPerMl } = chemistry.volumes;
  return {
    input,
    equilibrium,
    ph,
    ionicStrengthMolPerKg,
    calciumDissolvedMgPerKgWater: (1000 * calciumMol * gPerMol.calcium) / equilibrium.waterKg,
    calciumDissolvedGPerL: (1000 * calciumMol * gPerMol.calcium) / liquidMl,
    calciumInCrystalsG: crystalContents(chemistry, solidMol).mol.Ca * gPerMol.calcium,
    crystalsG: citrateG + acetateG,
    shellLeftG: input.shellPurity > 0 ? carbonateLeftG / input.shellPurity : input.shellG,
    acidLeftG: acidLeftG(chemistry, input.acid, equilibrium),
    carbonDioxideG: outMol * gPerMol.carbonDioxide,
    carbonDioxideL: (outMol * gasConstantJPerMolK.value * kelvin * 1000) / atmospherePa.value,
    liquidMl,
    crystalsMl: citrateG / calciumCitrateGPerMl.value + acetateG / calciumAcetateGPerMl.value,
    massError,
    chargeError,
  };
}

/** Water and what is dissolved in it, each with its volume at infinite dilution. */
function liquidVolumeMl(
  chemistry: Chemistry,
  equilibrium: Equilibrium,
  temperatureC: number,
): number {
  const { dissolvedMlPerMol, boundAcidHydrogenMlPerMol } = chemistry.volumes;
  let ml = (1000 * equilibrium.waterKg) / waterDensityKgPerL(temperatureC);
  for (const key of componentKeys)
    if (key !== "H") ml += equilibrium.dissolved.mol[key] * dissolvedMlPerMol[key].value;
  return ml + acidHydrogenMol(chemistry, equilibrium) * boundAcidHydrogenMlPerMol.value;
}
