import type { Day } from "../dates.js";
import { type Amounts, counted, totalStockText } from "../garden/index.js";
import type { StockPlan } from "../stock/index.js";
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
  const keep = `Keep every eggshell from now on: ${eggs} go into the stock`;
  const short = `${counted(missing, "eggshell")} short`;
  return {
    day,
    text: {
      summary:
        saveFrom === undefined
          ? `${short} for the stock`
          : missing > 0
            ? `${keep}; ${short}`
            : keep,
      description: [
        ...batches.map(
          ({ id, startOn, eggs: own, volumeMl }) =>
            `- ${counted(own, "eggshell")} by ${startOn} for ${id} (${totalStockText(volumeMl, amounts)})`,
        ),
        ...(shortage === undefined ? [] : warningLines(shortage)),
        "Rinse them and let them dry; a wet heap smells and draws flies. Raw shell can carry salmonella: wash your hands.",
      ],
    },
  };
}
