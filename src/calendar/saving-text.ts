import type { Day } from "../dates.js";
import type { Amounts } from "../garden/index.js";
import type { StockPlan } from "../stock/index.js";
import { keepShellsSummary, savingCaution, shellsForBatch } from "../words/index.js";
import { warningLines } from "./told.js";

export interface SavingText {
  readonly day: Day;
  readonly text: { readonly summary: string; readonly description: readonly string[] };
}

/** From when to keep shells, what for, and what their shortage costs; undefined where neither matters. */
export function savingText(
  { shells, batches, shortages }: StockPlan,
  today: Day,
  amounts: Amounts,
): SavingText | undefined {
  const { shortage, saveFrom, eggs } = shells;
  if (saveFrom === undefined && shortage === undefined) return undefined;
  const lost = shortages.find(({ reason }) => reason === "shells");
  const day = saveFrom ?? shortage?.neededFrom ?? lost?.day ?? batches[0]?.startOn ?? today;
  const missing = shortage?.missingShells ?? 0;
  return {
    day,
    text: {
      summary: keepShellsSummary(eggs, missing, saveFrom),
      description: [
        ...batches.map((batch) => `- ${shellsForBatch(batch, amounts)}`),
        ...(shortage === undefined ? [] : warningLines(shortage)),
        savingCaution,
      ],
    },
  };
}
