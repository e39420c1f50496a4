/**
 * What is in the bottles today: as the garden file has it, less what the log says was given since.
 *
 * `left` is what the grower found in the bottle on `left_on`: log entries of later days come off.
 * Without `left_on` it is what there was before the log, and every entry comes off. An entry that
 * names no batch was poured from the bottle then in turn: earliest use-by first, ties by id.
 */
import { addDays, type Day, earlier } from "../../dates.js";
import type { BatchInHand, LogEntry, StockSettings } from "../../garden/index.js";
import type { FilePath, Finding } from "../../problem.js";
import { byText } from "../../values.js";
import type { StockBottle } from "../making-problem.js";
import { type MakingRules, useByOf } from "../making-rules.js";
import { bottlesInOrder } from "./ledger.js";

interface Filled extends Pick<StockBottle, "id" | "readyOn" | "useBy"> {
  readonly batch: BatchInHand;
  leftMl: number;
}

/**
 * @param batches sound as {@link checkBatches} means it
 * @param log entries without stock, of another feed, or after today change nothing; so do those
 *   that name a batch no longer listed
 * @param strengthOf calcium of that batch as poured, g/L
 * @returns the bottles by use-by, and a finding for each entry that gives more than its batch held
 */
export function bottlesInHand(
  batches: readonly BatchInHand[],
  log: readonly LogEntry[],
  today: Day,
  rules: MakingRules,
  strengthOf: (batch: BatchInHand) => number,
): { bottles: StockBottle[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const filled = bottlesInOrder(
    batches.map((batch): Filled => {
      const { id, made: readyOn, leftMl } = batch;
      return { batch, id, readyOn, useBy: lastDayOf(batch, rules), leftMl };
    }),
  );
  for (const entry of poured(log, today)) {
    const named = filled.find((f) => f.id === entry.batch);
    if (entry.batch === undefined) pourInTurn(filled, entry);
    else if (named !== undefined) {
      const overMl = pour(named, entry, entry.stockMl);
      if (overMl > 0) findings.push(overdrawn(entry, named, overMl));
    }
  }
  const bottles = filled.map(({ batch, leftMl, ...bottle }): StockBottle => {
    const isGone = batch.thrownAway !== undefined && batch.thrownAway <= today;
    return { ...bottle, leftMl: isGone ? 0 : leftMl, strengthGPerL: strengthOf(batch) };
  });
  return { bottles, findings };
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

type Poured = LogEntry & { readonly stockMl: number };

function poured(log: readonly LogEntry[], today: Day): Poured[] {
  return log
    .filter((e): e is Poured => (e.stockMl ?? 0) > 0 && e.feed === undefined && e.on <= today)
    .sort((a, b) => byText(a.on, b.on));
}

/** Takes the entry off one bottle. Returns what the bottle did not hold, mL. */
function pour(from: Filled, entry: Poured, ml: number): number {
  const { leftOn, thrownAway } = from.batch;
  if (leftOn !== undefined && entry.on <= leftOn) return 0;
  if (thrownAway !== undefined && entry.on > thrownAway) return ml;
  const takenMl = Math.min(ml, from.leftMl);
  from.leftMl -= takenMl;
  return ml - takenMl;
}

function pourInTurn(filled: readonly Filled[], entry: Poured): void {
  let ml = entry.stockMl;
  for (const bottle of filled)
    if (ml > 0 && bottle.readyOn <= entry.on && entry.on <= bottle.useBy)
      ml = pour(bottle, entry, ml);
}

function overdrawn(entry: Poured, from: Filled, overMl: number): Finding {
  const over = `${Math.round(overMl * 10) / 10} mL`;
  return {
    code: "log-over-batch",
    path: [...entry.path, "stock"],
    message: `the log gives ${over} more from batch ${from.id} than was left in it`,
    mend: "correct the entry, name the batch it came from, or say what is left now with `left` and `left_on`",
  };
}
