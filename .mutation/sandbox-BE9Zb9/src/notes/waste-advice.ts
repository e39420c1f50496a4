/** What would spare stock that is made and thrown away. */
// @ts-nocheck

import { daysBetween } from "../dates.js";
import { counted, enoughStockText, shortDate, totalStockText } from "../garden/index.js";
import type { Plan } from "../season/index.js";
import {
  type AccountLine,
  batchName,
  type PlannedBatch,
  type StockTables,
} from "../stock/index.js";

type Wasted = PlannedBatch & Pick<AccountLine, "givenMl" | "thrownAwayMl">;

/** A vessel that is hardly smaller spares nothing worth a change: our choice. */
const worthIt = 1.25;

/** One advice for all batches of which more than half is thrown away; none where nothing can be done. */
export function wasteAdvice(
  { stock, garden, rounds }: Plan,
  { making }: Pick<StockTables, "making">,
): string | undefined {
  if (stock === undefined) return undefined;
  const { batches, account } = stock.making;
  const wasted = batches.flatMap((batch): Wasted[] => {
    const line = account.find((a) => a.batch === batch.id);
    return line === undefined || line.thrownAwayMl * 2 <= line.madeMl
      ? []
      : [{ ...batch, givenMl: line.givenMl, thrownAwayMl: line.thrownAwayMl }];
  });
  const [last] = wasted.slice(-1);
  if (last === undefined) return undefined;
  const text = (ml: number): string => totalStockText(ml, garden.amounts);
  const sum = (of: (batch: Wasted) => number): string =>
    text(wasted.reduce((total, batch) => total + of(batch), 0));
  const vesselMl = smallestVesselMl(
    wasted.map(({ givenMl }) => givenMl),
    making,
  );
  const [first] = last.serves;
  // To end before the first feeding of all would be not to feed.
  const isFedBefore = first && rounds.some(({ day, beds }) => beds.length > 0 && day < first.day);
  const days = daysBetween(last.readyOn, last.useBy);
  const ways = [
    ...(stock.keep === "shelf"
      ? [`in the fridge (\`keep: fridge\`) a bottle lasts longer than ${counted(days, "day")}`]
      : []),
    ...(wasted.some(({ volumeMl }) => volumeMl >= vesselMl * worthIt)
      ? [
          `a smaller vessel that makes ${enoughStockText(vesselMl, garden.amounts)} a batch is enough`,
        ]
      : []),
    ...(isFedBefore
      ? [
          `a shorter course, or an end before ${shortDate(first.day, garden.amounts)}, spares ${batchName(last.id)} with ${counted(last.eggs, "eggshell")} for ${text(last.givenMl)} of feed`,
        ]
      : []),
  ];
  if (ways.length === 0) return undefined;
  const of = wasted.length === 1 ? batchName(last.id) : counted(wasted.length, "batch", "batches");
  return `of ${sum(({ volumeMl }) => volumeMl)} made as ${of}, ${sum(({ thrownAwayMl }) => thrownAwayMl)} is thrown away: ${ways.join("; ")}`;
}

/** What the largest of them needs, as it can be made. */
function smallestVesselMl(
  neededMl: readonly number[],
  { smallest_batch: smallest, batch_step: step }: StockTables["making"],
): number {
  return Math.ceil(Math.max(smallest.ml, ...neededMl) / step.ml) * step.ml;
}
