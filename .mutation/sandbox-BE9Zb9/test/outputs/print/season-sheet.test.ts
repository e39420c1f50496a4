// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import { seasonSheet } from "../../../src/outputs/print/season-sheet.js";
import { shortSheet } from "../../../src/outputs/print/short-sheet.js";
import { aFill, aPlan, aRound } from "../../support/a-plan.js";
import { nothingFed, oddNames, planOf, sixtyBeds, weirCottage, withoutStock } from "../gardens.js";

const weir = planOf(weirCottage);
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;

describe("the season sheet", () => {
  const sheet = seasonSheet(weir, { paper: "a4" });

  test("has a box to tick for each round, each bed of it, and each job of the stock", () => {
    const mixes = weir.rounds.flatMap((round) => round.beds.flatMap((bed) => bed.mixes));
    expect(count(sheet, /class="box round"/g)).toBe(weir.rounds.length);
    expect(count(sheet, /class="box bed"/g)).toBe(mixes.length);
    expect(count(sheet, /class="box job"/g)).toBeGreaterThanOrEqual(
      3 * (weir.stock?.making.batches.length ?? 0),
    );
    expect(count(sheet, /What was given/g)).toBe(weir.rounds.length);
  });

  test("ticks what the log holds already", () => {
    const done = seasonSheet(aPlan({ notes: [], rounds: [aRound({ given: true })] }), {
      paper: "a4",
    });
    expect(count(done, /✓/g)).toBe(2);
    expect(sheet).not.toContain("✓");
  });

  test("has a row for each other feed, in a can of its own", () => {
    const feeds = [
      {
        feed: "nettle tea",
        bed: "south",
        bedName: "South bed",
        plantings: ["toms"],
        rateMlPerL: 100,
        waterL: 18,
        openedSince: day("2027-05-13"),
        fills: [aFill({ count: 2, stockMl: 900, stockText: "900 mL" })],
      },
    ];
    const plan = aPlan({ notes: [], rounds: [aRound({ feeds })] });
    const text = seasonSheet(plan, { paper: "a4" })
      .replace(/<[^>]*>/g, " ")
      .replace(/\s+/g, " ");
    expect(text).toMatch(
      /toms 2 cans × 900 mL ; nettle tea , in a can of its own; opened since 13 May/,
    );
  });

  test("says for each bed how many cans, and the stock in each", () => {
    for (const mix of weir.rounds.flatMap((r) => r.beds.flatMap((bed) => bed.mixes)))
      for (const fill of mix.fills)
        expect(sheet).toMatch(
          new RegExp(`<b>${fill.stockText}</b>${fill.full ? "" : ` in ${fill.waterText}`}`),
        );
  });

  test("carries the cautions of feeding, making and keeping", () => {
    for (const words of [
      "Wash produce",
      "carbon dioxide",
      "salmonella",
      "scalds",
      "glasses",
      "mask",
      "away from food",
      "soil test",
    ])
      expect(sheet).toContain(words);
    const unfed = seasonSheet(planOf(nothingFed), { paper: "a4" });
    expect(unfed).not.toContain("carbon dioxide");
    expect(unfed).toContain("soil test");
  });

  test("says to shake, where the garden pours its stock shaken", () => {
    expect(weir.stock?.pour).toBe("shaken");
    expect(sheet).toContain("Shake the bottle.");
    expect(sheet).not.toContain("unless you pour off");
  });

  test("is laid out for its paper", () => {
    expect(sheet).toContain("size:210mm 297mm");
    expect(seasonSheet(weir, { paper: "letter" })).toContain("size:215.9mm 279.4mm");
  });

  test("is whole without stock, without feedings, with odd names and sixty beds", () => {
    expect(seasonSheet(withoutStock(weir), { paper: "a4" })).not.toContain('class="box job"');
    expect(seasonSheet(planOf(nothingFed), { paper: "a4" })).toContain("nothing to feed");
    const odd = seasonSheet(planOf(oddNames), { paper: "letter" });
    expect(odd).not.toMatch(/<script|<b>Bob/);
    const sixty = planOf(sixtyBeds());
    expect(count(seasonSheet(sixty, { paper: "a4" }), /class="box round"/g)).toBe(
      sixty.rounds.length,
    );
  });

  test("names a day again where it goes on on the next page, and ends with the picture", () => {
    const text = seasonSheet(planOf(sixtyBeds()), { paper: "letter" });
    expect(text).toMatch(/<\/time>, continued/);
    expect(text.indexOf('id="season-head"')).toBeGreaterThan(text.lastIndexOf('class="box'));
  });

  test("in short has a line for each day of feeding, 25 to a page", () => {
    const short = shortSheet(weir, { paper: "a4" });
    expect(count(short, /class="box round"/g)).toBe(weir.rounds.length);
    expect(count(short, /class="list short"/g)).toBe(Math.ceil(weir.rounds.length / 25));
  });

  test("has no script and names nothing outside itself", () => {
    expect(sheet).not.toMatch(/<script| style=|(src|href)="(?!#|data:,)/);
  });
});
