/** What `log` writes of a planting: a sign, or the first day of a stage. */
// @ts-nocheck

import { type GardenEdit, signKey } from "../garden/index.js";
import { nearest } from "../suggest.js";
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
  if (stage !== undefined) {
    const before = planting.seen.find((one) => one.stage === stage);
    const edit: GardenEdit = { kind: "add-to-seen", planting: id, seen: { stage, on } };
    return before === undefined
      ? { edits: [edit] }
      : { edits: [], already: `the file says so of ${id} already (${stage} seen on ${before.on})` };
  }
  const seen = { on, planting: id, sign: signKey(sign ?? "") };
  const isHeld = garden.signs.some(
    (one) => one.on === on && one.planting === id && one.sign === seen.sign,
  );
  return isHeld
    ? { edits: [], already: `the file says so of ${id} already (${seen.sign} on ${on})` }
    : { edits: [{ kind: "add-to-signs", signs: [seen] }] };
}

function noPlanting(id: string, ids: readonly string[]): Error {
  const near = nearest(id, ids);
  const known = ids.slice(0, 8).join(", ");
  return wrongUsage(
    `there is no planting ${id}: ${near === undefined ? `it is one of ${known}` : `did you mean ${near}?`}`,
  );
}
