/** Bottles and batches of a plan against what really happened. */
// @ts-nocheck

import type { Day } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import { awayOn } from "./check-feedings.js";
import type { BatchDraft } from "./gardens.js";
import type { Grower, ToldBatch } from "./grower.js";
import type { Truth } from "./truth.js";

/** Shares of what a jug holds are told in hundredths of a mL, and each may be half of one off. */
const roundingMl = 1;

interface Bottle {
  readonly id: string;
  readonly from: Day;
  readonly useBy: Day | undefined;
  leftMl: number;
  readonly goneOn?: Day;
}

/** None is poured below nothing, before it is bottled, past its day, or after it was thrown away. */
export function badPours(grower: Grower, plan: Plan, truth: Truth, today: Day): string[] {
  const bottles = new Map(bottlesOf(grower, plan, today).map((bottle) => [bottle.id, bottle]));
  for (const { day, pours, isWritten } of [...truth.fed].sort((a, b) => (a.day < b.day ? -1 : 1)))
    for (const { batch = "", ml } of pours) {
      const bottle = bottles.get(batch);
      if (bottle !== undefined && countsOff(grower.garden.stock?.batches, batch, day, isWritten))
        bottle.leftMl = Math.max(0, bottle.leftMl - ml);
    }
  const ahead = plan.rounds
    .filter(({ day }) => day >= today)
    .flatMap(({ day, beds }) =>
      beds.flatMap(({ mixes }) =>
        mixes
          .filter(({ given }) => !given)
          .flatMap(({ pours = [] }) => pours.map((pour) => ({ ...pour, day }))),
      ),
    );
  const found = ahead.flatMap(({ day, batch, ml }): string[] => {
    const bottle = bottles.get(batch);
    if (bottle === undefined) return [`poured on ${day} from ${batch}, which is nowhere`];
    bottle.leftMl -= ml;
    if (day < bottle.from) return [`poured on ${day} from ${batch}, ready on ${bottle.from}`];
    if (bottle.useBy !== undefined && day > bottle.useBy)
      return [`poured on ${day} from ${batch}, to be used by ${bottle.useBy}`];
    if (bottle.goneOn !== undefined) return [`poured from ${batch}, thrown away ${bottle.goneOn}`];
    return [];
  });
  const empty = [...bottles.values()].filter(({ leftMl }) => leftMl < -roundingMl);
  const below = (plan.stock?.inHand ?? []).filter(({ leftMl }) => leftMl < 0);
  return [
    ...found,
    ...empty.map(({ id, leftMl }) => `${-leftMl} mL more are poured from ${id} than are in it`),
    ...below.map(({ id, leftMl }) => `${leftMl} mL are said to be in ${id}`),
  ];
}

function bottlesOf({ garden, batches }: Grower, plan: Plan, today: Day): Bottle[] {
  const listed = garden.stock?.batches ?? [];
  const inHand = new Map((plan.stock?.inHand ?? []).map((bottle) => [bottle.id, bottle]));
  const claimed = new Set(listed.flatMap(({ id, planned }) => [id, String(planned)]));
  const toCome = (plan.stock?.making.batches ?? []).map(({ id, readyOn, useBy, volumeMl }) => {
    return { id, from: readyOn, useBy, leftMl: volumeMl };
  });
  const coming = new Set(toCome.map(({ id }) => id));
  return [
    ...toCome,
    ...listed.flatMap(({ id, made, left, volume, thrown_away }): Bottle[] => {
      // One that was begun is bottled as soon as it can be, if nobody says when.
      const from = made ?? inHand.get(id)?.madeOn;
      if (from === undefined || coming.has(id)) return [];
      const gone = thrown_away === undefined ? {} : { goneOn: thrown_away };
      const leftMl = mlIn(left ?? volume);
      return [{ id, from, useBy: inHand.get(id)?.useBy, leftMl, ...gone }];
    }),
    ...[...batches.values()]
      .filter(({ id, number, readyOn }) => {
        return (
          readyOn < today && !claimed.has(id) && !claimed.has(String(number)) && !coming.has(id)
        );
      })
      .map(({ id, readyOn, useBy, volumeMl }) => ({ id, from: readyOn, useBy, leftMl: volumeMl })),
  ];
}

