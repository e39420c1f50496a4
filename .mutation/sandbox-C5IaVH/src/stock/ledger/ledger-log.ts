/**
 * What is in the bottles today: as the garden file has it, less what was taken out since.
 *
 * `left` is what the grower found in the bottle on `left_on`: what the log gives on later days comes
 * off. Without `left_on` it is what there was before the log, and all of the log comes off. What
 * counts as given because it was published comes off from `left_on` on; off a bottle without `left`
 * from its making on; off a `left` of an unknown day never. What names no batch was poured from the
 * bottle then in turn: earliest use-by first, ties by id.
 */
// @ts-nocheck

import { addDays, type Day, earlier } from "../../dates.js";
import type { BatchInHand, StockSettings } from "../../garden/index.js";
import type { FilePath, Finding } from "../../problem.js";
import { byText, grouped } from "../../values.js";
import type { StockBottle } from "../making-problem.js";
import { type MakingRules, useByOf } from "../making-rules.js";
import { bottlesInOrder, ledgerMl, ledgerSum } from "./ledger.js";

interface Filled extends Pick<StockBottle, "id" | "readyOn" | "useBy"> {
  readonly batch: BatchInHand;
  leftMl: number;
  /** What the log gave beyond what it held. */
  overMl: number;
}

/** An entry over by no more than is misread on a jug emptied its bottle: common practice, no source. */
const misread = { ml: 2, share: 0.01 };

/** What gave more than its bottle held: taken as the rest of it. */
export interface Emptied {
  readonly taken: Taken;
  readonly batch: string;
  readonly overMl: number;
}

/** Stock that left the bottles. */
export interface Taken {
  readonly day: Day;
  /** Absent where nobody said which bottle. */
  readonly batch?: string;
  readonly ml: number;
  /** Of the log entry with this amount; absent where it is the published one, which is never refused. */
  readonly path?: FilePath;
}

/**
 * @param batches sound as {@link checkBatches} means it
 * @param taken what names a batch that is not listed comes off none
 * @param strengthOf calcium of that batch as poured, g/L
 * @returns the bottles by use-by, what emptied them with something over, and a finding for each log
 *   entry that gives more than its batch can have held
 */
