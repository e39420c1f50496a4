/** A few seasons of forgetful growers; `npm run play` plays a hundred. */
// @ts-nocheck

import { describe, expect, test } from "vitest";
import { play, scriptOf } from "./season.js";

describe("a season with its forgetful grower", () => {
  test.each([1, 2, 4, 8, 12])("seed %i", async (seed) => {
    const { violation, deeds } = await play(scriptOf(seed, 9));
    expect({ violation, deeds }).toEqual({ violation: undefined, deeds });
  });
});
