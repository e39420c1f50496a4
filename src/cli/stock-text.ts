/** The stock side of the plan for a terminal: what a can carries, batches to make, shells. */
import { counted, totalStockText } from "../garden/index.js";
import { mixesOf, type Plan } from "../season/index.js";
import { dayOfStep } from "../stock/index.js";
import {
  calciumOfSeason,
  leftOver,
  newBottleHolds,
  saveShells,
  shortDate,
  turnsWhite,
} from "../words/index.js";
import { withMend } from "./report.js";
import { listed, tabled, type TextStyle } from "./terminal-text.js";

export function stockText({ stock, rounds, garden, today }: Plan, style: TextStyle): string {
  if (stock === undefined || rounds.length === 0) return "";
  const { batches, discards, shells } = stock.making;
  const { eggs, saveFrom, shortage } = shells;
  const white = turnsWhite(stock);
  const lines = [
    newBottleHolds(stock, garden.amounts),
    calciumOfSeason(mixesOf(rounds), stock.pour, garden.amounts),
    ...(white === undefined ? [] : [white]),
    ...discards.map((discard) => leftOver(discard, garden.amounts, today)),
    ...(saveFrom === undefined ? [] : [saveShells(eggs, saveFrom)]),
    ...(shortage === undefined ? [] : [withMend(shortage)]),
  ];
  const toMake = batches.map((batch) => [
    batch.id,
    shortDate(batch.startOn),
    shortDate(dayOfStep(batch, "add-acid")),
    shortDate(batch.readyOn),
    shortDate(batch.useBy),
    totalStockText(batch.volumeMl, garden.amounts),
    counted(batch.eggs, "egg"),
  ]);
  const head = ["batch", "dry shells", "add acid", "strain", "use by", "makes", "from"];
  const making = toMake.length === 0 ? [] : [tabled("To make", [head, ...toMake], style)];
  return [listed("Stock", lines, style), ...making].join("\n");
}
