/** What the grower saw on the plants, told: what it changes, for how long, why, and what to do first. */
import { decimal, type Planting } from "../garden/index.js";
import type { Sighting, SignEffect } from "../rules/index.js";
import type { PlanNote } from "../season/index.js";

export function signNote(
  { seen, sign }: Sighting,
  effect: SignEffect,
  planting: Planting,
  cropName: string,
): PlanNote {
  const what = `${planting.id} (${planting.cropWord}): ${sign.name} seen on ${seen.on}`;
  return {
    code: "sign",
    planting: planting.id,
    day: seen.on,
    message:
      effect.kind === "unknown-on-crop"
        ? `${what}, though it is not known on ${cropName}: look again; the feed stays as it is`
        : `${what}; ${effectText(effect)}. ${sign.reason}${reckoned(effect, planting)}`,
    advice: sign.first_advice,
  };
}

/** A rule's mL are of stock of its own strength; a grower's own are of whatever is in the bottle. */
function reckoned({ kind }: SignEffect, { rateMlPerL }: Planting): string {
  const isTold = rateMlPerL === undefined && (kind === "rate" || kind === "at-highest");
  return isTold ? " These mL are of the rule's stock: the cans follow your bottle's strength." : "";
}

function effectText(effect: SignEffect): string {
  switch (effect.kind) {
    case "unknown-on-crop":
      return "the feed stays as it is";
    case "not-fed":
      return "it is not fed, so no rate changes";
    case "same-rate":
      return "the rate stays as it is";
    case "no-stage":
      return `until ${effect.until} it is in no stage in which that changes the feed, so the rate stays as it is`;
    case "at-highest":
      return `the rate stays at ${decimal(effect.rateMlPerL, 2)} mL per L, the rule's highest`;
    case "rate": {
      const { fromMlPerL, toMlPerL, isHighest, from, until } = effect;
      const way = toMlPerL > fromMlPerL ? "rises" : "falls";
      const highest = isHighest ? ", the rule's highest," : "";
      return `the rate ${way} from ${decimal(fromMlPerL, 2)} to ${decimal(toMlPerL, 2)} mL per L${highest} from ${from} until ${until}`;
    }
  }
}
