/** What `log` writes of a planting: a sign, or the first day of a stage. */
import type { Day } from "../dates.js";
import { type Garden, type GardenEdit, signKey } from "../garden/index.js";
import { nearest } from "../suggest.js";
import type { Ticked } from "../ticks/index.js";
import type { CommandWish, LogJob } from "./log-job.js";
import { wrongUsage } from "./shell.js";

export function seenWish({ garden, on, today, options }: LogJob): CommandWish {
  const { planting: id = "", sign, stage } = options;
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  const planting = plantings.find((one) => one.id === id);
  if (planting === undefined)
    throw noPlanting(
      id,
      plantings.map((one) => one.id),
    );
  if (on > today)
    throw wrongUsage(`${on} is after today, ${today}: give --on with the day it was seen`);
  const what: Seen =
    stage === undefined
      ? { kind: "sign", planting: id, sign: signKey(sign ?? "") }
      : { kind: "stage", planting: id, stage };
  const { edits, saidOn } = seenEdits(what, on, garden);
  const told = what.kind === "stage" ? `${what.stage} seen` : what.sign;
  return saidOn === undefined
    ? { edits }
    : { edits, already: `the file says so of ${id} already (${told} on ${saidOn})` };
}

type Seen = Extract<Ticked, { readonly kind: "sign" | "stage" }>;

/** A sign is written once a day; a stage has one first day. */
export function seenEdits(
  what: Seen,
  on: Day,
  { beds, signs }: Pick<Garden, "beds" | "signs">,
): { readonly edits: readonly GardenEdit[]; readonly saidOn?: Day } {
  const { planting } = what;
  const said =
    what.kind === "sign"
      ? signs.filter((one) => one.on === on && one.planting === planting && one.sign === what.sign)
      : beds
          .flatMap(({ plantings }) => plantings.filter(({ id }) => id === planting))
          .flatMap(({ seen }) => seen.filter(({ stage }) => stage === what.stage));
  const [first] = said;
  if (first !== undefined) return { edits: [], saidOn: first.on };
  return what.kind === "sign"
    ? { edits: [{ kind: "add-to-signs", signs: [{ on, planting, sign: what.sign }] }] }
    : { edits: [{ kind: "add-to-seen", planting, seen: { stage: what.stage, on } }] };
}

function noPlanting(id: string, ids: readonly string[]): Error {
  const near = nearest(id, ids);
  const known = ids.slice(0, 8).join(", ");
  return wrongUsage(
    `there is no planting ${id}: ${near === undefined ? `it is one of ${known}` : `did you mean ${near}?`}`,
  );
}