export function bottlesInHand(
  batches: readonly BatchInHand[],
  taken: readonly Taken[],
  today: Day,
  rules: MakingRules,
  strengthOf: (batch: BatchInHand) => number,
): { bottles: StockBottle[]; emptied: Emptied[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const emptied: Emptied[] = [];
  const filled = bottlesInOrder(
    batches.map((batch): Filled => {
      const { id, made: readyOn } = batch;
      const leftMl = ledgerMl(batch.leftMl);
      return { batch, id, readyOn, useBy: lastDayOf(batch, rules), leftMl, overMl: 0 };
    }),
  );
  for (const one of wholeAgain(taken).sort((a, b) => byText(a.day, b.day))) {
    const named = filled.find((f) => f.id === one.batch);
    if (one.batch === undefined) pourInTurn(filled, one);
    else if (named !== undefined) {
      const overMl = pour(named, one, ledgerMl(one.ml));
      if (overMl === 0) continue;
      if (one.path !== undefined) named.overMl = ledgerSum([named.overMl, overMl]);
      if (one.path !== undefined && named.overMl > Math.max(misread.ml, misread.share * one.ml))
        findings.push(overdrawn(one.path, named, overMl));
      else emptied.push({ taken: one, batch: named.id, overMl });
    }
  }
  const bottles = filled.map(({ batch, id, readyOn, useBy, leftMl }): StockBottle => {
    const isGone = batch.thrownAway !== undefined && batch.thrownAway <= today;
    return { id, readyOn, useBy, leftMl: isGone ? 0 : leftMl, strengthGPerL: strengthOf(batch) };
  });
  return { bottles, emptied, findings };
}

/** Shares of what was published are one amount once more, as it was rounded then. */
function wholeAgain(taken: readonly Taken[]): Taken[] {
  const shares = taken.filter(({ path }) => path === undefined);
  const ofDayAndBatch = grouped(shares, ({ day, batch }) => `${day} ${batch ?? ""}`);
  return [
    ...taken.filter(({ path }) => path !== undefined),
    ...[...ofDayAndBatch.values()].map((parts) => ({
      ...parts[0],
      ml: parts.reduce((sum, { ml }) => sum + ml, 0),
    })),
  ];
}

/** The last day on which anything could be poured from it. */
function lastDayOf(batch: BatchInHand, rules: MakingRules): Day {
  const useBy = useByOf(batch, rules);
  return batch.thrownAway === undefined ? useBy : earlier(useBy, addDays(batch.thrownAway, -1));
}

/** What is wrong with listed batches today; the rest is found when the garden file is read. */
export function checkBatches(
  { batches, begun, dropped }: Pick<StockSettings, "batches" | "begun" | "dropped">,
  today: Day,
): Finding[] {
  const yetToCome = [
    ...batches.map(({ path, shellsOut, acidIn, made, thrownAway }) => ({
      path,
      days: { shells_out: shellsOut, acid_in: acidIn, made, thrown_away: thrownAway },
    })),
    ...begun.map(({ path, shellsOut, acidIn }) => ({
      path,
      days: { shells_out: shellsOut, acid_in: acidIn },
    })),
    ...dropped.map(({ path, on, how }) => ({
      path,
      days: { [how === "missed" ? "missed" : "thrown_away"]: on },
    })),
  ].flatMap(({ path, days }) => {
    const first = Object.entries(days).find(([, on]) => on !== undefined && on > today);
    return first === undefined ? [] : [inFuture(path, ...first, today)];
  });
  return [...yetToCome, ...batches.flatMap((batch) => leftOnTrouble(batch, today))];
}

function inFuture(path: FilePath, key: string, on: Day | undefined, today: Day): Finding {
  return {
    code: "batch-in-future",
    path: [...path, key],
    message: `\`${key}\` on ${on}, which is after today, ${today}`,
    mend: "give the day on which it was done; what is to come is planned, not listed",
  };
}

function leftOnTrouble({ made, leftOn, path }: BatchInHand, today: Day): Finding[] {
  if (leftOn === undefined || (leftOn >= made && leftOn <= today)) return [];
  return [
    {
      code: "batch-left-on",
      path: [...path, "left_on"],
      message: `left measured on ${leftOn}, which is not between its making on ${made} and today, ${today}`,
      mend: "give the day on which you looked how much was left",
    },
  ];
}

/** Takes it off one bottle. Returns what the bottle did not hold, mL. */
function pour(from: Filled, { day, path }: Taken, ml: number): number {
  const { leftOn, thrownAway, leftMl, volumeMl } = from.batch;
  const isWritten = path !== undefined;
  if (leftOn !== undefined && (isWritten ? day <= leftOn : day < leftOn)) return 0;
  if (!isWritten && leftOn === undefined && leftMl < volumeMl) return 0;
  if (thrownAway !== undefined && day > thrownAway) return ml;
  const takenMl = Math.min(ml, from.leftMl);
  from.leftMl = ledgerMl(from.leftMl - takenMl);
  return ledgerMl(ml - takenMl);
}

function pourInTurn(filled: readonly Filled[], taken: Taken): void {
  let ml = ledgerMl(taken.ml);
  for (const bottle of filled)
    if (ml > 0 && bottle.readyOn <= taken.day && taken.day <= bottle.useBy)
      ml = pour(bottle, taken, ml);
}

function overdrawn(path: FilePath, from: Filled, overMl: number): Finding {
  const over = `${overMl} mL`;
  return {
    code: "log-over-batch",
    path: [...path, "stock"],
    message: `the log gives ${over} more from batch ${from.id} than was left in it`,
    mend: "correct the entry, name the batch it came from, or say what is left now with `left` and `left_on`",
  };
}
