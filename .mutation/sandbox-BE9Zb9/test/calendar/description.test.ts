// @ts-nocheck
import { describe, expect, it } from "vitest";
import { descriptionOf, type TripFacts, type TripWords } from "../../src/calendar/description.js";
import { day } from "../../src/dates.js";
import type { BedRound, CanMix, Feeding } from "../../src/season/season-plan.js";
import { aBedRound, aFeeding, aFill, aMix, anOtherFeed } from "../support/a-plan.js";

/** Lines about beds, and what differs from an ordinary trip there. */
function linesFor(
  beds: readonly BedRound[],
  { amounts = "metric", pour, ...facts }: Partial<TripFacts & TripWords> = {},
): string[] {
  return descriptionOf(
    { beds, feeds: [], newBottles: [], told: [], given: false, ...facts },
    {
      amounts,
      nameOf: (planting) => `${planting} by name`,
      ...(pour === undefined ? {} : { pour }),
    },
  );
}

const withMix = (differs: Partial<CanMix>) => [aBedRound({ mixes: [aMix(differs)] })];
const withFeeding = (differs: Partial<Feeding>) => withMix({ feedings: [aFeeding(differs)] });

describe("the description of a round", () => {
  it("says what to fetch, then each bed in a line, the cautions, and what lies behind", () => {
    const pours = [{ batch: "batch-1", ml: 56, strengthGPerL: 17.8 }];
    expect(linesFor(withMix({ pours }), { told: ["Note: it rained"] })).toEqual([
      "56 mL from batch 1, 3 cans",
      "South bed: 2 cans × 23 mL, 1 part can × 10 mL (4 L) for toms",
      "Shake the bottle, unless you pour off the clear part only. Stir each can, use it the same day. Water dry soil first.",
      "Note: it rained",
      "",
      "toms (tomato): fruit growth, feeding 3, due 10 Jun to 16 Jun",
      "Soil drench, 2.5 mL of stock to the litre; calcium in each litre: 50 mg from the stock",
    ]);
  });

  it("lists every bed and every mix however many there are, and what they share once", () => {
    const beds = Array.from({ length: 40 }, (_, i) => aBedRound({ bedName: `Bed ${i}` }));
    const lines = linesFor(beds);
    expect(lines.filter((line) => /^Bed \d+: 2 cans × 23 mL, /.test(line))).toHaveLength(40);
    expect(lines[0]).toBe("2240 mL of stock, 120 cans");
    expect(lines.filter((line) => line.startsWith("Soil drench"))).toHaveLength(1);
  });

  it("tells a US grower spoons and gallons alone, to the eighth of a teaspoon", () => {
    const fills = [
      aFill({ stockMl: 18.48, waterText: "2 gal", stockText: "3 3/4 tsp", waterL: 7.570823568 }),
    ];
    const mix = { fills, stockMl: 1700.48, feedings: [aFeeding({ waterL: 7.570823568 })] };
    const lines = linesFor(withMix(mix), { amounts: "us" });
    expect(lines.slice(0, 2)).toEqual([
      "7 cups + 3 tbsp of stock, 1 can",
      "South bed: 1 can × 3 3/4 tsp for toms",
    ]);
    expect(lines).toContain("toms (tomato): fruit growth, feeding 3, due Jun 10 to Jun 16");
    expect(lines.join("\n")).toContain("Soil drench, 1.92 tsp of stock to the gallon");
    expect(lines.join("\n")).not.toMatch(/mL|litre/);
  });

  it("says in its first line what is late, and behind it why", () => {
    const window = { earliest: day("2027-06-01"), latest: day("2027-06-01") };
    const lines = linesFor(withFeeding({ inWindow: false, window }));
    expect(lines[0]).toBe("56 mL of stock, 3 cans; late: toms");
    expect(lines.join("\n")).toContain("due 1 Jun, which this day misses");
  });

  it.each([
    ["disputed", /disagree on whether this helps: toms/],
    ["advised-against", /does not help; it is here because you asked for it: toms/],
  ] as const)("owns up to %s evidence", (evidence, words) => {
    expect(linesFor(withFeeding({ evidence })).join("\n")).toMatch(words);
  });

  it("is silent on evidence that supports it", () => {
    const text = linesFor(withFeeding({ evidence: "published" })).join("\n");
    expect(text).not.toMatch(/disagree|does not help/);
  });
});

describe("what a can carries", () => {
  const calcium = (differs: Partial<CanMix>, pour?: TripWords["pour"]) =>
    linesFor(withMix(differs), pour === undefined ? {} : { pour }).flatMap(
      (line) => /^Soil drench, .*; (calcium.*)/.exec(line)?.[1] ?? [],
    )[0];
  const known = { calciumMgPerL: 44.38, tapCalciumMgPerL: 36.04, clearCalciumMgPerL: 0.476 };

  it("is told from the stock, from the tap, and as it would be poured clear", () => {
    expect(calcium(known)).toBe(
      "calcium in each litre: 44.4 mg from the stock (poured clear only 0.48 mg), 36 mg from the tap",
    );
  });

  it("is at most so much from the tap where hardness alone is known", () => {
    expect(calcium({ ...known, tapCalciumAtMost: true })).toContain(", up to 36 mg from the tap");
  });

  it("leaves out the tap where the water is not known", () => {
    expect(calcium({ calciumMgPerL: 44 })).toBe("calcium in each litre: 44 mg from the stock");
  });

  it("leaves out the clear part where it is as good, or is what is poured", () => {
    expect(calcium({ ...known, clearCalciumMgPerL: 44 })).not.toContain("clear");
    expect(calcium(known, "clear")).not.toContain("clear");
  });
});

