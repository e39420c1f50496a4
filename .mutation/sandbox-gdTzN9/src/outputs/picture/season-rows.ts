/** What the picture shows of each planting and of each other feed, by day. */
// @ts-nocheck

import type { Day } from "../../dates.js";
import type { Route } from "../../garden/index.js";
import type { Plan, PlannedPlanting } from "../../season/index.js";
import { grouped } from "../../values.js";

export interface RowMark {
  readonly day: Day;
  readonly kind: "given" | "planned" | "missed" | "sign";
  /** Absent where it is not known, and for a sign. */
  readonly route?: Route;
}

export interface PlantingRow {
  readonly planting: PlannedPlanting;
  readonly marks: readonly RowMark[];
}

export interface FeedRow {
  /** Names of other feeds, one but in the last row. */
  readonly feeds: readonly string[];
  readonly marks: readonly RowMark[];
}

/** More feeds than rows share the last one. */
const mostFeedRows = 2;

/** Plantings that are fed, or of which something is to be shown, in the order of the garden. */
export function plantingRows(plan: Plan): readonly PlantingRow[] {
  const marks = new Map<string, RowMark[]>(plan.plantings.map(({ id }) => [id, []]));
  const put = (planting: string | undefined, mark: RowMark): void => {
    if (planting === undefined) return;
    const those = marks.get(planting) ?? [];
    const alike = ({ day, kind, route }: RowMark) =>
      day === mark.day && kind === mark.kind && route === mark.route;
    if (!those.some(alike)) those.push(mark);
  };
  for (const { day, beds, log = [] } of plan.rounds) {
    for (const { route, given, feedings } of beds.flatMap(({ mixes }) => mixes))
      for (const { planting } of feedings)
        put(planting, { day, kind: given === true ? "given" : "planned", route });
    for (const said of log)
      if (said.missed) put(said.planting, { day: said.round ?? said.on, kind: "missed" });
  }
  const named = grouped(plan.plantings, ({ bed, name }) => JSON.stringify([bed, name]));
  for (const { day, bed, plantings } of plan.missed ?? [])
    for (const name of plantings)
      for (const { id } of named.get(JSON.stringify([bed, name])) ?? [])
        put(id, { day, kind: "missed" });
  for (const { code, planting, day } of plan.notes)
    if (code === "sign") put(planting, { day, kind: "sign" });
  return plan.plantings
    .map((planting) => ({ planting, marks: marks.get(planting.id) ?? [] }))
    .filter((row) => row.planting.fed || row.marks.length > 0);
}

export function feedRows({ rounds }: Plan): readonly FeedRow[] {
  const all = rounds.flatMap(({ day, feeds = [] }) => feeds.map((feed) => ({ ...feed, day })));
  const rows = [...grouped(all, ({ feed }) => feed)].map(([feed, mixes]): FeedRow => {
    const days = grouped(mixes, ({ day }) => day);
    const marks = [...days].map(([day, those]): RowMark => {
      return { day, kind: those.every(({ given }) => given === true) ? "given" : "planned" };
    });
    return { feeds: [feed], marks };
  });
  if (rows.length <= mostFeedRows) return rows;
  const shared = rows.slice(mostFeedRows - 1);
  return [
    ...rows.slice(0, mostFeedRows - 1),
    { feeds: shared.flatMap(({ feeds }) => feeds), marks: shared.flatMap(({ marks }) => marks) },
  ];
}

/** Crops of plantings without a row of their own. */
export function cropsWithoutRow(plan: Plan, rows: readonly PlantingRow[]): readonly string[] {
  const shown = new Set(rows.map(({ planting }) => planting));
  return plan.plantings.filter((planting) => !shown.has(planting)).map(({ cropName }) => cropName);
}
