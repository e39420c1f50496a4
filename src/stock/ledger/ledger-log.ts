/**
 * What is in the bottles today: as the garden file has it, less what the log says was given since.
 *
 * `left` is what the grower found in the bottle on `left_on`: log entries of later days come off.
 * Without `left_on` it is what there was before the log, and every entry comes off. An entry that
 * names no batch was poured from the bottle then in turn: earliest use-by first, ties by id.
 */
import type { Day } from "../../dates.js";
import type { BatchInHand, LogEntry } from "../../garden/index.js";
import type { Finding } from "../../problem.js";
import { byText } from "../../values.js";
import type { StockBottle } from "../making-problem.js";
import { type MakingRules, useByOf } from "../making-rules.js";
import { bottlesInOrder, ledgerMl, ledgerSum } from "./ledger.js";

interface Filled extends Pick<StockBottle, "id" | "readyOn" | "useBy"> {
  readonly batch: BatchInHand;
  leftMl: number;
  /** What entries that name it gave beyond what it held. */
  overMl: number;
}

/** An entry over by no more than is misread on a jug emptied its bottle: common practice, no source. */
const misread = { ml: 2, share: 0.01 };

/** An entry that gave a little more than its bottle held: taken as the rest of it. */
export interface Emptied {
  readonly entry: LogEntry;
  readonly batch: string;
  readonly overMl: number;
}

/**
 * @param batches sound as {@link checkBatches} means it
 * @param log entries without stock, of another feed, or after today change nothing; so do those
 *   that name a batch no longer listed
 * @param strengthOf calcium of that batch as poured, g/L
 * @returns the bottles by use-by, the entries that emptied theirs with a little over, and a finding
 *   for each that gives more than its batch can have held
 */
export function bottlesInHand(
  batches: readonly BatchInHand[],
  log: readonly LogEntry[],
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
      return { batch, id, readyOn, useBy: useByOf(batch, rules), leftMl, overMl: 0 };
    }),
  );
  for (const entry of poured(log, today)) {
    const named = filled.find((f) => f.id === entry.batch);
    if (entry.batch === undefined) pourInTurn(filled, entry);
    else if (named !== undefined) {
      const overMl = pour(named, entry, entry.stockMl);
      if (overMl === 0) continue;
      named.overMl = ledgerSum([named.overMl, overMl]);
      if (named.overMl > Math.max(misread.ml, misread.share * entry.stockMl))
        findings.push(overdrawn(entry, named, overMl));
      else emptied.push({ entry, batch: named.id, overMl });
    }
  }
  const bottles = filled.map(({ batch, id, readyOn, useBy, leftMl }): StockBottle => {
    return { id, readyOn, useBy, leftMl, strengthGPerL: strengthOf(batch) };
  });
  return { bottles, emptied, findings };
}

/** What is wrong with batches in hand today; the rest is found when the garden file is read. */
export function checkBatches(batches: readonly BatchInHand[], today: Day): Finding[] {
  return batches.flatMap(({ made, leftOn, path }) => {
    const findings: Finding[] = [];
    if (made > today)
      findings.push({
        code: "batch-in-future",
        path: [...path, "made"],
        message: `made on ${made}, which is after today, ${today}`,
        mend: "give the day it was strained and bottled; batches to come are planned, not listed",
      });
    if (leftOn !== undefined && (leftOn < made || leftOn > today))
      findings.push({
        code: "batch-left-on",
        path: [...path, "left_on"],
        message: `left measured on ${leftOn}, which is not between its making on ${made} and today, ${today}`,
        mend: "give the day on which you looked how much was left",
      });
    return findings;
  });
}

type Poured = LogEntry & { readonly stockMl: number };

function poured(log: readonly LogEntry[], today: Day): Poured[] {
  return log
    .filter((e): e is Poured => (e.stockMl ?? 0) > 0 && e.feed === undefined && e.on <= today)
    .map((e) => ({ ...e, stockMl: ledgerMl(e.stockMl) }))
    .sort((a, b) => byText(a.on, b.on));
}

/** Takes the entry off one bottle. Returns what the bottle did not hold, mL. */
function pour(from: Filled, entry: Poured, ml: number): number {
  const { leftOn } = from.batch;
  if (leftOn !== undefined && entry.on <= leftOn) return 0;
  const takenMl = Math.min(ml, from.leftMl);
  from.leftMl = ledgerMl(from.leftMl - takenMl);
  return ledgerMl(ml - takenMl);
}

function pourInTurn(filled: readonly Filled[], entry: Poured): void {
  let ml = entry.stockMl;
  for (const bottle of filled)
    if (ml > 0 && bottle.readyOn <= entry.on && entry.on <= bottle.useBy)
      ml = pour(bottle, entry, ml);
}

function overdrawn(entry: Poured, from: Filled, overMl: number): Finding {
  const over = `${overMl} mL`;
  return {
    code: "log-over-batch",
    path: [...entry.path, "stock"],
    message: `the log gives ${over} more from batch ${from.id} than was left in it`,
    mend: "correct the entry, name the batch it came from, or say what is left now with `left` and `left_on`",
  };
}
