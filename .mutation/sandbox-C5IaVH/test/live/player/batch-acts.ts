/** What becomes of batches: never begun, begun late, bottled otherwise, a bottle broken. */
// @ts-nocheck

import { addDays } from "../../../src/dates.js";
import type { Act } from "./acts.js";
import type { Dice } from "./dice.js";
import type { BatchDraft } from "./gardens.js";
import type { Grower, ToldBatch } from "./grower.js";

function list(grower: Grower, batch: BatchDraft): string {
  const { stock = {} } = grower.garden;
  const others = (stock.batches ?? []).filter(({ id }) => id !== batch.id);
  grower.garden.stock = { ...stock, batches: [...others, batch] };
  grower.toldOtherwise.add(batch.id);
  return `batch: ${JSON.stringify(batch)}`;
}

function toldBatch(
  { batches, garden }: Grower,
  dice: Dice,
  isMeant: (batch: ToldBatch) => boolean,
): ToldBatch | undefined {
  const listed = new Set((garden.stock?.batches ?? []).flatMap(({ id, planned }) => [id, planned]));
  return dice.maybe([...batches.values()].filter((b) => !listed.has(b.id) && isMeant(b)));
}

const neverBegun: Act = (grower, dice, today) => {
  const batch = toldBatch(grower, dice, (b) => b.startOn <= today && today <= b.readyOn);
  if (batch === undefined) return undefined;
  return list(grower, { id: batch.id, missed: today, volume: `${batch.volumeMl} mL` });
};

const begunLate: Act = (grower, dice, today) => {
  const batch = toldBatch(grower, dice, (b) => b.startOn < today && today <= b.readyOn);
  if (batch === undefined) return undefined;
  return list(grower, { id: batch.id, shells_out: today, volume: `${batch.volumeMl} mL` });
};

const bottledOtherwise: Act = (grower, dice, today) => {
  const batch = toldBatch(
    grower,
    dice,
    (b) => b.readyOn <= today && addDays(b.readyOn, 20) > today,
  );
  if (batch === undefined) return undefined;
  const made = dice.chance(0.5) ? batch.readyOn : today;
  const volume = `${Math.max(20, Math.round(batch.volumeMl * (0.7 + 0.5 * dice.next())))} mL`;
  const named = dice.chance(0.5);
  const id = named ? batch.id : `own-${batch.number}`;
  grower.toldOtherwise.add(batch.id);
  return list(grower, { id, ...(named ? {} : { planned: batch.number }), made, volume });
};

const bottleBroken: Act = (grower, dice, today) => {
  const listed = (grower.garden.stock?.batches ?? []).filter(
    ({ made, thrown_away }) => made !== undefined && made <= today && thrown_away === undefined,
  );
  const own = dice.maybe(listed);
  if (own !== undefined) return list(grower, { ...own, thrown_away: today });
  const batch = toldBatch(grower, dice, (b) => b.readyOn < today);
  if (batch === undefined) return undefined;
  const { id, readyOn: made, volumeMl } = batch;
  return list(grower, { id, made, thrown_away: today, volume: `${volumeMl} mL` });
};

export const batchActs: Readonly<Record<string, Act>> = {
  neverBegun,
  begunLate,
  bottledOtherwise,
  bottleBroken,
};
