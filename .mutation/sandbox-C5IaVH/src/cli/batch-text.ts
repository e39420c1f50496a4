/** The report of `batch` as a page for a terminal. */
// @ts-nocheck

import {
  type Amounts,
  counted,
  dayText,
  decimal,
  rateMeasures,
  shortDate,
  strengthFigure,
  strengthText,
  totalStockText,
} from "../garden/index.js";
import type { BatchReport, BatchToMake, MakingReport, RecipeReport } from "../notes/index.js";
import {
  batchName,
  bottleText,
  dayOfStep,
  kitchenVolumeText,
  makingSteps,
  spoonsText,
  vesselText,
  weightText,
} from "../stock/index.js";
import {
  capital,
  leftToUseUp,
  shellsInAll,
  stepCommand,
  useByWhenKept,
  whiteComesThrough,
} from "../words/index.js";
import { withMend } from "./report.js";
import { bullet, listed, page, tabled, type TextStyle } from "./terminal-text.js";

export function batchText(report: BatchReport, style: TextStyle): string {
  const { garden, making, recipe, amounts } = report;
  return page([
    ...(garden !== undefined && making !== undefined
      ? makingSections(garden.name, making, report, style)
      : []),
    ...(recipe === undefined ? [] : recipeSections(recipe, amounts, style)),
  ]);
}

function makingSections(
  name: string,
  making: MakingReport,
  { amounts, today }: Pick<BatchReport, "amounts" | "today">,
  style: TextStyle,
): string[] {
  const { batches, inHand, shortages, discards, shells } = making;
  const ml = (amount: number): string => totalStockText(amount, amounts);
  const { eggs, saveFrom, shortage } = shells;
  const shellLines = [
    ...(batches.length === 0 ? [] : [shellsInAll(eggs, saveFrom, amounts)]),
    ...(shortage === undefined ? [] : [withMend(shortage)]),
  ];
  return [
    style.heading(`${name}: the stock of the season`),
    inHand.length === 0
      ? ""
      : tabled(
          "Bottles in hand",
          inHand.map((line) => [
            capital(batchName(line.batch)),
            `${ml(line.openingMl)} now`,
            `${ml(line.givenMl)} to be given`,
            line.thrownAwayMl > 0 ? `${ml(line.thrownAwayMl)} left over` : "",
          ]),
          style,
        ),
    batches.length === 0
      ? "No batch is needed: the bottles in hand are enough for every feeding, or there is none."
      : tabled(
          "Batches to make",
          [
            ["shells out", "acid in", "ready", "use by", "makes", "from"],
            ...batches.map((batch) => batchRow(batch, amounts)),
          ],
          style,
        ),
    ...batches.map((batch) => servesText(batch, amounts, style)),
    listed("Shells", shellLines, style),
    listed("Too little stock", shortages.map(withMend), style),
    listed(
      "To use up or throw away",
      discards.map((discard) => leftToUseUp(discard, amounts, today)),
      style,
    ),
  ];
}

function batchRow(batch: BatchToMake, amounts: Amounts): string[] {
  return [
    shortDate(batch.startOn, amounts),
    shortDate(dayOfStep(batch, "add-acid"), amounts),
    shortDate(batch.readyOn, amounts),
    dayText(batch.useBy, amounts),
    totalStockText(batch.volumeMl, amounts),
    counted(batch.eggs, "eggshell"),
  ];
}

function servesText(batch: BatchToMake, amounts: Amounts, style: TextStyle): string {
  const days = [...new Set(batch.serves.map(({ day }) => day))];
  const rows = days.map((day) => {
    const served = batch.serves.filter((s) => s.day === day);
    const ml = served.reduce((sum, pour) => sum + pour.ml, 0);
    return [
      shortDate(day, amounts),
      totalStockText(ml, amounts),
      served.flatMap(({ plantings }) => plantings).join(", "),
    ];
  });
  return tabled(`${capital(batchName(batch.id))} serves`, rows, style);
}

function recipeSections(recipe: RecipeReport, amounts: Amounts, style: TextStyle): string[] {
  const makes = kitchenVolumeText(recipe.makesMl, amounts);
  const title =
    recipe.batch === undefined
      ? `A batch of ${makes}`
      : `Next, ${batchName(recipe.batch)}: ${makes}`;
  return [
    tabled(title, recipeRows(recipe, amounts), style),
    [
      style.heading("Steps"),
      ...recipe.steps.map((step, i) => stepText(step, i, amounts, style)),
    ].join("\n"),
    ...(recipe.batch === undefined ? [] : [commandsText(recipe.batch, style)]),
  ];
}

