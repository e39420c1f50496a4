/** How much room a liquid takes. */
import { acidHydrogenMol } from "./acid.js";
import { waterDensityKgPerL } from "./activity.js";
import type { Chemistry } from "./constants.js";
import type { Equilibrium } from "./equilibrium-types.js";

/** Water and what is dissolved in it, each with its volume at infinite dilution. */
export function liquidVolumeMl(
  chemistry: Chemistry,
  equilibrium: Equilibrium,
  temperatureC: number,
): number {
  const { volumes } = chemistry;
  const [, calcium = 0, citrate = 0, acetate = 0, carbonate = 0] = equilibrium.dissolved.mol;
  return (
    (1000 * equilibrium.waterKg) / waterDensityKgPerL(temperatureC) +
    calcium * volumes.calciumIonMlPerMol.value +
    citrate * volumes.citrateIonMlPerMol.value +
    acetate * volumes.acetateIonMlPerMol.value +
    carbonate * volumes.carbonateAsHydrogenMlPerMol.value +
    acidHydrogenMol(chemistry, equilibrium) * volumes.boundAcidHydrogenMlPerMol.value
  );
}
