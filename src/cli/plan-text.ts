/** The plan as a page for a terminal. */
import { counted, totalStockText, vesselOf, volumeText } from "../garden/index.js";
import type { CanMix, Plan, PlannedPlanting, Round } from "../season/index.js";
import {
  cautionsFor,
  dayText,
  feedingInRow,
  fillOfWater,
  fromAll,
  otherFeedInRow,
  stockInEach,
} from "../words/index.js";
import { stockText } from "./stock-text.js";
import type { TextStyle } from "./style.js";
import { bullet, table } from "./table.js";

export function planText(plan: Plan, style: TextStyle): string {
  const { garden, totals } = plan;
  const sections = [
    [
      style.heading(garden.name),
      `${dayText(garden.season.from)} to ${dayText(garden.season.to)}, time zone ${garden.timezone}`,
      [
        counted(totals.rounds, "round"),
        counted(totals.feedings, "feeding"),
        `${volumeText(totals.waterL, garden.amounts)} of water`,
        `${totalStockText(totals.stockMl, garden.amounts)} of stock`,
      ].join(", "),
    ].join("\n"),
    plan.rounds.length === 0
      ? "No feedings in these days."
      : plan.rounds.map((round) => roundText(round, style)).join("\n"),
    stockText(plan, style),
    listed(
      "What changed",
      plan.notes.map((note) => [note.message, ...note.advice].join(" ")),
      style,
    ),
    listed(
      "Warnings",
      plan.warnings.map((w) => `${w.message}: ${w.mend}`),
      style,
    ),
    listed("Taken as usual, since the file does not say", plan.assumptions, style),
    notFed(
      plan.plantings.filter((planting) => !planting.fed),
      style,
    ),
    listed(
      "Mind",
      plan.rounds.length === 0 ? [] : cautionsFor(mixesOf(plan.rounds), plan.stock?.pour),
      style,
    ),
  ];
  return sections.filter((section) => section !== "").join("\n\n") + "\n";
}

function mixesOf(rounds: readonly Round[]): CanMix[] {
  return rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
}

function roundText(round: Round, style: TextStyle): string {
  const time = round.timeOfDay === undefined ? "" : `, ${round.timeOfDay}`;
  const given = round.given ? ", given" : "";
  const bottles = [
    ...new Set(
      mixesOf([round])
        .flatMap((m) => m.pours ?? [])
        .map((p) => p.batch),
    ),
  ];
  const from = bottles.length === 0 ? "" : fromAll(bottles);
  const rows = round.beds.flatMap((bed) =>
    bed.mixes.flatMap((mix, i) => mixRows(mix, i === 0 ? bed.bedName : "")),
  );
  const feedRows = (round.feeds ?? []).flatMap((feed) =>
    feed.fills.map((fill, i) => [
      i === 0 ? feed.bedName : "",
      fillOfWater(fill, "can"),
      stockInEach(fill),
      i === 0 ? otherFeedInRow(feed) : "",
    ]),
  );
  return `${style.heading(dayText(round.day) + time)}${given}${from}\n${table([...rows, ...feedRows], "  ", style.width)}`;
}

/** A row for each kind of fill: bed, cans, stock in each, and for whom. */
function mixRows(mix: CanMix, bedName: string): string[][] {
  const whom = mix.feedings.map(feedingInRow).join(", ");
  return mix.fills.map((fill, i) => [
    i === 0 ? bedName : "",
    fillOfWater(fill, vesselOf(mix.route)),
    stockInEach(fill),
    i === 0 ? whom : "",
  ]);
}

function listed(title: string, lines: readonly string[], style: TextStyle): string {
  if (lines.length === 0) return "";
  return [style.heading(title), ...lines.map((line) => bullet(line, style.width))].join("\n");
}

function notFed(plantings: readonly PlannedPlanting[], style: TextStyle): string {
  if (plantings.length === 0) return "";
  const rows = plantings.map((p) => [p.id, p.cropName, p.reason]);
  return `${style.heading("Not fed")}\n${table(rows, "  ", style.width)}`;
}
