/** What to water with, in the terminal. */
// @ts-nocheck

import type { Amounts } from "../garden/index.js";
import type { Plan, PlanWatering } from "../season/index.js";
import { grouped } from "../values.js";
import {
  bedsInWords,
  dryGapInShort,
  feedIsNoWatering,
  unknownWater,
  usualRainTakenOff,
  waterByMonth,
  weekInRow,
} from "../words/index.js";
import { bullet, table, type TextStyle } from "./terminal-text.js";

/** A row for each bed, then what holds for several of them. */
export function waterText({ garden, today, watering = [] }: Plan, style: TextStyle): string {
  const { amounts } = garden;
  const watered = watering.filter(({ weeks }) => weeks.length > 0);
  const weekCells = watered.map(({ weeks }) => weekInRow(weeks, today, amounts));
  const hasThisWeek = weekCells.some((cell) => cell !== "");
  const rows = watered.map(({ bedName, weeks }, i) => [
    bedName,
    ...(hasThisWeek ? [weekCells[i] ?? ""] : []),
    waterByMonth(weeks, amounts),
  ]);
  const lines = [
    ...dryGapLines(watering, amounts),
    ...unknownLines(watering),
    usualRainTakenOff(watering, amounts) ?? [],
    feedIsNoWatering(watering, amounts) ?? [],
  ].flat();
  if (rows.length + lines.length === 0) return "";
  return [
    style.heading("Water, a week"),
    ...(rows.length === 0
      ? []
      : [
          table(
            [...(hasThisWeek ? [["", "this week", "by month"]] : []), ...rows],
            "  ",
            style.width,
          ),
        ]),
    ...lines.map((line) => bullet(line, style.width)),
  ].join("\n");
}

/** Beds with the same gap in one line. */
function dryGapLines(watering: readonly PlanWatering[], amounts: Amounts): string[] {
  const gaps = watering.flatMap(({ bedName, dryGap }) =>
    dryGap === undefined ? [] : [{ bedName, text: dryGapInShort(dryGap, amounts) }],
  );
  return [...grouped(gaps, ({ text }) => text)].map(([text, beds]) => {
    const names = beds.map(({ bedName }) => bedName);
    return `Longest time without water: ${text} (${bedsInWords(names, watering.length)})`;
  });
}

function unknownLines(watering: readonly PlanWatering[]): string[] {
  const unknown = watering.flatMap((bed) => bed.unknown);
  return [...grouped(unknown, ({ why }) => why)].map(([why, those]) =>
    unknownWater(
      those.map(({ planting }) => planting),
      why,
    ),
  );
}
