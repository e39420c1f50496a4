/** Text of a garden file as it is being written -> its plan, as the command line makes it. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { asksForNormals } from "../garden-place.js";
import { type Garden, todayAt } from "../garden/index.js";
import { gardenOfText, type GardenSources, planOfGarden, workedOut } from "../plan-garden.js";
import type { Result } from "../problem.js";
import type { Published } from "../published/index.js";
import type { Plan } from "../season/index.js";
import { loadNormals, loadTables } from "../tables.js";
import { given } from "../values.js";
import type { Wanted, Writing } from "./messages.js";

export interface Planned {
  readonly garden: Garden;
  readonly plan: Plan;
  readonly wanted: readonly Wanted[];
}

/** In the garden's zone, at the moment of the writing. */
export async function planned(writing: Writing): Promise<Result<Planned>> {
  const tables = loadTables();
  const read = gardenOfText(writing.text, writing.file, tables);
  if (!read.ok) return read;
  const { garden } = read.value;
  const sources = await sourcesOf(garden, writing);
  const state = await stateOf(garden, writing);
  if (!state.ok) return state;
  const published =
    state.value?.isDaysOnly === true
      ? workedOut(read.value, sources, tables, state.value.published)
      : state.value?.published;
  const today: Day = todayAt(writing.nowMs, garden.timezone);
  const plan = planOfGarden(read.value, sources, tables, { today, ...given({ published }) });
  if (!plan.ok) return plan;
  return { ok: true, value: { garden, plan: plan.value, wanted: wantedOf(garden, writing) } };
}

async function sourcesOf(garden: Garden, { named }: Writing): Promise<GardenSources> {
  const textOf = (name: string | undefined): string | undefined =>
    name !== undefined && Object.hasOwn(named, name) ? named[name] : undefined;
  const { rulesFile, weather } = garden;
  const seen = textOf(weather?.seen);
  const forecast = textOf(weather?.forecast);
  return given({
    ownRules: textOf(rulesFile),
    weather: weather && given({ seen, forecast }),
    normals: asksForNormals(garden) ? await loadNormals() : undefined,
  });
}

interface State {
  readonly published: Published;
  readonly isDaysOnly: boolean;
}

async function stateOf(garden: Garden, { calendar }: Writing): Promise<Result<State | undefined>> {
  if (calendar === undefined) return { ok: true, value: undefined };
  const { publishedBefore } = await import("./earlier-calendar.js");
  return publishedBefore(calendar, garden);
}

function wantedOf(garden: Garden, { named, calendar }: Writing): Wanted[] {
  const { rulesFile, weather, calendarFile } = garden;
  const isOpen = (name: string): boolean => Object.hasOwn(named, name);
  const files = [
    { name: rulesFile, without: "planned with the built-in rules alone" },
    { name: weather?.seen, without: "planned without that weather" },
    { name: weather?.forecast, without: "planned without that forecast" },
  ];
  const wanted = files.flatMap(({ name, without }): Wanted[] =>
    name === undefined || isOpen(name) ? [] : [{ name, kind: "named", told: without }],
  );
  if (calendarFile === undefined || calendar !== undefined) return wanted;
  const told = "planned as if nothing had been published";
  return [...wanted, { name: calendarFile, kind: "calendar", told }];
}
