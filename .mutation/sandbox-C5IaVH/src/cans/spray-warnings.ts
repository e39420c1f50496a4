/** Sprays in which not all of the stock dissolves; how much does hangs on the hardness of the water. */
// @ts-nocheck

import {
  type Amounts,
  calciumIn,
  counted,
  decimal,
  rateMeasures,
  vesselOf,
} from "../garden/index.js";
import { leavesSolid, type PlanWarning } from "../season/index.js";
import type { CanDemand } from "./demands.js";
import type { Poured } from "./poured.js";

/**
 * One for the season, without a day: it would move through its calendar as it goes.
 *
 * @param demands those to come
 */
export function sprayWarnings(
  demands: readonly CanDemand[],
  pouredFor: (demand: CanDemand) => Poured,
  amounts: Amounts,
): PlanWarning[] {
  const sprays = demands.filter(({ route }) => vesselOf(route) === "sprayer");
  const left = sprays.flatMap((demand) => {
    const { can } = pouredFor(demand);
    const { day, feedings } = demand;
    return leavesSolid(can)
      ? [{ day, plantings: feedings.map((f) => f.planting), mgPerL: can.settlesMgPerL }]
      : [];
  });
  if (left.length === 0) return [];
  const plantings = [...new Set(left.flatMap((one) => one.plantings))];
  const rounds = counted(new Set(left.map(({ day }) => day)).size, "round");
  const most = Math.max(...left.map(({ mgPerL }) => calciumIn(amounts, mgPerL)));
  return [
    {
      code: "spray-solid",
      message: `${plantings.join(", ")}: in ${rounds} up to ${decimal(most, 0)} mg per ${rateMeasures[amounts].waterWord} of the spray does not dissolve in your water: it clogs the nozzle and leaves white spots`,
      mend: "spray a lower `rate` or `level`, or mix the spray with softer water, such as rain",
    },
  ];
}
