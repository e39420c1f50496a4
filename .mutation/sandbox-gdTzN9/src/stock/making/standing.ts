/**
 * How the batches of a garden stand today: as published unless told otherwise. A published step whose
 * day has come is taken as done; the garden file's own days tell what differed. A batch under way
 * keeps its days and is never begun twice.
 */
// @ts-nocheck

import { addDays, type Day, daysBetween, type DaySpan, later, within } from "../../dates.js";
import type { BatchBegun, BatchInHand, Garden } from "../../garden/index.js";
import type { Published, PublishedBatch } from "../../published/index.js";
import { given } from "../../values.js";
import type { UnderWay } from "../making-problem.js";
import type { WayOfMaking } from "../making-rules.js";
import { firstDayThere } from "./batches-days.js";
import { assumedStrainer } from "./usual-stock.js";

export interface Standing {
  /** Whether a bottle of a published batch could be poured from on a day, as far as is known. */
  readonly canPour: (batch: string, day: Day) => boolean;
  /** Bottled on their day, though nobody wrote it down. */
  readonly taken: readonly BatchInHand[];
  /** By the day they are bottled. */
  readonly underWay: readonly UnderWay[];
  /** Published, and not begun yet; by the day they are bottled. */
  readonly toBegin: readonly PublishedBatch[];
  /** Listed batches that stand for a published one by their day alone. */
  readonly guessed: readonly { readonly id: string; readonly published: PublishedBatch }[];
}

export function standingBatches(
  { stock, feeding, unlogged }: Pick<Garden, "stock" | "feeding" | "unlogged">,
  published: Published | undefined,
  way: Pick<WayOfMaking, "dryDays" | "reactionDays">,
  today: Day,
): Standing {
  const told = published?.batches ?? [];
  const claims = claimsOf(stock, told);
  const claimed = new Set(claims.values());
  const plan = timing(feeding.away, way, today);
  const silent = told.filter((batch) => batch.withdrawn === undefined && !claimed.has(batch));
  const isBegun = ({ shellsOut }: PublishedBatch): boolean =>
    shellsOut <= today &&
    (shellsOut === today || unlogged === "given") &&
    !feeding.away.some((span) => within(shellsOut, span));
  const onTheWay = [
    ...silent.filter(isBegun).map((batch) => ({
      ...plan(batch.shellsOut, undefined, batch),
      ...{ id: batch.id, number: batch.number, volumeMl: batch.volumeMl },
      ...{ acid: stock.acid, keep: stock.keep },
    })),
    ...stock.begun.map((batch) => {
      const of = claims.get(batch.id);
      return {
        ...batch,
        ...plan(batch.shellsOut, batch.acidIn, of),
        ...given({ number: of?.number }),
      };
    }),
  ];
  const numbers = nextNumbers(told);
  return {
    canPour: pouringDays(stock, onTheWay, claims),
    taken: onTheWay.filter(({ readyOn }) => readyOn < today).map(bottled),
    underWay: onTheWay
      .filter(({ readyOn }) => readyOn >= today)
      .sort((a, b) => daysBetween(b.readyOn, a.readyOn))
      .map(({ id, number, startOn, acidOn, readyOn, volumeMl }) => {
        return { id, number: number ?? numbers(), startOn, acidOn, readyOn, volumeMl };
      }),
    toBegin: silent
      .filter((batch) => !isBegun(batch))
      .sort((a, b) => daysBetween(b.made, a.made) || a.number - b.number),
    guessed: [...claims].flatMap(([id, published]) =>
      isNamed(published, id, stock) ? [] : [{ id, published }],
    ),
  };
}

/** A listed batch is known by its own id, and by that of the published one that it stands for. */
function pouringDays(
  { batches, dropped }: Listed,
  onTheWay: readonly Pick<UnderWay, "id" | "readyOn">[],
  claims: ReadonlyMap<string, PublishedBatch>,
): Standing["canPour"] {
  const spans: { readonly id: string; readonly from?: Day; readonly to?: Day | undefined }[] = [
    ...onTheWay.map(({ id, readyOn }) => ({ id, from: readyOn })),
    ...batches.map(({ id, made, thrownAway }) => ({ id, from: made, to: thrownAway })),
    ...dropped.map(({ id }) => ({ id })),
  ];
  return (batch, day) => {
    const span = spans.find(({ id }) => id === batch || claims.get(id)?.id === batch);
    if (span === undefined) return true;
    const { from, to = day } = span;
    // What was given up before it was bottled has no first day.
    return from !== undefined && from <= day && day <= to;
  };
}

/** Numbers that no published batch ever had. */
export function nextNumbers(told: readonly { readonly number: number }[]): () => number {
  let last = told.reduce((highest, { number }) => Math.max(highest, number), 0);
  return () => ++last;
}

type Listed = Pick<Garden["stock"], "batches" | "begun" | "dropped">;

/** A listed batch made so near to a published bottling stands for it: common practice, no source. */
const nearDays = 14;

/** The published batch that a listed one stands for: the one it names, else the nearest bottling. */
function claimsOf(stock: Listed, told: readonly PublishedBatch[]): Map<string, PublishedBatch> {
  const claims = new Map<string, PublishedBatch>();
  const open = new Set(told);
  const claim = (id: string, batch: PublishedBatch | undefined): void => {
    if (batch === undefined) return;
    claims.set(id, batch);
    open.delete(batch);
  };
  for (const { id, planned } of [...stock.batches, ...stock.begun, ...stock.dropped])
    claim(
      id,
      told.find((batch) => batch.id === (planned ?? id) || String(batch.number) === planned),
    );
  for (const { id, made, planned } of stock.batches) {
    if (claims.has(id) || planned !== undefined) continue;
    const distance = (batch: PublishedBatch): number => Math.abs(daysBetween(batch.made, made));
    // What was bottled before the batch was published is another one.
    const near = [...open]
      .filter((b) => b.withdrawn === undefined && made > b.first && distance(b) <= nearDays)
      .sort((a, b) => distance(a) - distance(b));
    claim(id, near[0]);
  }
  return claims;
}

function isNamed(published: PublishedBatch, id: string, stock: Listed): boolean {
  const planned = [...stock.batches, ...stock.begun, ...stock.dropped].find(
    (batch) => batch.id === id,
  )?.planned;
  return published.id === id || planned !== undefined;
}

type Timing = Pick<UnderWay, "startOn" | "acidOn" | "readyOn">;

/** Days of a batch that is begun: done ones as they were, the rest as published, or the first that can be. */
function timing(
  away: readonly DaySpan[],
  way: Pick<WayOfMaking, "dryDays" | "reactionDays">,
  today: Day,
): (shellsOut?: Day, acidIn?: Day, told?: PublishedBatch) => Timing {
  const firstThere = firstDayThere(away);
  return (shellsOut, acidIn, told) => {
    const startOn = shellsOut ?? told?.shellsOut ?? addDays(acidIn ?? today, -way.dryDays);
    const acidOn =
      acidIn ?? firstThere(later(told?.acidIn ?? today, addDays(startOn, way.dryDays)));
    const readyOn = firstThere(later(told?.made ?? today, addDays(acidOn, way.reactionDays)));
    return { startOn, acidOn, readyOn };
  };
}

function bottled({
  id,
  readyOn,
  volumeMl,
  acid,
  keep,
}: Pick<BatchBegun, "id" | "volumeMl" | "acid" | "keep"> & Timing): BatchInHand {
  return {
    id,
    made: readyOn,
    volumeMl,
    leftMl: volumeMl,
    acid,
    keep,
    strained: assumedStrainer,
    path: [],
  };
}