/** Not wrapped: a line to type stays one. */
function commandsText(batch: string, style: TextStyle): string {
  const lines = makingSteps.map((step) => `  ${stepCommand(step, batch)}`);
  return [style.heading("Write each step down when it is done"), ...lines].join("\n");
}

function recipeRows(r: RecipeReport, amounts: Amounts): string[][] {
  const g = (grams: number): string => weightText(grams, amounts);
  const { shaken, clear } = r.strengthGPerL;
  const crystals = r.crystalsG > 0;
  return [
    [
      "shell",
      `${g(r.shellG)} dry, from ${counted(r.eggs, "egg")} (${r.eggSize}, ${g(r.dryShellPerEggG)} of dry shell each)`,
    ],
    [
      "",
      `about ${spoonsText(r.shellTablespoons)} ground as fine as flour, ${spoonsText(r.crushedTablespoons)} only crushed; weigh it`,
    ],
    ...liquidRows(r, amounts),
    ["vessel", `open, ${vesselText(r.vesselL, amounts)} at the least, as it foams`],
    [
      "gas",
      `${g(r.carbonDioxideG)} of carbon dioxide, about ${vesselText(r.carbonDioxideL, amounts)}`,
    ],
    [
      "pH",
      `${r.ph.whileFizzing.toFixed(1)} while it fizzes, about ${r.ph.finished.toFixed(1)} when it is done`,
    ],
    [
      "strength",
      crystals
        ? `${strengthText(shaken, amounts)} when shaken, ${strengthFigure(clear, amounts, 2)} when poured clear, ${whiteComesThrough({ strainer: "mesh", passes: r.whitePasses })}`
        : `${strengthText(shaken, amounts)}, all dissolved`,
    ],
    ...(crystals ? [["", whiteText(r, amounts)]] : []),
    [
      "waiting",
      `shells out ${dayText(r.startOn, amounts)}, acid in ${dayText(r.acidOn, amounts)}, ready ${dayText(r.readyOn, amounts)}`,
    ],
    ["bottles", `${r.bottles} of ${bottleText(r.bottleMl, amounts)}`],
    ["use by", useByWhenKept(r.useBy, amounts)],
  ];
}

function whiteText({ acid, crystalsG, strengthGPerL }: RecipeReport, amounts: Amounts): string {
  const settles = `${weightText(crystalsG, amounts)} of fine white crystals settle. Nothing is wrong: shake the bottle, stir the can.`;
  switch (acid) {
    case "citric":
      return `It may stay clear for a day or two, with up to ${strengthFigure(strengthGPerL.beforeCrystals, amounts)} per ${rateMeasures[amounts].strengthWord} dissolved, more than the water can keep; then ${settles}`;
    case "vinegar":
      return `So strong a vinegar makes more than the water can keep: ${settles}`;
  }
}

function liquidRows(r: RecipeReport, amounts: Amounts): string[][] {
  const acidG = weightText(r.acidG, amounts);
  switch (r.acid) {
    case "citric":
      return [
        [
          "acid",
          `${acidG} of citric acid, ${r.citricForm ?? "anhydrous"} (about ${spoonsText(r.acidTablespoons ?? 0)}; weigh it)`,
        ],
        ["water", kitchenVolumeText(r.waterMl, amounts)],
      ];
    case "vinegar":
      return [
        [
          "acid",
          `${kitchenVolumeText(r.vinegarMl ?? 0, amounts)} of vinegar of ${decimal(r.vinegarPercent ?? 0, 1)} % (${acidG} of acetic acid)`,
        ],
        ["water", "none: the vinegar brings it"],
      ];
  }
}

function stepText(
  { day, text, cautions }: RecipeReport["steps"][number],
  index: number,
  amounts: Amounts,
  style: TextStyle,
): string {
  const mark = `${index + 1}. `.padStart(4);
  return [
    bullet(`${shortDate(day, amounts)}: ${text}`, style.width, mark),
    ...cautions.map((caution) => bullet(caution, style.width, `${" ".repeat(mark.length)}! `)),
  ].join("\n");
}