const mlPer: Readonly<Record<string, number>> = {
  mL: 1,
  L: 1000,
  qt: 946.35,
  cup: 236.59,
  gal: 3785.4,
  pt: 473.18,
};

function mlIn(text: string): number {
  const [, number = "0", unit = "mL"] = /^([\d.]+) (\w+)$/.exec(text) ?? [];
  return Number(number) * (mlPer[unit] ?? 1);
}

/** What was taken as given before `left` was measured was measured with it. */
function countsOff(
  listed: readonly BatchDraft[] | undefined,
  id: string,
  day: Day,
  isWritten: boolean,
): boolean {
  const { left, left_on: leftOn } = listed?.find((batch) => batch.id === id) ?? {};
  if (leftOn !== undefined) return isWritten ? day > leftOn : day >= leftOn;
  return isWritten || left === undefined;
}

/** A batch that was begun goes on as it was told, and no name or number is used again. */
export function brokenBatches(grower: Grower, plan: Plan, today: Day): string[] {
  if (grower.garden.unlogged === "not-given") return [];
  const planned = new Map((plan.stock?.making.batches ?? []).map((batch) => [batch.id, batch]));
  const inHand = new Set((plan.stock?.inHand ?? []).map(({ id }) => id));
  const claimed = new Set(
    (grower.garden.stock?.batches ?? []).flatMap(({ id, planned: of }) => [id, String(of)]),
  );
  const isLeft = ({ id, number, startOn }: ToldBatch): boolean =>
    startOn < today &&
    !claimed.has(id) &&
    !claimed.has(String(number)) &&
    !grower.toldOtherwise.has(id) &&
    !awayOn(grower, startOn);
  const begun = [...grower.batches.values()].filter(isLeft).flatMap((told): string[] => {
    const now = planned.get(told.id);
    if (told.readyOn < today)
      return inHand.has(told.id) || now !== undefined
        ? []
        : [`${told.id}, bottled on ${told.readyOn}, is gone`];
    if (now === undefined) return [`${told.id}, begun on ${told.startOn}, is cancelled`];
    if (now.startOn !== told.startOn) return [`${told.id} is begun again on ${now.startOn}`];
    const isMoved =
      now.readyOn < told.readyOn || (now.readyOn > told.readyOn && !grower.isAwayChanged);
    return isMoved ? [`${told.id} is to be bottled on ${now.readyOn}, not ${told.readyOn}`] : [];
  });
  const { batches } = plan.published;
  const doubles = (names: readonly (string | number)[]): (string | number)[] =>
    names.filter((name, i) => names.indexOf(name) !== i);
  return [
    ...begun,
    ...doubles(batches.map(({ id }) => id)).map((id) => `two published batches are called ${id}`),
    ...doubles(batches.map(({ number }) => number)).map((n) => `two batches have the number ${n}`),
    ...[...grower.batches.values()].flatMap(({ id, number }) => {
      const now = batches.find((batch) => batch.id === id);
      return now === undefined || now.number === number ? [] : [`${id} has another number`];
    }),
  ];
}

/** Batches as they are told now; those that were begun stay as they were told. */
export function rememberBatches(grower: Grower, plan: Plan, today: Day): void {
  const isBegun = ({ startOn }: ToldBatch): boolean => startOn < today;
  const planned = plan.stock?.making.batches ?? [];
  const now = new Set(planned.map(({ id }) => id));
  for (const [id, batch] of grower.batches)
    if (!isBegun(batch) && !now.has(id) && batch.startOn > today) grower.batches.delete(id);
  const listed = new Set((grower.garden.stock?.batches ?? []).map(({ id }) => id));
  for (const { id, number, startOn, readyOn, useBy, volumeMl } of planned) {
    const before = grower.batches.get(id);
    if (listed.has(id) || (before !== undefined && isBegun(before) && !grower.isAwayChanged))
      continue;
    grower.batches.set(id, { id, number, startOn, readyOn, useBy, volumeMl });
  }
}
