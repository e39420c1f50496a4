/** Some of the hunt with each run of the tests; `npm run fuzz` goes on as long as it is asked to. */
import { expect, test } from "vitest";
import { hunt, repeat, sharesOf } from "./hunt.js";
import { kinds } from "./kinds.js";

const inputs = 20_000;
const seed = 20270301;

test.each(sharesOf(kinds, inputs).map(([kind, count]) => ({ kind, count, name: kind.name })))(
  "$count spoilt inputs break nothing: $name",
  async ({ kind, count }) => {
    const tally = await hunt(kind, { seed, count });
    expect(tally.caught.map((one) => `${String(one.error)}\n${repeat(one)}`)).toEqual([]);
    expect(tally.inputs).toBe(count);
    // Neither is the hunt one of good inputs alone, nor of hopeless ones.
    expect(Math.min(tally.accepted, tally.refused)).toBeGreaterThan(count / 50);
  },
);
