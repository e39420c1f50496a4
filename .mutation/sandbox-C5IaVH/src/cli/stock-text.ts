/** The stock side of the plan for a terminal: what a can carries, batches to make, shells. */
// @ts-nocheck

import { counted, shortDate, totalStockText } from "../garden/index.js";
import { mixesOf, type Plan } from "../season/index.js";
import { batchName, dayOfStep } from "../stock/index.js";
import {
  calciumOfSeason,
  leftOver,
  newBottleHolds,
  saveShells,
  turnsWhite,
} from "../words/index.js";
import { withMend } from "./report.js";
import { listed, tabled, type TextStyle } from "./terminal-text.js";

export function stockText({ stock, rounds, garden, today }: Plan, style: TextStyle): string {
  const { amounts } = garden;
  if (stock === undefined || rounds.length === 0) return "";
  const { batches, discards, shells } = stock.making;
  const { eggs, saveFrom, shortage } = shells;
  const white = turnsWhite(stock);
  const lines = [
    newBottleHolds(stock, amounts),
    calciumOfSeason(mixesOf(rounds), stock.pour, amounts),
    ...(white === undefined ? [] : [white]),
    ...discards.map((discard) => leftOver(discard, amounts, today)),
    ...(saveFrom === undefined ? [] : [saveShells(eggs, saveFrom, amounts)]),
    ...(shortage === undefined ? [] : [withMend(shortage)]),
  ];
  const toMake = batches.map((batch) => [
    batchName(batch.id),
    shortDate(batch.startOn, amounts),
    shortDate(dayOfStep(batch, "add-acid"), amounts),
    shortDate(batch.readyOn, amounts),
    shortDate(batch.useBy, amounts),
    totalStockText(batch.volumeMl, amounts),
    counted(batch.eggs, "egg"),
  ]);
  const head = ["batch", "dry shells", "add acid", "strain", "use by", "makes", "from"];
  const making = toMake.length === 0 ? [] : [tabled("To make", [head, ...toMake], style)];
  return [listed("Stock", lines, style), ...making].join("\n");
}
