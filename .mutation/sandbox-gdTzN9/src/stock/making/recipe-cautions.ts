/** What to mind where acid meets shell. */
// @ts-nocheck

import { decimal } from "../../garden/index.js";
import type { AcidDose, Chemistry } from "../chemistry/index.js";
import { vesselText } from "./kitchen.js";
import type { RecipeAmounts } from "./recipe-types.js";

export function mixCautions(r: RecipeAmounts, chemistry: Chemistry): string[] {
  return [
    "It foams to several times its height: add slowly, leave the vessel open.",
    gasCaution(r, chemistry),
    ...acidCautions(r.jar.acid, chemistry),
    "Glass or food plastic; acid eats aluminium, zinc and copper. Use nothing of it for food again, and never bring acid and bleach together: the gas is poisonous.",
  ];
}

/** More gas than a small room should hold is let out of doors. */
function gasCaution({ carbonDioxideL, means }: RecipeAmounts, { kitchen }: Chemistry): string {
  const gas = `It gives off about ${vesselText(carbonDioxideL, means.amounts ?? "metric")} of carbon dioxide`;
  const closed = "never close the vessel while it fizzes; it would burst";
  const share = kitchen.roomCarbonDioxideShare.value;
  const room = kitchen.roomM3.value;
  return carbonDioxideL > 1000 * room * share
    ? `${gas}, over ${decimal(100 * share, 1)} % of the air of a small room (${room} m3), where it is bad to breathe: work outdoors or with doors open, never in a cellar, and ${closed}.`
    : `${gas}: air the room, and ${closed}.`;
}

function acidCautions(acid: AcidDose, { kitchen }: Chemistry): string[] {
  switch (acid.kind) {
    case "citric":
      return [
        "Citric acid hurts eyes and airways: wear glasses, do not breathe the dust, rinse splashes with plenty of water.",
      ];
    case "vinegar": {
      const { vinegarStrongPercent: strong, vinegarKitchenPercent: most } = kitchen;
      if (acid.percent < strong.value)
        return ["Vinegar stings eyes: wear glasses, rinse splashes with plenty of water."];
      const burns = `Vinegar of ${acid.percent} % burns skin and eyes: wear gloves and goggles, rinse splashes at once with plenty of water, for minutes; do not breathe its fumes.`;
      const tooStrong = `Acid above ${most.value} % is not for kitchens: work outdoors, or buy it weaker.`;
      return acid.percent > most.value ? [burns, tooStrong] : [burns];
    }
  }
}
