/** What `log` tells: what was written or taken out, and when each planting is due again. */
// @ts-nocheck

import type { LogEntry } from "../compiled/garden-file.js";
import {
  batchStepKeys,
  dayText,
  type GardenEdit,
  type NewLogEntry,
  shortDate,
} from "../garden/index.js";
import type { Plan } from "../season/index.js";
import type { LoadedGarden } from "./load.js";
import type { CommandWish } from "./log-job.js";
import { stepWordOf } from "./log-steps.js";
import { tabled, type TextStyle } from "./terminal-text.js";

/** @param after the garden with it */
export function logText(
  { edits, entries = [], taken }: CommandWish,
  { garden, plan }: LoadedGarden,
  isDryRun: boolean,
  style: TextStyle,
): string {
  const written = isDryRun ? "To be written" : "Written";
  const batches = edits.flatMap(batchRows);
  const signs = edits.flatMap(signRows);
  const stages = edits.flatMap(stageRows);
  const meant = edits.flatMap(plantingSeen);
  const due = entries.length + meant.length === 0 ? [] : dueNext([...entries, ...meant], plan);
  const notes = plan.notes.filter(
    (note) => note.code === "log" && entries.some((e) => e.on === note.day),
  );
  const isLog = edits.some(({ kind }) => kind === "take-from-log");
  return [
    ...(taken === undefined
      ? []
      : [
          tabled(
            `${isDryRun ? "To be taken" : "Taken"} out of the ${isLog ? "log" : "batches"} of ${garden.name}`,
            taken.map((row) => [...row]),
            style,
          ),
        ]),
    ...(entries.length === 0
      ? []
      : [tabled(`${written} into the log of ${garden.name}`, entries.map(entryRow), style)]),
    ...(taken !== undefined || batches.length === 0
      ? []
      : [tabled(`${written} into the batches of ${garden.name}`, batches, style)]),
    ...(signs.length === 0
      ? []
      : [tabled(`${written} into the signs of ${garden.name}`, signs, style)]),
    ...(stages.length === 0
      ? []
      : [tabled(`${written} into the plantings of ${garden.name}`, stages, style)]),
    ...(due.length === 0 ? [] : [tabled("Due next", due, style)]),
    ...notes.map((note) => note.message),
    "",
  ].join("\n");
}

/** Day, whose, how much, and the rest. */
export function entryRow(entry: LogEntry): string[] {
  const { on, round, planting, bed, missed, stock, batch, route, feed } = entry;
  return [
    on,
    planting ?? bed ?? "all",
    feed ?? (missed ? "missed" : (stock ?? "no amount")),
    [
      feed === undefined ? "" : missed ? "missed" : (stock ?? ""),
      batch ?? "",
      route ?? "",
      round === undefined ? "" : `for the round of ${round}`,
    ]
      .filter(Boolean)
      .join(", "),
  ];
}

function signRows(edit: GardenEdit): string[][] {
  if (edit.kind !== "add-to-signs") return [];
  return edit.signs.map(({ on, planting, sign }) => [on, planting, sign]);
}

function stageRows(edit: GardenEdit): string[][] {
  if (edit.kind !== "add-to-seen") return [];
  const { planting, seen } = edit;
  return [[seen.on, planting, `${seen.stage} seen`]];
}

function batchRows(edit: GardenEdit): string[][] {
  if (edit.kind === "list-batch") {
    const { batch } = edit;
    const steps = batchStepKeys.flatMap((key) =>
      batch[key] === undefined ? [] : [`${stepWordOf(key)} ${batch[key]}`],
    );
    return [[batch.id, steps.join(", "), batch.volume]];
  }
  if (edit.kind !== "set-in-batch") return [];
  const { id, key, value = "" } = edit;
  return [[id, key === "volume" ? "volume" : stepWordOf(key), value]];
}

/** Whose feedings may move. */
function plantingSeen(edit: GardenEdit): Pick<NewLogEntry, "planting">[] {
  if (edit.kind === "add-to-seen") return [{ planting: edit.planting }];
  return edit.kind === "add-to-signs" ? edit.signs.map(({ planting }) => ({ planting })) : [];
}

function dueNext(entries: readonly Omit<NewLogEntry, "on">[], plan: Plan): string[][] {
  const isMeant = (id: string, bed: string): boolean =>
    entries.some((e) => (e.planting ?? id) === id && (e.bed ?? bed) === bed);
  const feed = entries[0]?.feed;
  return feed === undefined
    ? plan.plantings
        .filter((p) => p.fed && isMeant(p.id, p.bed))
        .map((p) => [p.id, nextFeeding(plan, p.id)])
    : [[feed, nextFeed(plan, feed)]];
}

function nextFeeding(plan: Plan, planting: string): string {
  const { amounts } = plan.garden;
  for (const round of plan.rounds) {
    if (round.day < plan.today) continue;
    const feeding = round.beds
      .flatMap((bed) => bed.mixes.filter((mix) => !mix.given).flatMap((mix) => mix.feedings))
      .find((f) => f.planting === planting);
    if (feeding !== undefined)
      return `${dayText(round.day, amounts)} (between ${shortDate(feeding.window.earliest, amounts)} and ${shortDate(feeding.window.latest, amounts)})`;
  }
  return "no more in this season";
}

function nextFeed(plan: Plan, feed: string): string {
  const round = plan.rounds.find(
    ({ day, feeds }) => day >= plan.today && feeds?.some((mix) => mix.feed === feed && !mix.given),
  );
  return round === undefined ? "no more in this season" : dayText(round.day, plan.garden.amounts);
}
