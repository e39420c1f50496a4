/** What the garden file says of a thing that can be ticked. */
// @ts-nocheck

import type { Day } from "../dates.js";
import { type BatchStepKey, type Garden, totalStockText } from "../garden/index.js";
import { isCalled } from "../log/index.js";
import type { Published, PublishedBatch } from "../published/index.js";
import { given } from "../values.js";
import { type SaidOfRounds, saidOfRounds } from "./said-of-rounds.js";
import { markOf, nothingSeen } from "./seen.js";
import { entriesInWords, seenInWords, stepInWords } from "./told.js";
import type { Standing, Tick, Ticked } from "./tick.js";

/** What a calendar has told: which day an entry of the log stands for, and numbers of batches. */
export type Told = Pick<Published, "rounds" | "feeds" | "batches">;

export function standingOf(garden: Garden, what: Ticked, told: Told): Standing {
  switch (what.kind) {
    case "round":
      return standingOfRound(garden, what, saidOfRounds(garden, told));
    case "step":
      return standingOfStep(garden, what, told);
    case "sign": {
      const { planting, sign } = what;
      const days = garden.signs.filter((one) => one.planting === planting && one.sign === sign);
      return standingOfDays(days, garden);
    }
    case "stage": {
      const { planting, stage } = what;
      const { seen = [] } =
        garden.beds.flatMap((bed) => bed.plantings).find(({ id }) => id === planting) ?? {};
      return standingOfDays(
        seen.filter((one) => one.stage === stage),
        garden,
      );
    }
  }
}

/** Whether the file says of a thing what the page showed; of a round, of the beds that are ticked. */
export function isAsSeen({ seen, what }: Tick, now: Standing): boolean {
  if (what.kind !== "round") return seen === now.seen;
  const marks = new Set(what.beds.map(bedMark));
  const ofBeds = (text: string): string =>
    text
      .split(".")
      .filter((part) => marks.has(part.slice(0, bedMark("").length)))
      .sort()
      .join(".");
  return ofBeds(seen) === ofBeds(now.seen);
}

/** A mark for each bed of which the log says something: beds are ticked one by one, too. */
export function standingOfRound(
  garden: Garden,
  { day, beds }: Pick<Ticked & { kind: "round" }, "day" | "beds">,
  said: SaidOfRounds,
): Standing {
  const entries = beds.flatMap((bed) => said(day, bed).map((entry) => ({ bed, entry })));
  if (entries.length === 0) return { seen: nothingSeen };
  const parts = beds.flatMap((bed) => {
    const own = said(day, bed).map((entry) => ({ ...entry, path: undefined }));
    return own.length === 0 ? [] : [bedMark(bed) + markOf(own)];
  });
  return { seen: parts.join("."), told: entriesInWords(entries, beds, garden) };
}

function bedMark(bed: string): string {
  return markOf(bed);
}

/** Of a sign or a stage of one planting. */
export function standingOfDays(records: readonly { readonly on: Day }[], garden: Garden): Standing {
  const days = records.map(({ on }) => on).sort();
  const last = days.at(-1);
  return last === undefined
    ? { seen: nothingSeen }
    : { seen: markOf(days), told: seenInWords(last, garden) };
}

/** What is written of a batch that a step of it could contradict. */
const bearingOn: Readonly<Record<BatchStepKey, readonly BatchStepKey[]>> = {
  shells_out: ["missed", "thrown_away"],
  acid_in: ["missed", "thrown_away"],
  made: ["missed", "thrown_away"],
  thrown_away: ["missed"],
  missed: ["made", "thrown_away"],
};

function standingOfStep(
  garden: Garden,
  { batch, step }: Ticked & { kind: "step" },
  told: Pick<Told, "batches">,
): Standing {
  const listed = listedBatch(garden, batch, told.batches);
  if (listed === undefined) return { seen: nothingSeen };
  const { days, volumeMl } = listed;
  const keys = [step, ...bearingOn[step]].filter((key) => days[key] !== undefined);
  const [first] = keys;
  const on = first && days[first];
  if (first === undefined || on === undefined) return { seen: nothingSeen };
  const volume =
    first === "made" && volumeMl !== undefined
      ? totalStockText(volumeMl, garden.amounts)
      : undefined;
  const said = keys.map((key) => [key, days[key]]);
  return {
    seen: markOf([said, volume ?? ""]),
    told: stepInWords(first, on, garden, volume),
  };
}

export interface ListedBatch {
  readonly id: string;
  readonly planned?: string;
  readonly days: Partial<Record<BatchStepKey, Day>>;
  readonly volumeMl?: number;
}

/** All batches that the file lists, with the days of their steps. */
export function listedBatches({ stock }: Pick<Garden, "stock">): readonly ListedBatch[] {
  return [
    ...stock.batches.map(({ id, planned, volumeMl, shellsOut, acidIn, made, thrownAway }) => ({
      ...{ id, volumeMl, ...given({ planned }) },
      days: {
        made,
        ...given({ shells_out: shellsOut, acid_in: acidIn, thrown_away: thrownAway }),
      },
    })),
    ...stock.begun.map(({ id, planned, volumeMl, shellsOut, acidIn }) => ({
      ...{ id, volumeMl, ...given({ planned }) },
      days: given({ shells_out: shellsOut, acid_in: acidIn }),
    })),
    ...stock.dropped.map(({ id, planned, on, how }) => ({
      ...{ id, ...given({ planned }) },
      days: how === "missed" ? { missed: on } : { thrown_away: on },
    })),
  ];
}

/** The listed batch of that id, or the one that stands for the told batch of that id. */
export function listedBatch(
  garden: Pick<Garden, "stock">,
  id: string,
  told: readonly PublishedBatch[],
): ListedBatch | undefined {
  const number = told.find((batch) => batch.id === id)?.number;
  const listed = listedBatches(garden);
  return (
    listed.find((batch) => batch.id === id) ??
    listed.find(
      ({ planned }) =>
        planned !== undefined &&
        (planned === id || (number !== undefined && isCalled(planned, number))),
    )
  );
}
