/** What the file says of a thing, and what a tick is to write, for a grower with wet hands. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type Amounts,
  type BatchStepKey,
  type Garden,
  type LogEntry,
  pouredText,
  shortDay,
  totalOf,
} from "../garden/index.js";
import { batchName } from "../stock/index.js";
import { grouped } from "../values.js";
import { nameInText, stageWords } from "../words/index.js";
import { feedOf, type Ticked } from "./tick.js";

export const stepsDone: Readonly<Record<BatchStepKey, string>> = {
  shells_out: "shells set out",
  acid_in: "acid in",
  made: "bottled",
  thrown_away: "thrown away",
  missed: "given up",
};

export const missedInWords = "missed";

/** More beds than that are counted. */
const mostNames = 4;

/** `batch 2`, `tipburn on lettuce`, `the round of Sat 12 Jun, North bed` */
export function nameOfTicked(what: Ticked, garden: Garden): string {
  switch (what.kind) {
    case "round": {
      const beds = bedsInWords(what.beds, garden);
      return `the round of ${shortDay(what.day, garden.amounts, garden.season.from)}, ${beds}`;
    }
    case "step":
      return nameInText(batchName(what.batch));
    case "sign":
      return `${what.sign.replaceAll("-", " ")} on ${plantingName(what.planting, garden)}`;
    case "stage":
      return `${plantingName(what.planting, garden)}, ${stageWords(what.stage)}`;
  }
}

/** What entries of one round say: `given on Sat 12 Jun, 90 mL; South bed: missed`. */
export function entriesInWords(
  said: readonly { readonly bed: string; readonly entry: Omit<LogEntry, "path"> }[],
  ofBeds: readonly string[],
  garden: Garden,
): string {
  const alike = grouped(said, ({ entry: { missed, on } }) => (missed ? missedInWords : on));
  return [...alike.values()]
    .map((those) => {
      const beds = [...new Set(those.map(({ bed }) => bed))];
      const of = beds.length === ofBeds.length ? "" : `${bedsInWords(beds, garden)}: `;
      // One entry may speak of many beds.
      const entries = [...new Set(those.map(({ entry }) => entry))];
      return of + givenInWords(entries, garden);
    })
    .join("; ");
}

function givenInWords(
  entries: readonly Omit<LogEntry, "path">[],
  { amounts, season }: Garden,
): string {
  const [first] = entries;
  if (first === undefined || first.missed) return missedInWords;
  const ml = totalOf(entries.flatMap(({ stockMl }) => stockMl ?? []));
  const batches = [...new Set(entries.flatMap(({ batch }) => batch ?? []))].map(batchName);
  const poured = ml === 0 ? "" : `, ${pouredText(ml, amounts)}`;
  const from = batches.length === 0 ? "" : `${ml === 0 ? "," : ""} from ${batches.join(" and ")}`;
  return `given on ${shortDay(first.on, amounts, season.from)}${poured}${nameInText(from)}`;
}

/** `bottled on Sat 12 Jun, 900 mL` */
export function stepInWords(
  step: BatchStepKey,
  on: Day,
  { amounts, season }: { readonly amounts: Amounts; readonly season: Garden["season"] },
  volume?: string,
): string {
  const day = shortDay(on, amounts, season.from);
  return `${stepsDone[step]} on ${day}${volume === undefined ? "" : `, ${volume}`}`;
}

/** `seen on Sat 12 Jun` */
export function seenInWords(on: Day, { amounts, season }: Garden): string {
  return `seen on ${shortDay(on, amounts, season.from)}`;
}

function plantingName(id: string, { beds }: Pick<Garden, "beds">): string {
  const planting = beds.flatMap(({ plantings }) => plantings).find((one) => one.id === id);
  return nameInText(planting?.name ?? id);
}

function bedsInWords(ids: readonly string[], { beds }: Garden): string {
  if (ids.length > mostNames) return `${ids.length} beds`;
  const names = new Map(beds.map(({ id, name }) => [id, name]));
  return ids.map((id) => nameInText(feedOf(id) ?? names.get(id) ?? id)).join(", ");
}
