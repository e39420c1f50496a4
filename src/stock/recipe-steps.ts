/** The recipe told step by step, each caution at the step where it counts. */
import type { Recipe } from "./recipe.js";

export interface RecipeStep {
  readonly key: "dry-shells" | "crush" | "mix" | "wait" | "check" | "strain" | "store" | "use";
  /** Days after the shells are set out. */
  readonly dayFromStart: number;
  readonly text: string;
  readonly cautions: readonly string[];
}

export function recipeSteps(r: Omit<Recipe, "steps">): RecipeStep[] {
  const mixOn = r.dryDays;
  const strainOn = r.dryDays + r.reactionDays;
  return [
    {
      key: "dry-shells",
      dayFromStart: 0,
      text: `Rinse ${r.eggs} eggshells, boil them 10 minutes, and spread them out to dry for ${days(r.dryDays)}.`,
      cautions: [
        "Raw shell can carry salmonella: boil it, and wash hands, sink and boards.",
        "Boiling water scalds.",
      ],
    },
    {
      key: "crush",
      dayFromStart: mixOn,
      text: `Crush the shells and weigh out ${grams(r.shellG)}${r.jar.shellPurity < 1 ? " of dry shell" : ""} (about ${r.eggs} large eggs). The finer, the faster.`,
      cautions: ["Do not breathe the dust: wear a mask, or crush the shells in a closed bag."],
    },
    {
      key: "mix",
      dayFromStart: mixOn,
      text: `${liquidText(r)} in an open vessel of at least ${litres(r.vesselL)}, then add the shell a spoonful at a time.`,
      cautions: [
        "It foams to several times its height: add slowly, leave the vessel open.",
        `It gives off about ${litres(r.carbonDioxideL)} of carbon dioxide: air the room, and never close the vessel while it fizzes; it would burst.`,
        r.means.acid === "citric"
          ? "Citric acid hurts eyes and airways: wear glasses, do not breathe the dust, rinse splashes with plenty of water."
          : "Vinegar stings eyes: wear glasses, rinse splashes with plenty of water.",
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
      text: `Strain it through a cloth into ${bottles(r)}; it makes about ${millilitres(r.makesMl)}.${whiteText(r)}`,
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

function liquidText(r: Omit<Recipe, "steps">): string {
  if (r.vinegarMl !== undefined)
    return `Pour ${millilitres(r.vinegarMl)} of vinegar of ${r.means.vinegarPercent} %`;
  return `Dissolve ${grams(r.acidG)} of citric acid (${r.means.citricForm}; about ${spoons(r.acidTablespoons ?? 0)}, but weigh it) in ${millilitres(r.waterMl)} of water`;
}

function whiteText(r: Omit<Recipe, "steps">): string {
  return r.crystalsG > 0
    ? ` It may run clear for a day or two and then turn white: fine crystals of calcium citrate, ${grams(r.crystalsG)} in all, which hold most of the calcium. Keep them.`
    : "";
}

function shakeText(r: Omit<Recipe, "steps">): string {
  return r.crystalsG > 0
    ? `shake the bottle and stir the can: shaken it brings ${r.shakenGPerL.toFixed(1)} g of calcium per litre, poured clear only ${r.clearGPerL.toFixed(2)} g.`
    : `it holds ${r.clearGPerL.toFixed(1)} g of calcium per litre, all dissolved.`;
}

function bottles(r: Omit<Recipe, "steps">): string {
  const size = millilitres(r.means.bottleMl);
  return r.bottles === 1 ? `a bottle of ${size}` : `${r.bottles} bottles of ${size}`;
}

/** Level US spoons, to the half: three teaspoons to the tablespoon. */
function spoons(tablespoons: number): string {
  const [n, spoon] =
    tablespoons > 0.9 ? [tablespoons, "tablespoon"] : [3 * tablespoons, "teaspoon"];
  const halves = Math.max(1, Math.round(2 * n)) / 2;
  return `${halves} level ${spoon}${halves > 1 ? "s" : ""}`;
}

function days(n: number): string {
  return n === 1 ? "a day" : `${n} days`;
}

function grams(g: number): string {
  return g < 10 ? `${g.toFixed(1)} g` : `${Math.round(g)} g`;
}

function millilitres(ml: number): string {
  return ml < 1000 ? `${Math.round(ml)} mL` : `${trimmed(ml / 1000, 2)} L`;
}

function litres(l: number): string {
  return `${trimmed(l, l < 10 ? 1 : 0)} L`;
}

function trimmed(x: number, digits: number): string {
  return String(Number(x.toFixed(digits)));
}