describe("the bottle", () => {
  const pours = [
    { batch: "B1", ml: 11, strengthGPerL: 17.8 },
    { batch: "B2", ml: 12, strengthGPerL: 12 },
  ];

  it("is named in the first line, and at the beds where the trip pours from several", () => {
    expect(linesFor(withMix({ pours: pours.slice(0, 1) }))[0]).toBe("11 mL from batch B1, 3 cans");
    const [first, south] = linesFor(withMix({ pours }));
    expect(first).toBe("11 mL from batch B1, 12 mL from batch B2, 3 cans");
    expect(south).toBe(
      "South bed: 2 cans × 23 mL, 1 part can × 10 mL (4 L) (11 mL from batch B1, 12 mL from batch B2) for toms",
    );
  });

  it("is named with its share where a can is poured from two", () => {
    const shares = pours.map(({ batch, ml }) => ({ batch, ml, stockText: `${ml} mL` }));
    const [, south] = linesFor(withMix({ pours, fills: [aFill({ pours: shares })] }));
    expect(south).toBe(
      "South bed: 1 can × 23 mL (11 mL from batch B1, 12 mL from batch B2) for toms",
    );
  });

  it.each([
    [12, "New bottle: batch B2, 12 g of calcium to the litre, 17.8 g in the one before: mL differ"],
    [17.8, "New bottle: batch B2, 17.8 g of calcium to the litre, as in the one before"],
  ])("is told with what a new one changes (%d g/L)", (strength, line) => {
    const newBottles = [{ batch: "B2", strengthGPerL: strength, wasGPerL: 17.8 }];
    const lines = linesFor(withMix({ pours: pours.slice(1) }), { newBottles });
    expect(lines[0]).toBe("12 mL from batch B2 (new bottle), 3 cans");
    expect(lines).toContain(line);
  });

  it("says only its own strength when that of the one before is not known", () => {
    const newBottles = [{ batch: "B2", strengthGPerL: 12 }];
    expect(linesFor([aBedRound()], { newBottles })).toContain(
      "New bottle: batch B2, 12 g of calcium to the litre",
    );
  });
});

describe("other feeds", () => {
  it("come after the calcium, with cans and plantings by name", () => {
    expect(linesFor([aBedRound()], { feeds: [anOtherFeed()] }).slice(0, 3)).toEqual([
      "56 mL of stock, 3 cans; 900 mL of comfrey tea, 1 can",
      "South bed: 2 cans × 23 mL, 1 part can × 10 mL (4 L) for toms",
      "South bed: comfrey tea, 1 can × 900 mL for toms by name",
    ]);
  });

  it("say since when their bottle may be open, where its shelf life is known", () => {
    const feed = anOtherFeed({ openedSince: day("2027-05-13") });
    expect(linesFor([], { feeds: [feed] })[1]).toMatch(
      /; from a bottle opened on 13 May or later$/,
    );
    expect(linesFor([], { feeds: [anOtherFeed()] }).join()).not.toContain("bottle opened");
  });

  it("alone tell neither stock nor how to shake it, but their own caution", () => {
    const text = linesFor([], { feeds: [anOtherFeed()] }).join("\n");
    expect(text).not.toMatch(/stock|Shake/);
    expect(text).toMatch(/what the label of each feed says/);
    expect(text).toMatch(/no other feed in the same can/);
  });
});

describe("a round that the log holds", () => {
  const lines = linesFor([aBedRound()], { given: true });

  it("says so first, and keeps amounts and plantings", () => {
    expect(lines[0]).toBe("Given: 56 mL of stock, 3 cans");
    expect(lines[1]).toMatch(/^South bed: 2 cans × 23 mL/);
    expect(lines).toContain("toms (tomato): fruit growth, feeding 3");
  });

  it("is past cautions and due days", () => {
    expect(lines.join("\n")).not.toMatch(/Shake|Water dry soil|due/);
  });
});

describe("the cautions of a day", () => {
  const cautions = (differs: Partial<CanMix>, words: Partial<TripWords> = {}) =>
    linesFor(withMix(differs), words).join("\n");

  it("tell to shake the bottle or not, as the garden pours", () => {
    expect(cautions({}, { pour: "shaken" })).toMatch(/^Shake the bottle\. Stir/m);
    expect(cautions({}, { pour: "clear" })).toMatch(/^Do not shake the bottle/m);
    expect(cautions({})).toMatch(/^Shake the bottle, unless you pour off the clear part only/m);
  });

  it("tell how to handle bottle and can at a drench, not how to spray", () => {
    expect(cautions({})).toMatch(/Shake the bottle.*Stir each can/);
    expect(cautions({})).not.toMatch(/Spray|Wash produce/);
  });

  it("tell when to spray, and to wash produce, at a leaf spray", () => {
    expect(cautions({ route: "foliar" })).toMatch(/Spray in the cool, without wind/);
    expect(cautions({ route: "foliar" })).toMatch(/Wash produce/);
    expect(cautions({ route: "foliar" })).not.toMatch(/Water dry soil/);
    expect(cautions({ route: "foliar" })).toMatch(/2 sprayers × 23 mL/);
  });

  it.each(["ripening", "harvest"] as const)(
    "tell to wash produce when it is eaten soon (%s)",
    (stage) => {
      expect(cautions({ feedings: [aFeeding({ stage })] })).toMatch(/Wash produce/);
    },
  );

  it("are one line", () => {
    expect(linesFor([aBedRound()]).indexOf("")).toBe(3);
  });
});
