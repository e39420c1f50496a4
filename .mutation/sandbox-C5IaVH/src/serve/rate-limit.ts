/** Our choice: a phone that comes back from a week without a network sends some fifty forms at once. */
// @ts-nocheck

export const usualRate = { burst: 100, perSecond: 1, addresses: 1000 };

interface Bucket {
  left: number;
  atMs: number;
}

/** How often one address may ask for something: a burst, then so many a second. */
export interface RateLimit {
  /** 0, or the whole seconds to wait. */
  readonly waitS: (address: string, nowMs: number) => number;
}

export function rateLimit({ burst, perSecond, addresses } = usualRate): RateLimit {
  const buckets = new Map<string, Bucket>();
  return {
    waitS: (address, nowMs) => {
      const before = buckets.get(address) ?? { left: burst, atMs: nowMs };
      // A clock that is set back gives nothing, and takes nothing.
      const passedS = Math.max(0, nowMs - before.atMs) / 1000;
      const left = Math.min(burst, before.left + passedS * perSecond);
      const isFree = left >= 1;
      buckets.delete(address);
      buckets.set(address, { left: isFree ? left - 1 : left, atMs: nowMs });
      const [longestUnused] = buckets.keys();
      if (buckets.size > addresses && longestUnused !== undefined) buckets.delete(longestUnused);
      return isFree ? 0 : Math.ceil((1 - left) / perSecond);
    },
  };
}
