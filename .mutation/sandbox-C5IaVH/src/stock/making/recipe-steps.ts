/** The recipe told step by step, each caution at the step where it counts. */
// @ts-nocheck

import { type Acid, counted, strengthFigure, strengthText } from "../../garden/index.js";
import type { Chemistry } from "../chemistry/index.js";
import { bottleText, kitchenVolumeText, spoonsText, vesselText, weightText } from "./kitchen.js";
import { mixCautions } from "./recipe-cautions.js";
import type { RecipeAmounts, RecipeStep } from "./recipe-types.js";

export function recipeSteps(r: RecipeAmounts, chemistry: Chemistry): RecipeStep[] {
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
      // Common practice, no source.
      key: "grind",
      dayFromStart: mixOn,
      text: `Grind the dry shells to a fine powder, in a mill kept for it or a mortar, and weigh out ${weightText(r.shellG, amounts)} (about ${counted(r.eggs, "egg")}, ${r.means.eggs.name}). Coarse bits react slowly and are left over.`,
      cautions: ["Do not breathe the dust: wear a mask, and let it settle in the closed mill."],
    },
    {
      key: "mix",
      dayFromStart: mixOn,
      text: `${liquidText(r)} an open vessel of at least ${vesselText(r.vesselL, amounts)}, then add the shell a spoonful at a time.`,
      cautions: mixCautions(r, chemistry),
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
      text: [...strainTexts(r), shellLeftText(r)].join(" "),
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

function liquidText(r: RecipeAmounts): string {
  const { amounts = "metric" } = r.means;
  const { acid } = r.jar;
  switch (acid.kind) {
    case "citric":
      return `${waterText(r)} ${weightText(acid.grams, amounts)} of citric acid (${acid.form}; about ${spoonsText(r.acidTablespoons ?? 0)}, but weigh it) in the rest, in`;
    case "vinegar":
      return `Pour ${kitchenVolumeText(acid.volumeMl, amounts)} of vinegar of ${acid.percent} % into`;
  }
}

function waterText({ waterMl, washMl, means }: RecipeAmounts): string {
  const { amounts = "metric" } = means;
  return `Measure ${kitchenVolumeText(waterMl, amounts)} of water and keep back ${kitchenVolumeText(washMl, amounts)} for washing the sieve. Dissolve`;
}

const whiteNames: Readonly<Record<Acid, string>> = {
  citric: "calcium citrate",
  vinegar: "calcium acetate",
};

/** The white is kept: a cloth would hold back most of the calcium. */
function strainTexts(r: RecipeAmounts): string[] {
  const { amounts = "metric", acid } = r.means;
  const makes = `it makes about ${kitchenVolumeText(r.makesMl, amounts)}.`;
  if (r.crystalsG === 0) return [`Pour it through a sieve into ${bottles(r)}; ${makes}`];
  const washed =
    r.washMl > 0
      ? `Wash the white through with the ${kitchenVolumeText(r.washMl, amounts)} kept back;`
      : "In all";
  return [
    `Stir up the white and pour it at once through a coarse sieve or nylon mesh, no cloth or paper, into ${bottles(r)}. ${washed} ${makes}`,
    "If the pot is white already, do just the same; if it is clear, the bottle turns white in a day or two.",
    `The white is ${weightText(r.crystalsG, amounts)} of fine ${whiteNames[acid]} and holds ${mostly(r)} of the calcium: keep it.`,
  ];
}

function mostly(r: RecipeAmounts): string {
  return r.clearGPerL < r.shakenGPerL / 2 ? "nearly all" : "part";
}

function shellLeftText(r: RecipeAmounts): string {
  return `Rinse and dry the shell left on the sieve${r.shellLeftG > 0 ? `, about ${weightText(r.shellLeftG, r.means.amounts ?? "metric")}` : ""}: it counts towards the next batch.`;
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
