/** Next year's garden file from this year's. */
// @ts-nocheck

import type { Day } from "../dates.js";
import {
  type CarriedOver,
  decodeText,
  nextYearText,
  type Planting,
  yearLater,
} from "../garden/index.js";
import type { Problem, Result } from "../problem.js";
import { loadTables } from "../tables.js";
import { readBytes, shownName } from "./files.js";
import { type LoadedGarden, loadGardenText } from "./load.js";
import type { Shell } from "./shell.js";

export interface NextYear {
  readonly text: string;
  /** What the grower has to choose or to know, a line each. */
  readonly told: readonly string[];
  /** What to do with it before all else. */
  readonly first: string;
}

/** @param today the bottles hold what the plan of this day says */
export async function nextYearFile(
  path: string,
  today: Day | undefined,
  shell: Shell,
): Promise<Result<NextYear>> {
  const text = decodeText(await readBytes(path, shell), shownName(path));
  if (!text.ok) return text;
  const before = await loadGardenText(text.value, path, shell, { ...(today && { today }) });
  if (!before.ok) return before;
  const carried = carriedOver(before.value);
  const next = nextYearText(text.value, shownName(path), carried);
  if (!next.ok) return next;
  const after = await loadGardenText(next.value, path, shell, { today: carried.today });
  if (!after.ok) return { ok: false, problems: after.problems.map(ofNextYear) };
  const chosen = toChooseFrom(before.value, carried);
  const first = chosen.length > 0 ? "take the # off what you grow again" : "look over its dates";
  return {
    ok: true,
    value: { text: next.value, told: toldOf(before.value, carried, chosen), first },
  };
}

function ofNextYear(problem: Problem): Problem {
  return { ...problem, message: `in the file of next year ${problem.message}` };
}

function carriedOver({ garden, plan }: LoadedGarden): CarriedOver {
  const { crops } = loadTables().catalogue;
  const begin = yearLater(garden.season.from);
  const staying = garden.beds
    .flatMap(({ plantings }) => plantings)
    .filter(({ removed }) => removed === undefined || removed > begin);
  const isPerennial = (key: string): boolean =>
    crops.some((crop) => crop.key === key && crop.perennial);
  const isGrowing = ({ id, sown, transplanted }: Planting): boolean => {
    const stages = plan.plantings.find((planting) => planting.id === id)?.stages ?? [];
    const [first, last] = [stages[0], stages.at(-1)];
    // What is only listed has no stages that could tell its end.
    if (first === undefined || last === undefined) return true;
    // What stood when this season began has wintered once: no annual does so twice.
    return last.to >= begin && (sown ?? transplanted ?? first.from) >= garden.season.from;
  };
  // A day of removal stands where it was written, and a bloom moved on could come after it.
  const perennials = staying.filter((one) => isPerennial(one.crop) && one.removed === undefined);
  const growing = staying.filter((one) => !isPerennial(one.crop) && isGrowing(one));
  return {
    perennials: new Set(perennials.map(({ id }) => id)),
    growing: new Set(growing.map(({ id }) => id)),
    leftMl: new Map(
      (plan.stock?.inHand ?? []).map(({ id, useBy, leftMl }) => [
        id,
        useBy < plan.today ? 0 : Math.floor(leftMl + 1e-9),
      ]),
    ),
    today: plan.today,
  };
}

/** Ids of the plantings that are comments now. */
function toChooseFrom({ garden }: LoadedGarden, { perennials, growing }: CarriedOver): string[] {
  return garden.beds
    .flatMap(({ plantings }) => plantings.map(({ id }) => id))
    .filter((id) => !perennials.has(id) && !growing.has(id));
}

function toldOf(
  { garden }: LoadedGarden,
  { leftMl }: CarriedOver,
  chosen: readonly string[],
): string[] {
  const empty = [...leftMl].filter(([, ml]) => ml === 0);
  const line = (what: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [`${what}: ${names.join(", ")}`];
  return [
    ...line("comments, to choose from", chosen),
    ...line("comments, as holidays move", garden.feeding.away.length > 0 ? ["time away"] : []),
    ...line(
      "batches left out, empty or past their day",
      empty.map(([id]) => id),
    ),
  ];
}
