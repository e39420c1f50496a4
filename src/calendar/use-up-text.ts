import { type Amounts, totalStockText } from "../garden/index.js";
import type { Discard } from "../stock/index.js";

/** @example "Use up or throw away by 2027-08-10: batch-2027-05-12 (45 mL)" */
export function useUpSummary(discards: readonly Discard[], amounts: Amounts): string {
  const open = discards.filter((discard) => !isPast(discard));
  const past = discards.filter(isPast);
  const named = (some: readonly Discard[]) =>
    some.map(({ batch, ml }) => `${batch} (${totalStockText(ml, amounts)})`).join(", ");
  return [
    ...(open.length > 0 ? [`Use up or throw away today: ${named(open)}`] : []),
    ...(past.length > 0 ? [`Throw away: ${named(past)}`] : []),
  ].join("; ");
}

export function useUpDescription(discards: readonly Discard[], amounts: Amounts): string[] {
  return [
    ...discards.map((discard) => {
      const { batch, ml, useUpBy } = discard;
      const left = `${batch}: ${totalStockText(ml, amounts)} left`;
      return isPast(discard)
        ? `${left}; its last day was ${useUpBy}, so throw it away.`
        : `${left}; ${useUpBy} is its last day. Use it up, or throw it away.`;
    }),
    // Common practice, no source.
    "Do not use it after that day. Stock that is mouldy, smells or gasses again goes at once.",
  ];
}

/** The grower was not there on its last day. */
function isPast({ doOn, useUpBy }: Discard): boolean {
  return doOn > useUpBy;
}
