/** The plan as a page for a terminal. */
import {
  type Amounts,
  counted,
  dayText,
  totalStockText,
  vesselOf,
  volumeText,
} from "../garden/index.js";
import { wasteAdvice } from "../notes/index.js";
import {
  type CanMix,
  mixesOf,
  type Plan,
  type PlannedPlanting,
  type Round,
} from "../season/index.js";
import {
  cautionsFor,
  climateOfPlace,
  closed,
  doneWords,
  fedSpans,
  feedingInRow,
  fillOfWater,
  fromAll,
  fromEach,
  missingStock,
  otherFeedInRow,
  stockInRow,
  tooLittleStock,
} from "../words/index.js";
import { loadTables } from "../tables.js";
import { grouped } from "../values.js";
import { calciumText } from "./calcium-text.js";
import { withMend } from "./report.js";
import { stockText } from "./stock-text.js";
import { listed, page, table, type TextStyle, wrap } from "./terminal-text.js";
import { waterText } from "./water-text.js";

export function planText(plan: Plan, style: TextStyle): string {
  const { garden, totals } = plan;
  const notFed = plan.plantings.filter((planting) => !planting.fed);
  return page([
    [
      style.heading(garden.name),
      `${dayText(garden.season.from, garden.amounts)} to ${dayText(garden.season.to, garden.amounts)}, time zone ${garden.timezone}`,
      ...(garden.climate ? wrap(climateOfPlace(garden.climate, garden.amounts), style.width) : []),
      [
        counted(totals.rounds, "round"),
        counted(totals.feedings, "feeding"),
        `${volumeText(totals.waterL, garden.amounts)} of water`,
        `${totalStockText(totals.stockMl, garden.amounts)} of stock`,
      ].join(", "),
    ].join("\n"),
    plan.rounds.length === 0
      ? "No feedings in these days."
      : plan.rounds.map((round) => roundText(round, garden.amounts, style)).join("\n"),
    waterText(plan, style),
    stockText(plan, style),
    calciumText(plan, style),
    listed(
      "What changed",
      plan.notes.map((note) => [closed(note.message), ...note.advice].join(" ")),
      style,
    ),
    listed("Warnings", plan.warnings.map(withMend), style),
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

/** What holds for several is told once. */
function ofPlantings(plantings: readonly PlannedPlanting[], text: string): string {
  const crops = [...new Set(plantings.map(({ cropName }) => cropName))];
  return `${plantings.map(({ id }) => id).join(", ")} (${crops.join(", ")}): ${text}`;
}

function roundText(round: Round, amounts: Amounts, style: TextStyle): string {
  const time = round.timeOfDay === undefined ? "" : `, ${round.timeOfDay}`;
  const pours = mixesOf([round]).flatMap((mix) => mix.pours ?? []);
  const bottles = [...new Set(pours.map((pour) => pour.batch))];
  const from = bottles.length === 0 ? "" : fromAll(bottles);
  const short = round.shortMl === undefined ? "" : `, ${tooLittleStock}`;
  const rows = round.beds.flatMap((bed) =>
    bed.mixes.flatMap((mix, i) => mixRows(mix, i === 0 ? bed.bedName : "", amounts)),
  );
  const feedRows = (round.feeds ?? []).flatMap((feed) =>
    feed.fills.map((fill, i) => [
      i === 0 ? feed.bedName : "",
      fillOfWater(fill, "can"),
      stockInRow(fill),
      i === 0 ? otherFeedInRow(feed, amounts) : "",
    ]),
  );
  return `${style.heading(dayText(round.day, amounts) + time)}${doneWords(round)}${from}${short}\n${table([...rows, ...feedRows], "  ", style.width)}`;
}

/** A row for each kind of fill: bed, cans, stock in each, and for whom. */
function mixRows(mix: CanMix, bedName: string, amounts: Amounts): string[][] {
  const whom = mix.feedings.map(feedingInRow).join(", ");
  const short = mix.shortMl === undefined ? "" : missingStock(mix.shortMl, amounts);
  return mix.fills.map((fill, i) => [
    i === 0 ? bedName : "",
    fillOfWater(fill, vesselOf(mix.route)),
    stockInRow(fill),
    [...(i === 0 ? [whom, short] : []), fromEach(fill)].filter((text) => text !== "").join("; "),
  ]);
}
