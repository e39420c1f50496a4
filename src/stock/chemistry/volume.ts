/** How much room a liquid takes. */
import { acidHydrogenMol } from "./acid.js";
import { waterDensityKgPerL } from "./activity.js";
import { type Chemistry, componentKeys } from "./constants.js";
import type { Equilibrium } from "./equilibrium-types.js";

/** Water and what is dissolved in it, each with its volume at infinite dilution. */
export function liquidVolumeMl(
  chemistry: Chemistry,
  equilibrium: Equilibrium,
  temperatureC: number,
): number {
  const { volumes } = chemistry;
  const waterMl = (1000 * equilibrium.waterKg) / waterDensityKgPerL(temperatureC);
  const withSolutesMl = componentKeys
    .filter((key) => key !== "H")
    .reduce(
      (ml, key) => ml + equilibrium.dissolved.mol[key] * volumes.dissolvedMlPerMol[key].value,
      waterMl,
    );
  return (
    withSolutesMl +
    acidHydrogenMol(chemistry, equilibrium) * volumes.boundAcidHydrogenMlPerMol.value
  );
}
