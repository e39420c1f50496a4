/** What is told of the past: what counts as given, what was not, and whose name changed. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type Amounts, counted, type Garden, shortDay } from "../garden/index.js";
import type { NotGiven } from "../log/index.js";
import type { Renamed } from "../published/index.js";
import type { Plan } from "../season/index.js";
import { byText, grouped } from "../values.js";

/** @param days published, past, and not in the log */
export function takenAsGiven(days: readonly Day[], amounts: Amounts): string[] {
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return [];
  const [from, to] = [first, last].map((day) => shortDay(day, amounts));
  const span = first === last ? `of ${from}` : `from ${from} to ${to}`;
  return [
    `${counted(days.length, "published round")} ${span} ${days.length === 1 ? "counts" : "count"} as given, since the log does not say otherwise (\`- { on: ${last}, missed: true }\` under \`log:\` says so of one, \`unlogged: not-given\` of all)`,
  ];
}

/** Published feedings that were not given, bed by bed. */
export function missedOf(notGiven: readonly NotGiven[], garden: Garden): Pick<Plan, "missed"> {
  if (notGiven.length === 0) return {};
  const nameOf = new Map(garden.beds.map(({ id, name }) => [id, name]));
  const plantingName = new Map(
    garden.beds.flatMap((bed) => bed.plantings.map(({ id, name }) => [id, name] as const)),
  );
  const groups = grouped(notGiven, ({ day, bed, why }) => `${day}/${bed}/${why}`);
  const missed = [...groups.values()].map((together) => {
    const [{ day, bed, why }] = together;
    const names = together.map(({ planting }) => plantingName.get(planting) ?? planting);
    return { day, bed, bedName: nameOf.get(bed) ?? bed, plantings: [...new Set(names)], why };
  });
  return { missed: missed.sort((a, b) => byText(a.day, b.day)) };
}

export function takenForRenamed(renamed: readonly Renamed[]): string[] {
  return renamed.map(
    ({ from, to }) =>
      `${to} is ${from} with a new id, since it has the same bed and crop and ${from} is no longer in the file: what was published of ${from} counts for it`,
  );
}
