/** What the grower saw on the plants, told: what it changes, for how long, why, and what to do first. */
import type { Crop } from "../crops/index.js";
import {
  type Amounts,
  decimal,
  type Garden,
  type Planting,
  rateIn,
  rateMeasures,
  rateText,
} from "../garden/index.js";
import {
  isOver,
  type RuleMatch,
  type Sighting,
  signEffect,
  type SignEffect,
} from "../rules/index.js";
import type { PlanNote } from "../season/index.js";
import type { PlantingLife } from "../stages/index.js";

interface SignedPlanting {
  readonly planting: Planting;
  /** Absent where the planting is only listed. */
  readonly crop: Crop | undefined;
  readonly life: Pick<PlantingLife, "spans">;
  readonly match: RuleMatch;
  readonly sightings: readonly Sighting[];
}

/** A note for each sign of the season on a planting; those of another season are told together. */
export function signNotes(
  { sightings, planting, crop, life, match }: SignedPlanting,
  { season, amounts }: Pick<Garden, "season" | "amounts">,
): PlanNote[] {
  return sightings
    .filter((sighting) => !isOver(sighting, season))
    .map((sighting) => {
      const effect = signEffect(sighting, sightings, planting, life.spans, match.spans);
      return signNote(sighting, effect, planting, crop?.name ?? planting.cropWord, amounts);
    });
}

function signNote(
  { seen, sign }: Sighting,
  effect: SignEffect,
  planting: Planting,
  cropName: string,
  amounts: Amounts,
): PlanNote {
  const what = `${planting.id} (${planting.cropWord}): ${sign.name} seen on ${seen.on}`;
  return {
    code: "sign",
    planting: planting.id,
    day: seen.on,
    message:
      effect.kind === "unknown-on-crop"
        ? `${what}, though it is not known on ${cropName}: look again; the feed stays as it is`
        : `${what}; ${effectText(effect, amounts)}. ${sign.reason}${reckoned(effect, planting, amounts)}`,
    advice: sign.first_advice,
  };
}

/** A rule's rate is of stock of its own strength; a grower's own is of whatever is in the bottle. */
function reckoned({ kind }: SignEffect, { rateMlPerL }: Planting, amounts: Amounts): string {
  const isTold = rateMlPerL === undefined && (kind === "rate" || kind === "at-highest");
  return isTold
    ? ` These ${rateMeasures[amounts].stock} are of the rule's stock: the cans follow your bottle's strength.`
    : "";
}

function effectText(effect: SignEffect, amounts: Amounts): string {
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
      return `the rate stays at ${rateText(effect.rateMlPerL, amounts)}, the rule's highest`;
    case "rate": {
      const { fromMlPerL, toMlPerL, isHighest, from, until } = effect;
      const way = toMlPerL > fromMlPerL ? "rises" : "falls";
      const highest = isHighest ? ", the rule's highest," : "";
      return `the rate ${way} from ${decimal(rateIn(amounts, fromMlPerL), 2)} to ${rateText(toMlPerL, amounts)}${highest} from ${from} until ${until}`;
    }
  }
}
