/** Eggshells: what a batch takes, what the household has by a day, and from when to save. */
import { addDays, type Day, daysBetween, earlier, later } from "../../dates.js";
import { type Amounts, shortDay, totalStockText } from "../../garden/index.js";
import { byText, given } from "../../values.js";
import { ledgerSum } from "../ledger/index.js";
import type {
  PlannedBatch,
  ShellPlan,
  ShellShortage,
  ShellSupply,
  Shortage,
} from "../making-problem.js";

/** A batch as far as its shells go. */
export type ShellUse = Pick<PlannedBatch, "startOn" | "volumeMl">;

// Sums of shares of a shell miss whole shells by the last bits of a double.
const slack = 1e-9;

/** Dry shell for that much stock: grams, and whole eggs. */
export function shellsFor(
  volumeMl: number,
  supply: Pick<ShellSupply, "gPerShell" | "gPerL">,
): { shellG: number; eggs: number } {
  const shellG = (volumeMl / 1000) * supply.gPerL;
  return { shellG, eggs: Math.max(0, Math.ceil(shellG / supply.gPerShell - slack)) };
}

/** Whole shells at hand on the morning of a day, when every shell from `savedFrom` on is kept. */
export function shellsBy(day: Day, savedFrom: Day, supply: ShellSupply): number {
  const days = Math.max(0, daysBetween(savedFrom, day));
  return supply.inHand + Math.floor(((supply.perWeek ?? 0) * days) / 7 + slack);
}

/** What all batches started up to and on that day may hold together, mL. */
export function volumeByShells(day: Day, savedFrom: Day, supply: ShellSupply): number {
  const shellG = shellsBy(day, savedFrom, supply) * supply.gPerShell;
  return Math.floor((shellG / supply.gPerL) * 1000 + slack);
}

/** A hundred years: who keeps a shell now and then keeps none. */
const mostDays = 36_525;

/**
 * The latest day from which keeping every shell is early enough for every batch, those begun before
 * it included. Undefined when shells in hand do, when none to speak of are kept, or when they are not
 * counted.
 */
export function saveFrom(uses: readonly ShellUse[], supply: ShellSupply): Day | undefined {
  const perWeek = supply.perWeek ?? 0;
  if (perWeek <= 0) return undefined;
  let from: Day | undefined;
  for (const { startOn, eggs } of together(uses, supply)) {
    const missing = eggs - supply.inHand;
    if (missing <= 0) continue;
    const days = Math.ceil((7 * missing) / perWeek - slack);
    if (days > mostDays) return undefined;
    const day = addDays(startOn, -days);
    from = from === undefined ? day : earlier(from, day);
  }
  return from;
}

/** The most shells by which batches fall short on a start day. */
export function missingShells(
  uses: readonly ShellUse[],
  savedFrom: Day,
  supply: ShellSupply,
): number {
  if (supply.perWeek === undefined) return 0;
  return together(uses, supply).reduce(
    (most, { startOn, eggs }) => Math.max(most, eggs - shellsBy(startOn, savedFrom, supply)),
    0,
  );
}

/**
 * @param wished the batches that would cover every feeding
 * @param made the batches that shells allow
 * @param shortages those for want of shells count
 */
export function shellPlan(
  wished: readonly ShellUse[],
  made: readonly ShellUse[],
  shortages: readonly Shortage[],
  savedFrom: Day,
  supply: ShellSupply,
  amounts: Amounts = "metric",
): ShellPlan {
  const volumeMl = made.reduce((sum, b) => sum + b.volumeMl, 0);
  const missing = missingShells(wished, savedFrom, supply);
  // Where they are short, saving begins at once; once begun it goes on.
  const latest = missing > 0 && (supply.perWeek ?? 0) > 0 ? savedFrom : saveFrom(made, supply);
  const from = latest && (supply.keptFrom ?? latest);
  return {
    ...shellsFor(volumeMl, supply),
    ...given({ saveFrom: from }),
    ...(missing > 0 ? { shortage: shortageOf(wished, missing, shortages, supply, amounts) } : {}),
  };
}

function shortageOf(
  wished: readonly ShellUse[],
  missing: number,
  shortages: readonly Shortage[],
  supply: ShellSupply,
  amounts: Amounts,
): ShellShortage {
  const neededFrom = saveFrom(wished, supply);
  const lost = shortages.filter(({ reason }) => reason === "shells");
  const lostMl = ledgerSum(lost.map(({ ml }) => ml));
  const needs = [...new Set(lost.map((s) => s.need))];
  const loss =
    needs.length === 0
      ? "every feeding is still covered, by batches begun later or made smaller"
      : `${needs.length} ${needs.length === 1 ? "feeding loses" : "feedings lose"} ${totalStockText(lostMl, amounts)} of stock in all`;
  const kept = supply.perWeek ?? 0;
  const since =
    neededFrom === undefined
      ? "no shells are kept"
      : `at ${kept} a week saving had to begin on ${shortDay(neededFrom, amounts)}`;
  return {
    ...given({ neededFrom }),
    missingShells: missing,
    lostMl,
    needs,
    message: `${missing} eggshells short: ${since}; ${loss}`,
    mend: "keep more shells a week, ask neighbours for theirs, or say how many are already in hand",
  };
}

/**
 * Shells in hand when the grower has not counted them: those kept since the latest batch was begun,
 * which is taken to have used up all there were; none when there was no batch.
 *
 * @param leadDays from setting shells out to dry to straining
 */
export function shellsSinceLastBatch(
  perWeek: number,
  batches: readonly { readonly made: Day }[],
  leadDays: number,
  today: Day,
): number {
  const [first, ...rest] = batches.map((b) => b.made).filter((made) => made <= today);
  if (first === undefined) return 0;
  const begun = addDays(rest.reduce(later, first), -leadDays);
  return Math.floor((perWeek * daysBetween(begun, today)) / 7 + slack);
}

/** Eggs that batches take in all, up to and with each, in order of their start. */
function together(
  uses: readonly ShellUse[],
  supply: ShellSupply,
): { startOn: Day; eggs: number }[] {
  const inOrder = [...uses].sort((a, b) => byText(a.startOn, b.startOn));
  let volumeMl = 0;
  return inOrder.map(({ startOn, volumeMl: ml }) => {
    volumeMl += ml;
    return { startOn, eggs: shellsFor(volumeMl, supply).eggs };
  });
}
