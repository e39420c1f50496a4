/** The stock side of the plan for a terminal: what a can carries, batches to make, shells. */
import { counted, decimal, totalStockText } from "../garden/index.js";
import type { CanMix, Plan } from "../season/index.js";
import { shortDate } from "../words/index.js";
import type { TextStyle } from "./style.js";
import { bullet, table } from "./table.js";

export function stockText(plan: Plan, style: TextStyle): string {
  const { stock } = plan;
  if (stock === undefined || plan.rounds.length === 0) return "";
  const lines = [...strengthLines(plan), ...discardLines(plan), ...shellLines(plan)];
  const { batches } = stock.making;
  return [
    style.heading("Stock"),
    ...lines.map((line) => bullet(line, style.width)),
    ...(batches.length === 0 ? [] : [style.heading("To make"), batchTable(plan, style)]),
  ].join("\n");
}

/** What a can really carries: from the stock, from the tap, and if the bottle were poured clear. */
function strengthLines(plan: Plan): string[] {
  const { stock, rounds } = plan;
  if (stock === undefined) return [];
  const mixes = rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
  const span = (pick: (mix: CanMix) => number | undefined, places: number): string | undefined => {
    const values = mixes.flatMap((mix) => pick(mix) ?? []);
    if (values.length === 0) return undefined;
    const texts = [Math.min(...values), Math.max(...values)].map((v) => decimal(v, places));
    return [...new Set(texts)].join(" to ");
  };
  const tap = span((mix) => mix.tapCalciumMgPerL, 0);
  const clear = span((mix) => mix.clearCalciumMgPerL, 1);
  const isShaken = stock.pour === "shaken";
  return [
    `a new bottle holds ${decimal(stock.newStrengthGPerL, 1)} g of calcium per litre as you pour it (${stock.pour}), at pH ${decimal(stock.newPh, 1)}`,
    [
      `a can carries ${span((mix) => mix.calciumMgPerL, 0) ?? "0"} mg of calcium per litre from the stock`,
      ...(tap === undefined ? [] : [`${tap} mg from the source water`]),
      ...(isShaken && clear !== undefined
        ? [`poured clear the stock would bring ${clear} mg`]
        : []),
    ].join("; "),
    ...(isShaken && stock.newClearStrengthGPerL < stock.newStrengthGPerL / 2
      ? [
          "a fresh bottle can be clear for a day or two and then turn white: that white is the calcium, so shake the bottle and stir the can",
        ]
      : []),
  ];
}

function discardLines({ stock, garden }: Plan): string[] {
  return (stock?.making.discards ?? []).map(
    ({ batch, useUpBy, ml }) =>
      `${batch}: ${totalStockText(ml, garden.amounts)} is left over; use it up by ${shortDate(useUpBy)}, or throw it away`,
  );
}

function shellLines({ stock }: Plan): string[] {
  if (stock === undefined) return [];
  const { shells } = stock.making;
  return [
    ...(shells.saveFrom === undefined
      ? []
      : [
          `save eggshells from ${shortDate(shells.saveFrom)} on: ${counted(shells.eggs, "shell")} in all`,
        ]),
    ...(shells.shortage === undefined
      ? []
      : [`${shells.shortage.message}: ${shells.shortage.mend}`]),
  ];
}

function batchTable({ stock, garden }: Plan, style: TextStyle): string {
  const day = (
    batch: { steps: readonly { step: string; day: string }[] },
    step: string,
  ): string => {
    const found = batch.steps.find((s) => s.step === step);
    return found === undefined ? "" : shortDate(found.day as Plan["today"]);
  };
  const rows = (stock?.making.batches ?? []).map((batch) => [
    batch.id,
    shortDate(batch.startOn),
    day(batch, "add-acid"),
    shortDate(batch.readyOn),
    shortDate(batch.useBy),
    totalStockText(batch.volumeMl, garden.amounts),
    counted(batch.eggs, "egg"),
  ]);
  return table(
    [["batch", "dry shells", "add acid", "strain", "use by", "makes", "from"], ...rows],
    "  ",
    style.width,
  );
}
