/** The plan as a page for a terminal. */
// @ts-nocheck

import { counted, shortDay, totalStockText, volumeText } from "../garden/index.js";
import { wasteAdvice } from "../notes/index.js";
import { isSoon, mixesOf, type Plan, type PlannedPlanting } from "../season/index.js";
import { cautionsFor, climateOfPlace, closed, fedSpans } from "../words/index.js";
import { loadTables } from "../tables.js";
import { grouped } from "../values.js";
import { agendaText, firstLines, type PlanView } from "./agenda-text.js";
import { calciumText } from "./calcium-text.js";
import { withMend } from "./report.js";
import { stockText } from "./stock-text.js";
import { listed, page, type TextStyle, warned, wrap } from "./terminal-text.js";
import { waterText } from "./water-text.js";

/** @param whole of all its days: it says what today asks for, whatever days are printed */
export function planText(plan: Plan, whole: Plan, view: PlanView, style: TextStyle): string {
  const { garden, today } = plan;
  const notFed = plan.plantings.filter((planting) => !planting.fed);
  const soon = plan.warnings.filter((warning) => isSoon(warning, today));
  return page([
    [style.heading(garden.name), ...firstLines(whole, style)].join("\n"),
    warned("Warnings for the next two weeks", soon.map(withMend), style),
    agendaText(plan, view, style),
    seasonText(plan, style),
    waterText(plan, style),
    stockText(plan, style),
    calciumText(plan, style),
    listed(
      "What changed",
      plan.notes.map((note) => [closed(note.message), ...note.advice].join(" ")),
      style,
    ),
    warned(
      "Warnings",
      plan.warnings.filter((warning) => !isSoon(warning, today)).map(withMend),
      style,
    ),
    listed("Advice", [wasteAdvice(plan, loadTables()) ?? []].flat(), style),
    listed("Taken as usual, since the file does not say", plan.assumptions, style),
    listed(
      "Fed",
      fedSpans(plan.plantings, garden.amounts).map(({ plantings, text }) =>
        ofPlantings(plantings, text),
      ),
      style,
    ),
    listed(
      "Not fed",
      [...grouped(notFed, ({ reason }) => reason)].map(([reason, plantings]) =>
        ofPlantings(plantings, reason),
      ),
      style,
    ),
    listed(
      "Mind",
      plan.rounds.length === 0 ? [] : cautionsFor(mixesOf(plan.rounds), plan.stock?.pour),
      style,
    ),
  ]);
}

function seasonText({ garden, totals, today }: Plan, style: TextStyle): string {
  const { amounts, season, timezone, climate } = garden;
  const [from, to] = [season.from, season.to].map((day) => shortDay(day, amounts, today));
  return [
    style.heading("Season"),
    `${from} to ${to}, time zone ${timezone}`,
    ...(climate ? wrap(climateOfPlace(climate, amounts), style.width) : []),
    [
      counted(totals.rounds, "round"),
      counted(totals.feedings, "feeding"),
      `${volumeText(totals.waterL, amounts)} of water`,
      `${totalStockText(totals.stockMl, amounts)} of stock`,
    ].join(", "),
  ].join("\n");
}

/** What holds for several is told once. */
function ofPlantings(plantings: readonly PlannedPlanting[], text: string): string {
  const crops = [...new Set(plantings.map(({ cropName }) => cropName))];
  return `${plantings.map(({ id }) => id).join(", ")} (${crops.join(", ")}): ${text}`;
}
