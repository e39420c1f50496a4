/** Next year's garden file from this year's. */
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
  return after.ok
    ? { ok: true, value: { text: next.value, told: toldOf(before.value, carried) } }
    : { ok: false, problems: after.problems.map(ofNextYear) };
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

function toldOf({ garden }: LoadedGarden, carried: CarriedOver): string[] {
  const { perennials, growing, leftMl } = carried;
  const chosen = garden.beds
    .flatMap(({ plantings }) => plantings)
    .filter(({ id }) => !perennials.has(id) && !growing.has(id));
  const empty = [...leftMl].filter(([, ml]) => ml === 0);
  const line = (what: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [`${what}: ${names.join(", ")}`];
  return [
    ...line(
      "comments, to choose from",
      chosen.map(({ id }) => id),
    ),
    ...line("comments, as holidays move", garden.feeding.away.length > 0 ? ["time away"] : []),
    ...line(
      "batches left out, empty or past their day",
      empty.map(([id]) => id),
    ),
  ];
}
