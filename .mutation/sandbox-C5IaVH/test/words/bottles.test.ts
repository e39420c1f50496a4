// @ts-nocheck
import { expect, test } from "vitest";
import { day } from "../../src/dates.js";
import {
  batchOnLabel,
  fromBottles,
  leftToUseUp,
  newBottleInFull,
  pourInTurn,
  useUpInFull,
  useUpJob,
} from "../../src/words/bottles.js";
import { plain, type Say } from "../../src/words/say.js";
import { aDiscard } from "../support/a-stock.js";

const tagged: Say<string> = (parts, ...values) => `[${plain(parts, ...values)}]`;

test("a pour names its bottle, and amounts only where bottles are several", () => {
  const [a, b] = [
    { batch: "B1", ml: 20, strengthGPerL: 18 },
    { batch: "B2", ml: 3.25, strengthGPerL: 12 },
  ];
  expect(fromBottles([a], "metric")).toBe("from batch B1");
  expect(fromBottles([a, b], "metric")).toBe("20 mL from batch B1, 3.3 mL from batch B2");
});

test("pours in turn are one sentence, made by the output's own means", () => {
  const pours = [
    { stock: "20 mL", batch: "B1" },
    { stock: "3 mL", batch: "B2" },
  ];
  expect(pourInTurn(plain, pours)).toBe("Pour 20 mL from B1, then 3 mL from B2.");
  expect(pourInTurn(tagged, pours)).toBe("[Pour [[20 mL from B1], then [3 mL from B2]].]");
  expect(pourInTurn(plain, [])).toBeUndefined();
});

test("a new bottle says whether the millilitres change with it", () => {
  const bottle = { batch: "B2", strengthGPerL: 14 };
  expect(newBottleInFull(bottle, "metric")).toBe(
    "New bottle: batch B2, 14 g of calcium to the litre",
  );
  expect(newBottleInFull({ ...bottle, wasGPerL: 14.2 }, "metric")).toMatch(
    /, 14.2 g in the one before: mL differ$/,
  );
  expect(newBottleInFull({ ...bottle, wasGPerL: 14.01 }, "metric")).toMatch(
    /, as in the one before$/,
  );
});

test("what is left is used up by its day, or thrown away after it", () => {
  const open = aDiscard("2027-08-10");
  const past = { ...open, doOn: day("2027-08-14") };
  const all = (discard: typeof open) => [
    useUpJob(plain, discard, `batch ${discard.batch}`, "metric", day("2027-08-01")),
    useUpInFull(discard, "metric"),
    leftToUseUp(discard, "metric", day("2027-08-01")),
  ];
  const left = `batch ${open.batch} (${open.ml} mL)`;
  expect(all(open)).toEqual([
    `Use up or throw away what is left of ${left}, by 10 Aug`,
    `Batch ${open.batch}: ${open.ml} mL left; Tue 10 Aug is its last day. Use it up, or throw it away.`,
    `Batch ${open.batch}: ${open.ml} mL, use up by Tue 10 Aug 2027`,
  ]);
  expect(all(past)).toEqual([
    `Throw away what is left of ${left}: past its day since 10 Aug`,
    `Batch ${open.batch}: ${open.ml} mL left; its last day was Tue 10 Aug, so throw it away.`,
    `Batch ${open.batch}: ${open.ml} mL, use up by Tue 10 Aug 2027; you are back on Sat 14 Aug 2027`,
  ]);
});

test("a label counts the bottles of a batch, and says batch once", () => {
  expect(batchOnLabel("B1", 1, 1)).toBe("Batch B1");
  expect(batchOnLabel("batch-2", 2, 3)).toBe("Batch 2, bottle\u00a02\u00a0of\u00a03");
});
