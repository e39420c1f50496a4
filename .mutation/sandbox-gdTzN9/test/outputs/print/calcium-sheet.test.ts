// @ts-nocheck
import { describe, expect, test } from "vitest";
import { day } from "../../../src/dates.js";
import { calciumSheet } from "../../../src/outputs/print/calcium-sheet.js";
import { aBedWatered, aPlan, aPlantingCalcium, aVerdict } from "../../support/a-plan.js";
import { wateredBackGarden } from "../gardens.js";

const plain = (markup: string) =>
  markup
    .replace(/<style>[\s\S]*?<\/style>/, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/\s+/g, " ");
const words = (differs: Parameters<typeof aPlan>[0]) =>
  plain(calciumSheet(aPlan(differs), { paper: "a4" }));

describe("where a garden's calcium comes from, on paper", () => {
  const dryGap = { from: day("2027-07-08"), to: day("2027-07-27"), days: 20, isAway: true };

  test("begins with water, and the bed that waits longest for it", () => {
    const text = words({
      calcium: [aPlantingCalcium()],
      watering: [
        aBedWatered([30], { dryGap: { ...dryGap, to: day("2027-07-10"), days: 3 } }),
        aBedWatered([30], { bed: "long", bedName: "Long bed", dryGap }),
      ],
    });
    expect(text).toMatch(
      /Water before calcium.*1?\.? ?Water evenly.*Long bed : without water for 20 days.*have someone water/,
    );
    expect(text).not.toContain("South bed : without water");
    expect(words({})).toContain("watering: auto");
  });

  test("calls no time between two waterings dry", () => {
    const gap = { ...dryGap, to: day("2027-07-10"), days: 3, isAway: false };
    expect(words({ watering: [aBedWatered([30], { dryGap: gap })] })).not.toContain(
      "without water",
    );
  });

  test("says what to do first by the verdicts of what is fed", () => {
    const judged = (name: string, judgement: ReturnType<typeof aVerdict>["judgement"]) =>
      aPlantingCalcium({ planting: name, name, verdicts: [aVerdict({ judgement })] });
    const text = words({
      calcium: [
        judged("sour", { kind: "lime-first", ph: 5.2 }),
        judged("limed", { kind: "lime-first", ph: 5.2, limedOn: day("2027-02-01") }),
        judged("open", {
          kind: "cannot-tell",
          why: "water-not-known",
          decidedBy: "water-hardness",
        }),
        judged("vain", { kind: "unlikely-whatever-the-soil", reason: "Trials found nothing." }),
        judged("poor", {
          kind: "might-help",
          soil: "sand",
          waterMgPerL: { low: 5, high: 8 },
          stages: ["flowering"],
        }),
        aPlantingCalcium({ name: "unfed", verdicts: [aVerdict({ feeds: false })] }),
      ],
    });
    expect(text).toContain("Lime first, as the soil test asks: sour .");
    expect(text).toContain("but read below before you lime: limed .");
    expect(text).toContain("limed since, on 1 February 2027: test it again");
    expect(text).toContain("For open the hardness of your water may decide it");
    expect(text).toContain("The feed might help poor , after even watering.");
    expect(text).toContain("Fed, though it is unlikely to help: vain .");
    expect(text).not.toContain("For unfed");
  });

  test("counts plantings of a crop where the names would be too many", () => {
    const calcium = Array.from({ length: 9 }, (_, i) =>
      aPlantingCalcium(i < 7 ? {} : { crop: "eggplant", cropName: "eggplant" }),
    );
    expect(words({ calcium })).toContain(
      "For tomato (7 plantings), eggplant (2 plantings) a soil test may decide it",
    );
  });

  test("names the source of each need once, under its number", () => {
    const other = { perM2G: { low: 1, high: 2 }, sources: ["a trial of whole tomato plants", "b"] };
    const sheet = calciumSheet(
      aPlan({ calcium: [aPlantingCalcium(), aPlantingCalcium({ crop: "x", need: other })] }),
      { paper: "a4" },
    );
    expect(sheet).toContain("<sup>1</sup>");
    expect(sheet).toContain("<sup>1, 2</sup>");
    expect(sheet.match(/a trial of whole tomato plants/g)).toHaveLength(1);
  });

  test("of the example carries soil, what was dug in, humility, and no script", async () => {
    const sheet = calciumSheet(await wateredBackGarden(), { paper: "letter" });
    const text = plain(sheet);
    expect(text).toContain("1450 ppm of calcium by Mehlich-3");
    expect(text).toMatch(
      /800 g of eggshell on 14 November 2026: [^:]* this season, [^:]* in the next/,
    );
    expect(text).toContain("soil test come before this plan");
    expect(text).toMatch(/The season.*s feed is [\d.]+ to [\d.]+ % of what/);
    expect(sheet).toContain("size:215.9mm 279.4mm");
    expect(sheet).not.toMatch(/<script| style=|(src|href)="(?!#|data:,)/);
  });
});
