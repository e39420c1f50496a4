/** The recipe told step by step, each caution at the step where it counts. */
import { type Acid, counted, strengthFigure, strengthText } from "../../garden/index.js";
import { bottleText, kitchenVolumeText, spoonsText, vesselText, weightText } from "./kitchen.js";
import type { RecipeAmounts, RecipeStep } from "./recipe-types.js";

export function recipeSteps(r: RecipeAmounts): RecipeStep[] {
  const mixOn = r.dryDays;
  const strainOn = r.dryDays + r.reactionDays;
  const { amounts = "metric" } = r.means;
  return [
    {
      key: "dry-shells",
      dayFromStart: 0,
      text: `Rinse ${counted(r.eggs, "eggshell")}, boil them 10 minutes, and spread them out to dry for ${days(r.dryDays)}.`,
      cautions: [
        "Raw shell can carry salmonella: boil it, and wash hands, sink and boards.",
        "Boiling water scalds.",
      ],
    },
    {
      key: "crush",
      dayFromStart: mixOn,
      text: `Crush the shells and weigh out ${weightText(r.shellG, amounts)}${r.jar.shellPurity < 1 ? " of dry shell" : ""} (about ${counted(r.eggs, "large egg")}). The finer, the faster.`,
      cautions: ["Do not breathe the dust: wear a mask, or crush the shells in a closed bag."],
    },
    {
      key: "mix",
      dayFromStart: mixOn,
      text: `${liquidText(r)} an open vessel of at least ${vesselText(r.vesselL, amounts)}, then add the shell a spoonful at a time.`,
      cautions: [
        "It foams to several times its height: add slowly, leave the vessel open.",
        `It gives off about ${vesselText(r.carbonDioxideL, amounts)} of carbon dioxide: air the room, and never close the vessel while it fizzes; it would burst.`,
        acidCautions[r.means.acid],
      ],
    },
    {
      key: "wait",
      dayFromStart: mixOn,
      text: `Let it stand open for ${days(r.reactionDays)}, covered with a cloth; stir now and then.`,
      cautions: ["A cloth, not a lid. Out of reach of children and animals."],
    },
    {
      key: "check",
      dayFromStart: strainOn,
      text: `It is ready when the bubbles have stopped, some shell is left over, and a test strip reads about pH ${r.phFinished.toFixed(1)} (${r.phWhileFizzing.toFixed(1)} while it still holds gas). Still acid, below 5.5: add shell and wait.`,
      cautions: [],
    },
    {
      key: "strain",
      dayFromStart: strainOn,
      text: `Strain it through a cloth into ${bottles(r)}; it makes about ${kitchenVolumeText(r.makesMl, amounts)}.${whiteText(r)}`,
      cautions: ["Close bottles only when the fizzing has quite ended, and not tightly at first."],
    },
    {
      key: "store",
      dayFromStart: strainOn,
      text: `Label each bottle with what it is, the day, and the use-by day: ${r.shelfDays} days on the shelf, ${r.fridgeDays} days in the fridge.`,
      cautions: [
        "Label it 'plant feed, not for drinking'; keep it away from food and children.",
        "Throw it away when it is mouldy, smells, or gasses again.",
      ],
    },
    {
      key: "use",
      dayFromStart: strainOn,
      text: `Dilute it before use; ${shakeText(r)}`,
      cautions: [
        "Wash produce before eating.",
        "Your local rules, your certifier and a soil test come first.",
      ],
    },
  ];
}

const acidCautions: Readonly<Record<Acid, string>> = {
  citric:
    "Citric acid hurts eyes and airways: wear glasses, do not breathe the dust, rinse splashes with plenty of water.",
  vinegar: "Vinegar stings eyes: wear glasses, rinse splashes with plenty of water.",
};

function liquidText(r: RecipeAmounts): string {
  const { amounts = "metric" } = r.means;
  const { acid } = r.jar;
  switch (acid.kind) {
    case "citric":
      return `Dissolve ${weightText(acid.grams, amounts)} of citric acid (${acid.form}; about ${spoonsText(r.acidTablespoons ?? 0)}, but weigh it) in ${kitchenVolumeText(r.waterMl, amounts)} of water in`;
    case "vinegar":
      return `Pour ${kitchenVolumeText(acid.volumeMl, amounts)} of vinegar of ${acid.percent} % into`;
  }
}

function whiteText(r: RecipeAmounts): string {
  return r.crystalsG > 0
    ? ` It may run clear for a day or two and then turn white: fine crystals of calcium citrate, ${weightText(r.crystalsG, r.means.amounts ?? "metric")} in all, which hold most of the calcium. Keep them.`
    : "";
}

function shakeText(r: RecipeAmounts): string {
  const { amounts = "metric" } = r.means;
  return r.crystalsG > 0
    ? `shake the bottle and stir the can: shaken it brings ${strengthText(r.shakenGPerL, amounts)}, poured clear only ${strengthFigure(r.clearGPerL, amounts, 2)}.`
    : `it holds ${strengthText(r.clearGPerL, amounts)}, all dissolved.`;
}

function bottles(r: RecipeAmounts): string {
  const size = bottleText(r.means.bottleMl, r.means.amounts ?? "metric");
  return r.bottles === 1 ? `a bottle of ${size}` : `${r.bottles} bottles of ${size}`;
}

function days(n: number): string {
  return n === 1 ? "a day" : `${n} days`;
}
