/** The stock side of the plan for a terminal: what a can carries, batches to make, shells. */
import { counted, totalStockText } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import { dayOfStep } from "../stock/index.js";
import {
  calciumOfSeason,
  leftOver,
  newBottleHolds,
  saveShells,
  shortDate,
  turnsWhite,
} from "../words/index.js";
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

function strengthLines({ stock, rounds }: Plan): string[] {
  if (stock === undefined) return [];
  const mixes = rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
  const white = turnsWhite(stock);
  return [
    newBottleHolds(stock),
    calciumOfSeason(mixes, stock.pour),
    ...(white === undefined ? [] : [white]),
  ];
}

function discardLines({ stock, garden }: Plan): string[] {
  return (stock?.making.discards ?? []).map((discard) => leftOver(discard, garden.amounts));
}

function shellLines({ stock }: Plan): string[] {
  if (stock === undefined) return [];
  const { shells } = stock.making;
  return [
    ...(shells.saveFrom === undefined ? [] : [saveShells(shells.eggs, shells.saveFrom)]),
    ...(shells.shortage === undefined
      ? []
      : [`${shells.shortage.message}: ${shells.shortage.mend}`]),
  ];
}

function batchTable({ stock, garden }: Plan, style: TextStyle): string {
  const rows = (stock?.making.batches ?? []).map((batch) => [
    batch.id,
    shortDate(batch.startOn),
    shortDate(dayOfStep(batch, "add-acid")),
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
